// The jobs that were opened last, the newest first, as the settings of this user keep them.
#pragma once

#include <QStringList>

namespace tw {

inline constexpr int kRecentJobs = 8;

/// Folders, only those that are still there.
QStringList recentJobs();
void rememberJob(const QString& folder, const QString& title);
/// Of the story when it was opened last; empty: not known.
QString titleOf(const QString& folder);

/// Where a job was left.
struct PlaceLeft {
  int page = 0;     ///< 0: never open
  QString rough;    ///< name
  int panel = 0;    ///< from 1; 0: none
  QString station;  ///< its action's name
};
void rememberPlace(const QString& folder, const PlaceLeft& place);
PlaceLeft placeLeft(const QString& folder);

}  // namespace tw
