#!/usr/bin/env bash
# Includes go only downward: a folder may include itself and what its line below names.
set -euo pipefail
cd "$1"
declare -A may=(
  [base]=""
  [geometry]="base"
  [job]="base geometry"
  [script]="base geometry job"
  [arrange]="base geometry job"
  [stage]="base geometry job"
  [letter]="base geometry job"
  [read]="base geometry job"
  [ink]="base geometry job"
  [press]="base geometry job"
  [review]="base geometry job arrange stage letter read"
  [compose]="base geometry job arrange stage letter read review"
  [command]="base geometry job script arrange stage letter read ink press review compose"
  [desk]="base geometry job script arrange stage letter read ink press review compose command"
  [cli]="base geometry job command"
)
wrong=0
for folder in src/*/; do
  name=$(basename "$folder")
  if [ -z "${may[$name]+known}" ]; then
    echo "src/$name: no line in tests/check_includes.sh says what it may include."
    wrong=1
    continue
  fi
  while IFS=: read -r file line text; do
    target=$(sed -E 's/.*"([a-z_]+)\/.*/\1/' <<<"$text")
    case " $name ${may[$name]} " in
      *" $target "*) ;;
      *) echo "$file:$line: src/$name may not include src/$target."; wrong=1 ;;
    esac
  done < <(grep -rnE '^#include "[a-z_]+/' "$folder" --include='*.h' --include='*.cpp' || true)
done
[ "$wrong" -eq 0 ] && echo "Includes: all go downward."
exit "$wrong"
