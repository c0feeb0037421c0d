// The files of a job folder and of a sheet as text: read with every problem named, written in one
// stable form. No disk here; JobFolder does that.
#pragma once

#include <string>
#include <string_view>

#include "base/result.h"
#include "job/job.h"
#include "job/job_fields.h"

namespace tw {

/// job.json. Migrates older formats; refuses newer ones.
Result<JobFile> readJobText(std::string_view bytes, const std::string& fileName);
/// pages/NN.json. Migrates older formats; refuses newer ones.
Result<Page> readPageText(std::string_view bytes, const std::string& fileName);
/// A sheet; contradictions are problems too.
Result<Sheet> readSheetText(std::string_view bytes, const std::string& fileName);

std::string writeJobText(const JobFile& job);
std::string writePageText(const Page& page);
std::string writeSheetText(const Sheet& sheet);

JobFile jobFileOf(const Job& job);

}  // namespace tw
