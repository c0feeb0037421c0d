// tierwright variants: other poses for a figure in a panel.
#include <fmt/format.h>

#include <memory>

#include "cli/terminal.h"
#include "command/variants.h"

namespace tw {

namespace {

struct VariantsArguments {
  VariantsRequest request;
  std::string job, png, svg;
  int take = 0;
  bool json = false;
};

std::string percent(double now, double before) {
  const double by = 100 * (now - before);
  return fmt::format("{:.0f} %{}", 100 * now, by * by < 0.25 ? "" : fmt::format(" ({:+.0f})", by));
}

std::vector<std::string> rowOf(const std::string& number, const PoseVariant& v,
                               const PoseVariant& present) {
  const PoseFigures &f = v.figures, &p = present.figures;
  const std::string balance =
      f.balance.judged ? fmt::format("{:+.0f} cm", 100 * f.balance.marginM) : "not judged";
  return {number,
          v.name,
          percent(v.readability, present.readability),
          percent(f.reach, p.reach),
          percent(f.openness, p.openness),
          fmt::format("{:.0f}/5", f.tipsSeen),
          percent(f.handsSeen, p.handsSeen),
          percent(f.faceSeen, p.faceSeen),
          percent(f.inFrame, p.inFrame),
          balance};
}

void printTable(const VariantsMade& made) {
  const PoseVariants& v = made.variants;
  fmt::print("{} {}: {} other poses tried, the {} best that are unlike\n", made.figure, made.pose,
             v.tried, v.kept.size());
  std::vector<std::vector<std::string>> rows{
      {"", "variant", "reads", "reach", "open", "tips", "hands", "face", "in frame", "balance"},
      rowOf("", v.present, v.present)};
  for (std::size_t i = 0; i < v.kept.size(); ++i)
    rows.push_back(rowOf(std::to_string(i + 1), v.kept[i], v.present));
  fmt::print("{}", table(rows));
}

int run(VariantsArguments& a) {
  a.request.job = a.job;
  for (const std::string* file : {&a.png, &a.svg})
    if (!file->empty()) a.request.pictures.emplace_back(*file);
  if (a.take != 0) a.request.take = a.take;
  const auto made = makeVariants(a.request);
  if (!made) return report(made.error());
  if (a.json)
    fmt::print("{}", variantsJson(*made));
  else
    printTable(*made);
  if (a.take != 0 && !a.json)
    fmt::print("Rough {} now has number {}. The pose before is in .history.\n", a.request.rough,
               a.take);
  return kDone;
}

}  // namespace

void addVariants(CLI::App& app, int& exitCode) {
  auto* command = app.add_subcommand("variants", "Propose other poses for a figure in a panel");
  auto a = std::make_shared<VariantsArguments>();
  command->add_option("JOB", a->job, "The job folder")->required();
  command->add_option("--page", a->request.page, "Page")->required()->check(CLI::Range(1, 99999));
  command->add_option("--rough", a->request.rough, "Rough")->capture_default_str();
  command->add_option("--panel", a->request.panel, "Panel in reading order")
      ->required()
      ->check(CLI::Range(1, 99));
  command->add_option("--figure", a->request.figure, "Character; else whom the panel is about");
  command->add_option("--keep", a->request.keep, "How many")
      ->check(CLI::Range(1, 40))
      ->capture_default_str();
  command->add_option("--png", a->png, "PNG file with all side by side")->check(endsIn(".png"));
  command->add_option("--svg", a->svg, "SVG file with all side by side")->check(endsIn(".svg"));
  command->add_option("--take", a->take, "Put that variant into the rough")
      ->check(CLI::Range(1, 40));
  command->add_flag("--json", a->json, "Print JSON");
  command->footer(
      "Figures in brackets are the change against the pose as it is.\n"
      "Examples:\n"
      "  tierwright variants job --page 4 --rough A --panel 2 --png what-if.png\n"
      "  tierwright variants job --page 4 --rough A --panel 2 --figure mara --take 3");
  command->callback([a, &exitCode] { exitCode = run(*a); });
}

}  // namespace tw
