#!/usr/bin/env bash
# Makes the guide's pictures again: docs/desk/make-pictures.sh JOB PAGE
# Needs xvfb and a window manager (openbox) beside what ./check needs.
set -euo pipefail
here=$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)
root=$(cd "$here/../.." && pwd)
for kind in "1366x768 1 -1366" "1920x1080 1 -1920" "3840x2160 2 -2x"; do
  read -r size scale ending <<<"$kind"
  work=$(mktemp -d)
  cp -r "$1" "$work/job"
  QT_SCALE_FACTOR=$scale xvfb-run -a -s "-screen 0 ${size}x24" bash -c '
    openbox & manager=$!
    sleep 0.5
    "$0" "$@"
    kill $manager' "$root/build/tests/desk/take_pictures" "$work/job" "$2" "$here" "$ending"
  rm -rf "$work"
done
