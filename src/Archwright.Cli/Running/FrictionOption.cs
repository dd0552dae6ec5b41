using System.CommandLine;
using Archwright.Cli.Tables;
using Archwright.Dentition.Catalogue;
using Archwright.Exchange.CaseFiles;
using Archwright.Treatment.Forecasts;

namespace Archwright.Cli.Running;

/// <summary><c>--friction</c>: how the wire rubs in its slots.</summary>
internal static class FrictionOption
{
    /// <summary>Makes the option for the wire of a case.</summary>
    public static Option<string?> Create() => Create("for the wire's alloy");

    /// <summary>Makes the option for many wires.</summary>
    public static Option<string?> CreateForMany() => Create("for the alloy of each wire");

    private static Option<string?> Create(string whose)
    {
        var option = new Option<string?>("--friction")
        {
            Description = "Friction between wire and slots: as the case says (usual), none, the coefficient of the "
                + $"catalogue {whose} on steel (wet: in saliva, dry), or a coefficient.",
            HelpName = "none|wet|dry|N",
        };
        option.CompletionSources.Add("none", "wet", "dry");
        option.Validators.Add(result =>
        {
            if (result.Tokens is [{ Value: var typed }] && !FrictionChoice.TryRead(typed, out _))
            {
                result.AddError(
                    $"--friction is none, wet, dry or a coefficient from 0 to {FrictionChoice.Most:0}, not '{typed}'.");
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
        if (Read(asked) is not { } choice)
            return file;
        if (choice.Coefficient is { } coefficient)
            return file.WithFriction(coefficient);

        CatalogueAlloy alloy = CaseWords.Alloy(file) ?? throw new Refusal(
            $"friction '{asked}' asks for a figure of the catalogue, and the wire of the case is written out.",
            "Give the coefficient itself, as 0.2.");
        return file.WithFriction(choice.On(alloy));
    }

    /// <summary>What was typed, checked; null for nothing.</summary>
    public static FrictionChoice? Read(string? asked) =>
        asked is not null && FrictionChoice.TryRead(asked, out FrictionChoice? choice) ? choice : null;
}
