# Builds Archwright and opens the practice app with its demo practice: .\start.ps1 [options of 'archwright serve']
# With a case file it compares every wire of the catalogue on that arch: .\start.ps1 CASE [options of 'archwright compare']
$ErrorActionPreference = 'Stop'
$here = (Get-Location).Path
$usage = @'
.\start.ps1                 builds, and opens the practice app with its demo practice
.\start.ps1 --port 6000     the same with options of 'archwright serve': --port N, --data FOLDER, --policy FILE.json
.\start.ps1 CASE            compares every wire of the catalogue on the arch of a case file
.\start.ps1 CASE --top 5    the same with options of 'archwright compare'
'@

$case = ''
$options = @($args)
if ($options.Count -gt 0 -and $options[0] -in '-h', '--help') { $usage; exit 0 }
if ($options.Count -gt 0 -and -not "$($options[0])".StartsWith('-')) {
    $case = "$($options[0])"
    $options = @($options | Select-Object -Skip 1)
    if (-not (Test-Path -LiteralPath $case -PathType Leaf)) {
        [Console]::Error.WriteLine("There is no case file $case. What start.ps1 takes:")
        [Console]::Error.WriteLine($usage)
        exit 2
    }
}

Set-Location -LiteralPath $PSScriptRoot
. ./scripts/need-dotnet.ps1
if (-not $hasDotnet) { Set-Location -LiteralPath $here; exit 2 }

$picture = Join-Path $PSScriptRoot 'archwright-compare.svg'
$program = Join-Path $PSScriptRoot 'artifacts/bin/Archwright.Cli/release/archwright.dll'

Write-Host 'Building Archwright (a minute or two the first time, seconds later) ...'
$told = dotnet build src/Archwright.Cli -c Release -v q --nologo
$built = $LASTEXITCODE
Set-Location -LiteralPath $here # where files and folders that the options name are looked for
if ($built -ne 0) {
    $told | Write-Host
    Write-Host 'The build failed; the reason stands above. The first build fetches packages and needs the internet.'
    exit 3
}

if (-not $case) {
    # Opens the browser once the app says that it listens.
    dotnet $program serve --demo @options | ForEach-Object {
        Write-Host $_
        if ($_ -like 'http://*') { Start-Process $_ }
    }
    exit $LASTEXITCODE
}

Write-Host "Which wires can go in?  $case"
dotnet $program compare $case --plot $picture @options
if ($LASTEXITCODE -ne 0) { exit $LASTEXITCODE }
Write-Host "The picture: $picture"
Write-Host "Next: dotnet $program --help"
