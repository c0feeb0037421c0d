// The trade's closed sets of words that several folders share. Files spell them as nameOf does.
#pragma once

#include <optional>
#include <string_view>

namespace tw {

/// By where the frame cuts a standing figure; docs/glossary.md names the cut line of each.
enum class ShotSize {
  ExtremeCloseUp,  ///< part of a face or a detail
  CloseUp,         ///< head, cut at the shoulders
  MediumCloseUp,   ///< cut at the chest
  Medium,          ///< cut at the waist
  MediumLong,      ///< cut at the thigh or knee
  Long,            ///< whole figure
  VeryLong,        ///< figure about a third of the height
  ExtremeLong      ///< figure under a sixth of the height
};
inline constexpr int kShotSizes = 8;

enum class EyeHeight { Worm, Low, Level, High, Bird };

enum class CopyKind { Speech, Whisper, Shout, Thought, Caption, Sfx, Title };

enum class ReadingDirection { LeftToRight, RightToLeft };

std::string_view nameOf(ShotSize shot);       ///< "close-up", "very long", …
std::string_view nameOf(EyeHeight eye);       ///< "worm's eye", "low", "eye level", "high", …
std::string_view nameOf(CopyKind kind);       ///< "speech", …
std::string_view nameOf(ReadingDirection d);  ///< "left-to-right", "right-to-left"

std::optional<ShotSize> shotSizeFrom(std::string_view name);
std::optional<EyeHeight> eyeHeightFrom(std::string_view name);
std::optional<ReadingDirection> readingDirectionFrom(std::string_view name);

}  // namespace tw
