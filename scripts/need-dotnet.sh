# Sourced by ./start and ./test from the top folder: finds the .NET 10 SDK, or says how to get it and exits 2.

# Some build servers start without a home folder; dotnet wants a place to write.
if [ -z "${HOME:-}" ]; then
  export HOME=$PWD/artifacts/home
  mkdir -p "$HOME"
fi

export DOTNET_CLI_UI_LANGUAGE=en DOTNET_NOLOGO=1 DOTNET_CLI_TELEMETRY_OPTOUT=1

for place in "${DOTNET_ROOT:-}" "$HOME/.dotnet" /usr/share/dotnet /usr/lib/dotnet /usr/local/share/dotnet; do
  if ! command -v dotnet >/dev/null && [ -n "$place" ] && [ -x "$place/dotnet" ]; then
    export DOTNET_ROOT=$place PATH="$place:$PATH"
  fi
done

if ! command -v dotnet >/dev/null; then
  cat >&2 <<'MESSAGE'
Archwright needs the .NET 10 SDK, and no 'dotnet' was found on this computer.
It is free: https://dotnet.microsoft.com/download/dotnet/10.0 (take the SDK, not only the runtime),
or the package dotnet-sdk-10.0 where your system carries it. Then run this command again.
MESSAGE
  exit 2
fi

# The .NET command line itself needs a system library for languages (ICU), which small machines lack; we do not.
if [ "$(uname -s)" = Linux ] && ! PATH=$PATH:/usr/sbin:/sbin ldconfig -p 2>/dev/null | grep -q libicuuc; then
  export DOTNET_SYSTEM_GLOBALIZATION_INVARIANT=1
fi

# In this folder 'dotnet' obeys global.json, so it answers only when an SDK that fits is there.
if ! told=$(dotnet --version 2>&1); then
  {
    echo "Archwright needs the .NET 10 SDK. This computer has:"
    dotnet --list-sdks 2>/dev/null | sed 's/^/  /'
    echo "Get it from https://dotnet.microsoft.com/download/dotnet/10.0; it can stand beside the others."
    printf '\n%s\n' "$told"
  } >&2
  exit 2
fi
