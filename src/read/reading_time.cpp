#include "read/reading_time.h"

namespace tw {

using namespace reading_time;

double lettersToRead(int words, int characters) {
  const bool known = characters >= words;  // no word is without a letter
  return known ? characters : words * kLettersPerWord;
}

double copySeconds(int words, int characters) {
  return lettersToRead(words, characters) * kSecondsPerLetter;
}

double panelSeconds(const SeenPanel& panel) {
  double seconds = kWordlessPanel;
  for (const SeenElement& e : panel.elements) seconds += copySeconds(e.words, e.characters);
  return seconds;
}

double pageSeconds(const SeenPage& page) {
  double seconds = 0;
  for (const SeenPanel& panel : page.panels) seconds += panelSeconds(panel);
  return seconds;
}

}  // namespace tw
