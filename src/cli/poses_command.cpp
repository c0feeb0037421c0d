// tierwright poses: what the figures can do, as a list and as a sheet.
#include <fmt/format.h>

#include <memory>

#include "cli/terminal.h"
#include "command/pose_sheets.h"
#include "job/write_json.h"

namespace tw {

namespace {

struct Arguments {
  std::string png, svg, pdf;
  double dpi = 200;
  bool pairs = false, json = false;
};

OrderedJson jsonOf(const std::vector<PoseFact>& facts) {
  OrderedJson out = OrderedJson::array();
  for (const PoseFact& fact : facts)
    out.push_back({{"name", fact.name},
                   {"title", fact.title},
                   {"line", fact.line},
                   {"support", fact.support},
                   {"balance", fact.balance},
                   {"beyond", fact.beyond}});
  return out;
}

int list(const Arguments& a) {
  const auto facts = poseFacts(a.pairs);
  if (!facts) return report(facts.error());
  if (a.json) {
    fmt::print("{}", textOf({{"poses", jsonOf(*facts)}}));
    return kDone;
  }
  std::vector<std::vector<std::string>> rows{{"pose", "what it is", "line", "balance"}};
  for (const PoseFact& fact : *facts)
    rows.push_back({fact.name, fact.title, fact.line, fact.balance});
  fmt::print("{}", table(rows));
  for (const PoseFact& fact : *facts)
    for (const std::string& joint : fact.beyond) fmt::print("{}: {}\n", fact.name, joint);
  return kDone;
}

int run(const Arguments& a) {
  PoseSheetRequest request;
  request.pairs = a.pairs;
  request.dpi = a.dpi;
  for (const std::string& file : {a.png, a.svg, a.pdf})
    if (!file.empty()) request.files.emplace_back(file);
  if (!request.files.empty()) {
    Watched watched;
    if (const auto done = writePoseSheets(request, watched.progress()); !done)
      return report(done.error());
  }
  return request.files.empty() || a.json ? list(a) : kDone;
}

}  // namespace

void addPoses(CLI::App& app, int& exitCode) {
  auto* command = app.add_subcommand("poses", "List the poses, or draw them on a sheet");
  auto a = std::make_shared<Arguments>();
  command->add_option("--png", a->png, "PNG file to write")->check(endsIn(".png"));
  command->add_option("--svg", a->svg, "SVG file to write")->check(endsIn(".svg"));
  command->add_option("--pdf", a->pdf, "PDF file to write")->check(endsIn(".pdf"));
  command->add_option("--dpi", a->dpi, "Resolution of the PNG")
      ->check(CLI::Range(20.0, 1200.0))
      ->capture_default_str();
  command->add_flag("--pairs", a->pairs, "The poses for two");
  command->add_flag("--json", a->json, "Print JSON");
  command->footer("Example:\n  tierwright poses --png poses.png");
  command->callback([a, &exitCode] { exitCode = run(*a); });
}

}  // namespace tw
