#!/usr/bin/env bash
# Fills a part of docs/performance.md with fresh figures: scripts/performance.sh quick | arches [COUNT] | calculix
# Run it on a machine that does nothing else; what it measured on stands in the part itself.
set -eu
cd "$(dirname "$0")/.."
. scripts/need-dotnet.sh

page=docs/performance.md
fresh=$(mktemp)
trap 'rm -f "$fresh"' EXIT
part=${1:-}
load=$(cut -d' ' -f1 /proc/loadavg)
case $part in
  quick)
    project=Archwright.Benchmarks
    dotnet build "benchmarks/$project" -c Release -v q --nologo >&2
    { echo '```text'; "artifacts/bin/$project/release/$project" --quick; echo '```'; } >"$fresh" ;;
  arches) scripts/random-arches.sh "${2:-10000}" | grep '^|\|arches in' | sed 's/^\([0-9]\)/\n\1/' >"$fresh" ;;
  calculix) { echo '```text'; benchmarks/calculix/run; echo '```'; } >"$fresh" ;;
  *)
    echo "usage: scripts/performance.sh quick | arches [COUNT] | calculix" >&2
    exit 2 ;;
esac

{
  echo
  echo "Measured $(date -u +%Y-%m-%d) at $(git rev-parse --short HEAD), load of the machine before: $load."
  echo
  cat "$fresh"
  echo
} >"$fresh.part"
awk -v name="$part" -v file="$fresh.part" '
  $0 == "<!-- " name " -->" { print; while ((getline line < file) > 0) print line; skip = 1; next }
  $0 == "<!-- /" name " -->" { skip = 0 }
  !skip' "$page" >"$fresh"
cat "$fresh" >"$page"
rm -f "$fresh.part"
