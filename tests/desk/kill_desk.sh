#!/usr/bin/env bash
# Kills the desk at random instants of scripted work: the job always opens, and at most the edit in
# flight is lost.  kill_desk.sh SCRIPTED_WORK TIERWRIGHT ROOT [TIMES]
set -euo pipefail
work=$1 program=$2 root=$3 times=${4:-12}
export QT_QPA_PLATFORM=offscreen QT_LOGGING_RULES='qt.qpa.*=false'
place=$(mktemp -d)
trap 'rm -rf "$place"' EXIT
cp -r "$root/demo/the-low-bell" "$place/fresh"
"$program" roughs "$place/fresh" --page 4 --keep 1 >/dev/null
RANDOM=20261125
lost=0 edits=0
for ((i = 1; i <= times; i++)); do
  rm -rf "$place/job"
  cp -r "$place/fresh" "$place/job"
  : >"$place/done"
  "$work" "$place/job" 4 >"$place/done" 2>/dev/null &
  desk=$!
  for ((w = 0; w < 600; w++)); do  # until the first edit is made
    [ -s "$place/done" ] && break
    sleep 0.05
  done
  sleep "0.$(printf '%03d' $((RANDOM % 400)))"
  kill -9 "$desk" 2>/dev/null || { echo "The desk ended by itself."; exit 1; }
  wait "$desk" 2>/dev/null || true
  made=$(grep -E '^[0-9]+$' "$place/done" | tail -n 1)
  kept=$("$work" --count "$place/job" 4) || { echo "After kill $i the job does not open."; exit 1; }
  if ((kept < made - 1)); then
    echo "After kill $i $kept of $made edits are there."
    exit 1
  fi
  lost=$((lost + (kept < made ? 1 : 0))) edits=$((edits + made))
done
echo "$times kills during $edits edits: the job always opened; $lost times the edit in flight was lost, never more."
