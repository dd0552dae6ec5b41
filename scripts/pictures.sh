#!/usr/bin/env bash
# Photographs every screen of the practice app, light and dark, on tablet and phone: scripts/pictures.sh [FOLDER]
# The few that the documents show go to docs/img; all of them to the folder, where one is named. Needs Chromium.
set -eu
cd "$(dirname "$0")/.."
. scripts/need-dotnet.sh

folder=${1:-$(mktemp -d)}
mkdir -p "$folder/few" docs/img
tests=tests/Archwright.Browser.Tests
dotnet build "$tests" -c Release -v q --nologo
ARCHWRIGHT_PICTURES=$(cd "$folder" && pwd) \
  artifacts/bin/Archwright.Browser.Tests/release/Archwright.Browser.Tests -class '*PicturesTests'
cp "$folder"/few/*.png docs/img/
ls -l docs/img/app-*.png
