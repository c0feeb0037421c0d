#include "press/svg_surface.h"

#include <doctest/doctest.h>

#include <vector>

#include "press/example_rough.h"
#include "press/rough_sheet.h"

using namespace tw;

namespace {

/// Empty when every tag is closed by its like and no stray mark is left; else what is wrong.
/// Enough for what this surface writes: no comments, no CDATA.
std::string illFormed(const std::string& xml) {
  std::vector<std::string> open;
  std::size_t at = xml.find("?>") + 2;
  while ((at = xml.find('<', at)) != std::string::npos) {
    const std::size_t end = xml.find('>', at);
    if (end == std::string::npos) return "a tag has no end";
    const std::string tag = xml.substr(at + 1, end - at - 1);
    if (tag.find('<') != std::string::npos) return "a tag within a tag: " + tag.substr(0, 40);
    const std::string name = tag.substr(0, tag.find_first_of(" \n"));
    if (tag[0] == '/') {
      if (open.empty() || open.back() != tag.substr(1)) return "closes nothing: " + tag;
      open.pop_back();
    } else if (tag.back() != '/') {
      open.push_back(name);
    }
    at = end;
  }
  return open.empty() ? "" : "never closed: " + open.back();
}

std::string svgOf(const RoughPicture& picture, const Overlays& overlays) {
  const Typesetter typesetter;
  const RoughSheet sheet(picture, typesetter);
  SvgSurface surface(typesetter, sheet.paper(overlays), sheet.title());
  sheet.drawGroups(surface, overlays);
  return std::move(surface).finished();
}

bool says(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("the SVG is well formed whatever the job is called") {
  RoughPicture picture = example::rough(1, "A");
  picture.jobTitle = "Salt & <Iron> \"deep\" \x01 Ä";
  const std::string svg = svgOf(picture, {true, true, true, true});
  CHECK(illFormed(svg) == "");
  CHECK(says(svg, "<title>Salt &amp; &lt;Iron&gt; &quot;deep&quot;   Ä, page 3, rough A</title>"));
}

TEST_CASE("the SVG is as large as the sheet, in mm") {
  // Trim 168.275, bleed and slug 9.525 mm on each side.
  CHECK(says(svgOf(example::rough(0, "A"), {}),
             "width=\"187.325mm\" height=\"279.4mm\" viewBox=\"-9.525 -9.525 187.325 279.4\""));
}

TEST_CASE("panels and overlays are named groups and overlays not wanted are there but hidden") {
  const std::string svg = svgOf(example::rough(0, "A"), {.order = true});
  for (int i = 1; i <= 6; ++i) CHECK(says(svg, "<g id=\"panel-" + std::to_string(i) + "\">"));
  CHECK(says(svg, "<g id=\"panel-order\">"));
  CHECK(says(svg, "<g id=\"leads\" display=\"none\">"));
  CHECK(says(svg, "<g id=\"trim-and-live-area\" display=\"none\">"));
}

TEST_CASE("path data is relative and never drifts from its grid") {
  const Typesetter typesetter;
  SvgSurface surface(typesetter, {{0, 0}, {10, 10}}, "t");
  Path path;
  path.add({{1.004, 2}, {1.008, 2}, {1.012, 2.5}, {0.5, -1}}, true);
  surface.fill(path, kBlack, FillRule::NonZero);
  CHECK(says(std::move(surface).finished(), "d=\"M1 2l.01 0 0 .5-.51-3.5z\""));
}
