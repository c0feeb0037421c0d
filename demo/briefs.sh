#!/usr/bin/env bash
# Makes demo/the-low-bell anew from the script, with its models and the editor's brief for each page.
# Run it after changing the script or a format; the result is committed.
set -euo pipefail
root=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)
job=$root/demo/the-low-bell
program=${TIERWRIGHT:-$root/build/tierwright}
tw() { "$program" "$@" >/dev/null; }

rm -rf "$job"
tw new "$job" --script "$root/demo/the-low-bell.txt" --sheet us-comic-a --client "Lantern Quarterly"
mkdir -p "$job/art/models"
cp "$root"/demo/models/*.obj "$job/art/models/"
tw brief "$job" --page 1 --set focus=ines --set keep-clear=logo:10,8,70,22 --set due=2027-01-11
tw brief "$job" --page 2 --set focus=ines --set dominant=p2-1 --set dominant-share=0.45 --set due=2027-01-13
tw brief "$job" --page 4 --set small-panels=3-5 --set dominant=p4-5 --set dominant-share=0.4 \
   --set focus=ines --set head-mm=7 --set liftable=yes --set due=2027-01-15
tw brief "$job" --page 5 --set focus=ines --set words=0 --set bleeds=no --set due=2027-01-18
tw brief "$job" --page 6 --set focus=ines --set words=210 --set due=2027-01-20
tw brief "$job" --page 7 --set focus=ines --set dominant=p7-2 --set dominant-share=0.4 --set due=2027-01-22
tw brief "$job" --page 8 --set focus=ines --set due=2027-01-25
tw reference "$job" --who ines --add "$root/demo/ines-suit.png" --note "the canvas suit" \
   --rights "drawn by this program"
rm -rf "$job/.history" "$job/.lock"
