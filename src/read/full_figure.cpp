// The maximum over the page's panels of what is seen of figures that the frame does not cut.
#include "read/full_figure.h"

namespace tw {

FullFigure fullFigureOn(const StoryPage& page) {
  FullFigure out;
  for (const StoryPanel& panel : page.panels) {
    out.wanted = out.wanted || !panel.who.empty();
    if (panel.wholeShown <= out.shown) continue;
    out.shown = panel.wholeShown;
    out.panel = panel.number;
  }
  return out;
}

}  // namespace tw
