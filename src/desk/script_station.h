// Script and beats side by side: a click on a line shows the panel that it became, a click on a
// panel its lines. Beside them what may be corrected of the panel and what is asked of the page.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "desk/errand.h"
#include "desk/station.h"
#include "job/override_keys.h"
#include "stage/light_names.h"

class QComboBox;
class QLabel;
class QListWidget;
class QTabWidget;

namespace tw {

class BeatForm;
class BriefForm;
class ScriptSheet;

class ScriptStation final : public Station {
  Q_OBJECT

 public:
  ScriptStation(Document& document, Engine& engine, QWidget* parent = nullptr);

  QString actionName() const override { return QStringLiteral("goScript"); }
  QString title() const override { return tr("Script"); }
  QString purpose() const override {
    return tr("See what each line of the script became, correct it, say what the page must do");
  }
  void arrive() override;

  /// Id of the chosen beat; empty: none.
  const std::string& beat() const { return beat_; }
  /// The words that corrections may name are read once, in the background.
  bool isReady() const { return known_.has_value(); }

 private:
  struct Words {
    Result<KnownWords> known;
    Result<std::vector<LightName>> lights;
  };

  QWidget* makeMiddle();
  QWidget* makeForms();
  void readScript();
  void readWords();
  void showAll();
  void listPages();
  void listBeats();
  void showForms();
  void chooseBeat(const std::string& beat, const std::string& item = {});
  void chooseLine(int line);
  void correct(const QString& key, const QString& value);
  void ask(const QString& key, const QString& value);
  QString inWords(const Beat& beat, bool corrected) const;

  ScriptSheet* text_ = nullptr;
  QComboBox* pages_ = nullptr;
  QListWidget* beats_ = nullptr;
  QTabWidget* forms_ = nullptr;
  BeatForm* form_ = nullptr;
  BriefForm* brief_ = nullptr;
  QLabel *about_ = nullptr, *notDrawn_ = nullptr;
  Errand errand_;
  std::optional<KnownWords> known_;
  std::vector<LightName> lights_;
  std::string beat_, item_;
  std::string readFile_;  ///< of the script that is shown
  bool filling_ = false;
};

}  // namespace tw
