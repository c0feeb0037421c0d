// Editing a page by hand: grips appear under the pointer, a drag moves gutters, corners, tiers,
// borders and insets with everything measured again, a selected panel's lead is aimed at the tip of
// its arrow. Tab walks the grips, arrow keys move the one that has the focus.
#pragma once

#include <QObject>

#include <optional>
#include <set>

#include "arrange/page_edit.h"
#include "desk/edit_preview.h"
#include "desk/lead_aim.h"
#include "desk/page_tool.h"
#include "desk/page_view.h"

namespace tw {

/// The shown rough as something to be edited; nothing without a rough.
std::optional<PageEdit> pageEditOf(const Document& document);

class PageEditTool final : public QObject, public PageTool {
  Q_OBJECT

 public:
  PageEditTool(Document& document, Engine& engine, PageView& view, QObject* parent = nullptr);

  void hover(PageView& view, const PenPoint& point) override;
  bool press(PageView& view, const PenPoint& point) override;
  void move(PageView& view, const PenPoint& point) override;
  void release(PageView& view, const PenPoint& point) override;
  void cancel(PageView& view) override;
  bool key(PageView& view, const QKeyEvent& event) override;
  void paint(PageView& view, QPainter& painter) override;
  /// The pointer leaves the view.
  bool eventFilter(QObject* watched, QEvent* event) override;

  /// Where the selected panel's lead can be taken; nothing when nothing leads.
  std::optional<Point> leadTip() const;

 signals:
  /// What is under the hand, what it does, or why it stopped: for a line of words.
  void said(const QString& words);

 private:
  struct Drag {
    PageEdit edit;
    std::size_t handle = 0;
    Point start;
    EditMove move;
    std::set<std::size_t> touched;  ///< panels that were shown elsewhere in this drag
  };

  double reachMm() const;
  std::optional<std::size_t> insetUnder(Point at) const;
  void takeDocument();
  void setHovered(std::optional<std::size_t> handle);
  void showCursor();
  void showMove(Drag& drag, Vector offset, double snapMm);
  void goAhead(const Drag& drag);
  QString wordsFor(const Drag& drag) const;
  bool walk(bool back);
  std::vector<std::size_t> walkOrder() const;
  bool nudge(Vector step);
  void leaveFocus();
  void paintLead(QPainter& painter) const;
  void paintGrips(QPainter& painter, bool ofPanels) const;

  Document& document_;
  Engine& engine_;
  PageView& view_;
  EditPreview preview_;
  LeadAim aim_;
  std::optional<PageEdit> edit_;  ///< as the document is, or will be when it is measured
  std::optional<Drag> drag_;
  std::optional<std::size_t> hovered_, focused_;
  std::optional<Drag> nudged_;  ///< what arrow keys have done so far
  Vector nudgedBy_;
  int merge_;
  Point pointer_;
  bool pointerIn_ = false, leadHovered_ = false;
  Point aimTip_;
};

}  // namespace tw
