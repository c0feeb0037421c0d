#include "desk/edit_side.h"

#include <QTabWidget>
#include <QVBoxLayout>

#include "desk/findings_panel.h"
#include "desk/panel_numbers.h"
#include "desk/score_card_panel.h"

namespace tw {

namespace {

constexpr int kSidePx = 340;

}  // namespace

EditSide::EditSide(Document& document, Engine& engine, PageView& view, PageEditTool& tool,
                   QWidget* parent)
    : QWidget(parent) {
  setObjectName(QStringLiteral("editSide"));
  setFixedWidth(kSidePx);
  auto* down = new QVBoxLayout(this);
  down->setContentsMargins(0, 0, 0, 0);
  down->setSpacing(10);
  auto* numbers = new PanelNumberForm(document, engine, this);
  down->addWidget(numbers);
  auto* measures = new QTabWidget(this);
  measures->setObjectName(QStringLiteral("pageMeasures"));
  measures->addTab(new FindingsPanel(document, engine, view, measures), tr("Findings"));
  measures->addTab(new ScoreCardPanel(document, engine, view, measures), tr("Score card"));
  down->addWidget(measures, 1);
  connect(&tool, &PageEditTool::said, numbers, &PanelNumberForm::say);
}

}  // namespace tw
