// tests/data/script/orchard.docx was made from orchard.txt by LibreOffice 7.4 (soffice --headless
// --convert-to docx), an outside judge of what such a file looks like.
#include <zip.h>

#include "script/script_fixture.h"

using namespace tw;

namespace {

/// A zip archive in memory that holds one or two parts.
std::string archiveOf(const std::vector<std::pair<std::string, std::string>>& parts) {
  zip_error_t error;
  zip_error_init(&error);
  zip_source_t* target = zip_source_buffer_create(nullptr, 0, 0, &error);
  zip_source_keep(target);
  zip_t* archive = zip_open_from_source(target, ZIP_TRUNCATE, &error);
  for (const auto& [name, bytes] : parts)
    zip_file_add(archive, name.c_str(), zip_source_buffer(archive, bytes.data(), bytes.size(), 0),
                 0);
  zip_close(archive);
  zip_source_open(target);
  zip_source_seek(target, 0, SEEK_END);
  std::string bytes(static_cast<std::size_t>(zip_source_tell(target)), '\0');
  zip_source_seek(target, 0, SEEK_SET);
  zip_source_read(target, bytes.data(), bytes.size());
  zip_source_close(target);
  zip_source_free(target);
  return bytes;
}

std::string documentOf(const std::string& body) {
  return archiveOf({{"word/document.xml",
                     "<w:document xmlns:w='x'><w:body>" + body + "</w:body></w:document>"}});
}

std::string paragraph(const std::string& text) {
  return "<w:p><w:r><w:t>" + text + "</w:t></w:r></w:p>";
}

}  // namespace

TEST_CASE("a Word document gives the same script as its text form") {
  useSourcePresets();
  const Result<Script> text = readScriptFile(scriptData("orchard.txt"));
  const Result<Script> docx = readScriptFile(scriptData("orchard.docx"));
  REQUIRE(text.has_value());
  REQUIRE(docx.has_value());
  CHECK(docx->title == text->title);
  CHECK(docx->cast.size() == text->cast.size());
  CHECK(docx->warnings.size() == text->warnings.size());
  REQUIRE(docx->pages.size() == text->pages.size());
  for (std::size_t i = 0; i < text->pages.size(); ++i) {
    REQUIRE(docx->pages[i].beats.size() == text->pages[i].beats.size());
    for (std::size_t j = 0; j < text->pages[i].beats.size(); ++j) {
      const Beat& a = text->pages[i].beats[j];
      const Beat& b = docx->pages[i].beats[j];
      CHECK(a.description == b.description);
      CHECK(a.weight == b.weight);
      REQUIRE(a.copy.size() == b.copy.size());
      for (std::size_t k = 0; k < a.copy.size(); ++k) CHECK(a.copy[k].text == b.copy[k].text);
    }
  }
}

TEST_CASE("tabs, line breaks and tables of a Word document are read, deleted text is not") {
  const Result<std::string> text = textOfDocx(
      documentOf("<w:p><w:r><w:t>MARA:</w:t><w:tab/><w:t>One</w:t><w:br/><w:t>two</w:t></w:r>"
                 "<w:del><w:r><w:delText>gone</w:delText></w:r></w:del></w:p>"
                 "<w:tbl><w:tr><w:tc>" +
                 paragraph("in a table") + "</w:tc></w:tr></w:tbl>"),
      "a.docx");
  REQUIRE(text.has_value());
  CHECK(*text == "MARA:\tOne\ntwo\nin a table\n");
}

TEST_CASE("the numbers of an automatic list are part of the text") {
  const std::string item =
      "<w:p><w:pPr><w:numPr><w:ilvl w:val='0'/><w:numId w:val='5'/></w:numPr></w:pPr>"
      "<w:r><w:t>A door.</w:t></w:r></w:p>";
  const std::string numbering =
      "<w:numbering xmlns:w='x'><w:abstractNum w:abstractNumId='2'><w:lvl w:ilvl='0'>"
      "<w:start w:val='1'/><w:numFmt w:val='decimal'/><w:lvlText w:val='Panel %1:'/></w:lvl>"
      "</w:abstractNum><w:num w:numId='5'><w:abstractNumId w:val='2'/></w:num></w:numbering>";
  const Result<std::string> text =
      textOfDocx(archiveOf({{"word/document.xml", "<w:document xmlns:w='x'><w:body>" + item + item +
                                                      "</w:body></w:document>"},
                            {"word/numbering.xml", numbering}}),
                 "a.docx");
  REQUIRE(text.has_value());
  CHECK(*text == "Panel 1: A door.\nPanel 2: A door.\n");
}

TEST_CASE("a damaged, foreign or exploding Word document is refused with a reason") {
  const std::string bomb = documentOf(std::string(80u << 20, ' '));
  CHECK(bomb.size() < (1u << 20));
  std::string deep;
  for (int i = 0; i < 1000; ++i) deep += "<w:tbl>";
  for (int i = 0; i < 1000; ++i) deep += "</w:tbl>";
  const std::string sound = documentOf(paragraph("PAGE 1"));
  for (const std::string& bytes :
       {bomb, documentOf(deep), std::string("no zip"), std::string(), sound.substr(0, 60),
        archiveOf({{"other.xml", "<a/>"}}), archiveOf({{"word/document.xml", "<a><b></a>"}})}) {
    const Result<std::string> text = textOfDocx(bytes, "a.docx");
    REQUIRE_FALSE(text.has_value());
    CHECK(text.error().front().place.file == "a.docx");
    CHECK_FALSE(text.error().front().advice.empty());
  }
}
