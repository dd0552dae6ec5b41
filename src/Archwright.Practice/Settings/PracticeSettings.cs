using Archwright.Dentition.Teeth;

namespace Archwright.Practice.Settings;

/// <summary>How figures of force are shown.</summary>
public enum ShownForce
{
    /// <summary>Centinewton.</summary>
    Centinewton,

    /// <summary>Newton.</summary>
    Newton,

    /// <summary>Gram-force.</summary>
    GramForce,
}

/// <summary>What a practice has settled for itself.</summary>
public sealed record PracticeSettings
{
    /// <summary>Fewest minutes of a session.</summary>
    public const int ShortestSession = 5;

    /// <summary>Most minutes of a session: a working day.</summary>
    public const int LongestSession = 600;

    /// <summary>Name of the practice.</summary>
    public string Name { get; init; } = "";

    /// <summary>True for the demo practice: all its patients are invented.</summary>
    public bool IsDemo { get; init; }

    /// <summary>How teeth are numbered on screens.</summary>
    public ToothNotation Notation { get; init; } = ToothNotation.Iso;

    /// <summary>How forces are shown.</summary>
    public ShownForce Force { get; init; } = ShownForce.Centinewton;

    /// <summary>Minutes without a touch after which one is signed out.</summary>
    public int SessionMinutes { get; init; } = 60;

    /// <summary>Years that records are kept; null: for ever, since nothing is deleted unless a practice says
    /// so.</summary>
    public int? RetentionYears { get; init; }

    /// <summary>Age up to which a record is kept in any case; null for none.</summary>
    public int? RetentionAge { get; init; }

    /// <summary>Address under which patients reach this program, as "https://braces.example"; empty for the address
    /// that the staff use.</summary>
    public string PublicAddress { get; init; } = "";
}
