#!/usr/bin/env bash
# Writes docs/theory/convergence.md: error of superelastic problems against mesh, stride and fibres, all computed.
set -eu
cd "$(dirname "$0")/.."
. scripts/need-dotnet.sh

tests=Archwright.Mechanics.Tests
dotnet build "tests/$tests" -c Release -v q --nologo >&2
ARCHWRIGHT_CONVERGENCE="$PWD/docs/theory/convergence.md" \
  dotnet "artifacts/bin/$tests/release/$tests.dll" -method '*ConvergenceTests.The_page_of_tables'
