// Looks for the staging whose lead runs where the artist points, while she points: one search at a
// time on a thread of its own, the latest wish next.
#pragma once

#include <QObject>

#include <optional>

#include "compose/re_aim.h"
#include "desk/edit_preview.h"
#include "desk/errand.h"

namespace tw {

class LeadAim final : public QObject {
  Q_OBJECT

 public:
  LeadAim(Engine& engine, EditPreview& preview, QObject* parent = nullptr);

  bool isAiming() const { return base_ != nullptr; }
  std::size_t panel() const { return panel_; }
  /// Begins from the page as it is measured now; false when it is not measured.
  bool begin(std::size_t panel);
  /// From the panel's focus toward that place.
  void aimAt(Point target);
  /// Keeps the latest aim, as soon as it is found.
  void keep();
  void drop();

 signals:
  /// What was changed and how far the lead is off, in words.
  void said(const QString& words);
  /// Nothing is aimed any more.
  void ended();

 private:
  void search();
  void found(const Result<ReAimed>& aimed);
  void end();

  Engine& engine_;
  EditPreview& preview_;
  Errand errand_;
  MeasurementPtr base_;
  std::size_t panel_ = 0;
  std::optional<Point> wish_;  ///< not searched for yet
  bool keeps_ = false, shown_ = false;
};

}  // namespace tw
