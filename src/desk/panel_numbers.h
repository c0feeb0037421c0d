// The selected panel by number: place and size in millimetres or inches, which sides bleed, and the
// moves of its picture: mirror, tilt, level, aim the lead at the next panel. What cannot be done to
// the full is done as far as it goes, and the reason stands below.
#pragma once

#include <QWidget>

#include <array>
#include <deque>
#include <functional>

#include "arrange/page_edit.h"
#include "desk/edit_preview.h"
#include "desk/lead_aim.h"
#include "geometry/length_words.h"

class QLabel;
class QLineEdit;
class QToolButton;

namespace tw {

class PanelNumberForm final : public QWidget {
  Q_OBJECT

 public:
  PanelNumberForm(Document& document, Engine& engine, QWidget* parent = nullptr);

  /// A sentence below the numbers.
  void say(const QString& words);

 private:
  struct Field {
    QLineEdit* edit = nullptr;
    EditMove (PageEdit::*set)(std::size_t, double) const = nullptr;
    QString what;
  };

  QWidget* makeHead();
  QWidget* makeFields();
  QWidget* makeBleeds();
  QWidget* makeMoves();
  QToolButton* addMove(QWidget* parent, const char* name, const QString& words, const QString& tip,
                       const std::function<void()>& act);
  void takeDocument();
  void followTried();
  void showNumbers(const std::array<double, 4>& mm);
  void typed(const Field& field);
  void setBleed(PageSide side, bool on);
  void tilt(std::optional<double> byDeg);
  void mirror();
  void aimAtNext();
  /// Runs when everything is measured: now, or soon.
  void whenMeasured(std::function<void()> act);
  void runNext();
  void make(const EditMove& move, const QString& what);
  void stage(Staging staging, const QString& what);
  const MeasuredPage* measured() const;

  Document& document_;
  Engine& engine_;
  bool follows_ = false;  ///< a hand that drags
  EditPreview preview_;
  LeadAim aim_;
  std::deque<std::function<void()>> waiting_;
  LengthUnit unit_ = LengthUnit::Millimetres;
  QLabel *head_ = nullptr, *said_ = nullptr;
  std::array<Field, 4> fields_;
  std::array<QToolButton*, 4> bleeds_{};
  QWidget* controls_ = nullptr;
};

}  // namespace tw
