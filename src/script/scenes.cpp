// Scenes out of headings.
//
// The idea: the headings met before a beat say together where and when it plays. A scene goes on
// over pages and panels until the next heading; a heading that is said again word for word, with
// no shift of time in between, opens nothing new.
// Steps: 1. gather the headings in front of each beat: those above the page's first panel, those
// in its description, captions that are nothing but words of story time; 2. a heading of a place
// closes a flashback that was said in a heading only; 3. shifts move the years and the strand.
// Cost: linear in the beats.
#include "script/scenes.h"

#include <fmt/format.h>

#include "script/scene_headings.h"
#include "script/text_case.h"

namespace tw {

namespace {

std::vector<SceneHeading> headingsIn(const std::string& text) {
  std::vector<SceneHeading> out;
  for (std::size_t start = 0; start < text.size();) {
    const std::size_t end = std::min(text.find('\n', start), text.size());
    if (auto heading = sceneHeadingFrom(std::string_view(text).substr(start, end - start)))
      out.push_back(std::move(*heading));
    start = end + 1;
  }
  return out;
}

class SceneWalker {
 public:
  /// The id of the scene to which a beat with these headings in front belongs.
  const std::string& sceneAfter(const std::vector<SceneHeading>& headings, int line) {
    const bool same = !scenes_.empty() && headings.size() == 1 && isSaidAgain(headings.front());
    if (scenes_.empty() || (!headings.empty() && !same)) open(headings, line);
    return scenes_.back().id;
  }

  std::vector<StoryScene> take() { return std::move(scenes_); }

 private:
  bool isSaidAgain(const SceneHeading& heading) const {
    const bool moves = heading.shift == StoryShift::Onward ||
                       (heading.shift == StoryShift::None && heading.time == "later");
    return !moves && folded(heading.text) == folded(scenes_.back().heading);
  }

  void open(const std::vector<SceneHeading>& headings, int line) {
    StoryScene scene;
    if (!scenes_.empty()) scene = scenes_.back();
    scene.id = fmt::format("s{}", scenes_.size() + 1);
    scene.heading.clear();
    scene.time.clear();
    scene.line = line;
    for (const SceneHeading& heading : headings) {
      if (heading.shift == StoryShift::ToPresent) goBack(scene);
      apply(heading, scene);
    }
    scene.strand = strand_;
    scene.years = years_;
    scenes_.push_back(std::move(scene));
  }

  /// To where the present was left.
  void goBack(StoryScene& scene) const {
    for (const StoryScene& before : scenes_)
      if (before.strand == kPresent) scene.side = before.side, scene.place = before.place;
  }

  void apply(const SceneHeading& heading, StoryScene& scene) {
    scene.heading += (scene.heading.empty() ? "" : ", ") + heading.text;
    const bool place = !heading.side.empty() || !heading.place.empty();
    if (place) scene.side = heading.side, scene.place = heading.place;
    if (!heading.time.empty()) scene.time = heading.time;
    if (!heading.side.empty() && onlyThis_ && heading.shift == StoryShift::None) backToPresent();
    shift(heading);
  }

  void shift(const SceneHeading& heading) {
    switch (heading.shift) {
      case StoryShift::None:
        return;
      case StoryShift::ToPresent:
        return backToPresent();
      case StoryShift::Onward:
        (strand_ == kPresent ? present_ : years_) += heading.years;
        if (strand_ == kPresent) years_ = present_;
        return;
      case StoryShift::IntoPast:
      case StoryShift::IntoFuture: {
        const bool back = heading.shift == StoryShift::IntoPast;
        const double from = strand_ == kPresent || onlyThis_ ? present_ : years_;
        strand_ = back ? kFlashback : kFlashForward;
        years_ = heading.years == 0 ? 0 : from + (back ? -heading.years : heading.years);
        onlyThis_ = heading.thisOnly;
        return;
      }
    }
  }

  void backToPresent() {
    strand_ = kPresent;
    years_ = present_;
    onlyThis_ = false;
  }

  std::vector<StoryScene> scenes_;
  std::string strand_{kPresent};
  double years_ = 0, present_ = 0;
  bool onlyThis_ = false;
};

void append(std::vector<SceneHeading>& all, std::vector<SceneHeading> more) {
  for (SceneHeading& heading : more) all.push_back(std::move(heading));
}

}  // namespace

std::vector<StoryScene> scenesIn(const std::vector<RawPage>& raw, std::vector<ScriptPage>& pages) {
  SceneWalker walker;
  for (std::size_t p = 0; p < pages.size(); ++p) {
    std::vector<SceneHeading> waiting = headingsIn(raw[p].slug);
    int line = waiting.empty() ? 0 : pages[p].line + 1;
    for (Beat& beat : pages[p].beats) {
      append(waiting, headingsIn(beat.description));
      for (const CopyItem& item : beat.copy)
        if (item.kind == CopyKind::Caption)
          if (auto caption = storyTimeFrom(item.text)) waiting.push_back(std::move(*caption));
      beat.scene = walker.sceneAfter(waiting, line > 0 ? line : beat.line + 1);
      waiting.clear();
      line = 0;
    }
  }
  return walker.take();
}

}  // namespace tw
