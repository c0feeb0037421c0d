// The jobs that were opened last, the newest first, as the settings of this user keep them.
#pragma once

#include <QStringList>

namespace tw {

inline constexpr int kRecentJobs = 8;

/// Only those that are still there.
QStringList recentJobs();
void rememberJob(const QString& folder);

}  // namespace tw
