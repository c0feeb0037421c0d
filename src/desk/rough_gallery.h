// The candidates of the shown page, one card below the other in the artist's own order. A click
// shows a rough; a panel dragged from one picture onto another asks for the two to be mixed.
#pragma once

#include <QScrollArea>

#include <optional>
#include <string>
#include <vector>

#include "desk/rough_card.h"

class QAction;
class QLabel;
class QVBoxLayout;

namespace tw {

class RoughGallery final : public QScrollArea {
  Q_OBJECT

 public:
  /// `own`: actions on the shown rough, offered on its card.
  RoughGallery(Document& document, const QList<QAction*>& own, QWidget* parent = nullptr);

  /// Names, in the artist's order.
  std::vector<std::string> marked() const;
  void setMarked(const std::string& rough, bool marked);
  bool isMarked(const std::string& rough) const;
  RoughCard* card(const std::string& rough) const;

 signals:
  void mixAsked(const QString& from, const QString& into, std::size_t panelOfInto);
  void markedChanged();

 private:
  void takeDocument();
  RoughCard* newCard();
  void step(RoughCard& from, int by);
  void showShown();
  void noteHandPlace();
  void seeCard(RoughCard& card);
  RoughThumb* thumbUnder(QPoint globalPx, const RoughThumb& but) const;
  void drag(RoughThumb& from, std::size_t panel, QPoint globalPx);
  void drop(RoughThumb& from, std::size_t panel, QPoint globalPx);
  void endDrag();

  Document& document_;
  std::vector<RoughCard*> cards_;
  std::string handOn_;         ///< rough whose card has the buttons
  std::optional<int> handAt_;  ///< their height in the view before the list changed, px
  QVBoxLayout* down_ = nullptr;
  QLabel *none_ = nullptr, *ghost_ = nullptr;
  QWidget* own_ = nullptr;  ///< buttons of the shown rough
  int page_ = 0;
};

}  // namespace tw
