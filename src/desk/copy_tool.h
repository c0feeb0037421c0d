// The hand on balloons: one is chosen by a press or with Tab, dragged, its tail's tip dragged,
// nudged with the arrows. What the hand holds is drawn at once, as it prints; the engine sets the
// others around it and measures; letting go keeps one edit.
#pragma once

#include <QObject>

#include <optional>
#include <string>
#include <vector>

#include "desk/engine.h"
#include "desk/page_tool.h"
#include "letter/lettering.h"
#include "press/typesetter.h"

namespace tw {

struct CopyPlace {
  std::size_t panel = 0;
  std::string item;
  bool operator==(const CopyPlace&) const = default;
};

class CopyTool final : public QObject, public PageTool {
  Q_OBJECT

 public:
  CopyTool(Document& document, Engine& engine, QObject* parent = nullptr);

  const std::optional<CopyPlace>& chosen() const { return chosen_; }
  void choose(std::optional<CopyPlace> place);
  /// The next balloon of the page, or the one before.
  void chooseNext(int step);
  /// The chosen balloon as it stands now; null when there is none.
  const PlacedBalloon* balloon() const;

  void nudge(Vector by);
  void nudgeTip(Vector by);
  /// Fewer (`step` < 0) or more lines; copy set free larger or smaller. False: not possible.
  bool reshape(int step);
  void aimTail();
  void placeAgain();

  void showNumbers(bool shown);

  void hover(PageView& view, const PenPoint& point) override;
  bool press(PageView& view, const PenPoint& point) override;
  void move(PageView& view, const PenPoint& point) override;
  void release(PageView& view, const PenPoint& point) override;
  void cancel(PageView& view) override;
  bool key(PageView& view, const QKeyEvent& event) override;
  void paint(PageView& view, QPainter& painter) override;

 signals:
  void chosenChanged();
  void lookChanged();
  void told(const QString& sentence);

 private:
  /// What a change of one balloon needs; keeps alive what the request borrows.
  struct Hand {
    MeasurementPtr measurement;
    LetterRequest request;
    const Letterer* letterer = nullptr;
  };
  struct Drag {
    bool tip = false;
    CopyPlace place;
    Point from;
    PlacedBalloon start;
    Hand hand;
    bool moved = false;
  };

  std::optional<Hand> handOn(std::size_t panel) const;
  /// With the changes that are not measured yet; null when nothing is measured.
  const RoughPanel* panelNow(std::size_t panel) const;
  const PlacedBalloon* balloonAt(const CopyPlace& place) const;
  std::optional<CopyPlace> hit(Point at) const;
  std::optional<Point> tipHandle() const;
  void put(const CopyPlace& place, PlacedBalloon balloon);
  /// Puts it there as an edit; edits of one balloon that follow each other so become one.
  void keep(const QString& what, PlacedBalloon balloon);
  void paintChosen(PageView& view, QPainter& painter);
  void paintNumbers(PageView& view, QPainter& painter) const;
  void paintHeld(PageView& view, QPainter& painter);

  Document& document_;
  Engine& engine_;
  Typesetter typesetter_;
  int page_;  ///< that is shown
  std::optional<CopyPlace> chosen_;
  std::optional<Drag> drag_;
  std::optional<std::pair<std::size_t, RoughPanel>> working_;  ///< asked for, not measured yet
  std::optional<PlacedBalloon> held_;                          ///< under the hand
  int merge_ = 0;
  bool numbers_ = false;
};

}  // namespace tw
