# Restores, builds and runs all tests: .\test.ps1 [options of 'dotnet test'].
# The last line is 'N passed, N failed'; exits non-zero when a test failed, when none ran, or when it does not build.
Set-Location -LiteralPath $PSScriptRoot
. ./scripts/need-dotnet.ps1
if (-not $hasDotnet) { exit 2 }

$total = 0; $failed = 0; $passed = 0; $skipped = 0
dotnet build Archwright.slnx -c Release -v q --nologo | Write-Host
$code = $LASTEXITCODE
if ($code -eq 0) {
    dotnet test --solution Archwright.slnx -c Release --no-build --no-ansi --no-progress @args | ForEach-Object {
        Write-Host $_
        if ($_ -match '^  total: (\d+)') { $total = [int] $Matches[1] }
        if ($_ -match '^  failed: (\d+)') { $failed = [int] $Matches[1] }
        if ($_ -match '^  succeeded: (\d+)') { $passed = [int] $Matches[1] }
        if ($_ -match '^  skipped: (\d+)') { $skipped = [int] $Matches[1] }
    }
    $code = $LASTEXITCODE
}

if ($total -eq 0) { Write-Host 'No test ran.' }
$line = "$passed passed, $failed failed"
if ($skipped -gt 0) { $line += ", $skipped skipped" }
Write-Host $line
if ($code -eq 0 -and ($passed -eq 0 -or $failed -gt 0)) { $code = 1 }
exit $code
