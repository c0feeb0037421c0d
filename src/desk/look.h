// The desk's own few colours, in a light and a dark set, and its sizes. Overlays on the page keep
// press's inks, which differ in lightness as well as in hue.
#pragma once

#include <QColor>
#include <QString>

class QApplication;

namespace tw {

struct DeskColours {
  QColor ground;    ///< behind the page
  QColor sheet;     ///< of controls
  QColor ink;       ///< of words on it
  QColor quiet;     ///< of words that matter less; still 4.5 : 1 on `sheet`
  QColor line;      ///< between parts
  QColor accent;    ///< what is chosen
  QColor onAccent;  ///< words on it
  QColor warn;      ///< what must be seen
};

enum class DeskLight { Day, Night };
const DeskColours& coloursOf(DeskLight light);
/// Of the application as it is dressed now.
const DeskColours& deskColours();

/// Gives the whole application the desk's palette and style sheet.
void dress(QApplication& application, DeskLight light);

inline constexpr int kTouchPx = 36;  ///< least height of a control, for a pen

}  // namespace tw
