// What is seen before a job is open: recent jobs, a job of one's own, and the demo in one click.
#pragma once

#include <QWidget>

class QLabel;
class QVBoxLayout;

namespace tw {

class StartPage final : public QWidget {
  Q_OBJECT

 public:
  explicit StartPage(QWidget* parent = nullptr);
  void refresh();
  /// Why the last job did not open; empty: nothing.
  void tellTrouble(const QString& sentence);

 signals:
  void jobAsked(const QString& folder);
  void demoAsked();
  void newJobAsked(const QString& script);

 private:
  QVBoxLayout* recent_ = nullptr;
  QLabel* trouble_ = nullptr;
};

/// A copy of the demo job for this user to play with; made when it is not there yet. Empty when the
/// demo does not come with the program, and `trouble` says why.
QString demoJobFolder(QString& trouble);

}  // namespace tw
