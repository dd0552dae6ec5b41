using Archwright.Dentition.Teeth;
using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Slots;
using Archwright.Practice.Values;
using Archwright.Practice.Visits;
using CsCheck;

namespace Archwright.Practice.Tests.Visits;

/// <summary>Two people edit one visit: nothing of either is lost. Rests on what a merge must satisfy.</summary>
[Trait("basis", "law")]
public sealed class VisitMergeTests
{
    // An edit changes one of twelve places, to one of three values.
    private static readonly Func<VisitContent, int, VisitContent>[] Edits =
    [
        (visit, value) => visit with { Note = $"note {value}" },
        (visit, value) => visit with { NextInWeeks = 4 + value },
        (visit, value) => visit with { Hygiene = (Hygiene)value },
        (visit, value) => visit with { Discomfort = new Discomfort(value, null, null, null) },
        (visit, value) => visit with
        {
            Breakages = visit.Breakages.With(new Breakage(ToothNumber.FromIso(11 + value), "bracket off", false)),
        },
        (visit, value) => Upper(visit, arch => arch with { RightEnd = (WireEnds)value }),
        (visit, value) => Upper(visit, arch => arch with { LeftEnd = (WireEnds)value }),
        (visit, value) => Upper(visit, arch => arch with
        {
            Ties = arch.Ties.With(ToothNumber.FromIso(12), (TieKind)(value + 3)),
        }),
        (visit, value) => Upper(visit, arch => arch with
        {
            Ties = arch.Ties.With(ToothNumber.FromIso(21), (TieKind)(value + 3)),
        }),
        (visit, value) => Upper(visit, arch => arch with
        {
            Decided = new Decision(WireAct.Fit, $"ss-01{value}", null, ""),
        }),
        (visit, value) => Upper(visit, arch => Bare(arch, 14, value)),
        (visit, value) => Upper(visit, arch => Bare(arch, 24, value)),
    ];

    private static readonly Gen<(int Place, int Value)[]> SomeEdits =
        Gen.Select(Gen.Int[0, Edits.Length - 1], Gen.Int[0, 2]).Array[0, 6];

    [Fact]
    public void What_one_alone_has_changed_is_kept_whichever_of_both_it_was() => SomeEdits.Sample(edits =>
    {
        VisitContent before = Samples.Complete;
        VisitContent after = Apply(before, edits);

        Assert.Equal(after, VisitMerge.Merge(before, after, before).Content);
        Assert.Equal(after, VisitMerge.Merge(before, before, after).Content);
        Assert.Equal(after, VisitMerge.Merge(before, after, after).Content);
        Assert.Empty(VisitMerge.Merge(before, after, after).Conflicts);
    });

    // The program advises on every screen by itself: two advices are not two opinions.
    [Fact]
    public void Of_two_advices_the_one_on_record_stands_while_it_rests_on_the_positions()
    {
        VisitContent before = Upper(Samples.Complete, arch => arch with { Advised = null });
        VisitContent mine = Upper(before, arch => arch with { Advised = Samples.Advice("bti-016") });
        VisitContent theirs = Upper(before, arch => arch with { Advised = Samples.Advice("niti-014") });

        Merged both = VisitMerge.Merge(before, mine, theirs);

        Assert.Empty(both.Conflicts);
        Assert.Equal("niti-014", both.Content.Upper?.Advised?.WireId);

        ToothMap<ToothOffset> moved = Samples.HighCanine.With(ToothNumber.FromIso(11), new ToothOffset(LabialMm: 1));
        VisitContent looked = Upper(mine, arch => arch with
        {
            Seen = arch.Seen! with { Positions = moved },
            Advised = Samples.Advice("bti-016") with { Inputs = Samples.Inputs() with { Positions = moved } },
        });
        Assert.Equal("bti-016", VisitMerge.Merge(before, looked, theirs).Content.Upper?.Advised?.WireId);
    }

    [Fact]
    public void Edits_at_different_places_are_both_kept_without_a_question() => Gen.Select(SomeEdits, SomeEdits).Sample(
        (one, other) =>
        {
            (int Place, int Value)[] mine = [.. one.Where(edit => edit.Place % 2 == 0)];
            (int Place, int Value)[] theirs = [.. other.Where(edit => edit.Place % 2 == 1)];
            VisitContent before = Samples.Complete;

            Merged merged = VisitMerge.Merge(before, Apply(before, mine), Apply(before, theirs));

            Assert.Empty(merged.Conflicts);
            Assert.Equal(Apply(Apply(before, theirs), mine), merged.Content);
        });

