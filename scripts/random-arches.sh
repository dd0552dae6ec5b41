#!/usr/bin/env bash
# Engages random arches, elastic and of every alloy, lets them follow their teeth with friction, and prints per class how
# many are engaged, the worst residual and the slowest solve: scripts/random-arches.sh [COUNT], 10000 of each when left
# out. Exits 1 when one failed without a reason.
set -eu
cd "$(dirname "$0")/.."
. scripts/need-dotnet.sh

tests=Archwright.Mechanics.Tests
dotnet build "tests/$tests" -c Release -v q --nologo >&2
log=$(mktemp)
trap 'rm -f "$log"' EXIT
code=0
ARCHWRIGHT_ARCHES=${1:-10000} dotnet "artifacts/bin/$tests/release/$tests.dll" \
  -class '*RandomArchTests' -showLiveOutput -noColor >"$log" 2>&1 || code=$?
sed -n 's/.*\[OUTPUT\] //p' "$log"
[ "$code" = 0 ] || grep -v OUTPUT "$log" >&2
exit "$code"
