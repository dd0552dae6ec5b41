using System.CommandLine;
using Archwright.Exchange.CaseFiles;
using Archwright.Treatment.Forecasts;

namespace Archwright.Cli.Running;

/// <summary><c>--soft-tissue</c>: lips and cheeks that resist.</summary>
internal static class SoftTissueOption
{
    /// <summary>Makes the option.</summary>
    public static Option<string?> Create()
    {
        var option = new Option<string?>("--soft-tissue")
        {
            Description = "Lips and cheeks that press back when a crown goes out, and less when it goes in: as the "
                + "case says (usual), none, average, or how many times the average.",
            HelpName = "none|average|N",
        };
        option.CompletionSources.Add("none", "average");
        option.Validators.Add(result =>
        {
            if (result.Tokens is [{ Value: var typed }] && Read(typed) is null)
            {
                result.AddError(
                    $"--soft-tissue is none, average or a number from 0 to {SoftTissue.MostFactor:0}, not '{typed}'.");
            }
        });
        return option;
    }

    /// <summary>The case with the lips and cheeks that were asked for.</summary>
    /// <param name="file">The case.</param>
    /// <param name="asked">What was typed, checked; null for nothing.</param>
    public static CaseFile On(CaseFile file, string? asked) =>
        asked is not null && Read(asked) is { } factor ? file with { SoftTissue = factor } : file;

    /// <summary>The factor that is meant; null where it cannot be read.</summary>
    public static double? Read(string typed) => typed switch
    {
        "none" => 0,
        "average" => 1,
        _ => SoftTissue.TryReadFactor(typed, out double factor) ? factor : null,
    };
}
