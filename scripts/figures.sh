#!/usr/bin/env bash
# Prints figures of the practice app: start, pages, memory, drag to forces, fifty people at once, by requests and on live
# screens in browsers; and, with a number of patients, day, search and file of a practice of that size on both databases:
# scripts/figures.sh [PATIENTS]
# Run it on a machine that does nothing else. Needs Chromium and PostgreSQL; 100000 patients take two times five
# gigabytes.
set -eu
cd "$(dirname "$0")/.."
. scripts/need-dotnet.sh

print() {
  dotnet build "tests/$1" -c Release -v q --nologo >&2
  "artifacts/bin/$1/release/$1" -class "$2" -showLiveOutput -noColor | sed -n 's/.*\[OUTPUT\] //p'
}

ARCHWRIGHT_FIGURES=1 print Archwright.Browser.Tests '*FiguresTests'
if [ $# -gt 0 ]; then
  ARCHWRIGHT_LARGE=$1 print Archwright.Storage.Tests '*LargePracticeTests'
fi
