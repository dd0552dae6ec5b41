using System.Collections.Immutable;
using System.CommandLine;
using Archwright.Cli.Arches;
using Archwright.Cli.Running;
using Archwright.Cli.Tables;
using Archwright.Dentition.Catalogue;
using Archwright.Dentition.Positions;
using Archwright.Dentition.Prescriptions;
using Archwright.Dentition.Teeth;
using Archwright.Exchange.CaseFiles;
using Archwright.Exchange.Csv;
using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Slots;

namespace Archwright.Cli.Verbs;

/// <summary><c>archwright arch</c>: makes a case file, or measures one.</summary>
internal sealed class ArchVerb
{
    private readonly Argument<string?> _case = Words.Optional("CASE", "Case file to measure; in place of making one.");
    private readonly UsualOption<Jaw> _jaw = CommonOptions.Choice(
        "--jaw", "Which arch.", [("upper", Jaw.Upper), ("lower", Jaw.Lower)], Jaw.Upper, sayUsual: false);

    private readonly UsualOption<SlotSize> _slot = CommonOptions.Choice(
        "--slot", "Stated height of the slots in inches.", [("0.018", SlotSize.In018), ("0.022", SlotSize.In022)],
        SlotSize.In022, sayUsual: false);

    private readonly Option<string?> _wire = Text(
        "--wire", "ID", "The wire, as niti-014; archwright wires lists them.");
    private readonly Option<string?> _out = Text("--out", "FILE.json", "Where the case file goes.");
    private readonly Option<string?> _title = Text("--title", "TEXT", "What the case is called.");
    private readonly UsualOption<double[]> _contacts = NumberOption.List(
        "--contacts", "The five contact displacements of the front teeth, from the patient's right to the left.",
        "a,b,c,d,e", "mm", 0, 12, [], count: 5);

    private readonly Option<string?> _positions = Text(
        "--positions", "FILE.csv",
        "Where teeth stand: columns tooth, labial_mm, occlusal_mm, mesial_mm, rotation_deg, tip_deg, torque_deg.");

    private readonly Option<string[]> _tooth = Texts(
        "--tooth", "13:high 2 mm", "How one tooth is off, in words with units or as 13:occlusal=-2,rotation=20; may be "
        + "given again for others.");

    private readonly Option<string?> _without = Text(
        "--without", "14,24", "Teeth that are not there, without a reason; their place stays open.");

    private readonly Option<string?> _unbonded = Text(
        "--unbonded", "12", "Crowns without a bracket: they touch their neighbours and hold no wire.");

    private readonly Option<string?> _extracted = Text("--extracted", "14,24", "Teeth that were taken out.");
    private readonly Option<string?> _unerupted = Text(
        "--unerupted", "13", "Teeth that are not through yet: no crown meets its neighbours.");

    private readonly Option<string[]> _tie = Texts(
        "--tie", "KIND", $"How the wire is tied: {ToothNote.TieWords}; or 13:none for one tooth. Usual: closed.");

    private readonly UsualOption<WireEnds> _ends = CommonOptions.Choice(
        "--ends", "How the ends of the wire are held.",
        [("free", WireEnds.Free), ("stopped", WireEnds.Stopped), ("cinched", WireEnds.Cinched)], WireEnds.Free);

    private readonly UsualOption<ToothNotation> _teeth = CommonOptions.Teeth();
    private readonly Option<bool> _json = CommonOptions.Json();

    private ArchVerb()
    {
    }

    private Option[] Making =>
        [
            _jaw, _slot, _wire, _out, _title, _contacts, _positions, _tooth, _without, _unbonded, _extracted,
            _unerupted, _tie, _ends,
        ];

    /// <summary>Makes the verb.</summary>
    public static Command Create(Terminal terminal)
    {
        var options = new ArchVerb();
        var verb = new Verb("arch", "Make a case file from average teeth and what is seen; or measure one.")
        {
            Examples =
            [
                ("archwright arch --jaw lower --slot 0.018 --wire niti-014 --contacts 1,2,0.5,1.5,1 --out case.json",
                    "lower arch with five measured contact displacements"),
                ("archwright arch --jaw upper --slot 0.022 --wire niti-016 --tooth 13:occlusal=-2,rotation=20 "
                    + "--without 14,24 --out case.json",
                    "canine 2 mm high and turned, first premolars taken out"),
                ("archwright arch case.json", "irregularity and widths of a case"),
            ],
        };
        verb.Add(options._case);
        foreach (Option option in options.Making)
            verb.Add(option);
        verb.Add(options._teeth);
        verb.Add(options._json);
        verb.SetAction(parsed => options.Run(terminal, parsed));
        return verb;
    }

    private int Run(Terminal terminal, ParseResult parsed)
    {
        string path;
        CaseFile file;
        if (parsed.GetValue(_case) is { } given)
        {
            RefuseMaking(parsed);
            path = given;
            file = Cases.Load(given);
            if (file.Jaw == CaseFile.Bench)
            {
                throw new Refusal($"'{given}' is a bench set-up: there is no arch to measure.",
                    "Name a case with teeth.");
            }
        }
        else
        {
            path = Needed(parsed, _out);
            ImmutableArray<AbsentTooth> absent = AbsentOf(parsed);
            ArchRequest request = Request(terminal, parsed);
            file = ArchFile.Of(
                Built(request with { Without = request.Without.Union(absent.Select(one => one.Tooth)) }),
                parsed.GetValue(_title) ?? "") with { Absent = absent };
            OutputFiles.Write("--out", path, to => Save(file, to));
        }

        ArchFigures figures = ArchFigures.Of(file);
        if (parsed.GetValue(_json))
        {
            ArchJson.Write(terminal.OutputStream, path, file, figures);
        }
        else
        {
            ArchReport.Write(terminal, file, figures, _teeth.Of(parsed));
            if (parsed.GetValue(_case) is null)
            {
                Layout.Gap(terminal);
                Layout.Paragraph(terminal, $"Written to {path}. Next: archwright compare {path}");
            }
        }

        return ExitCode.Done;
    }

