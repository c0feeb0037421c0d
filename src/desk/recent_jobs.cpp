#include "desk/recent_jobs.h"

#include <QFileInfo>
#include <QSettings>

namespace tw {

namespace {

const QString kKey = QStringLiteral("recent-jobs");

}  // namespace

QStringList recentJobs() {
  QStringList out;
  for (const QString& folder : QSettings().value(kKey).toStringList())
    if (QFileInfo::exists(folder + QStringLiteral("/job.json"))) out.append(folder);
  return out.mid(0, kRecentJobs);
}

void rememberJob(const QString& folder) {
  const QString place = QFileInfo(folder).absoluteFilePath();
  QStringList jobs = recentJobs();
  jobs.removeAll(place);
  jobs.prepend(place);
  QSettings().setValue(kKey, jobs.mid(0, kRecentJobs));
}

}  // namespace tw
