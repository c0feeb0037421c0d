#include "desk/layer_bar.h"

#include <QAction>
#include <QToolButton>

#include "desk/flow_layout.h"
#include "desk/page_view.h"

namespace tw {

LayerBar::LayerBar(PageView& view, QWidget* parent) : QWidget(parent) {
  setObjectName(QStringLiteral("layerBar"));
  setAccessibleName(tr("What is laid over the page"));
  auto* row = new FlowLayout(this);
  for (QAction* action : view.layerActions()) {
    auto* button = new QToolButton(this);
    button->setDefaultAction(action);
    const QString key = action->shortcut().toString(QKeySequence::NativeText);
    button->setText(QStringLiteral("%1  %2").arg(action->text(), key));
    button->setToolTip(QStringLiteral("%1 (%2)").arg(action->text(), key));
    button->setAccessibleName(action->text());
    row->addWidget(button);
  }
}

}  // namespace tw
