#include "desk/layer_bar.h"

#include <QAction>
#include <QToolButton>

#include "desk/controls.h"
#include "desk/flow_layout.h"
#include "desk/page_view.h"

namespace tw {

LayerBar::LayerBar(PageView& view, QWidget* parent) : QWidget(parent) {
  setObjectName(QStringLiteral("layerBar"));
  setAccessibleName(tr("What is laid over the page"));
  auto* row = new FlowLayout(this);
  for (QAction* action : view.layerActions()) {
    const QString key = action->shortcut().toString(QKeySequence::NativeText);
    action->setIconText(QStringLiteral("%1  %2").arg(action->text(), key));  // the button's words
    action->setToolTip(QStringLiteral("%1 (%2)").arg(action->text(), key));
    row->addWidget(buttonFor(action, this));
  }
}

}  // namespace tw
