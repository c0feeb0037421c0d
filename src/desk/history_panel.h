// The steps of this session and the former states of the shown page that the job keeps, to go back
// to. Bringing a former state back is an edit like any other.
#pragma once

#include <QWidget>

#include "desk/document.h"

class QListWidget;

namespace tw {

class HistoryPanel final : public QWidget {
  Q_OBJECT

 public:
  explicit HistoryPanel(Document& document, QWidget* parent = nullptr);

 private:
  void listFormerStates();
  void bringBack();

  Document& document_;
  QListWidget* former_ = nullptr;
};

}  // namespace tw
