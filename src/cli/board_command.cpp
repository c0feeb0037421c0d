#include <fmt/format.h>

#include "cli/terminal.h"
#include "command/board.h"

namespace tw {

namespace {

struct BoardArguments {
  BoardRequest request;
  std::string pdf, svg, png;
  bool bordersOnly = false, black = false, noStrokes = false;
};

int run(const BoardArguments& a) {
  BoardRequest request = a.request;
  for (const std::string& file : {a.pdf, a.svg, a.png})
    if (!file.empty()) request.files.push_back(file);
  if (request.files.empty())
    return report({{Cause::BadInput, "No file to write was named.", {}, "Name one with --pdf."}});
  request.board = {!a.bordersOnly, !a.noStrokes, !a.black};
  if (const auto done = makeBoard(request); !done) return report(done.error());
  for (const auto& file : request.files) fmt::print("{}\n", file.string());
  return kDone;
}

}  // namespace

void addBoard(CLI::App& app, int& exitCode) {
  auto* command = app.add_subcommand(
      "board", "A page's board to print and pencil on, its rough in non-photo blue");
  auto a = std::make_shared<BoardArguments>();
  command->add_option("JOB", a->request.job, "The job folder")->required();
  command->add_option("--page", a->request.page, "Page")->required()->check(CLI::Range(1, 99999));
  command->add_option("--rough", a->request.rough,
                      "Rough; left out: the chosen one, else the first");
  command->add_option("--pdf", a->pdf, "PDF to write, at the board's size")->check(endsIn(".pdf"));
  command->add_option("--svg", a->svg, "SVG to write")->check(endsIn(".svg"));
  command->add_option("--png", a->png, "PNG to write")->check(endsIn(".png"));
  command->add_option("--dpi", a->request.dpi, "Resolution of the PNG")
      ->check(CLI::Range(20.0, 1200.0))
      ->capture_default_str();
  command->add_flag("--borders", a->bordersOnly, "Borders alone, without the rough's picture");
  command->add_flag("--black", a->black, "The rough as it is, not in blue");
  command->add_flag("--no-lines", a->noStrokes, "Without your own lines");
  command->footer(
      "The board is as large as the sheet's original, print size over its reduction.\n"
      "Example:\n"
      "  tierwright board job --page 4 --pdf board-4.pdf");
  command->callback([a, &exitCode] { exitCode = run(*a); });
}

}  // namespace tw
