using Archwright.Exchange.CaseFiles;

namespace Archwright.Cli.Tables;

/// <summary>What stands under every answer.</summary>
internal static class Cautions
{
    /// <summary>Who decides.</summary>
    public const string Decision = "A calculation, not a prescription: the treating clinician decides.";

    /// <summary>What is left out.</summary>
    public const string LeftOut = "Computed without friction and" + Taken;

    private const string WithFriction = "Friction is that of a bench, and acts once the wire is in; computed" + Taken;

    private const string Taken =
        " with teeth that do not yield; positions, slots and wire are taken as given. "
        + "Look at roots, gums, vitality and medical history first.";

    /// <summary>What is left out of a case.</summary>
    public static string LeftOutOf(CaseFile file) => file.HasFriction ? WithFriction : LeftOut;

    /// <summary>About ceilings.</summary>
    public const string Ceilings =
        "Ceilings are teaching values to warn at, not limits of safety; --limits FILE sets those of the practice.";

    /// <summary>About forecasts.</summary>
    /// <param name="file">The case: with friction, lips and cheeks, or without.</param>
    public static string Forecast(CaseFile file) =>
        $"Average teeth, bone and crowns; {(file.HasFriction ? "friction of a bench" : "no friction")}; "
        + $"{Lips(file.SoftTissue)}; no bite. "
        + "People differ several times over: expect less movement than computed where crowns lack room, and look at "
        + "the teeth, not at the calendar.";

    private static string Lips(double factor) => factor switch
    {
        0 => "no lips or cheeks",
        1 => "lips and cheeks of average people",
        _ => FormattableString.Invariant($"lips and cheeks {factor:0.##} times as firm as on average"),
    };

    /// <summary>When a forecast fell back.</summary>
    public const string NoWholeLaw =
        "With its whole law the wire could not be followed through this time; what stands here is computed with its "
        + "first modulus.";

    /// <summary>About alloys that transform.</summary>
    public const string InitialModulus =
        "This alloy transforms: the forces are those of its initial modulus; beyond the elastic limit the real ones "
        + "are lower.";
}
