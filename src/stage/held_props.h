// Props in relation to the figures that use them: in a hand, in both, hauled, stood in.
// A prop's top direction follows from heading and pitch: pitch 90 lays it along the heading.
#pragma once

#include "stage/blocking.h"

namespace tw {

/// Boats and the like: figures stand in them.
bool isVessel(const Prop& prop);
/// Long and thin: rope, oar, sword.
bool isRod(const Prop& prop);
/// The figure pulls at something long: a rope, a chain.
bool hauls(const Beat& beat, const BeatFigure& figure);
/// A close-up whose words name a hand.
bool asksForHand(const Beat& beat);
/// Such a close-up of one figure that names a thing too: the hand holds it.
bool showsHandOnThing(const Beat& beat);
/// A picture of small things without anybody: a close-up, or no other shot asked for.
bool showsThingClose(const Beat& beat);
/// Held or hauled by a figure of the beat.
bool isInHand(const Beat& beat, std::size_t prop);

/// The first thing that names the hand of this figure names the one its pose does not offer.
bool wantsOtherHand(const Beat& beat, const Actor& actor);

/// How far a thing is tipped that lies on its side, degrees.
double lyingPitch(const Prop& prop);

/// Long axis first: {length, breadth, depth} as the prop is drawn when it is in a hand.
std::array<double, 3> handledSize(const Prop& prop);
Vec3 topDirection(const SetProp& set);
/// How long a prop in a hand is from end to end, m.
double drawnLength(const Prop& prop, const SetProp& set);
Box3 boxAround(const Prop& prop, const SetProp& set, bool inHand);
/// Gives every prop in a hand its place, heading, pitch and box.
void putHeldProps(const Beat& beat, Scene& scene);

/// Which of a figure's own hands hold something.
struct BusyHands {
  bool left = false, right = false;
};
BusyHands busyHands(const Beat& beat, const Scene& scene, std::size_t figure);
/// Is that prop of the beat the line that the figure pulls at?
bool isHauledBy(const BeatFigure& figure, std::size_t prop, const Beat& beat);
/// Between the palms: where a hauled line begins.
Vec3 haulingHands(const Actor& actor);
/// After the figure changed from `before` to `after`: what it holds keeps its place in the hand,
/// turned or seen in a looking-glass as the figure is. A line that it hauls runs from its hands to
/// where it ended before. What nobody holds stays.
void carryProps(const Beat& beat, std::size_t figure, const Scene& before, Scene& after);

/// The palm of the hand that holds, reaches or points.
Vec3 workingPalm(const Actor& actor);

/// Shoulder to fingertip, or hip to toe, of the limb that leads the eye.
Vec3 pointingLimb(const Pose& pose, const Skeleton& skeleton, bool mirrored);

/// What the panel is about when nobody is in it: the biggest prop, or the set's main piece.
Box3 mainThingOf(const Beat& beat, const Scene& scene);

}  // namespace tw
