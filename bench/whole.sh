#!/usr/bin/env bash
# Times the whole program on the demo: six roughs of a page with 5 + 1 panels and of nine panels,
# then the proof of all eight pages. Peak memory by GNU time when it is installed.
set -euo pipefail
root=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)
program=${1:-$root/build/tierwright}
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
timed() {
  local name=$1
  shift
  echo "== $name"
  if [ -x /usr/bin/time ]; then
    /usr/bin/time -f '%e s wall, %U s user, %M kB peak' "$@" | grep -E '^Page' || true
  else
    local start=$EPOCHREALTIME
    "$@" | grep -E '^Page' || true
    awk -v a="$start" -v b="$EPOCHREALTIME" 'BEGIN { printf "%.2f s wall\n", b - a }'
  fi
}
cp -r "$root/demo/the-low-bell" "$work/job"
timed "six roughs, 4 + 1 panels (page 4)" "$program" roughs "$work/job" --page 4
"$program" brief "$work/job" --page 6 --set dominant=p6-6 >/dev/null
timed "six roughs, 5 + 1 panels (page 6)" "$program" roughs "$work/job" --page 6
timed "six roughs, 9 panels (page 5)" "$program" roughs "$work/job" --page 5
"$program" roughs "$work/job" >/dev/null
timed "proof of eight pages" "$program" proof "$work/job" --out "$work/proof"
