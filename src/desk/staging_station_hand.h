// The panel that the artist has in hand at the staging station: how it is staged now, which figure
// and which handle are held, which joints are pinned. What is tried goes to the engine; what is
// kept becomes one edit of the document.
#pragma once

#include <QObject>
#include <QString>

#include <deque>
#include <optional>

#include "desk/document.h"
#include "desk/engine.h"
#include "stage/camera_moves.h"
#include "stage/drag.h"

namespace tw {

class PanelInHand final : public QObject {
  Q_OBJECT

 public:
  PanelInHand(Document& document, Engine& engine, QObject* parent);

  /// A panel is selected and what it is measured by is there. All else asks for it.
  bool isReady() const { return stage_.has_value(); }
  bool isReadOnly() const { return document_.isReadOnly(); }
  std::size_t panel() const { return panel_; }
  const StagedPanel& stage() const { return *stage_; }
  const MeasurementPtr& measurement() const { return measurement_; }
  const Stager& stager() const { return *stage_->stager; }
  const LightWords& lights() const;
  /// As stored in the document.
  const RoughPanel& storedPanel() const;
  /// As it is tried now, else as stored.
  const Staging& staging() const { return now_; }
  bool isTrying() const { return trying_; }

  const std::vector<Handle>& handles() const { return handles_; }
  const Handle* held() const;  ///< the selected handle, or null
  void hold(std::optional<std::size_t> handle);
  int figure() const { return figure_; }  ///< −1: none
  void selectFigure(int figure);
  QString nameOfFigure(int figure) const;
  QString nameOfThing(std::size_t thing) const;
  QString nameOfHandle(const Handle& handle) const;
  /// The selected figure as last measured, or null.
  const SeenFigure* seen() const;

  const std::vector<Pin>& pins() const { return pins_; }
  std::optional<Pin> pinOf(const Handle& handle) const;  ///< nothing: cannot be pinned
  bool isPinned(const Handle& handle) const;
  void togglePin(const Handle& handle);

  Vec3 pivot() const;  ///< what the camera turns about
  void turnAboutHeld(bool held);

  void attempt(Staging staging);
  /// Makes what is tried one edit. Edits with the same merge ≥ 0 that follow each other become one.
  void keep(const QString& what, int merge = -1);
  void apply(Staging staging, const QString& what, int merge = -1);
  void drop();
  /// Another state of the whole page, for edits of more than the staging.
  bool changePage(const QString& what, const Page& after) { return document_.change(what, after); }
  const Document& document() const { return document_; }

 signals:
  /// Another panel, or the same staged otherwise.
  void changed();
  /// Another figure or handle is held, or pinned.
  void holdChanged();
  /// New measures, or they have begun to be out of date.
  void measuresChanged();
  /// How a drag goes, for the line of state: "left hand 12 cm short".
  void said(const QString& sentence);

 private:
  struct Edit {
    QString what;
    int merge = -1;
  };
  void takeMeasured();
  void takeShown();
  void takeKept();
  void takeDocument();
  void showHandles(bool exactly);

  Document& document_;
  Engine& engine_;
  MeasurementPtr measurement_;
  std::optional<StagedPanel> stage_;
  std::size_t panel_ = 0;
  QString panelKey_;  ///< page, rough and panel that pins and selection belong to
  Staging now_;
  bool trying_ = false, keeping_ = false;
  Staging keptStaging_;        ///< what is on its way into the document
  std::optional<Edit> after_;  ///< to be kept once the edit before has been
  std::vector<Handle> handles_;
  std::optional<std::size_t> held_;
  int figure_ = -1;
  bool aboutHeld_ = false;
  std::vector<Pin> pins_;
  int epoch_ =
      0;  ///< another panel, figure or handle in hand: edits do not become one with former ones
};

}  // namespace tw
