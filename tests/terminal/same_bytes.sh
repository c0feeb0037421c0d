#!/usr/bin/env bash
# Same input, same seed, one and two threads: the same bytes in SVG, PDF and JSON (but for the
# seconds). And the PDF as outside judges see it: exact boxes (ISO 32000-1 §14.11.2; 6 5/8 x 10 1/4 in
# = 477 x 738 pt, bleed 495 x 756 pt), clean for qpdf and Ghostscript, every font embedded.
set -uo pipefail
program=$1
source=$2
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
fail() { echo "FAILED: $*"; exit 1; }

for threads in 1 2; do
  job=$work/job$threads
  cp -r "$source/demo/the-low-bell" "$job"
  "$program" roughs "$job" --page 4 --threads $threads --json "$work/$threads.json" >/dev/null ||
    fail "roughs on $threads threads"
  grep -v '"seconds"' "$work/$threads.json" >"$work/$threads.txt"
  "$program" show "$job" --page 4 --rough A --all --svg "$work/$threads.svg" --pdf "$work/$threads.pdf" ||
    fail "show"
done
for kind in txt svg pdf; do
  cmp "$work/1.$kind" "$work/2.$kind" || fail "$kind differs between one and two threads"
done

boxes=$(pdfinfo -box "$work/1.pdf")
for box in "BleedBox: *18.00 *18.00 *513.00 *774.00" "TrimBox: *27.00 *27.00 *504.00 *765.00"; do
  grep -qE "$box" <<<"$boxes" || fail "pdfinfo gives other boxes: $boxes"
done
qpdf --check "$work/1.pdf" >/dev/null || fail "qpdf --check"
complaints=$(gs -q -dPDFSTOPONERROR -o /dev/null -sDEVICE=nullpage "$work/1.pdf" 2>&1) || fail "gs: $complaints"
[ -z "$complaints" ] || fail "gs says: $complaints"
fonts=$(pdffonts "$work/1.pdf" | tail -n +3)
[ -n "$fonts" ] || fail "no font in the PDF"
while read -r line; do
  grep -qE ' yes +yes +yes ' <<<"$line" || fail "font not embedded and subset: $line"
done <<<"$fonts"
echo "1 passed, 0 failed"
