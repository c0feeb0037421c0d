#include "desk/start_page.h"

#include <QBitmap>
#include <QDir>
#include <QFileDialog>
#include <QFileInfo>
#include <QLabel>
#include <QPainter>
#include <QPushButton>
#include <QRegion>
#include <QStandardPaths>
#include <QVBoxLayout>

#include <filesystem>

#include "base/files.h"
#include "desk/controls.h"
#include "desk/desk_icon.h"
#include "desk/in_qt.h"
#include "desk/recent_jobs.h"

namespace tw {

namespace fs = std::filesystem;

namespace {

constexpr int kColumnPx = 560, kButtonEdgesPx = 30;

QPushButton* button(const QString& words, const char* name, QWidget* parent) {
  auto* out = new QPushButton(words, parent);
  out->setObjectName(QString::fromLatin1(name));
  out->setAccessibleName(words);
  return out;
}

}  // namespace

QString demoJobFolder(QString& trouble) {
  const QString data = QStandardPaths::writableLocation(QStandardPaths::AppDataLocation);
  const fs::path copy = fs::path(data.toStdString()) / "the-low-bell";
  std::error_code error;
  if (fs::exists(copy / "job.json", error)) return qt(copy.string());
  const auto sheets = presetPath("sheets");
  if (!sheets) {
    trouble = qt(sheets.error());
    return {};
  }
  const fs::path demo = sheets->parent_path().parent_path() / "demo" / "the-low-bell";
  // Under another name first, so that a copy cut short is never taken for the demo.
  const fs::path half = copy.string() + ".part";
  fs::remove_all(half, error);
  fs::create_directories(copy.parent_path(), error);
  fs::copy(demo, half, fs::copy_options::recursive, error);
  if (!error) fs::rename(half, copy, error);
  if (error) {
    trouble = StartPage::tr("The demo could not be copied from %1: %2.")
                  .arg(qt(demo.string()), qt(error.message()));
    return {};
  }
  return qt(copy.string());
}

StartPage::StartPage(QWidget* parent) : QWidget(parent) {
  setObjectName(QStringLiteral("startPage"));
  auto* across = new QHBoxLayout(this);
  auto* column = new QWidget(this);
  column->setFixedWidth(kColumnPx);
  across->addStretch();
  across->addWidget(column);
  across->addStretch();
  auto* down = new QVBoxLayout(column);
  down->addStretch();
  auto* mark = new QLabel(column);
  // The mark's own margin is cut off, so that it stands flush with the title.
  const QPixmap icon = deskIcon().pixmap(96, 96);
  mark->setPixmap(icon.copy(QRegion(icon.mask()).boundingRect()));
  down->addWidget(mark);
  auto* title = new QLabel(QStringLiteral("Tierwright"), column);
  QFont large = title->font();
  large.setPointSizeF(large.pointSizeF() * 2.2);
  large.setBold(true);
  title->setFont(large);
  down->addWidget(title);
  auto* what = new QLabel(
      tr("From a script page and a brief to a page that is staged, read and measured."), column);
  what->setWordWrap(true);
  down->addWidget(what);
  down->addSpacing(18);
  auto* demo = button(tr("Open the demo: “The Low Bell”, eight pages"), "openDemo", column);
  connect(demo, &QPushButton::clicked, this, &StartPage::demoAsked);
  down->addWidget(demo);
  auto* open = button(tr("Open a job folder …"), "openJob", column);
  connect(open, &QPushButton::clicked, this, [this] {
    const QString folder = QFileDialog::getExistingDirectory(this, tr("Job folder"));
    if (!folder.isEmpty()) emit jobAsked(folder);
  });
  down->addWidget(open);
  auto* fresh = button(tr("Begin a job from a script …"), "newJob", column);
  connect(fresh, &QPushButton::clicked, this, [this] {
    const QString script =
        QFileDialog::getOpenFileName(this, tr("Script"), {}, tr("Scripts (*.txt *.docx)"));
    if (!script.isEmpty()) emit newJobAsked(script);
  });
  down->addWidget(fresh);
  down->addSpacing(12);
  recent_ = new QVBoxLayout;
  down->addLayout(recent_);
  trouble_ = new QLabel(column);
  trouble_->setWordWrap(true);
  trouble_->setProperty("warn", true);
  down->addWidget(trouble_);
  down->addStretch();
  refresh();
}

void StartPage::refresh() {
  while (QLayoutItem* item = recent_->takeAt(0)) {
    delete item->widget();
    delete item;
  }
  const QStringList jobs = recentJobs();
  if (jobs.isEmpty()) return;
  recent_->addWidget(heading(tr("Opened last"), this));
  for (const QString& folder : jobs) {
    const QString title = titleOf(folder);
    const QString place = QDir::toNativeSeparators(folder);
    const QString words = title.isEmpty() ? place : tr("%1 – %2").arg(title, place);
    auto* job = button(fontMetrics().elidedText(words, Qt::ElideMiddle, kColumnPx - kButtonEdgesPx),
                       "recentJob", this);
    job->setAccessibleName(words);
    job->setToolTip(folder);
    connect(job, &QPushButton::clicked, this, [this, folder] { emit jobAsked(folder); });
    recent_->addWidget(job);
  }
}

void StartPage::tellTrouble(const QString& sentence) {
  trouble_->setText(sentence);
}

}  // namespace tw
