// What the editor asks of the page, a row for each demand in plain words. A refused value says why
// below its row; demands that contradict each other or the page are told beside them.
#pragma once

#include <QWidget>

#include <map>

#include "job/job.h"

class QFormLayout;
class QLabel;

namespace tw {

class BriefForm final : public QWidget {
  Q_OBJECT

 public:
  explicit BriefForm(QWidget* parent = nullptr);
  void show(const Page& page, const Job& job);
  void tell(const QString& key, const QString& sentence);

 signals:
  /// "head-mm", "8"; "none" takes a demand back.
  void asked(const QString& key, const QString& value);

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  struct Row {
    QWidget* control = nullptr;
    QLabel* trouble = nullptr;
    QString value;
  };
  struct Word {
    QString value, shown;
  };

  void addRow(QFormLayout& form, const QString& key, const QString& meaning);
  QWidget* makeControl(const QString& key);
  std::vector<Word> wordsFor(const QString& key, const Page& page, const Job& job) const;
  static QString zonesIn(const Brief& brief);
  void fill(const QString& key, Row& row, const Page& page, const Job& job);
  void send(const QString& key, const QString& value);

  std::map<QString, Row> rows_;
  QLabel* contradictions_ = nullptr;
  bool filling_ = false;
};

}  // namespace tw
