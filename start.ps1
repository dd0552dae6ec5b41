# Builds Archwright and compares every wire of the catalogue on one arch: .\start.ps1 [CASE]
param([string] $Case)
$ErrorActionPreference = 'Stop'
if ($Case) { $Case = (Resolve-Path -LiteralPath $Case).Path }
Set-Location -LiteralPath $PSScriptRoot
if (-not $Case) { $Case = 'examples/upper-high-canine.json' }
. ./scripts/need-dotnet.ps1
if (-not $hasDotnet) { exit 2 }

$picture = Join-Path $PSScriptRoot 'archwright-compare.svg'
$program = Join-Path $PSScriptRoot 'artifacts/bin/Archwright.Cli/release/archwright.dll'

Write-Host 'Building Archwright (a minute or two the first time, seconds later) ...'
$told = dotnet build src/Archwright.Cli -c Release -v q --nologo
if ($LASTEXITCODE -ne 0) {
    $told | Write-Host
    Write-Host 'The build failed; the reason stands above. The first build fetches packages and needs the internet.'
    exit 3
}

Write-Host "Which wires can go in?  $Case"
dotnet $program compare $Case --plot $picture
if ($LASTEXITCODE -ne 0) { exit $LASTEXITCODE }
Write-Host "The picture: $picture"
Write-Host "Next: dotnet $program --help"
