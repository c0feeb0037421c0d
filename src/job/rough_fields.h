// Field listings of a rough: all that is needed to draw it again. Reader, writer and published
// schema all follow them; see field.h.
#pragma once

#include "job/beat.h"
#include "job/field.h"
#include "job/rough.h"

namespace tw {

template <>
struct FieldsOf<CameraPlace> {
  static constexpr std::string_view kName = "camera";
  static constexpr std::string_view kHelp = "Where the camera stands and how it looks.";
  template <class F>
  static void list(F& f) {
    using T = CameraPlace;
    f("eye", &T::eye, required(metres()), "Place in metres, y up.");
    f("pan_deg", &T::panDeg, degrees(), "0 looks along +z.");
    f("pitch_deg", &T::pitchDeg, degrees(), "Over 0 looks up.");
    f("roll_deg", &T::rollDeg, degrees(), "Over 0 turns the picture counter-clockwise.");
    f("focal_mm", &T::focalMm, number(0.1, 100000), "On a frame 36 mm wide.");
    f("offset_x", &T::offsetX, number(-1000, 1000), "Lens shift in frame widths.");
    f("offset_y", &T::offsetY, number(-1000, 1000), "Lens shift in frame widths.");
  }
};

template <>
struct FieldsOf<SetFigure> {
  static constexpr std::string_view kName = "set_figure";
  static constexpr std::string_view kHelp = "A figure set in the panel's space.";
  template <class F>
  static void list(F& f) {
    using T = SetFigure;
    f("who", &T::who, required(word()), "Id of a character.");
    f("pose", &T::pose, anyText(), "Name of a pose.");
    f("pose_mirrored", &T::poseMirrored, anyText(), "Left and right limbs swapped.");
    f("at", &T::at, metres(), "Place of the feet, metres.");
    f("heading_deg", &T::headingDeg, degrees(), "0 faces the default camera.");
    f("gaze_deg", &T::gazeDeg, degrees(), "Head from the body's heading, over 0 to its left.");
    f("turns_deg", &T::turnsDeg, jointTurns(),
      "Joints turned otherwise than in the pose, and \"root\": flex, aside, twist. Left and right "
      "are the pose's own, before mirroring.");
  }
};

template <>
struct FieldsOf<SetProp> {
  static constexpr std::string_view kName = "set_prop";
  static constexpr std::string_view kHelp = "A prop set in the panel's space.";
  template <class F>
  static void list(F& f) {
    using T = SetProp;
    f("prop", &T::prop, required(word()), "Id of a prop of the beat.");
    f("at", &T::at, metres(), "Centre of the base, metres; of a held prop the centre.");
    f("heading_deg", &T::headingDeg, degrees(), "Turn about the upright axis.");
    f("pitch_deg", &T::pitchDeg, degrees(), "Lean.");
    f("length_m", &T::lengthM, metres(0),
      "Of a hauled line: metres from the hands to its end; 0 = all of it.");
  }
};

template <>
struct FieldsOf<StagingChoice> {
  static constexpr std::string_view kName = "staging_choice";
  static constexpr std::string_view kHelp = "The choice that made the staging.";
  template <class F>
  static void list(F& f) {
    using T = StagingChoice;
    f("shot", &T::shot, required(anyText()), "Shot size.");
    f("eye", &T::eye, required(anyText()), "Eye height.");
    f("side_deg", &T::sideDeg, degrees(), "Camera to the side of the front view.");
    f("tilt_deg", &T::tiltDeg, degrees(), "Roll of the camera.");
    f("lens_mm", &T::lensMm, number(0, kLongestLensMm), "The artist's own lens; 0: by the shot.");
    f("mirrored", &T::mirrored, anyText(), "Left and right swapped.");
    f("placement", &T::placement, count(-1000000, 1000000), "Which blocking variant.");
  }
};

template <>
struct FieldsOf<SetLamp> {
  static constexpr std::string_view kName = "set_lamp";
  static constexpr std::string_view kHelp = "A lamp of the panel's light.";
  template <class F>
  static void list(F& f) {
    using T = SetLamp;
    f("from", &T::from, number(-1, 1), "Toward it: camera's right, up, toward the camera.");
    f("strength", &T::strength, number(0, 4), "1 shows what is turned to it in its own value.");
  }
};

template <>
struct FieldsOf<SetLight> {
  static constexpr std::string_view kName = "set_light";
  static constexpr std::string_view kHelp = "The light that the panel is drawn in.";
  template <class F>
  static void list(F& f) {
    using T = SetLight;
    f("name", &T::name, anyText(), "Short name, such as back.");
    f("title", &T::title, anyText(), "In words.");
    f("key", &T::key, anyText(), "The main lamp.");
    f("fill", &T::fill, anyText(), "The lamp that opens its shadows.");
    f("rim", &T::rim, anyText(), "The lamp from behind that lights the edge.");
    f("ambient", &T::ambient, number(0, 4), "Light from everywhere.");
  }
};

template <>
struct FieldsOf<Staging> {
  static constexpr std::string_view kName = "staging";
  static constexpr std::string_view kHelp = "Camera, figures and props of a panel.";
  template <class F>
  static void list(F& f) {
    using T = Staging;
    f("choice", &T::choice, required(anyText()), "The choice that made it.");
    f("camera", &T::camera, required(anyText()), "The camera.");
    f("figures", &T::figures, tw::list(200), "Figures in the space.");
    f("props", &T::props, tw::list(200), "Props in the space.");
    f("light", &T::light, anyText(), "Left out: the light that the beat's words name.");
  }
};

template <>
struct FieldsOf<Lead> {
  static constexpr std::string_view kName = "lead";
  static constexpr std::string_view kHelp = "The direction in which a panel hands the eye on.";
  template <class F>
  static void list(F& f) {
    using T = Lead;
    f("from", &T::from, mm(), "Where it starts, mm on the page.");
    f("direction", &T::direction, number(-2, 2), "Of length 1, or 0 for no lead.");
    f("strength", &T::strength, number(0, 1), "0 to 1.");
    f("why", &T::why, anyText(), "In words.");
  }
};

template <>
struct FieldsOf<SeenLimb> {
  static constexpr std::string_view kName = "seen_limb";
  static constexpr std::string_view kHelp = "What is seen of one limb.";
  template <class F>
  static void list(F& f) {
    using T = SeenLimb;
    f("limb", &T::limb, required(anyText()), "Left and right are the figure's own.");
    f("visible", &T::visible, number(0, 1), "Share of its own picture that the panel shows.");
    f("foreshortened", &T::foreshortened, number(0, 1000),
      "Length on the picture over its true length at its middle's depth.");
  }
};

template <>
struct FieldsOf<HiddenBy> {
  static constexpr std::string_view kName = "hidden_by";
  static constexpr std::string_view kHelp = "What takes a part of a figure out of sight.";
  template <class F>
  static void list(F& f) {
    using T = HiddenBy;
    f("what", &T::what, required(anyText()), "Id of a character or prop, set or frame.");
    f("share", &T::share, number(0, 1), "Of the figure's own picture.");
  }
};

template <>
struct FieldsOf<JointCut> {
  static constexpr std::string_view kName = "joint_cut";
  static constexpr std::string_view kHelp = "The frame's edge falls on a joint.";
  template <class F>
  static void list(F& f) {
    using T = JointCut;
    f("joint", &T::joint, required(anyText()), "Such as left wrist.");
    f("at", &T::at, mm(), "Place, mm on the page.");
  }
};

template <>
struct FieldsOf<SeenTangent> {
  static constexpr std::string_view kName = "tangent";
  static constexpr std::string_view kHelp = "Two contours that only just touch.";
  template <class F>
  static void list(F& f) {
    using T = SeenTangent;
    f("kind", &T::kind, required(anyText()), "touch, or run along.");
    f("a", &T::a, anyText(), "Id of a character or prop, set or border.");
    f("b", &T::b, anyText(), "The same.");
    f("at", &T::at, mm(), "Middle of the stretch, mm on the page.");
    f("length_mm", &T::lengthMm, mm(0), "How long they keep together.");
  }
};

template <>
struct FieldsOf<SeenFigure> {
  static constexpr std::string_view kName = "seen_figure";
  static constexpr std::string_view kHelp = "What is seen of a figure in its panel.";
  template <class F>
  static void list(F& f) {
    using T = SeenFigure;
    f("who", &T::who, required(word()), "Id of a character.");
    f("visible", &T::visible, number(0, 1), "Share of its own outline that the panel shows.");
    f("share", &T::share, number(0, 1000), "Of the panel's area.");
    f("head_mm", &T::headMm, mm(0), "Chin to crown at print size.");
    f("cut", &T::cut, anyText(), "Where the frame cuts it: whole, knee, waist and so on.");
    f("cut_at_joint", &T::cutAtJoint, anyText(), "The cut falls on a joint.");
    f("reach", &T::reach, number(0, 1), "Arms and legs on the picture over their length, mean.");
    f("solidity", &T::solidity, number(0, 1), "Area of its own outline over its hull's.");
    f("tips_seen", &T::tipsSeen, count(0, 5), "Head, hands, feet that the outline alone tells.");
    f("overlap", &T::overlap, number(0, 1), "Share of it that lies on or behind other figures.");
    f("contrast", &T::contrast, number(-100, 100), "Mean L* less that of what surrounds it.");
    f("liftable", &T::liftable, anyText(), "Whole, and nothing before it.");
    f("limbs", &T::limbs, tw::list(32), "Limb by limb.");
    f("hidden_by", &T::hiddenBy, tw::list(400), "What takes it out of sight, most first.");
    f("joint_cuts", &T::jointCuts, tw::list(64), "Joints on the frame's edge.");
    f("face", &T::face, mm(), "Outline around the head, mm on the page.");
    f("mouth", &T::mouth, mm(), "Where tails aim, mm on the page.");
    f("body", &T::body, mm(), "Silhouette inside the panel, mm on the page.");
  }
};

template <>
struct FieldsOf<CopyLine> {
  static constexpr std::string_view kName = "copy_line";
  static constexpr std::string_view kHelp = "One line of lettering.";
  template <class F>
  static void list(F& f) {
    using T = CopyLine;
    f("text", &T::text, anyText(), "The words.");
    f("baseline_middle", &T::baselineMiddle, mm(), "Middle of its baseline, mm on the page.");
  }
};

template <>
struct FieldsOf<PlacedBalloon> {
  static constexpr std::string_view kName = "balloon";
  static constexpr std::string_view kHelp = "A copy item in its place.";
  template <class F>
  static void list(F& f) {
    using T = PlacedBalloon;
    f("item", &T::item, required(word()), "Id of the copy item.");
    f("kind", &T::kind, required(anyText()), "What sort of lettering it is.");
    f("off_panel", &T::offPanel, anyText(), "The speaker is outside the panel.");
    f("outline", &T::outline, mm(), "Balloon or box, mm on the page; empty when set free.");
    f("tail", &T::tail, mm(), "Tail, mm on the page; empty for none.");
    f("lines", &T::lines, tw::list(1000), "Its lines.");
    f("size_pt", &T::sizePt, number(0, 10000), "Type size at print.");
    f("turn_deg", &T::turnDeg, degrees(), "Of the lines about their middle.");
    f("by_hand", &T::byHand, anyText(), "The artist placed it: lettering leaves it there.");
  }
};

template <>
struct FieldsOf<PenStroke> {
  static constexpr std::string_view kName = "pen_stroke";
  static constexpr std::string_view kHelp = "A line that the artist drew over a panel.";
  template <class F>
  static void list(F& f) {
    using T = PenStroke;
    f("points", &T::points, required(mm()), "mm on the page.");
    f("widths_mm", &T::widthsMm, required(mm(0, 100)), "One per point.");
    f("black", &T::black, anyText(), "Left out: non-photo blue.");
  }
};

template <>
struct FieldsOf<CardLine> {
  static constexpr std::string_view kName = "card_line";
  static constexpr std::string_view kHelp = "One line of the score card.";
  template <class F>
  static void list(F& f) {
    using T = CardLine;
    f("rule", &T::rule, required(anyText()), "Name of the rule.");
    f("cost", &T::cost, required(number(-1e9, 1e9)), "What it adds to the score.");
    f("reason", &T::reason, anyText(), "Why, in words.");
    f("remedy", &T::remedy, anyText(), "What would help.");
    f("panel", &T::panel, count(0, 1000), "Reading order from 1; 0 is the page.");
  }
};

template <>
struct FieldsOf<RoughPanel> {
  static constexpr std::string_view kName = "rough_panel";
  static constexpr std::string_view kHelp = "One panel of a rough.";
  template <class F>
  static void list(F& f) {
    using T = RoughPanel;
    f("beat", &T::beat, required(word()), "Id of the beat.");
    f("outline", &T::outline, required(mm()), "Inner edge of the border, mm on the page.");
    f("dominant", &T::dominant, anyText(), "The page's main panel.");
    f("ground", &T::ground, anyText(), "Lies under the others, which are inset.");
    f("bleeds", &T::bleeds, anyText(), "Runs out to the bleed.");
    f("staging", &T::staging, required(anyText()), "Camera, figures and props.");
    f("focus", &T::focus, mm(), "Where the eye lands, mm on the page.");
    f("lead", &T::lead, anyText(), "How it hands the eye on.");
    f("figures", &T::figures, tw::list(200), "What is seen of each figure.");
    f("tangents", &T::tangents, tw::list(400), "Contours that only just touch.");
    f("balloons", &T::balloons, tw::list(500), "Lettering in its place.");
    f("strokes", &T::strokes, tw::list(20000), "The artist's own lines over the panel, as drawn.");
  }
};

template <>
struct FieldsOf<RoughReading> {
  static constexpr std::string_view kName = "reading";
  static constexpr std::string_view kHelp = "How readers are expected to take the page.";
  template <class F>
  static void list(F& f) {
    using T = RoughReading;
    f("order", &T::order, count(1, 1000), "Panels in the likeliest order, 1 = first intended.");
    f("followed", &T::followed, number(0, 1), "Share of readers who take the intended order.");
    f("handed_on", &T::handedOn, number(0, 1), "Mean share of the leads that arrive.");
  }
};

template <>
struct FieldsOf<Rough> {
  static constexpr std::string_view kName = "rough";
  static constexpr std::string_view kHelp = "One candidate page and why it is ranked where it is.";
  template <class F>
  static void list(F& f) {
    using T = Rough;
    f("name", &T::name, required(word()), "A, B, C and so on.");
    f("score", &T::score, required(number(-1e12, 1e12)),
      "Sum of the card's costs; less is better.");
    f("arrangement", &T::arrangement, anyText(), "The tree in our notation.");
    f("treatment", &T::treatment, anyText(), "plain, bled, ground or slanted.");
    f("card", &T::card, tw::list(10000), "The score card.");
    f("panels", &T::panels, required(tw::list(200)), "In reading order.");
    f("reading", &T::reading, anyText(), "Expected reading.");
  }
};

}  // namespace tw
