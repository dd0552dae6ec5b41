# Builds Archwright and opens the practice app with its demo practice: .\start.ps1
# With a case file it compares every wire of the catalogue on that arch instead: .\start.ps1 CASE
param([string] $Case)
$ErrorActionPreference = 'Stop'
if ($Case) { $Case = (Resolve-Path -LiteralPath $Case).Path }
Set-Location -LiteralPath $PSScriptRoot
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

if (-not $Case) {
    # Opens the browser once the app says that it listens.
    dotnet $program serve --demo | ForEach-Object {
        Write-Host $_
        if ($_ -like 'http://*') { Start-Process $_ }
    }
    exit $LASTEXITCODE
}

Write-Host "Which wires can go in?  $Case"
dotnet $program compare $Case --plot $picture
if ($LASTEXITCODE -ne 0) { exit $LASTEXITCODE }
Write-Host "The picture: $picture"
Write-Host "Next: dotnet $program --help"
