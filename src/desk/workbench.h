// What long work at the desk begins with: the job as it is now and the makers of stagings for it.
// Made on the thread that needs them, once for every state of cast, beats and brief.
#pragma once

#include <QObject>

#include <filesystem>
#include <memory>

#include "compose/compose.h"
#include "desk/document.h"

namespace tw {

class Workbench final : public QObject {
  Q_OBJECT

 public:
  /// The document's own.
  static Workbench& of(Document& document);

  /// Taken along to another thread.
  class Work {
   public:
    const Job& job() const { return *job_; }
    /// May take a moment when cast, beats or brief have changed.
    Result<std::shared_ptr<const Workshop>> workshop() const;

   private:
    friend class Workbench;
    struct Shop;
    std::shared_ptr<const Job> job_;
    std::filesystem::path folder_;
    std::uint64_t edition_ = 0;
    std::shared_ptr<Shop> shop_;
  };
  Work work();

 private:
  explicit Workbench(Document& document);

  Document& document_;
  std::shared_ptr<const Job> job_;  ///< as it is now; null: it has changed since
  std::shared_ptr<Work::Shop> shop_;
};

}  // namespace tw
