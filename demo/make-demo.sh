#!/usr/bin/env bash
# Copies the demo job to out/demo, makes roughs for all its pages, writes the proof.
# A former out/demo is kept once, as out/demo.before.
set -euo pipefail
root=$1
program=$root/build/tierwright
out=$root/out

mkdir -p "$out"
if [ -e "$out/demo" ]; then
  rm -rf "$out/demo.before"
  mv "$out/demo" "$out/demo.before"
fi
cp -r "$root/demo/the-low-bell" "$out/demo"
"$program" roughs "$out/demo"
"$program" proof "$out/demo" --out "$out/demo/out/proof"
