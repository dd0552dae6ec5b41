# Dot-sourced by start.ps1 and test.ps1 from the top folder: sets $hasDotnet, or says how to get the .NET 10 SDK.
# (An 'exit' here would leave this file alone, not its caller.)
$env:DOTNET_CLI_UI_LANGUAGE = 'en'
$env:DOTNET_NOLOGO = '1'
$env:DOTNET_CLI_TELEMETRY_OPTOUT = '1'

$hasDotnet = $false
$address = 'https://dotnet.microsoft.com/download/dotnet/10.0'
if (-not (Get-Command dotnet -ErrorAction SilentlyContinue)) {
    Write-Host "Archwright needs the .NET 10 SDK, and no 'dotnet' was found on this computer."
    Write-Host "It is free: $address (take the SDK, not only the runtime). Then run this command again."
    return
}

# In this folder 'dotnet' obeys global.json, so it answers only when an SDK that fits is there.
$null = dotnet --version
if ($LASTEXITCODE -ne 0) {
    Write-Host 'Archwright needs the .NET 10 SDK. This computer has:'
    dotnet --list-sdks | ForEach-Object { Write-Host "  $_" }
    Write-Host "Get it from $address; it can stand beside the others."
    return
}

$hasDotnet = $true
