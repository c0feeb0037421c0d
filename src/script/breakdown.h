// From a panel's description and copy to a beat: who is in it and what they do, what they hold,
// how it is framed, where it plays and how much of the page it wants. All of it is a guess from
// words that the artist can correct.
#pragma once

#include <string>
#include <vector>

#include "job/beat.h"
#include "script/lexicon.h"
#include "script/raw_script.h"
#include "script/roster.h"

namespace tw {

inline constexpr std::size_t kMostFigures = 40;  ///< in one beat; beyond that it is a crowd

/// A person named in a description.
struct Mention {
  std::size_t person = 0;
  std::size_t at = 0, length = 1;  ///< in tokens
  bool isFigure = true;            ///< seen, not only spoken of ("Mara's lantern", "no Mara")
  bool possessive = false;
  bool pronoun = false;
};

/// A thing named in a description.
struct PropMention {
  std::size_t prop = 0;  ///< index into the beat's props
  std::size_t at = 0, length = 1;
};

/// A statement about somebody's look, as found in one panel.
struct FoundLook {
  std::size_t person = 0;
  LookNote note;                   ///< words, instead, told
  bool afterwards = false;         ///< holds from the next panel on: this one shows the change
  bool passing = false;            ///< until the time of day changes
  std::size_t at = 0, length = 0;  ///< tokens that name the garment
};

/// What carries over from panel to panel, and what is gathered on the way.
struct Context {
  std::string setting;
  std::vector<BeatFigure> figures;            ///< of the panel before
  std::vector<std::size_t> mentioned;         ///< persons, the latest last
  std::vector<std::vector<FoundLook>> looks;  ///< of every beat so far
};

std::vector<Mention> mentionsIn(const std::vector<Token>& tokens, const Roster& roster,
                                const Lexicon& lexicon, const Context& context);

/// Appends the things named to `props` and says where.
std::vector<PropMention> propsIn(const std::vector<Token>& tokens,
                                 const std::vector<Mention>& mentions, const Lexicon& lexicon,
                                 std::vector<Prop>& props);

/// Small enough to be in a hand.
bool isHandheld(const Prop& prop, const Lexicon& lexicon);

/// The thing of that name ("church-bell" or "church bell") with its shape and size, if the lexicon
/// knows it.
std::optional<Prop> thingNamed(std::string_view name, const Lexicon& lexicon);

/// Every relation that the breakdown can give a figure, in alphabetical order.
std::vector<std::string> relationsOf(const Lexicon& lexicon);

/// Pose, relation and target of each figure that the description names, in order of mention;
/// says in `props` who holds them.
std::vector<BeatFigure> figuresIn(const std::vector<Token>& tokens,
                                  const std::vector<Mention>& mentions,
                                  const std::vector<PropMention>& things, std::vector<Prop>& props,
                                  const Roster& roster, const Lexicon& lexicon);

struct Framing {
  std::optional<ShotSize> shot;
  std::optional<EyeHeight> eye;
  double dominant = 0;  ///< weight asked for, 0 = not dominant
  double weight = 1;    ///< factor
  std::optional<double> lensMm, rollDeg;
};
Framing framingIn(const std::vector<Token>& tokens, const Lexicon& lexicon);

/// The setting that the words tell, or empty when they say nothing or "same".
std::string settingIn(const std::string& description, const std::vector<Token>& tokens,
                      const Lexicon& lexicon, const std::string& before);

/// Breaks all panels of one page down into beats, with ids, copy and weights.
std::vector<Beat> breakDown(const RawPage& page, const Roster& roster, const Lexicon& lexicon,
                            Context& context);

}  // namespace tw
