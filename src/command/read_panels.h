// How pages that are known only as marked panels will be read: order, share of readers who keep
// it, and where they part. The file is docs/formats/panel-list.md's, the JSON that of
// docs/formats/read-panels-output.schema.json.
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "base/result.h"
#include "job/panel_list.h"
#include "read/drawn_page.h"
#include "read/page_reading.h"

namespace tw {

struct ReadPanelsRequest {
  std::filesystem::path file;
  std::optional<ReadingDirection> direction;  ///< goes before what the file says
  std::filesystem::path
      picture;  ///< of the drawn page, for a list of one; before what the file says
};

struct IntendedOrder {
  std::vector<int> order;  ///< indices into the panels as given
  double followed = 0;
};

struct ReadMarkedPage {
  MarkedPage page;
  ReadingDirection direction = ReadingDirection::LeftToRight;
  PageReading reading;
  std::optional<IntendedOrder> intended;  ///< when every panel carries its order
  std::optional<DrawnPage> drawn;         ///< when its picture is known
  std::string pictureNote;                ///< what to doubt about the picture, a sentence
  std::string pictureProblem;             ///< why the picture that the list names could not be used
};

Result<std::vector<ReadMarkedPage>> readPanels(const ReadPanelsRequest& request);

std::string readPanelsJson(const std::vector<ReadMarkedPage>& pages);

/// What there is to say to the artist about a page, one sentence each; panels counted from 1 as
/// they stand in the file.
std::vector<std::string> readPanelsSentences(const ReadMarkedPage& page);

}  // namespace tw
