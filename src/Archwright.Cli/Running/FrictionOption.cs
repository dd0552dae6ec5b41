using System.CommandLine;
using System.Globalization;
using Archwright.Cli.Tables;
using Archwright.Dentition.Catalogue;
using Archwright.Exchange.CaseFiles;

namespace Archwright.Cli.Running;

/// <summary><c>--friction</c>: how the wire rubs in its slots.</summary>
internal static class FrictionOption
{
    private const double Most = 2;

    /// <summary>Makes the option.</summary>
    public static Option<string?> Create()
    {
        var option = new Option<string?>("--friction")
        {
            Description = "Friction between wire and slots: as the case says (usual), none, the coefficient of the "
                + "catalogue for the wire's alloy on steel (wet: in saliva, dry), or a coefficient.",
            HelpName = "none|wet|dry|N",
        };
        option.CompletionSources.Add("none", "wet", "dry");
        option.Validators.Add(result =>
        {
            if (result.Tokens is [{ Value: var typed }] && !IsWord(typed) && !TryRead(typed, out _))
            {
                result.AddError($"--friction is none, wet, dry or a coefficient from 0 to {Most:0}, not '{typed}'.");
            }
        });
        return option;
    }

    /// <summary>The case with the friction that was asked for.</summary>
    /// <param name="file">The case.</param>
    /// <param name="asked">What was typed; null for nothing.</param>
    /// <exception cref="Refusal">The wire is none of the catalogue, so that wet and dry say nothing.</exception>
    public static CaseFile On(CaseFile file, string? asked)
    {
        if (asked is null)
            return file;
        if (TryRead(asked, out double coefficient))
            return file.WithFriction(coefficient);
        if (asked == "none")
            return file.WithFriction(0);

        CatalogueAlloy alloy = CaseWords.Alloy(file) ?? throw new Refusal(
            $"--friction {asked} asks for a figure of the catalogue, and the wire of the case is written out.",
            "Give the coefficient itself, as in --friction 0.2.");
        return file.WithFriction(asked == "wet" ? alloy.FrictionWet.Value : alloy.FrictionDry.Value);
    }

    private static bool IsWord(string typed) => typed is "none" or "wet" or "dry";

    private static bool TryRead(string typed, out double value) =>
        double.TryParse(typed, NumberStyles.Float, CultureInfo.InvariantCulture, out value)
            && value is >= 0 and <= Most;
}
