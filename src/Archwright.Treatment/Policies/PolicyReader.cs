using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using Archwright.Dentition.Comparison;
using Archwright.Dentition.Tables;
using Archwright.Dentition.Teeth;
using Archwright.Treatment.Decisions;

namespace Archwright.Treatment.Policies;

/// <summary>Reads a policy, <c>archwright-policy/1</c>. Every figure is needed, each with a source, and checked against
/// limits outside which it must be a slip; <c>docs/policy.md</c> describes the file.</summary>
public static class PolicyReader
{
    /// <summary>The word of <c>format</c>.</summary>
    public const string Format = "archwright-policy/1";

    private const int MostBytes = 4_000_000;

    private static readonly string[] Ways = ["found", "from memory", "computed", "common practice"];

    /// <summary>Reads a file.</summary>
    /// <param name="path">Its name.</param>
    public static PolicyReading Read(string path)
    {
        try
        {
            using FileStream stream = File.OpenRead(path);
            return Read(stream);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or ArgumentException)
        {
            return Refused("(whole file)", "The file cannot be read: " + fault.Message, "Check its name.");
        }
    }

    /// <summary>Reads a stream to its end; it is left open.</summary>
    public static PolicyReading Read(Stream stream)
    {
        ArgumentNullException.ThrowIfNull(stream);
        using var copy = new MemoryStream();
        var part = new byte[81920];
        for (int read = stream.Read(part); read > 0; read = stream.Read(part))
        {
            copy.Write(part, 0, read);
            if (copy.Length > MostBytes)
                return Refused("(whole file)", "The file is too long.", $"At most {MostBytes} bytes are read.");
        }

        return Parse(copy.ToArray());
    }

    private static PolicyReading Parse(byte[] text)
    {
        bool isMarked = text.AsSpan().StartsWith((ReadOnlySpan<byte>)[0xEF, 0xBB, 0xBF]);
        ReadOnlyMemory<byte> json = isMarked ? text.AsMemory(3) : text;
        try
        {
            using JsonDocument document = JsonDocument.Parse(json);
            List<PolicyProblem> problems = [];
            VisitPolicy? policy = Policy(new PolicyNode(document.RootElement, "", problems), problems);
            return problems.Count == 0 ? new PolicyReading(policy, []) : new PolicyReading(null, [.. problems]);
        }
        catch (JsonException fault)
        {
            return Refused(
                $"line {(fault.LineNumber ?? 0) + 1}", "The file is no JSON: it breaks off or has a stray character.",
                "Compare the line with docs/policy.md: commas between entries, quotation marks round words.");
        }
    }

    private static PolicyReading Refused(string path, string message, string remedy) =>
        new(null, [new PolicyProblem(path, message, remedy)]);

    private static VisitPolicy? Policy(PolicyNode root, List<PolicyProblem> problems)
    {
        if (!root.HasKeys(
            "format", "version", "judged_load", "figures", "intervals", "alerts", "soreness", "ceilings"))
            return null;

        root.Word("format", (Format, 0));
        string version = root.Text("version") ?? "";
        JudgedLoad judged = Judged(root);
        var figures = Figures(root);
        ImmutableArray<PolicyInterval> intervals = Intervals(root);
        ImmutableArray<PolicyAlert> alerts = Alerts(root);
        (ImmutableArray<SorenessPoint> soreness, string source) = PolicySoreness.Read(root);
        ForceCeilings ceilings = Ceilings(root);
        return problems.Count > 0 ? null : new VisitPolicy(figures)
        {
            Version = version, Ceilings = ceilings, JudgedLoad = judged, Intervals = intervals, Alerts = alerts,
            Soreness = soreness, SorenessSource = source,
        };
    }

    private static JudgedLoad Judged(PolicyNode root)
    {
        if (root.Need("judged_load") is not { } node || !node.HasKeys("load", "meaning", "source", "how"))
            return default;

        node.Text("meaning");
        node.Text("source");
        How(node);
        return node.Word(
            "load", ("once-given", JudgedLoad.OnceGiven), ("on-tying-in", JudgedLoad.OnTyingIn)) ?? default;
    }

    private static ImmutableDictionary<string, PolicyFigure> Figures(PolicyNode root)
    {
        var found = ImmutableDictionary.CreateBuilder<string, PolicyFigure>(StringComparer.Ordinal);
        foreach (PolicyNode node in root.Items("figures"))
        {
            if (!node.HasKeys("name", "meaning", "value", "unit", "spread", "source", "how")
                || node.Text("name") is not { } name)
            {
                continue;
            }

            if (PolicyFigureKind.All.FirstOrDefault(one => one.Name == name) is not { } kind)
            {
                node.Fault($"There is no figure '{name}'.", "Take it out; docs/policy.md lists them.");
                continue;
            }

            string meaning = node.Text("meaning") ?? "";
            double? value = node.Number("value", kind.Low, kind.High, kind.Unit);
            var figure = new PolicyFigure(name, meaning, Sourced(node, value ?? kind.Low, kind.Unit));
            if (!found.TryAdd(name, figure))
                node.Fault($"The figure '{name}' is given twice.", "Keep one of the two.");
        }

        foreach (PolicyFigureKind kind in PolicyFigureKind.All.Where(
            kind => kind.Without is null && !found.ContainsKey(kind.Name)))
        {
            root.Find("figures")?.Fault(
                $"The figure '{kind.Name}' is missing.", $"Add it, in {kind.Unit}, with its source.");
        }

        return found.ToImmutable();
    }

