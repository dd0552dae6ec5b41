#!/usr/bin/env bash
# Makes the arches of this folder with "archwright arch": examples/make.sh [PROGRAM]
# One line an arch: the file, then what "arch" is told. make.ps1 holds the same lines.
set -eu
cd "$(dirname "$0")"
program=${1:-../artifacts/bin/Archwright.Cli/release/archwright}

arch() {
  file=$1
  shift
  "$program" arch "$@" --out "$file" > /dev/null
  echo "$file"
}

arch upper-mild.json --jaw upper --slot 0.022 --wire niti-014 --contacts 0.5,0.7,0.4,0.6,0.3 --title "Upper arch, mildly irregular"
arch upper-high-canine.json --jaw upper --slot 0.022 --wire niti-014 --tooth 13:labial=1,occlusal=-2,rotation=10,tip=-5 --tooth 12:labial=-0.4,rotation=-8 --title "Upper arch, right canine 2 mm high"
arch upper-blocked-out-lateral.json --jaw upper --slot 0.018 --wire niti-012 --tooth 22:labial=-3,occlusal=-0.5,rotation=10,torque=-8 --tooth 21:mesial=-0.4,rotation=5 --tooth 23:mesial=0.6,rotation=-6 --title "Upper arch, left lateral incisor blocked out palatally"
arch lower-moderate.json --jaw lower --slot 0.018 --wire niti-014 --contacts 1,1.5,0.5,1.5,1 --title "Lower arch, moderately irregular"
arch lower-crowded.json --jaw lower --slot 0.022 --wire niti-014 --contacts 1.5,2.5,1,2,1.5 --tooth 33:occlusal=-0.8 --title "Lower arch, crowded front teeth and a low canine"
arch upper-torque.json --jaw upper --slot 0.022 --wire ss-019x025 --extracted 14,24 --tooth 12:torque=-12 --tooth 11:torque=-14 --tooth 21:torque=-14 --tooth 22:torque=-12 --ends cinched --title "Upper arch without first premolars, incisors upright"
