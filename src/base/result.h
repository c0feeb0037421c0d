// How every part says that something went wrong. Bad input is a list of Problems, each with a
// sentence for the artist, the place and advice; a broken promise of our own is ensure().
// "No good answer" is never an error: it is a best attempt with a score card.
#pragma once

#include <string>
#include <string_view>
#include <tl/expected.hpp>
#include <vector>

namespace tw {

enum class Cause { BadInput, Stopped, OurFault };

/// Where a problem stands. Empty strings and zeros mean "not known" or "does not apply".
struct Place {
  std::string file;  ///< as the artist named it
  int line = 0;      ///< counted from 1
  std::string path;  ///< JSON Pointer (RFC 6901) inside a document
  int page = 0;      ///< page number of the story
  int panel = 0;     ///< panel number on its page, from 1
};

struct Problem {
  Cause cause = Cause::BadInput;
  std::string sentence;  ///< what is wrong and what was expected
  Place place;
  std::string advice;  ///< what to do about it; may be empty
};

using Problems = std::vector<Problem>;

template <class T>
using Result = tl::expected<T, Problems>;

/// "file:line: sentence Advice" in one line, leaving out what is not known.
std::string describe(const Problem& problem);

/// One line per problem.
std::string describe(const Problems& problems);

/// A Problems of one bad-input problem, ready to return.
tl::unexpected<Problems> badInput(std::string sentence, Place place = {}, std::string advice = {});

/// A Problems of one problem of our own making (a failed write, a missing preset).
tl::unexpected<Problems> ourFault(std::string sentence, Place place = {}, std::string advice = {});

/// A Problems that says the artist stopped the work.
tl::unexpected<Problems> stopped();

/// Ends the program with the message when `condition` is false; on in Release too.
void ensure(bool condition, std::string_view message);

}  // namespace tw