    private ArchRequest Request(Terminal terminal, ParseResult parsed)
    {
        if (parsed.GetResult(_jaw) is null)
            throw Missing(_jaw);
        if (parsed.GetResult(_slot) is null)
            throw Missing(_slot);

        (Tie tie, ImmutableDictionary<ToothNumber, Tie> ties) = TiesOf(parsed);
        return new ArchRequest
        {
            Jaw = _jaw.Of(parsed),
            Slot = _slot.Of(parsed),
            WireId = WireNames.Find(WireCatalogue.Default, Needed(parsed, _wire)).Id,
            Tie = tie,
            Ties = ties,
            Ends = _ends.Of(parsed),
            Without = TeethOf(parsed, _without),
            Unbonded = TeethOf(parsed, _unbonded),
            Contacts = [.. _contacts.Of(parsed)],
            Positions = PositionsOf(terminal, parsed),
        };
    }

    private static ImmutableHashSet<ToothNumber> TeethOf(ParseResult parsed, Option<string?> option) =>
        parsed.GetValue(option) is { } teeth ? ToothNote.Teeth(option.Name, teeth) : [];

    private ImmutableArray<AbsentTooth> AbsentOf(ParseResult parsed)
    {
        ImmutableHashSet<ToothNumber> extracted = TeethOf(parsed, _extracted);
        ImmutableHashSet<ToothNumber> unerupted = TeethOf(parsed, _unerupted);
        ToothNumber[] twice =
        [
            .. extracted.Intersect(unerupted),
            .. TeethOf(parsed, _unbonded).Intersect(extracted.Union(unerupted).Union(TeethOf(parsed, _without))),
        ];
        if (twice.Length > 0)
        {
            throw new Refusal($"tooth {twice[0]} is given twice.",
                "A tooth is without a bracket, extracted, unerupted or left out: name it once.");
        }

        return
        [
            .. extracted.OrderBy(tooth => tooth.Iso).Select(tooth => new AbsentTooth(tooth, AbsentTooth.Extracted)),
            .. unerupted.OrderBy(tooth => tooth.Iso).Select(tooth => new AbsentTooth(tooth, AbsentTooth.Unerupted)),
        ];
    }

    // A file says where all teeth are; notes of single teeth come on top of it.
    private ImmutableDictionary<ToothNumber, ClinicalOffset> PositionsOf(
        Terminal terminal, ParseResult parsed)
    {
        ImmutableDictionary<ToothNumber, ClinicalOffset> positions = parsed.GetValue(_positions) is { } file
            ? Cases.Value(PositionsReader.Read(file), file).Offsets
            : ImmutableDictionary<ToothNumber, ClinicalOffset>.Empty;
        foreach (string typed in parsed.GetValue(_tooth) ?? [])
        {
            (ToothNumber tooth, ClinicalOffset offset, string? assumed) = ToothNote.Position(typed);
            if (assumed is not null)
                terminal.Error.WriteLine(assumed);
            positions = positions.SetItem(tooth, positions.GetValueOrDefault(tooth, ClinicalOffset.Zero).Plus(offset));
        }

        return positions;
    }

    private (Tie All, ImmutableDictionary<ToothNumber, Tie> Some) TiesOf(ParseResult parsed)
    {
        Tie all = Tie.Closed();
        var some = ImmutableDictionary.CreateBuilder<ToothNumber, Tie>();
        foreach (string typed in parsed.GetValue(_tie) ?? [])
        {
            (ToothNumber? tooth, Tie tie) = ToothNote.TieOf(typed);
            if (tooth is { } one)
                some[one] = tie;
            else
                all = tie;
        }

        return (all, some.ToImmutable());
    }

    private static ArchSetup Built(ArchRequest request)
    {
        try
        {
            return ArchBuilder.Build(request);
        }
        catch (ArgumentException fault)
        {
            throw new Refusal("the arch cannot be built. " + Plainly.Message(fault), "See: archwright arch --help");
        }
    }

    private static void Save(CaseFile file, string path)
    {
        using var bytes = new MemoryStream();
        CaseWriter.Write(file, bytes);
        File.WriteAllBytes(path, bytes.ToArray());
    }

    private void RefuseMaking(ParseResult parsed)
    {
        if (Making.FirstOrDefault(option => parsed.GetResult(option) is { Implicit: false }) is { } both)
        {
            throw new Refusal($"{both.Name} does not go together with a CASE.",
                "Name a case file to measure it, or give --jaw, --slot, --wire and --out to make one.");
        }
    }

    private static string Needed(ParseResult parsed, Option<string?> option) =>
        parsed.GetValue(option) is { Length: > 0 } value ? value : throw Missing(option);

    private static Refusal Missing(Option option) => new(
        $"arch needs {option.Name} ({option.Description?.TrimEnd('.')}) to make a case, or a CASE to measure.",
        "As in: archwright arch --jaw upper --slot 0.022 --wire niti-014 --tooth 13:occlusal=-2 --out case.json");

    private static Option<string?> Text(string name, string helpName, string description) =>
        new(name) { Description = description, HelpName = helpName };

    private static Option<string[]> Texts(string name, string helpName, string description) =>
        new(name) { Description = description, HelpName = helpName };
}
