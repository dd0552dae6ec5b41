using Archwright.Dentition.Teeth;
using Archwright.Practice.Values;

namespace Archwright.Practice.Visits;

/// <summary>How positions came to be known.</summary>
public enum PositionsFrom
{
    /// <summary>Given tooth by tooth: measured, or moved by hand on the picture.</summary>
    Measured,

    /// <summary>From the five contact displacements of the front teeth.</summary>
    Contacts,

    /// <summary>Looked at, and found as the forecast said.</summary>
    AsForecast,

    /// <summary>Looked at, and found as at the last visit.</summary>
    AsLastSeen,
}

/// <summary>Where the teeth of one arch stood on a day.</summary>
/// <param name="On">The day on which somebody looked.</param>
/// <param name="From">How they came to be known.</param>
/// <param name="Positions">A tooth not named stood in its place.</param>
public sealed record ArchSeen(DateOnly On, PositionsFrom From, ToothMap<ToothOffset> Positions);

/// <summary>Something that had come off or broken.</summary>
/// <param name="Tooth">Where.</param>
/// <param name="What">In words: "bracket off".</param>
/// <param name="Mended">Whether it was mended at this visit.</param>
public sealed record Breakage(ToothNumber Tooth, string What, bool Mended);

/// <summary>A photograph; the file itself lies in the practice's folder.</summary>
/// <param name="File">Its name there.</param>
/// <param name="View">What it shows: "upper occlusal".</param>
/// <param name="Sha256">Digest of the file as it was added, in hexadecimal.</param>
public sealed record Photo(string File, string View, string Sha256);

/// <summary>Discomfort after the last visit, 0 none to 10 worst, as the patient remembers it; null where not asked.
/// </summary>
/// <param name="FourHours">After four hours.</param>
/// <param name="OneDay">After a day.</param>
/// <param name="ThreeDays">After three days.</param>
/// <param name="SevenDays">After a week.</param>
public sealed record Discomfort(int? FourHours, int? OneDay, int? ThreeDays, int? SevenDays)
{
    /// <summary>The worst that was named; null when nothing was asked.</summary>
    public int? Worst => new[] { FourHours, OneDay, ThreeDays, SevenDays }.Max();
}

/// <summary>How clean teeth and gums are.</summary>
public enum Hygiene
{
    /// <summary>Clean.</summary>
    Good,

    /// <summary>Some plaque.</summary>
    Fair,

    /// <summary>Plaque and bleeding.</summary>
    Poor,
}
