#include "desk/text_edit.h"

#include <algorithm>

#include "desk/document.h"
#include "desk/page_words.h"

namespace tw {

namespace {

constexpr int kQuickest = 1;  // zlib's level

QByteArray compressed(std::string_view text) {
  return qCompress(reinterpret_cast<const uchar*>(text.data()), static_cast<qsizetype>(text.size()),
                   kQuickest);
}

std::string shownIn(const Document& document) {
  return document.rough() ? document.rough()->name : std::string();
}

}  // namespace

TextEdit::TextEdit(Document& document, const QString& what, int file, const std::string& before,
                   const std::string& after, int merge)
    : document_(document), file_(file), merge_(merge), roughBefore_(shownIn(document)) {
  const Page* page = document.job().page(file);
  // Lists of edits say where; undo's tool tip only what.
  setText(page ? QStringLiteral("%1: %2\n%2").arg(inWords(*page), what) : what);
  keep(before, after);
}

void TextEdit::keep(const std::string& before, const std::string& after) {
  const std::size_t most = std::min(before.size(), after.size());
  at_ = static_cast<std::size_t>(std::mismatch(before.begin(),
                                               before.begin() + static_cast<std::ptrdiff_t>(most),
                                               after.begin())
                                     .first -
                                 before.begin());
  std::size_t tail = 0;
  while (tail < most - at_ && before[before.size() - 1 - tail] == after[after.size() - 1 - tail])
    ++tail;
  before_ = compressed(std::string_view(before).substr(at_, before.size() - tail - at_));
  after_ = compressed(std::string_view(after).substr(at_, after.size() - tail - at_));
}

std::string TextEdit::with(const std::string& text, const QByteArray& out,
                           const QByteArray& in) const {
  const QByteArray put = qUncompress(in);
  std::string result = text;
  result.replace(at_, static_cast<std::size_t>(qUncompress(out).size()), put.constData(),
                 static_cast<std::size_t>(put.size()));
  return result;
}

/// If it is there: what is shown goes along with what is undone.
void TextEdit::showRough(const std::string& name) const {
  const auto& roughs = document_.page().roughs;
  if (file_ == document_.page().number &&
      std::ranges::find(roughs, name, &Rough::name) != roughs.end())
    document_.showRough(name);
}

void TextEdit::undo() {
  document_.showPage(file_);  // what is taken back is seen; job.json is no page
  roughAfter_ = shownIn(document_);
  document_.takeText(file_, with(document_.textOf(file_), after_, before_));
  showRough(roughBefore_);
}

void TextEdit::redo() {
  if (wasDone_) document_.showPage(file_);
  document_.takeText(file_, with(document_.textOf(file_), before_, after_));
  if (wasDone_) showRough(roughAfter_);
  wasDone_ = true;
}

bool TextEdit::mergeWith(const QUndoCommand* other) {
  const auto* next = static_cast<const TextEdit*>(other);  // same id, so the same class
  if (next->file_ != file_) return false;
  const std::string& now = document_.textOf(file_);
  const std::string between = next->with(now, next->after_, next->before_);
  keep(with(between, after_, before_), now);
  return true;
}

}  // namespace tw
