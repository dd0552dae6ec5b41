using Archwright.Dentition.Teeth;
using Archwright.Practice.Advice;
using Archwright.Practice.Values;

namespace Archwright.Practice.Visits;

/// <summary>A place of a visit that two people have changed, each in another way.</summary>
/// <param name="Where">The place in words: "upper arch, decision".</param>
public sealed record MergeConflict(string Where);

/// <summary>Two edits of one visit brought together.</summary>
/// <param name="Content">What both want; where they differ, what the second wants.</param>
/// <param name="Conflicts">The places where they differ; empty when nothing had to be chosen.</param>
public sealed record Merged(VisitContent Content, IReadOnlyList<MergeConflict> Conflicts);

/// <summary>Brings two edits of one visit together, place by place: what only one of both has changed is taken from
/// that one; what both have changed alike is taken once; what they have changed differently is a conflict, and a
/// person chooses.</summary>
public static class VisitMerge
{
    /// <summary>Three-way merge.</summary>
    /// <param name="before">What both started from.</param>
    /// <param name="mine">What the second wants to save.</param>
    /// <param name="theirs">What the first has saved meanwhile.</param>
    public static Merged Merge(VisitContent before, VisitContent mine, VisitContent theirs)
    {
        var at = new Places();
        var content = new VisitContent
        {
            Upper = Arch(at, "upper arch", before.Upper, mine.Upper, theirs.Upper),
            Lower = Arch(at, "lower arch", before.Lower, mine.Lower, theirs.Lower),
            Discomfort = at.Pick("discomfort", before.Discomfort, mine.Discomfort, theirs.Discomfort),
            Hygiene = at.Pick("hygiene", before.Hygiene, mine.Hygiene, theirs.Hygiene),
            Breakages = Both(before.Breakages, mine.Breakages, theirs.Breakages),
            Photos = Both(before.Photos, mine.Photos, theirs.Photos),
            AlertsRead = Both(before.AlertsRead, mine.AlertsRead, theirs.AlertsRead),
            Note = at.Pick("note", before.Note, mine.Note, theirs.Note),
            NextInWeeks = at.Pick("next visit", before.NextInWeeks, mine.NextInWeeks, theirs.NextInWeeks),
        };
        return new Merged(content, at.Conflicts);
    }

    private static ArchVisit? Arch(Places at, string name, ArchVisit? before, ArchVisit? mine, ArchVisit? theirs)
    {
        if (mine is null || theirs is null)
            return at.Pick(name, before, mine, theirs);

        ArchVisit old = before ?? ArchVisit.Blank;
        var arch = new ArchVisit
        {
            Found = at.Pick(name + ", wire found", old.Found, mine.Found, theirs.Found),
            Seen = at.Pick(name + ", positions", old.Seen, mine.Seen, theirs.Seen),
            Bare = Bare(at, name + ", bracket", old.Bare, mine.Bare, theirs.Bare),
            Decided = at.Pick(name + ", decision", old.Decided, mine.Decided, theirs.Decided),
            Ties = Teeth(at, name + ", tie", old.Ties, mine.Ties, theirs.Ties),
            RightEnd = at.Pick(name + ", right end", old.RightEnd, mine.RightEnd, theirs.RightEnd),
            LeftEnd = at.Pick(name + ", left end", old.LeftEnd, mine.LeftEnd, theirs.LeftEnd),
        };
        return arch with { Advised = Advice(arch, old.Advised, mine.Advised, theirs.Advised) };
    }

    // The program advises on each screen by itself, so two advices are nobody's contradiction: the one on record stays.
    // None stays that rests on other positions or brackets than those that stand.
    private static Recommendation? Advice(
        ArchVisit arch, Recommendation? before, Recommendation? mine, Recommendation? theirs)
    {
        Recommendation?[] offered = Equals(theirs, before) ? [mine] : Equals(mine, before) ? [theirs] : [theirs, mine];
        return offered.FirstOrDefault(one => one is not null && arch.Bears(one));
    }

    private static ToothMap<BareTooth>? Bare(
        Places at, string name, ToothMap<BareTooth>? before, ToothMap<BareTooth>? mine, ToothMap<BareTooth>? theirs) =>
        mine is null && theirs is null ? null : Teeth(
            at, name, before ?? ToothMap<BareTooth>.Empty, mine ?? before ?? ToothMap<BareTooth>.Empty,
            theirs ?? before ?? ToothMap<BareTooth>.Empty);

    private static ToothMap<T> Teeth<T>(
        Places at, string name, ToothMap<T> before, ToothMap<T> mine, ToothMap<T> theirs)
        where T : struct
    {
        IEnumerable<ToothNumber> all = before.Teeth.Concat(mine.Teeth).Concat(theirs.Teeth).Distinct();
        return ToothMap<T>.Of(
            from tooth in all
            let value = at.Pick(
                $"{name} at the {tooth.Name} (ISO {tooth})", Of(before, tooth), Of(mine, tooth), Of(theirs, tooth))
            where value is not null
            select KeyValuePair.Create(tooth, value.Value));
    }

    private static T? Of<T>(ToothMap<T> map, ToothNumber tooth)
        where T : struct => map.Has(tooth) ? map.Of(tooth, default) : null;

    // Entries that either added are there, those that either took away are not.
    private static Listing<T> Both<T>(Listing<T> before, Listing<T> mine, Listing<T> theirs)
        where T : notnull => Listing<T>.Of(
            theirs.Where(entry => mine.Contains(entry) || !before.Contains(entry))
                .Concat(mine.Where(entry => !before.Contains(entry) && !theirs.Contains(entry))));

    private sealed class Places
    {
        public List<MergeConflict> Conflicts { get; } = [];

        public T Pick<T>(string where, T before, T mine, T theirs)
        {
            if (Equal(mine, theirs) || Equal(theirs, before))
                return mine;
            if (Equal(mine, before))
                return theirs;

            Conflicts.Add(new MergeConflict(where));
            return mine;
        }

        private static bool Equal<T>(T one, T other) => EqualityComparer<T>.Default.Equals(one, other);
    }
}