    private static Sourced Sourced(PolicyNode node, double value, string unit)
    {
        if (node.Text("unit") is { } given && given != unit)
            node.Fault($"The unit is '{given}'.", $"Give the value in {unit}.");
        return new Sourced(value, unit, node.Find("spread")?.AsText() ?? "", node.Text("source") ?? "", How(node));
    }

    private static string How(PolicyNode node)
    {
        string how = node.Text("how") ?? Ways[0];
        if (!Ways.Any(way => how.StartsWith(way, StringComparison.Ordinal)))
            node.Fault($"'how' does not say how the figure was had.", $"Begin it with {string.Join(", ", Ways)}.");
        return how;
    }

    private static ImmutableArray<PolicyInterval> Intervals(PolicyNode root)
    {
        List<PolicyInterval> found = [];
        foreach (PolicyNode node in root.Items("intervals"))
        {
            if (!node.HasKeys("for", "low", "usual", "high", "unit", "source", "how"))
                continue;

            IntervalKind? kind = node.Word(
                "for", ("transforming-round", IntervalKind.TransformingRound),
                ("transforming-rectangular", IntervalKind.TransformingRectangular),
                ("other-round", IntervalKind.OtherRound), ("other-rectangular", IntervalKind.OtherRectangular),
                ("cautious", IntervalKind.Cautious));
            int low = Weeks(node, "low");
            int usual = Weeks(node, "usual");
            int high = Weeks(node, "high");
            node.Word("unit", ("weeks", 0));
            string source = node.Text("source") ?? "";
            string how = How(node);
            if (low > usual || usual > high)
                node.Fault("The interval is not in order.", "Write low, usual, high in rising order.");
            if (kind is { } known && found.Any(one => one.For == known))
                node.Fault("This interval is given twice.", "Keep one of the two.");
            else if (kind is { } its)
                found.Add(new PolicyInterval(its, low, usual, high, source, how));
        }

        if (found.Count < Enum.GetValues<IntervalKind>().Length)
            root.Find("intervals")?.Fault("An interval is missing.", "Give one for each of the five kinds.");
        return [.. found];
    }

    private static int Weeks(PolicyNode node, string key)
    {
        double weeks = node.Number(key, 1, 26, "weeks") ?? 1;
        if (weeks != Math.Floor(weeks))
            node.Fault($"'{key}' is not a whole number of weeks.", "Write whole weeks.");
        return (int)weeks;
    }

    private static ImmutableArray<PolicyAlert> Alerts(PolicyNode root)
    {
        List<PolicyAlert> found = [];
        foreach (PolicyNode node in root.Items("alerts"))
        {
            if (!node.HasKeys("alert", "act", "sentence", "source", "how"))
                continue;

            PatientAlert? alert = node.Word("alert", [.. PatientAlerts.All.Select(one => (one.Word(), one))]);
            AlertAct? act = node.Word(
                "act", ("look-first", AlertAct.LookFirst), ("no-step-up", AlertAct.NoStepUp),
                ("no-nickel", AlertAct.NoNickel), ("lower-ceilings", AlertAct.LowerCeilings));
            string sentence = node.Text("sentence") ?? "";
            string source = node.Text("source") ?? "";
            string how = How(node);
            if (alert is { } twice && found.Any(one => one.Alert == twice))
                node.Fault("This alert is given twice.", "Keep one of the two.");
            else if (alert is { } its && act is { } done)
                found.Add(new PolicyAlert(its, done, sentence, source, how));
        }

        if (found.Count < PatientAlerts.All.Count)
            root.Find("alerts")?.Fault("An alert is missing.", "Say what each of the five alerts does.");
        return [.. found.OrderBy(one => one.Alert)];
    }

    private static ForceCeilings Ceilings(PolicyNode root)
    {
        Dictionary<(ToothNumber, LoadKind), ForceCeiling> found = [];
        foreach (PolicyNode node in root.Items("ceilings"))
        {
            if (!node.HasKeys("jaw", "positions", "kind", "value", "unit", "spread", "source", "how"))
                continue;

            int? quadrants = node.Word("jaw", ("upper", 1), ("lower", 3));
            LoadKind? kind = node.Word("kind", [.. LoadKinds.All.Select(one => (one.Code(), one))]);
            double value = node.Number("value", 0.01, 500, "N or N·mm") ?? 1;
            Sourced limit = Sourced(node, value, kind?.Unit() ?? "N");
            foreach (PolicyNode place in node.Items("positions"))
            {
                if (place.AsNumber(1, 8, "counted from the midline") is not { } position || quadrants is null
                    || kind is not { } its)
                {
                    continue;
                }

                foreach (int quadrant in new[] { quadrants.Value, quadrants.Value + 1 })
                {
                    var tooth = ToothNumber.FromIso(10 * quadrant + (int)position);
                    if (!found.TryAdd((tooth, its), new ForceCeiling(tooth, its, limit)))
                    {
                        place.Fault(
                            string.Create(CultureInfo.InvariantCulture,
                                $"The ceiling of {tooth} for {its.Words()} is given twice."),
                            "Keep one of the two.");
                    }
                }
            }
        }

        return new ForceCeilings(found.Values);
    }
}
