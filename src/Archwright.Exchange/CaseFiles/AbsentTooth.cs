using Archwright.Dentition.Teeth;

namespace Archwright.Exchange.CaseFiles;

/// <summary>A tooth of the arch that is not there, and why.</summary>
/// <param name="Tooth">Which.</param>
/// <param name="Why"><see cref="Extracted"/>, <see cref="Unerupted"/> or <see cref="Missing"/>.</param>
public sealed record AbsentTooth(ToothNumber Tooth, string Why)
{
    /// <summary>Taken out: its place is to be closed, or kept.</summary>
    public const string Extracted = "extracted";

    /// <summary>Not through yet: no crown meets its neighbours.</summary>
    public const string Unerupted = "unerupted";

    /// <summary>Never formed, or lost.</summary>
    public const string Missing = "missing";
}
