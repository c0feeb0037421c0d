#include "desk/board_station.h"

#include <QAction>
#include <QHBoxLayout>
#include <QToolButton>
#include <QVBoxLayout>

namespace tw {

BoardStation::BoardStation(Document& document, Engine& engine, QWidget* parent)
    : Station(document, engine, parent) {
  setObjectName(QStringLiteral("boardStation"));
  auto* across = new QHBoxLayout(this);
  view_ = new PageView(document, engine, this);
  across->addWidget(view_, 1);
}

void BoardStation::arrive() {
  view_->setFocus();
}

}  // namespace tw
