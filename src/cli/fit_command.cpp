// tierwright fit: how large a figure can be drawn, three ways.
#include <fmt/format.h>

#include <memory>

#include "cli/terminal.h"
#include "command/fit.h"

namespace tw {

namespace {

struct FitArguments {
  FitRequest request;
  std::string job, png, svg;
  bool json = false;
};

std::string head(double mm) {
  return fmt::format("{:.1f} mm", mm);
}

void printTable(const FitAnswers& a) {
  fmt::print("{} in panel {} of rough {}, page {}: head {} as staged{}\n", a.figure.who, a.panel,
             a.rough, a.page, head(a.figure.headMm),
             a.wantedHeadMm > 0 ? fmt::format(", {} wanted", head(a.wantedHeadMm)) : "");
  std::vector<std::vector<std::string>> rows{{"", "scale", "head", "lost", "covers"}};
  const auto scale = [](const Fit& f) {
    return fmt::format("{:.3f}{}", f.scale, f.mirrored ? " turned" : "");
  };
  if (a.whole) rows.push_back({"whole", scale(a.whole->fit), head(a.whole->headMm), "-", "-"});
  if (a.cut)
    for (std::size_t i = 0; i < a.cut->options.size(); ++i) {
      const CutOption& o = a.cut->options[i];
      rows.push_back({fmt::format("cut at the {}{}", o.line, i == a.cut->best ? " *" : ""),
                      scale(o.fit), head(o.headMm), fmt::format("{:.0f} %", 100 * o.lost), "-"});
    }
  if (a.over) {
    std::string covers;
    for (const CoveredPanel& c : a.over->covered)
      covers +=
          fmt::format("{}panel {}: {:.0f} %", covers.empty() ? "" : ", ", c.panel, 100 * c.share);
    rows.push_back({"over the border", scale(a.over->fit), head(a.over->headMm), "-",
                    covers.empty() ? "-" : covers});
  }
  fmt::print("{}\n", table(rows));
  for (const std::string& sentence : fitSentences(a)) fmt::print("{}\n", sentence);
}

int run(FitArguments& a) {
  a.request.job = a.job;
  const auto answers = fitFigure(a.request);
  if (!answers) return report(answers.error());
  if (!a.png.empty())
    if (auto done = drawFitPng(a.png, *answers); !done) return report(done.error());
  if (!a.svg.empty())
    if (auto done = drawFitSvg(a.svg, *answers); !done) return report(done.error());
  if (a.json) {
    fmt::print("{}", fitJson(*answers));
  } else {
    printTable(*answers);
  }
  return kDone;
}

}  // namespace

void addFit(CLI::App& app, int& exitCode) {
  auto* command = app.add_subcommand(
      "fit", "How large a figure can be: whole, cut at a lawful line, or over the border");
  auto a = std::make_shared<FitArguments>();
  command->add_option("JOB", a->job, "The job folder")->required();
  command->add_option("--page", a->request.page, "Its page")
      ->required()
      ->check(CLI::Range(1, 99999));
  command->add_option("--rough", a->request.rough, "Its rough")->capture_default_str();
  command->add_option("--panel", a->request.panel, "Its panel, as read, from 1")
      ->required()
      ->check(CLI::Range(1, 1000));
  command->add_option("--who", a->request.who, "Character; else the panel's focus");
  command->add_option("--margin", a->request.marginMm, "mm kept to borders that do not cut it")
      ->check(CLI::Range(0.0, 100.0))
      ->capture_default_str();
  command->add_flag("--mirror", a->request.mayMirror, "The figure may be turned about");
  command->add_option("--png", a->png, "Draw the three side by side into this file")
      ->check(endsIn(".png"));
  command->add_option("--svg", a->svg, "The same as vectors")->check(endsIn(".svg"));
  command->add_flag("--json", a->json, "Print JSON");
  command->footer(
      "Examples:\n"
      "  tierwright fit job --page 4 --rough A --panel 1\n"
      "  tierwright fit job --page 4 --panel 1 --margin 3 --mirror --png fit.png\n"
      "  tierwright fit job --page 4 --panel 1 --json");
  command->callback([a, &exitCode] { exitCode = run(*a); });
}

}  // namespace tw
