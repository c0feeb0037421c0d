#include "desk/document.h"

#include <algorithm>
#include <tuple>

#include "desk/in_qt.h"
#include "desk/text_edit.h"
#include "job/document.h"

namespace tw {

namespace {

constexpr int kJobFile = 0;

/// Nothing that a staging depends on differs; roughs, choice and answers may.
bool asksTheSame(const Page& a, const Page& b) {
  return a.spread == b.spread && a.beats == b.beats && a.overrides == b.overrides &&
         a.brief == b.brief;
}

}  // namespace

Result<std::unique_ptr<Document>> Document::open(const std::filesystem::path& folder) {
  auto opened = JobFolder::open(folder);
  if (!opened) return tl::unexpected(opened.error());
  auto job = opened->load();
  if (!job) return tl::unexpected(job.error());
  if (job->pages.empty())
    return badInput("The job has no page.", {.file = folder.string()},
                    "Make it again from its script.");
  return std::unique_ptr<Document>(new Document(std::move(*opened), std::move(*job)));
}

Document::Document(JobFolder folder, Job job)
    : saver_(std::move(folder),
             [this](const Result<void>& done) {
               // Here is the saver's thread; signals belong to the window's.
               const QString trouble = done ? QString() : qt(done.error());
               QMetaObject::invokeMethod(
                   this,
                   [this, trouble] {
                     if (trouble.isEmpty())
                       emit saved();
                     else
                       emit troubled(trouble);
                   },
                   Qt::QueuedConnection);
             }),
      job_(std::move(job)) {
  texts_[kJobFile] = writeJobText(jobFileOf(job_));
  for (const Page& page : job_.pages) texts_[page.number] = writePageText(page);
  shown_ = job_.pages.front().number;
}

Document::~Document() {
  finishSaving();
}

const std::filesystem::path& Document::folder() const {
  return saver_.folder().path();
}

bool Document::isReadOnly() const {
  return saver_.folder().readOnly();
}

const Page& Document::page() const {
  return *job_.page(shown_);
}

std::optional<std::size_t> Document::roughIndex() const {
  const Page& shown = page();
  if (shown.roughs.empty()) return {};
  for (const std::string& name : {rough_, shown.choice})
    for (std::size_t i = 0; i < shown.roughs.size(); ++i)
      if (!name.empty() && shown.roughs[i].name == name) return i;
  return 0;
}

const Rough* Document::rough() const {
  const auto index = roughIndex();
  return index ? &page().roughs[*index] : nullptr;
}

void Document::showPage(int number) {
  if (number == shown_ || job_.page(number) == nullptr) return;
  left_[shown_] = {rough_, panel_};
  shown_ = number;
  std::tie(rough_, panel_) = left_[number];
  keepShown();
  emit shownChanged();
}

void Document::showRough(const std::string& name) {
  if (rough() != nullptr && rough()->name == name) return;
  rough_ = name;
  keepShown();
  emit shownChanged();
}

void Document::selectPanel(std::optional<std::size_t> panel) {
  if (panel == panel_ || (panel && (rough() == nullptr || *panel >= rough()->panels.size())))
    return;
  panel_ = panel;
  emit shownChanged();
}

/// A panel that the shown rough does not have is not selected.
void Document::keepShown() {
  if (panel_ && (rough() == nullptr || *panel_ >= rough()->panels.size())) panel_.reset();
}

bool Document::change(const QString& what, const Page& after, int merge) {
  return changeText(what, after.number, writePageText(after), merge);
}

bool Document::changeJob(const QString& what, const Job& after, int merge) {
  return changeText(what, kJobFile, writeJobText(jobFileOf(after)), merge);
}

bool Document::changeText(const QString& what, int file, std::string text, int merge) {
  if (isReadOnly()) {
    emit troubled(tr("Another program has this job open, so nothing can be changed here."));
    return false;
  }
  const auto present = texts_.find(file);
  if (present == texts_.end()) return false;
  if (present->second == text) return true;
  // What its reader would refuse never becomes the document.
  const Result<void> sound = file == kJobFile
                                 ? readJobText(text, "job.json").map([](const auto&) {})
                                 : readPageText(text, "page").map([](const auto&) {});
  if (!sound) {
    emit troubled(qt(sound.error()));
    return false;
  }
  undo_.push(new TextEdit(*this, what, file, present->second, text, merge));
  return true;
}

void Document::takeText(int file, std::string text) {
  if (file == kJobFile) {
    auto read = readJobText(text, "job.json");
    ensure(read.has_value(), "an edit leaves a job that can be read");
    texts_[file] = std::move(text);
    takeJob(std::move(*read));
  } else {
    auto read = readPageText(text, "page");
    ensure(read.has_value(), "an edit leaves a page that can be read");
    texts_[file] = std::move(text);
    takePage(std::move(*read));
  }
}

void Document::takePage(Page page) {
  const int number = page.number;
  Page& place = *job_.page(number);
  if (!asksTheSame(place, page)) ++wishesEdition_;
  place = std::move(page);
  keepShown();
  saver_.save(place);
  emit pageChanged(number);
}

void Document::takeJob(JobFile file) {
  std::vector<Page> pages = std::move(job_.pages);
  job_ = Job{file.title,      file.client,      file.due,    file.sheet,       file.cast,
             file.scriptFile, std::move(pages), file.scenes, file.sceneChanges};
  ++wishesEdition_;
  saver_.save(job_);
  emit jobChanged();
}

Result<void> Document::finishSaving() {
  return saver_.finish();
}

}  // namespace tw
