using Archwright.Mechanics.Rods;
using Archwright.Practice.Values;
using Archwright.Practice.Visits;

namespace Archwright.Practice.Leaflets;

/// <summary>Whole leaflets of visits that never were, so that every text can be read where a patient reads it.
/// </summary>
public static class SampleLeaflets
{
    // A sign that nobody types; only to find out which lines a text stands in.
    private const char Marker = '\u2063';

    // Found and fitted, so that between them every change and every kind of wire comes up.
    private static readonly (string Found, string Fitted)[] Arches =
    [
        ("niti-014", "niti-016"), ("", "niti-014"), ("niti-016", "niti-016"), ("ss-016", "niti-014"),
        ("niti-016", "niti-016x022"), ("niti-016x022", "ss-019x025"), ("niti-014", "ss-016"),
        ("niti-016", "bti-016"), ("niti-016x022", "bti-017x025"), ("niti-016", "cc-016"), ("niti-016", "cc-016x022"),
        ("niti-014", "cuniti35-016"), ("niti-014", "a wire of elsewhere"),
    ];

    /// <summary>The whole leaflet of the first sample visit in which a text is read.</summary>
    /// <param name="word">Which text, in which language, in which words.</param>
    /// <param name="own">The practice's own texts; the one of <paramref name="word"/> goes before its own.</param>
    /// <param name="practice">Name of the practice.</param>
    /// <param name="day">Day of the visit.</param>
    /// <returns>The leaflet, and the lines of it in which the text stands; null for a text of no leaflet.</returns>
    public static (Leaflet Leaflet, IReadOnlySet<string> Here)? Of(
        OwnText word, IEnumerable<OwnText> own, string practice, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(word);
        ArgumentNullException.ThrowIfNull(own);
        string text = word.Text.Trim().Length > 0 ? word.Text.Trim() : LeafletTexts.In(word.Language).Ours(word.Key);
        OwnText[] others = [.. own.Where(one => one.Language != word.Language || one.Key != word.Key)];
        LeafletTexts plain = With(others, word with { Text = text });
        LeafletTexts marked = With(others, word with { Text = text + Marker });
        foreach (Visit visit in Visits(day))
        {
            Leaflet leaflet = Write(visit, plain, practice);
            HashSet<string> here = [.. leaflet.AllLines().Except(Write(visit, marked, practice).AllLines())];
            if (here.Count > 0)
                return (leaflet, here);
        }

        return null;
    }

    private static LeafletTexts With(OwnText[] others, OwnText word) =>
        LeafletTexts.In(word.Language, Listing<OwnText>.Of([.. others, word]));

    private static Leaflet Write(Visit visit, LeafletTexts texts, string practice) =>
        LeafletWriter.Write(visit, texts, practice)
        ?? throw new InvalidOperationException("A sample visit decides something.");

    private static IEnumerable<Visit> Visits(DateOnly day)
    {
        ArchVisit kept = Arch(day, "niti-014", new Decision(WireAct.Keep, "niti-014", null, ""));
        foreach ((string found, string fitted) in Arches)
        {
            yield return Visit(day, Arch(day, found, new Decision(WireAct.Fit, fitted, null, "")), kept, weeks: 6);
        }

        // Alone, so that what is said for both arches alike is said; without a day for the next visit.
        yield return Visit(day, kept, null, weeks: null);
        yield return Visit(
            day, Arch(day, "niti-014", new Decision(WireAct.LeaveOut, "", null, "")), null, weeks: null);
        foreach ((string found, string fitted) in Arches)
        {
            yield return Visit(day, Arch(day, found, new Decision(WireAct.Fit, fitted, null, "")), null, weeks: 6);
        }
    }

    private static Visit Visit(DateOnly day, ArchVisit upper, ArchVisit? lower, int? weeks) =>
        Archwright.Practice.Visits.Visit.FromEarlierRecords(
            Guid.Empty, day, default, VisitKind.Adjustment,
            new VisitContent { Upper = upper, Lower = lower, NextInWeeks = weeks }, "");

    private static ArchVisit Arch(DateOnly day, string found, Decision decided) => new()
    {
        Found = found.Length > 0 ? new WireFound(found, day.AddDays(-42)) : null,
        Decided = decided,
        RightEnd = WireEnds.Free,
        LeftEnd = WireEnds.Free,
    };
}
