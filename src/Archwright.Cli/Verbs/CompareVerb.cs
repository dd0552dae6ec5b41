using System.CommandLine;
using Archwright.Cli.Pictures;
using Archwright.Cli.Running;
using Archwright.Cli.Tables;
using Archwright.Cli.Units;
using Archwright.Dentition.Catalogue;
using Archwright.Dentition.Comparison;
using Archwright.Dentition.Teeth;
using Archwright.Exchange.CaseFiles;
using Archwright.Exchange.Csv;
using Archwright.Exchange.Results;

namespace Archwright.Cli.Verbs;

/// <summary><c>archwright compare</c>: every wire of the catalogue, or of the stock, on one arch.</summary>
internal static class CompareVerb
{
    private const int UsualTop = 12;

    /// <summary>Makes the verb.</summary>
    public static Command Create(Terminal terminal)
    {
        Argument<string> file = Words.Needed("CASE", "case file, as archwright arch makes them");
        var stock = new Option<string?>("--stock")
        {
            Description = "Compare only the wires of this file: ids, one a line, or CSV with a column wire.",
            HelpName = "FILE",
        };
        Option<string?> limits = LimitFiles.Option();
        UsualOption<int> top = NumberOption.Whole(
            "--top", $"Wires to show, the best first. Usual: {UsualTop}.", 1, 1000, UsualTop);
        var all = new Option<bool>("--all") { Description = "Show every wire." };
        var lasting = new Option<bool>("--lasting")
        {
            Description = "How the force lasts as the teeth come in: at 80, 75, 50 and 25 % of the offsets, for the "
                + "wires shown.",
        };
        var quick = new Option<bool>("--quick")
        {
            Description = "Only the figures on engagement: sooner, without working forces and permanent set.",
        };
        lasting.Validators.Add(result =>
        {
            if (result.GetValue(lasting) && result.GetValue(quick))
                result.AddError("--lasting needs the working figures, which --quick leaves out. Give one of them.");
        });
        Option<string?> plot = CommonOptions.Plot("Draw the ranking and what the best wire does into this file.");
        UsualOption<ForceUnit> unit = CommonOptions.Unit();
        UsualOption<ToothNotation> teeth = CommonOptions.Teeth();
        Option<bool> json = CommonOptions.Json();
        var verb = new Verb("compare", "Try every wire on the arch of a case, and rank them with reasons.")
        {
            Examples =
            [
                ("archwright compare case.json", "the best wires of the catalogue on this arch"),
                ("archwright compare case.json --stock drawer.txt --plot compare.svg",
                    "only what is in the drawer, with a picture"),
                ("archwright compare case.json --lasting --top 5",
                    "how the forces of the best five fade as the teeth come in"),
                ("archwright compare case.json --limits ours.csv --all",
                    "every wire, against the practice's own ceilings"),
            ],
        };
        verb.Add(file);
        foreach (Option option in new Option[] { stock, limits, top, all, lasting, quick, plot, unit, teeth, json })
            verb.Add(option);
        verb.SetAction((parsed, cancellation) => Task.Run(() => Run(
            terminal,
            new Request(
                parsed.GetRequiredValue(file),
                parsed.GetValue(stock),
                parsed.GetValue(limits),
                parsed.GetValue(all) ? int.MaxValue : top.Of(parsed),
                parsed.GetValue(lasting),
                parsed.GetValue(quick),
                parsed.GetValue(plot),
                unit.Of(parsed),
                teeth.Of(parsed),
                parsed.GetValue(json)),
            cancellation)));
        return verb;
    }

    private static int Run(Terminal terminal, Request request, CancellationToken cancellation)
    {
        CaseFile file = Cases.Load(request.File);
        IReadOnlyList<CatalogueWire> wires = request.Stock is { } stock
            ? Cases.Value(StockReader.Read(stock), stock)
            : WireCatalogue.Default.Wires;
        ForceCeilings ceilings = LimitFiles.Load(request.Limits);
        IReadOnlyList<ComparedWire> ranked = Compare(terminal, file, wires, ceilings, request, cancellation);
        if (request.Plot is { } picture)
        {
            OutputFiles.Write("--plot", picture,
                path => ComparePicture.Write(path, file, ranked, request.Unit, request.Teeth));
        }

        if (request.Json)
        {
            CompareJson.Write(ranked, file.Arrangement, terminal.OutputStream);
            terminal.OutputStream.Flush();
        }
        else
        {
            CompareReport.Write(terminal, file, ranked, request.Unit, request.Teeth, request.Top);
        }

        return ranked.Any(wire => wire.Engaged) ? ExitCode.Done : ExitCode.NotPossible;
    }

    private static IReadOnlyList<ComparedWire> Compare(
        Terminal terminal, CaseFile file, IReadOnlyList<CatalogueWire> wires, ForceCeilings ceilings, Request request,
        CancellationToken cancellation)
    {
        try
        {
            using var progress = new ProgressLine(terminal, "Comparing wires", wires.Count);
            IReadOnlyList<ComparedWire> ranked = request.Quick
                ? WireComparison.Run(file.Arrangement, file.Axes, wires, ceilings, progress, cancellation)
                : WireComparison.AtWork(file.Arrangement, file.Axes, wires, ceilings, progress, cancellation);
            if (!request.Lasting)
                return ranked;

            ComparedWire[] shown = [.. ranked.Take(request.Top)];
            using var following = new ProgressLine(terminal, "Following them as the teeth come in", shown.Length);
            return
            [
                .. WireComparison.WithLasting(shown, file.Arrangement, file.Axes, following, cancellation),
                .. ranked.Skip(request.Top),
            ];
        }
        catch (ArgumentException fault)
        {
            throw new Refusal("the case cannot be set up: " + Plainly.Message(fault), "Check the slots of the case.");
        }
    }

    private sealed record Request(
        string File, string? Stock, string? Limits, int Top, bool Lasting, bool Quick, string? Plot,
        ForceUnit Unit, ToothNotation Teeth, bool Json);
}
