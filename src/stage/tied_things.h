// What a hauled line is made fast to: the bell at the far end of the chain.
#pragma once

#include "stage/blocking.h"

namespace tw {

/// The thing to which, by the beat's words, the line runs ("the chain taut to the bell"): its
/// index, or −1. Only things heavier than a person can carry hold a line.
int tiedTo(const Beat& beat, std::size_t line);

/// Draws the hauled line taut from the hands along the heading to the thing it is tied to and puts
/// that thing at its end, a fallen one with its top to the hands. Does nothing for a line that runs
/// to nothing, or to a thing that the artist has placed.
void tautTo(const Beat& beat, std::size_t line, const Vec3& hands, double headingDeg, double floor,
            Scene& scene);

/// Draws a hauled line straight from the hands to the end that it has: that end stays, and so does
/// what it is made fast to. Does nothing when the hands have come to the end.
void stringAnew(const Prop& line, const Vec3& hands, SetProp& set);

}  // namespace tw
