// The text of a .docx, paragraph by paragraph.
//
// A .docx is a zip archive; the text stands in word/document.xml and the numbers of automatic
// lists ("1.", "Panel 1") only in word/numbering.xml, so both are read. Deleted text of tracked
// changes, headers, footers, comments and field codes are left out. Of alternative contents the
// first is read. Source: ECMA-376 part 1, WordprocessingML, from memory.
#include <zip.h>

#include <cstring>
#include <memory>
#include <pugixml.hpp>

#include "base/files.h"
#include "script/docx_numbering.h"
#include "script/script.h"

namespace tw {

namespace {

constexpr zip_uint64_t kLargestPart = 64u << 20;  // a novel's document.xml is about 10 MB
constexpr zip_int64_t kMostEntries = 10000;
constexpr int kDeepestNesting = 256;  // tables in tables in text boxes stay far below
constexpr std::size_t kLargestText = kLargestTextBytes;

struct CloseZip {
  void operator()(zip_t* archive) const { zip_discard(archive); }
};
struct CloseZipFile {
  void operator()(zip_file_t* file) const { zip_fclose(file); }
};
using Archive = std::unique_ptr<zip_t, CloseZip>;

Archive openArchive(std::string_view bytes) {
  zip_error_t error;
  zip_error_init(&error);
  zip_source_t* source = zip_source_buffer_create(bytes.data(), bytes.size(), 0, &error);
  zip_t* archive = source == nullptr ? nullptr : zip_open_from_source(source, ZIP_RDONLY, &error);
  if (archive == nullptr && source != nullptr) zip_source_free(source);
  zip_error_fini(&error);
  return Archive(archive);
}

/// The unpacked part; empty when missing, damaged or larger than any script, whatever the archive
/// claims its size to be.
std::string readPart(zip_t* archive, const char* name) {
  std::unique_ptr<zip_file_t, CloseZipFile> file(zip_fopen(archive, name, 0));
  if (!file) return {};
  std::string part;
  char chunk[1 << 16];
  for (;;) {
    const zip_int64_t n = zip_fread(file.get(), chunk, sizeof chunk);
    if (n < 0 || part.size() + static_cast<std::size_t>(n) > kLargestPart) return {};
    if (n == 0) return part;
    part.append(chunk, static_cast<std::size_t>(n));
  }
}

std::string_view localName(const pugi::xml_node& node) {
  const std::string_view name = node.name();
  return name.substr(name.find(':') + 1);
}

class TextGatherer {
 public:
  explicit TextGatherer(DocxNumbering numbering) : numbering_(std::move(numbering)) {}

  /// False when the nesting is deeper, or the text longer, than any honest document.
  bool gather(const pugi::xml_node& node, int depth) {
    if (depth > kDeepestNesting || text_.size() > kLargestText) return false;
    for (const pugi::xml_node& child : node.children()) {
      const std::string_view name = localName(child);
      if (isLeftOut(name)) continue;
      if (name == "p")
        startParagraph(child);
      else if (takeLeaf(name, child))
        continue;
      const pugi::xml_node inside = name == "AlternateContent" ? child.first_child() : child;
      if (!gather(inside, depth + 1)) return false;
      if (name == "p") endLine();
    }
    return true;
  }

  std::string take() { return std::move(text_); }

 private:
  static bool isLeftOut(std::string_view name) {
    return name == "del" || name == "delText" || name == "instrText" || name == "pPr" ||
           name == "rPr" || name == "sectPr" || name == "moveFrom" || name == "tblPr";
  }

  void startParagraph(const pugi::xml_node& paragraph) {
    endLine();
    text_ += numbering_.labelOf(paragraph);
    lineOpen_ = true;
  }

  bool takeLeaf(std::string_view name, const pugi::xml_node& node) {
    if (name == "t")
      text_ += node.text().get();
    else if (name == "tab")
      text_ += '\t';
    else if (name == "br" || name == "cr")
      text_ += '\n';
    else if (name == "noBreakHyphen")
      text_ += '-';
    else
      return false;
    lineOpen_ = true;
    return true;
  }

  void endLine() {
    if (lineOpen_) text_ += '\n';
    lineOpen_ = false;
  }

  DocxNumbering numbering_;
  std::string text_;
  bool lineOpen_ = false;
};

tl::unexpected<Problems> noDocx(const std::string& what, const std::string& file) {
  return badInput(what, {.file = file}, "Save it again as .docx or as plain text and try again.");
}

}  // namespace

Result<std::string> textOfDocx(std::string_view bytes, const std::string& fileName) {
  if (bytes.size() > kLargestPart)
    return noDocx("The document is too large for a script.", fileName);
  const Archive archive = openArchive(bytes);
  if (!archive) return noDocx("This is not a .docx: it is no zip archive.", fileName);
  if (zip_get_num_entries(archive.get(), 0) > kMostEntries)
    return noDocx("This is not a .docx: it holds too many files.", fileName);
  const std::string xml = readPart(archive.get(), "word/document.xml");
  if (xml.empty())
    return noDocx("The document's text (word/document.xml) is missing, damaged or too large.",
                  fileName);
  pugi::xml_document document;
  // White space between tags is kept, for a lone space inside a text run.
  if (!document.load_buffer(xml.data(), xml.size(),
                            pugi::parse_default | pugi::parse_ws_pcdata_single))
    return noDocx("The document's text (word/document.xml) is not valid XML.", fileName);
  TextGatherer gatherer(DocxNumbering(readPart(archive.get(), "word/numbering.xml")));
  if (!gatherer.gather(document, 0))
    return noDocx("The document is nested deeper or longer than any script.", fileName);
  return gatherer.take();
}

}  // namespace tw