    [Fact]
    public void A_place_that_both_changed_differently_is_named()
    {
        VisitContent before = Samples.Complete;

        Merged merged = VisitMerge.Merge(
            before,
            Edits[9](Edits[7](before, 1), 1),
            Edits[9](Edits[7](before, 2), 2));

        Assert.Equal(
            ["upper arch, decision", "upper arch, tie at the upper right lateral incisor (ISO 12)"],
            merged.Conflicts.Select(conflict => conflict.Where).Order(StringComparer.Ordinal));
        Assert.Equal("ss-011", merged.Content.Upper!.Decided!.WireId);
    }

    [Fact]
    public void Brackets_that_two_people_note_differently_are_asked_for_tooth_by_tooth()
    {
        VisitContent before = Samples.Complete;

        Merged merged = VisitMerge.Merge(
            before, Edits[11](Edits[10](before, 0), 0), Edits[11](Edits[10](before, 1), 0));

        Assert.Equal(
            "upper arch, bracket at the upper right first premolar (ISO 14)", Assert.Single(merged.Conflicts).Where);
        Assert.Equal(2, merged.Content.Upper!.Bare!.Count);
    }

    // One looked at the brackets while the other's advice was on its way.
    [Fact]
    public void An_advice_that_counts_a_bracket_which_the_other_found_off_does_not_stand()
    {
        VisitContent before = Upper(Samples.Complete, arch => arch with { Advised = null });
        VisitContent mine = Edits[10](before, 0);
        VisitContent theirs = Upper(before, arch => arch with { Advised = Samples.Advice() });
        VisitContent anew = Upper(mine, arch => arch with
        {
            Advised = Samples.Advice() with { Inputs = Samples.Inputs() with { Bare = arch.Bare! } },
        });

        Assert.Same(anew.Upper!.Advised, VisitMerge.Merge(before, anew, theirs).Content.Upper!.Advised);
        Assert.Null(VisitMerge.Merge(before, mine, theirs).Content.Upper!.Advised);
    }

    [Fact]
    public void A_tie_that_one_took_away_is_gone()
    {
        VisitContent mine = Upper(Samples.Complete, arch => arch with
        {
            Ties = arch.Ties.Without(ToothNumber.FromIso(12)),
        });

        Merged merged = VisitMerge.Merge(Samples.Complete, mine, Samples.Complete);

        Assert.False(merged.Content.Upper!.Ties.Has(ToothNumber.FromIso(12)));
    }

    [Fact]
    public void Entries_that_either_added_are_there_and_those_that_either_took_away_are_not()
    {
        var first = new Breakage(ToothNumber.FromIso(16), "tube off", false);
        VisitContent before = Samples.Complete with { Breakages = Listing<Breakage>.Of([first]) };
        var mine = new Breakage(ToothNumber.FromIso(12), "tie lost", true);
        var theirs = new Breakage(ToothNumber.FromIso(22), "bracket off", true);

        Merged merged = VisitMerge.Merge(
            before,
            before with { Breakages = Listing<Breakage>.Of([first, mine]) },
            before with { Breakages = Listing<Breakage>.Of([theirs]) });

        Assert.Equal([theirs, mine], merged.Content.Breakages);
    }

    // Not bonded, absent, or bonded again; the advice goes with what it rests on.
    private static ArchVisit Bare(ArchVisit arch, int iso, int value)
    {
        ToothMap<BareTooth> before = arch.Bare ?? ToothMap<BareTooth>.Empty;
        var tooth = ToothNumber.FromIso(iso);
        return arch with
        {
            Advised = null,
            Bare = value == 2 ? before.Without(tooth) : before.With(tooth, (BareTooth)value),
        };
    }

    private static VisitContent Upper(VisitContent visit, Func<ArchVisit, ArchVisit> change) =>
        visit with { Upper = change(visit.Upper!) };

    private static VisitContent Apply(VisitContent visit, IEnumerable<(int Place, int Value)> edits) =>
        edits.Aggregate(visit, (at, edit) => Edits[edit.Place](at, edit.Value));
}
