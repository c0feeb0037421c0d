#!/usr/bin/env bash
# The program as a person meets it: command, expected text, exit code. $1 = program, $2 = source.
set -uo pipefail
program=$1
source=$2
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
passed=0
failed=0

# expect CODE TEXT ARGUMENTS… : TEXT must stand in stdout or stderr.
expect() {
  local code=$1 text=$2 got output
  shift 2
  output=$("$program" "$@" 2>&1)
  got=$?
  if [ "$got" -ne "$code" ] || ! grep -qF -- "$text" <<<"$output"; then
    echo "FAILED: tierwright $*"
    echo "  expected exit $code and \"$text\", got exit $got and:"
    sed 's/^/  | /' <<<"$output" | head -12
    failed=$((failed + 1))
  else
    passed=$((passed + 1))
  fi
}

script=$source/demo/the-low-bell.txt
job=$work/job

expect 0 "Exit codes" --help
expect 2 "subcommand" # nothing asked
expect 2 "" frobnicate
for command in new revise beats brief sheets roughs variants show choose proof fit board desk; do
  expect 0 "xample" $command --help
done
expect 0 "us-comic-a" sheets
expect 2 "does not exist" new "$job" --script "$work/none.txt"
expect 2 "" new "$job" --script "$script" --sheet no-such-sheet
expect 0 "7 pages" new "$job" --script "$script"
expect 2 "already" new "$job" --script "$script"
expect 0 "Nothing changed" revise "$job" --script "$script"
expect 0 '"spread": true' beats "$job" --json
expect 0 "ines" beats "$job" --page 4
expect 2 "no page 77" beats "$job" --page 77
expect 0 "close-up" beats "$job" --page 1 --set p1-2.shot=close-up
expect 2 "nobody-9" beats "$job" --set nobody-9.shot=close-up
expect 0 "0.4" brief "$job" --page 4 --set dominant-share=0.4
expect 2 "" brief "$job" --page 4 --set dominant-share=lots
expect 2 "no beat 5" brief "$job" --page 4 --set dominant=5
expect 2 "not in the cast" brief "$job" --page 4 --set focus=nobody
expect 0 "pose.WHO" beats --help
expect 2 "14 to 300 mm" beats "$job" --set p1-2.lens=12
expect 2 "-90 to 90" beats "$job" --set p1-2.roll=120
expect 2 "back-lit" beats "$job" --set "p1-2.light=from somewhere"
expect 0 "lens=28" beats "$job" --page 1 --set p1-2.lens=28mm --set p1-2.roll=-8 --set "p1-2.light=from the left, fill 0.1"
expect 0 "" beats "$job" --page 1 --set p1-2.lens=guess --set p1-2.roll=guess --set p1-2.light=guess
expect 2 "No thing is called" beats "$job" --set p1-2.prop.add=gizmo
expect 0 "four" values --help
expect 2 "no roughs" proof "$job" --out "$work/proof"
expect 2 "no rough" show "$job" --page 4 --rough A --png "$work/a.png"
expect 0 "layouts sized" roughs "$job" --page 1 --keep 2
expect 0 '"handed_on"' roughs "$job" --page 1 --keep 2 --json -
expect 0 "reach" show "$job" --page 1 --rough A --measures
expect 0 '"foreshortened"' show "$job" --page 1 --rough A --json
expect 0 "" show "$job" --page 1 --rough A --png "$work/a.png" --svg "$work/a.svg" --pdf "$work/a.pdf"
expect 0 "Over the border" fit "$job" --page 1 --panel 2 --png "$work/fit.png" --svg "$work/fit.svg"
expect 0 '"head_mm_now"' fit "$job" --page 1 --panel 2 --json
expect 2 "no panel 99" fit "$job" --page 1 --panel 99
expect 2 "" fit "$job" --page 1 --panel 2 --margin lots
expect 0 "reach" variants "$job" --page 1 --rough A --panel 2 --keep 3 --png "$work/v.png"
expect 2 "no panel 9" variants "$job" --page 1 --rough A --panel 9
expect 0 "contrapposto" poses
expect 0 "carries somebody in both arms" poses --pairs
expect 0 '"beyond"' poses --json
expect 0 "" poses --pairs --svg "$work/pairs.svg" --pdf "$work/pairs.pdf"
expect 2 "Name a file" show "$job" --page 1 --rough A
expect 0 "" choose "$job" --page 1 --rough B
expect 2 "no rough" choose "$job" --page 1 --rough Z
expect 0 "The whole proof" proof "$job" --page 1 --out "$work/proof"
expect 0 "board.pdf" board "$job" --page 1 --pdf "$work/board.pdf"
expect 0 "board.svg" board "$job" --page 1 --borders --svg "$work/board.svg"
expect 2 "No file to write" board "$job" --page 1
expect 2 "no rough" board "$job" --page 1 --rough Z --pdf "$work/board.pdf"
expect 2 "holds no job" desk "$work/nowhere"

