using Archwright.Treatment.Forecasts;

namespace Archwright.Web.Api;

/// <summary>Parameters of what a computation takes into account: friction, lips and cheeks.</summary>
internal static class ModelParameters
{
    /// <summary>Name of the parameter for lips and cheeks.</summary>
    public const string SoftTissue = "soft_tissue";

    /// <summary>What the document says of friction.</summary>
    public const string FrictionSays =
        "Friction between wire and slots: none, wet (the catalogue's coefficient in saliva, by alloy), dry, or a "
        + "coefficient from 0 to 2; without it as the case says.";

    /// <summary>What the document says of lips and cheeks.</summary>
    public const string SoftTissueSays =
        "Firmness of lips and cheeks over that of average people, 0 (none) to 20; without it as the case says.";

    /// <summary>Notes a problem where friction cannot be read.</summary>
    public static void CheckFriction(string? text, List<ApiProblem> problems)
    {
        if (text is not null && !FrictionChoice.TryRead(text, out _))
        {
            problems.Add(new ApiProblem(
                "", "friction", $"friction is “{text}”.",
                "Write none, wet, dry or a coefficient from 0 to 2, or leave it out."));
        }
    }

    /// <summary>The firmness; null where it is not given, or with a problem.</summary>
    public static double? Tissue(string? text, List<ApiProblem> problems)
    {
        if (text is null)
            return null;
        if (Treatment.Forecasts.SoftTissue.TryReadFactor(text, out double factor))
            return factor;

        problems.Add(new ApiProblem(
            "", SoftTissue, $"{SoftTissue} is “{text}”.",
            "Give a number from 0, none, to 20; 1 is average. Or leave it out."));
        return null;
    }
}
