// tierwright values: the page in four values, in numbers and as a picture.
#include <fmt/format.h>

#include <memory>

#include "cli/terminal.h"
#include "command/values.h"

namespace tw {

namespace {

struct ValuesArguments {
  std::string job, rough = "A", png, svg;
  int page = 1, panel = 0;
  double dpi = 150;
  bool json = false;
};

std::string percent(double share) {
  return fmt::format("{:.0f} %", 100 * share);
}

void print(const std::vector<PanelValues>& panels) {
  std::vector<std::vector<std::string>> rows{{"panel", "paper", "light", "dark", "black",
                                              "focus L*", "ground L*", "contrast", "stands clear",
                                              ""}};
  for (const PanelValues& v : panels) {
    const ValuePlan& p = v.plan;
    const auto ifFocus = [&](std::string text) { return p.hasFocus ? text : std::string("-"); };
    rows.push_back({std::to_string(v.panel), percent(p.shares[0]), percent(p.shares[1]),
                    percent(p.shares[2]), percent(p.shares[3]),
                    ifFocus(fmt::format("{:.0f}", p.focusLightness)),
                    ifFocus(fmt::format("{:.0f}", p.groundLightness)),
                    ifFocus(fmt::format("{:+.0f}", p.contrast())), ifFocus(percent(p.apart)),
                    p.separates() ? "separates" : "RUNS TOGETHER"});
  }
  fmt::print("{}", table(rows));
  for (const PanelValues& v : panels) {
    fmt::print("\nPanel {}, lit {}\n", v.panel, v.light);
    for (const std::string& black : v.blacks) fmt::print("  {}\n", black);
    for (const std::string& finding : v.findings) fmt::print("  ! {}\n", finding);
  }
}

int run(const ValuesArguments& a) {
  ValuesRequest request;
  request.job = a.job;
  request.page = a.page;
  request.rough = a.rough;
  request.dpi = a.dpi;
  if (a.panel != 0) request.panel = a.panel;
  if (!a.png.empty()) request.png = a.png;
  if (!a.svg.empty()) request.svg = a.svg;
  const auto made = valuesOf(request);
  if (!made) return report(made.error());
  if (a.json)
    fmt::print("{}", valuesJson(request, *made));
  else
    print(*made);
  return kDone;
}

}  // namespace

void addValues(CLI::App& app, int& exitCode) {
  auto* command = app.add_subcommand("values", "Plan a rough in four values and spot its blacks");
  auto a = std::make_shared<ValuesArguments>();
  command->add_option("JOB", a->job, "The job folder")->required();
  command->add_option("--page", a->page, "Page")->required()->check(CLI::Range(1, 99999));
  command->add_option("--rough", a->rough, "Rough")->capture_default_str();
  command->add_option("--panel", a->panel, "Only this panel, in reading order")
      ->check(CLI::Range(1, 999));
  command->add_option("--png", a->png, "PNG file to write")->check(endsIn(".png"));
  command->add_option("--svg", a->svg, "SVG file to write")->check(endsIn(".svg"));
  command->add_option("--dpi", a->dpi, "Resolution of the PNG")
      ->check(CLI::Range(20.0, 1200.0))
      ->capture_default_str();
  command->add_flag("--json", a->json, "Print JSON");
  command->footer("Example:\n  tierwright values job --page 4 --rough A --png values.png");
  command->callback([a, &exitCode] { exitCode = run(*a); });
}

}  // namespace tw