# Pins, mixing, comparing, unlike these.
for command in pin mix compare; do
  expect 0 "xample" $command --help
done
expect 0 "Nothing is pinned" pin "$job" --page 1
expect 0 "pinned: panel 2" pin "$job" --page 1 --panel 2 --rough A
expect 0 "pinned: arrangement" pin "$job" --page 1 --arrangement
expect 0 '"treatment"' pin "$job" --page 1 --json
expect 2 "no panel 99" pin "$job" --page 1 --panel 99
expect 2 "not pinned" pin "$job" --page 1 --panel 3 --back
expect 0 "Nothing is pinned" pin "$job" --page 1 --back
expect 0 "strongest" compare "$job" --page 1 A B
expect 0 '"outline_mm"' compare "$job" --page 1 A B --json
expect 2 "no rough" compare "$job" --page 1 A Z
expect 2 "The page has A, B" compare "$job" --page 1 A Z
expect 2 "tierwright compare --help" compare "$job" --page 1 A
expect 2 'a number from 1 to 99999, not "one"' compare "$job" --page one A B
expect 2 "Add --panel N or --arrangement" pin "$job" --page 1 --rough A
expect 2 "ends in .pdf" show "$job" --page 1 --pdf "$work/a.png"
expect 2 "folder" show "$job" --page 1 --png "$job/job.json/a.png"
expect 0 "Rough C: panel 2 of B in A" mix "$job" --page 1 --panel 2 --from B --into A
expect 2 "with itself" mix "$job" --page 1 --panel 2 --from A --into A
expect 2 "Name either" mix "$job" --page 1 --from A --into B
expect 2 'no rough "Q"' roughs "$job" --page 1 --keep 1 --unlike A,Q
expect 2 "Name the page" roughs "$job" --keep 1 --unlike A
expect 0 "that stood there" roughs "$job" --page 1 --keep 1 --unlike A,B

# Things: hands, places, models, what is not drawn.
expect 0 "prop.THING.hand" beats --help
expect 0 "named but not drawn: rail (panel 4)" beats "$job" --page 1
expect 0 "prop.lantern.hand=left" beats "$job" --page 1 --set p1-2.prop.lantern.hand=left
expect 2 "left, right, both" beats "$job" --set p1-2.prop.lantern.hand=third
expect 2 "three numbers" beats "$job" --set p1-2.prop.boat.place=5
expect 2 "The job has no models" beats "$job" --set p1-2.prop.boat.model=tug
mkdir -p "$job/art/models"
cp "$source/demo/models/boat.obj" "$job/art/models/tug.obj"
expect 0 "prop.boat.model=tug" beats "$job" --page 1 --set p1-2.prop.boat.model=tug
expect 0 "layouts sized" roughs "$job" --page 1 --keep 1
echo "v 1 2 three" >"$job/art/models/tug.obj"
expect 2 'tug.obj:1: "three" is no number' roughs "$job" --page 1 --keep 1
expect 0 "" beats "$job" --page 1 --set p1-2.prop.boat.model=guess

# Scenes, looks, continuity, reference pictures.
for command in scenes looks continuity reference; do
  expect 0 "xample" $command --help
