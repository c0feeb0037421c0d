#include "desk/recent_jobs.h"

#include <QFileInfo>
#include <QSettings>
#include <QUrl>

namespace tw {

namespace {

const QString kKey = QStringLiteral("recent-jobs");

/// Where the settings keep what belongs to one folder.
QString keyOf(const QString& folder, const char* what) {
  const QString place = QFileInfo(folder).absoluteFilePath();
  return QStringLiteral("jobs/%1/%2")
      .arg(QString::fromLatin1(QUrl::toPercentEncoding(place)), QLatin1String(what));
}

}  // namespace

QStringList recentJobs() {
  QStringList out;
  for (const QString& folder : QSettings().value(kKey).toStringList())
    if (QFileInfo::exists(folder + QStringLiteral("/job.json"))) out.append(folder);
  return out.mid(0, kRecentJobs);
}

void rememberJob(const QString& folder, const QString& title) {
  QSettings().setValue(keyOf(folder, "title"), title);
  const QString place = QFileInfo(folder).absoluteFilePath();
  QStringList jobs = recentJobs();
  jobs.removeAll(place);
  jobs.prepend(place);
  for (const QString& old : jobs.mid(kRecentJobs)) QSettings().remove(keyOf(old, "").chopped(1));
  QSettings().setValue(kKey, jobs.mid(0, kRecentJobs));
}

QString titleOf(const QString& folder) {
  return QSettings().value(keyOf(folder, "title")).toString();
}

void rememberPlace(const QString& folder, const PlaceLeft& place) {
  QSettings settings;
  settings.setValue(keyOf(folder, "page"), place.page);
  settings.setValue(keyOf(folder, "rough"), place.rough);
  settings.setValue(keyOf(folder, "panel"), place.panel);
  settings.setValue(keyOf(folder, "station"), place.station);
}

PlaceLeft placeLeft(const QString& folder) {
  const QSettings settings;
  return {settings.value(keyOf(folder, "page")).toInt(),
          settings.value(keyOf(folder, "rough")).toString(),
          settings.value(keyOf(folder, "panel")).toInt(),
          settings.value(keyOf(folder, "station")).toString()};
}

}  // namespace tw
