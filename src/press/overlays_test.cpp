#include "press/overlays.h"

#include <doctest/doctest.h>

#include <algorithm>

#include "geometry/polygon.h"
#include "press/contact_sheet.h"
#include "press/example_rough.h"
#include "press/recorder.h"
#include "press/score_card.h"

using namespace tw;

TEST_CASE("the eye's order survives nonsense: every panel once") {
  Rough rough = example::rough(0, "A").rough;
  rough.reading.order = {3, 3, 99, -1, 1};
  CHECK(expectedOrder(rough) == std::vector<std::size_t>{2, 0, 1, 3, 4, 5});
}

TEST_CASE("a panel without a lead gets no arrow") {
  RoughPicture page = example::rough(0, "A");
  const Typesetter typesetter;
  Recorder with;
  drawLeads(with, page, typesetter);
  for (RoughPanel& panel : page.rough.panels) panel.lead = {};
  Recorder without;
  drawLeads(without, page, typesetter);
  CHECK(with.fills.size() == without.fills.size() + 2 * page.rough.panels.size());
}

TEST_CASE("the score card goes from dear to cheap and stays in its column") {
  const Typesetter typesetter;
  RoughPicture page = example::rough(0, "A");
  for (int i = 0; i < 40; ++i)
    page.rough.card.push_back({"rule " + std::to_string(i), 0.01 * i,
                               "A reason that needs more than one line to be told in full, "
                               "because the column beside the page is narrow.",
                               "A remedy.", 1 + i % 6});
  const std::vector<CardLine> lines = dearestFirst(page.rough.card);
  CHECK(std::is_sorted(lines.begin(), lines.end(),
                       [](const CardLine& a, const CardLine& b) { return a.cost > b.cost; }));
  const Rect column{{200, 0}, {200 + kCardWidthMm, 260}};
  Recorder recorder;
  drawScoreCard(recorder, page, column, typesetter);
  for (const TypeLine& word : recorder.words) {
    const double width = typesetter.widthOf(word.text, word.face, word.sizePt);
    const double left = word.align == Align::Right ? word.at.x - width : word.at.x;
    CHECK_MESSAGE(left >= column.min.x - 0.01, word.text);
    CHECK_MESSAGE(left + width <= column.max.x + 0.3, word.text);
    CHECK(word.at.y <= column.max.y);
    CHECK(word.sizePt >= 6);
  }
}

TEST_CASE("miniatures and words of any number of roughs fit on the contact sheet") {
  const Typesetter typesetter;
  for (const bool spread : {false, true})
    for (int n = 1; n <= 12; ++n) {
      std::vector<RoughPicture> roughs;
      for (int i = 0; i < n; ++i) {
        roughs.push_back(example::rough(i % 3, std::string(1, static_cast<char>('A' + i)), 1));
        if (spread) roughs.back().sheet.trimWidth *= 2;
      }
      std::vector<PageArt> arts;
      std::vector<const RoughPicture*> pictures;
      std::vector<const PageArt*> artPlaces;
      for (const RoughPicture& rough : roughs) arts.emplace_back(rough, typesetter);
      for (std::size_t i = 0; i < roughs.size(); ++i) {
        pictures.push_back(&roughs[i]);
        artPlaces.push_back(&arts[i]);
      }
      const ContactSheet sheet(pictures, artPlaces, typesetter);
      Recorder recorder;
      for (const PdfLayer& layer : sheet.layers()) layer.draw(recorder);
      CHECK(recorder.places.size() == static_cast<std::size_t>(2 * n));
      const Rect paper = sheet.paper();
      for (std::size_t i = 0; i < recorder.places.size(); ++i) {
        CHECK(paper.contains(recorder.places[i].min));
        CHECK(paper.contains(recorder.places[i].max));
      }
      for (const TypeLine& word : recorder.words) {
        CHECK(word.sizePt >= 6);
        CHECK(paper.inset(8).contains(word.at));
      }
    }
}
