using System.Collections.Immutable;
using System.CommandLine;
using Archwright.Cli.Pictures;
using Archwright.Cli.Running;
using Archwright.Cli.Tables;
using Archwright.Cli.Units;
using Archwright.Dentition.Catalogue;
using Archwright.Exchange.CaseFiles;
using Archwright.Exchange.Results;
using Archwright.Mechanics.Bench;

namespace Archwright.Cli.Verbs;

/// <summary><c>archwright bend</c>: a three-point bend, loaded and unloaded.</summary>
internal static class BendVerb
{
    /// <summary>Span, deflection and temperature of the standard (from memory).</summary>
    private const double UsualSpan = 10, UsualTop = 3.1, UsualTemperature = 36;

    private const double ReadEvery = 0.5;
    private const int MostWires = 6;

    /// <summary>Makes the verb.</summary>
    public static Command Create(Terminal terminal)
    {
        var file = new Option<string?>("--case")
        {
            Description = "A bend case file; in place of the other figures.", HelpName = "FILE",
        };
        var wires = new Option<string[]>("--wire")
        {
            Description = "A wire of the catalogue; several times to lay their curves over each other.",
            HelpName = "ID",
        };
        UsualOption<double> span = NumberOption.Real(
            "--span", "Distance of the knife edges.", "mm", 4, 50, UsualSpan);
        UsualOption<double> top = NumberOption.Real(
            "--to", "Largest deflection; at most 0.45 of the span.", "mm", 0.1, 20, UsualTop);
        UsualOption<double> temperature = NumberOption.Real(
            "--temperature", "Temperature of the wire.", "degC", -5, 80, UsualTemperature);
        Option<string?> plot = CommonOptions.Plot("Draw force against deflection into this file.");
        UsualOption<ForceUnit> unit = CommonOptions.Unit();
        Option<bool> json = CommonOptions.Json();
        var verb = new Verb("bend", "Bend a wire in three points as ISO 15841 does: loading and unloading.")
        {
            Examples =
            [
                ("archwright bend --wire niti-016", "0 to 3.1 mm and back over 10 mm at 36 degrees"),
                ("archwright bend --wire niti-016 --wire ss-016 --plot bend.svg", "two wires in one picture"),
                ("archwright bend --case bend.json --json", "a path of its own, for another program"),
            ],
        };
        foreach (Option option in new Option[] { file, wires, span, top, temperature, plot, unit, json })
            verb.Add(option);
        verb.SetAction(parsed =>
        {
            Option[] figures = [wires, span, top, temperature];
            Option? given = figures.FirstOrDefault(option => parsed.GetResult(option) is { Implicit: false });
            string? casePath = parsed.GetValue(file);
            if (casePath is not null && given is { } both)
            {
                throw new Refusal($"{both.Name} and --case do not go together.",
                    "A bend case holds all its figures: leave out one of the two.");
            }

            string[] ids = parsed.GetValue(wires) ?? [];
            if (casePath is null && ids.Length == 0)
            {
                throw new Refusal("bend needs --case FILE, or --wire ID.",
                    "As in: archwright bend --wire niti-016");
            }

            ImmutableArray<BendCase> tests = casePath is not null
                ? [Cases.Value(BendCaseReader.Read(casePath), casePath)]
                : FromOptions(ids, span.Of(parsed), top.Of(parsed), temperature.Of(parsed));
            return Run(terminal, tests, unit.Of(parsed), parsed.GetValue(plot), parsed.GetValue(json));
        });
        return verb;
    }

    private static int Run(
        Terminal terminal, ImmutableArray<BendCase> tests, ForceUnit unit, string? plot, bool json)
    {
        if (json && tests.Length > 1)
        {
            throw new Refusal("--json writes one bend.", "Give one --wire, or leave --json out.");
        }

        ImmutableArray<(BendCase Case, BendResult Result)> bends = [.. tests.Select(test => (test, Bend(test)))];
        if (plot is not null)
            OutputFiles.Write("--plot", plot, path => BendPicture.Write(path, bends, unit));

        if (json)
        {
            BendJson.Write(bends[0].Result, terminal.OutputStream);
            terminal.OutputStream.Flush();
        }
        else
        {
            BendReport.Write(terminal, bends, unit);
        }

        return ExitCode.Done;
    }

    private static BendResult Bend(BendCase test)
    {
        try
        {
            return BendTest.Run(test.Wire, test.Span, test.Temperature, test.Path);
        }
        catch (InvalidOperationException fault)
        {
            throw new Refusal(ExitCode.NotPossible, [new Complaint(fault.Message, Mend: "Try a smaller deflection.")]);
        }
    }

    private static ImmutableArray<BendCase> FromOptions(string[] ids, double span, double top, double temperature)
    {
        if (ids.Length > MostWires)
            throw new Refusal($"{ids.Length} wires are too many for one picture.", $"Give {MostWires} at most.");

        if (top > BendTest.MostShare * span)
        {
            throw new Refusal($"--to {top:0.##} mm is too far for a span of {span:0.##} mm: the wire slips between "
                + "the knife edges.", $"Go to {BendTest.MostShare * span:0.##} mm at most.");
        }

        return
        [
            .. ids.Select(id => WireNames.Find(WireCatalogue.Default, id)).Select(wire => new BendCase
            {
                Wire = wire.WholeWire,
                WireId = wire.Id,
                Span = span,
                Temperature = temperature,
                Path = BendStep.ThereAndBack(top, ReadEvery),
            }),
        ];
    }
}