done
story=$work/story
"$program" new "$story" --script "$script" >/dev/null 2>&1
expect 0 "EXT. THE BOAT - DUSK" scenes "$story"
expect 0 "flashback, -10 years" scenes "$story" --set s4.strand=flashback --set s4.years=-10
expect 0 "EXT. THE BOAT - DUSK" scenes "$story" --set s4.strand=guess --set s4.years=guess
expect 2 "no key" scenes "$story" --set s4.colour=red
expect 2 "would come after itself" scenes "$story" --set s5.after=s2 --set s2.after=s5
expect 2 "no heading of a scene" scenes "$story" --open "p6-4=SOMETHING"
expect 2 "scene" beats "$story" --set p1-2.scene=s99
expect 0 "s2" beats "$story" --page 1 --set p1-5.scene=s2
expect 0 "cut on the left cheek" looks "$story" --who ines
expect 0 "scar on the right cheek" looks "$story" --who teo --words "scar on the right cheek" --from s4
expect 2 "Add --who" looks "$story" --words "hat"
expect 2 "no panel, page or scene" looks "$story" --who teo --words "hat" --from p77-7
expect 0 "common practice, no source" continuity "$story"
expect 1 "lost" continuity "$story" --level look --json
expect 0 "" continuity "$story" --svg "$work/chart.svg" --pdf "$work/chart.pdf"
expect 2 "neither a PNG nor a JPEG" reference "$story" --who ines --add "$script"
head -c 60 "$source/tests/fuzz/corpus/picture_size/grey.png" > "$work/cut.png"
expect 2 "cut off" reference "$story" --who ines --add "$work/cut.png"
expect 2 "not said whose picture" reference "$story" --add "$work/cut.png"
# The whole story and its map.
expect 0 "xample" story --help
expect 0 "not measured" story "$story"
expect 1 "faces page 6" story "$story" --level look
expect 0 "" silence "$story" --page 7 --panel 2 --rule "page turn" --reason "the bell is heard before it is seen"
expect 0 "silenced: the bell is heard" story "$story"
expect 0 "the bell is heard" story "$story" --json
expect 0 '"stands": "after a turn"' story "$story" --json
expect 0 "" story "$story" --png "$work/map.png" --dpi 40 --svg "$work/map.svg" --pdf "$work/map.pdf"
[ -s "$work/map.png" ] && [ -s "$work/map.svg" ] && [ -s "$work/map.pdf" ] || { echo "FAILED: no map"; failed=$((failed + 1)); }
expect 2 "no such folder" story "$work/nowhere"
expect 2 "" story "$story" --level never
expect 2 'no command "frobnicate"' frobnicate
expect 0 "3 × 2" reference "$story" --who ines --add "$source/tests/fuzz/corpus/picture_size/grey.png"
rm "$story/art/reference/grey.png"
expect 1 "missing" reference "$story"

# Pages known only as marked panels.
lists=$source/tests/fuzz/corpus/panel_list
expect 0 "xample" read --help
expect 2 "Nothing to read was named" read
expect 2 "in one go" read "$job" --panels "$lists/grid.json"
expect 0 "take the panels in the order 1, 2, 3, 4" read --panels "$lists/grid.json"
expect 0 "order 2, 1, 4, 3" read --panels "$lists/grid.json" --direction rtl
expect 0 '"from": null' read --panels "$lists/grid.json" --json
expect 0 "right-to-left" read --panels "$lists/marks.json" --json
expect 0 "1, 2" read --panels "$lists/crossing-and-corner.json"
expect 2 'Page "x", panel 1' read --panels "$lists/faulty.json"
expect 2 "Swap its corners" read --panels "$lists/faulty.json"
expect 2 "found an empty list" read --panels "$lists/empty-list.json"
expect 2 "ends too early" read --panels "$lists/cut-off.json"
expect 2 "" read --panels "$work/no-such-list.json"
echo '{"panels": [{"bbox": [0, 0, 90, 60]}, {"bbox": [0, 70, 90, 120]}]}' >"$work/drawn.json"
expect 0 "Panel 1: focus proposed" read --panels "$work/drawn.json" \
  --picture "$source/demo/ines-suit.png" --png "$work/eye.png"
expect 0 '"squint"' read --panels "$work/drawn.json" --picture "$source/demo/ines-suit.png" --json
expect 0 "in the order 1, 2" read --panels "$work/drawn.json" --png "$work/bare.png" --svg "$work/bare.svg"
expect 2 "ends in .png" read --panels "$work/drawn.json" --png "$work/bare.gif"
expect 2 "neither a PNG nor a JPEG" read --panels "$work/drawn.json" --picture "$work/drawn.json"
expect 0 "Only its panels were read" read --panels "$lists/marks.json"
expect 2 "" read --panels "$lists/grid.json" --direction down

# A job that is broken is refused and left as it is.
echo '{"format": 2' >"$job/job.json"
expect 2 "job.json" beats "$job"
[ "$(cat "$job/job.json")" = '{"format": 2' ] || { echo "FAILED: job.json was changed"; failed=$((failed + 1)); }

# Ctrl-C stops with exit code 3 and leaves whole files.
"$program" new "$work/long" --script "$script" >/dev/null 2>&1
"$program" roughs "$work/long" >/dev/null 2>&1 &
running=$!
sleep 0.7
kill -INT $running
wait $running
code=$?
if [ $code -ne 3 ]; then
  echo "FAILED: SIGINT gave exit $code, 3 expected"
  failed=$((failed + 1))
else
  passed=$((passed + 1))
fi
expect 0 "Page 1" beats "$work/long"

echo "$passed passed, $failed failed"
[ "$failed" -eq 0 ]
