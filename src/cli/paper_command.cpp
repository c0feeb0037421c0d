// tierwright proof, show and choose: roughs on paper.
#include <fmt/format.h>

#include <memory>

#include "cli/terminal.h"
#include "command/measures.h"
#include "command/proof.h"
#include "job/write_json.h"

namespace tw {

namespace {

struct ProofArguments {
  std::string job, out;
  int page = 0;
  unsigned threads = 0;
  bool json = false;
};

int run(const ProofArguments& a) {
  Watched watched;
  ProofRequest request;
  request.job = a.job;
  request.out = a.out;
  request.threads = a.threads;
  if (a.page != 0) request.page = a.page;
  const auto made = makeProof(request, watched.progress());
  if (!made) return report(made.error());
  if (a.json) {
    OrderedJson contact = OrderedJson::array();
    for (const auto& file : made->contact) contact.push_back(file.string());
    OrderedJson dominant = OrderedJson::array();
    for (const auto& file : made->dominant) dominant.push_back(file.string());
    fmt::print("{}", textOf({{"book", made->book.string()},
                             {"contact", contact},
                             {"sheets", made->sheets},
                             {"dominant", dominant},
                             {"continuity", made->continuity.string()}}));
    return kDone;
  }
  fmt::print("The whole proof:      {}\n", made->book.string());
  for (const auto& file : made->contact) fmt::print("Roughs side by side:  {}\n", file.string());
  for (const auto& file : made->dominant) fmt::print("Dominant picture:     {}\n", file.string());
  if (!made->continuity.empty())
    fmt::print("Continuity:           {}\n", made->continuity.string());
  fmt::print("And {} sheets, each as .pdf, .png and .svg, in {}\n", made->sheets, a.out);
  return kDone;
}

struct ShowArguments {
  std::string job, rough = "A", png, svg, pdf;
  int page = 1;
  double dpi = 150;
  bool all = false, measures = false, json = false;
  Overlays overlays;
};

int printMeasures(const ShowArguments& a) {
  const auto rough = measuredRough(a.job, a.page, a.rough);
  if (!rough) return report(rough.error());
  if (a.json) {
    fmt::print("{}", roughMeasuresJson(*rough));
    return kDone;
  }
  fmt::print("{}", table(figureRows(*rough)));
  for (const std::string& note : measureNotes(*rough)) fmt::print("{}\n", note);
  return kDone;
}

int run(const ShowArguments& a) {
  const bool tells = a.measures || a.json;
  if (!tells && a.png.empty() && a.svg.empty() && a.pdf.empty()) {
    fmt::print(stderr, "Name a file to write: --png, --svg or --pdf FILE; or --measures.\n");
    return kBadInput;
  }
  if (tells)
    if (const int code = printMeasures(a); code != kDone) return code;
  ShowRequest request;
  request.job = a.job;
  request.page = a.page;
  request.rough = a.rough;
  request.dpi = a.dpi;
  request.overlays =
      a.all ? Overlays{.order = true, .leads = true, .live = true, .card = true} : a.overlays;
  if (!a.png.empty()) request.png = a.png;
  if (!a.svg.empty()) request.svg = a.svg;
  if (!a.pdf.empty()) request.pdf = a.pdf;
  const auto done = showRough(request);
  return done ? kDone : report(done.error());
}

}  // namespace

void addProof(CLI::App& app, int& exitCode) {
  auto* command = app.add_subcommand("proof", "Write contact sheets and a sheet per rough");
  auto a = std::make_shared<ProofArguments>();
  command->add_option("JOB", a->job, "The job folder")->required();
  command->add_option("--page", a->page, "Only this page")->check(CLI::Range(1, 99999));
  command->add_option("--out", a->out, "Folder for the files")->required();
  command->add_option("--threads", a->threads, "0 = all cores; never changes the result")
      ->check(CLI::Range(0, 256));
  command->add_flag("--json", a->json, "Print JSON");
  command->footer("Example:\n  tierwright proof job --out proof");
  command->callback([a, &exitCode] { exitCode = run(*a); });
}

void addShow(CLI::App& app, int& exitCode) {
  auto* command = app.add_subcommand("show", "Write one rough as PNG, SVG or PDF");
  auto a = std::make_shared<ShowArguments>();
  command->add_option("JOB", a->job, "The job folder")->required();
  command->add_option("--page", a->page, "Page")->required()->check(CLI::Range(1, 99999));
  command->add_option("--rough", a->rough, "Rough")->capture_default_str();
  command->add_option("--png", a->png, "PNG file to write")->check(endsIn(".png"));
  command->add_option("--svg", a->svg, "SVG file to write")->check(endsIn(".svg"));
  command->add_option("--pdf", a->pdf, "PDF file to write")->check(endsIn(".pdf"));
  command->add_option("--dpi", a->dpi, "Resolution of the PNG")
      ->check(CLI::Range(20.0, 1200.0))
      ->capture_default_str();
  command->add_flag("--order", a->overlays.order, "Show panel numbers");
  command->add_flag("--leads", a->overlays.leads, "Show leads and the path of the eye");
  command->add_flag("--live", a->overlays.live, "Show trim, live area and keep-clear zones");
  command->add_flag("--card", a->overlays.card, "Show the score card");
  command->add_flag("--grid", a->overlays.grid,
                    "Show horizon, vanishing points and squares on the ground");
  command->add_flag("--measures", a->measures,
                    "Print what is seen of each figure and limb, joint cuts and tangents");
  command->add_flag("--json", a->json, "Print the measures as JSON");
  command->add_flag("--all", a->all, "Show order, leads, live area and score card");
  command->footer(
      "Without --order, --leads, --live, --card, --grid or --all the bare rough is written, as for "
      "an\n"
      "editor.\nExample:\n  tierwright show job --page 4 --rough B --png page.png --order --card");
  command->callback([a, &exitCode] { exitCode = run(*a); });
}

void addChoose(CLI::App& app, int& exitCode) {
  struct Arguments {
    std::string job, rough;
    int page = 1;
    bool json = false;
  };
  auto* command = app.add_subcommand("choose", "Mark the rough you go on with");
  auto a = std::make_shared<Arguments>();
  command->add_option("JOB", a->job, "The job folder")->required();
  command->add_option("--page", a->page, "Page")->required()->check(CLI::Range(1, 99999));
  command->add_option("--rough", a->rough, "Rough, or none")->required();
  command->add_flag("--json", a->json, "Print JSON");
  command->footer(
      "New roughs leave the chosen one alone.\n"
      "Example:\n  tierwright choose job --page 4 --rough B");
  command->callback([a, &exitCode] {
    const std::string rough = a->rough == "none" ? "" : a->rough;
    const auto done = chooseRough(a->job, a->page, rough);
    if (!done)
      exitCode = report(done.error());
    else if (a->json)
      fmt::print("{}", textOf({{"page", a->page}, {"choice", rough}}));
  });
}

}  // namespace tw
