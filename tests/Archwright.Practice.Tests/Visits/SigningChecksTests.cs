using Archwright.Dentition.Teeth;
using Archwright.Practice.Courses;
using Archwright.Practice.People;
using Archwright.Practice.Rules;
using Archwright.Practice.Values;
using Archwright.Practice.Visits;

namespace Archwright.Practice.Tests.Visits;

/// <summary>What hinders a signature is told all at once. Rests on the rules.</summary>
[Trait("basis", "law")]
public sealed class SigningChecksTests
{
    private static readonly Patient Mira = Samples.Patient();
    private static readonly ArchTreatment[] Arches = [Samples.Upper(Mira.Id)];

    [Fact]
    public void A_complete_visit_lacks_nothing() =>
        Assert.Empty(SigningChecks.Missing(Samples.Today, Samples.Complete, Mira, Arches));

    [Fact]
    public void A_blank_visit_is_told_everything_that_it_lacks() => Assert.Equal(
        [
            PracticeRules.ADecisionRestsOnPositionsOfItsDay,
            PracticeRules.AnotherWireThanAdvisedNeedsAReason,
            PracticeRules.AVisitSaysWhenTheNextOneIs,
        ],
        SigningChecks.Missing(Samples.Today, VisitContent.Blank, Mira, Arches).Select(broken => broken.Rule));

    [Fact]
    public void An_arch_without_a_wire_needs_neither_ties_nor_ends()
    {
        VisitContent content = Samples.With(arch => new ArchVisit
        {
            Seen = arch.Seen, Decided = new Decision(WireAct.LeaveOut, "", null, ""),
        });

        Assert.Empty(SigningChecks.Missing(Samples.Today, content, Mira, Arches));
    }

    [Fact]
    public void A_tooth_without_a_bracket_needs_no_tie_and_an_advice_that_counts_it_hinders()
    {
        VisitContent content = Samples.With(arch => arch with
        {
            Bare = ToothMap<BareTooth>.Empty.With(ToothNumber.FromIso(12), BareTooth.NotBonded),
            Ties = arch.Ties.Without(ToothNumber.FromIso(12)),
        });

        Assert.Equal(
            [PracticeRules.AdviceRestsOnWhatWasSeen],
            SigningChecks.Missing(Samples.Today, content, Mira, Arches).Select(broken => broken.Rule));
        Assert.Empty(SigningChecks.Missing(
            Samples.Today, content with { Upper = content.Upper! with { Advised = null } }, Mira, Arches));
    }

    [Fact]
    public void A_wire_in_a_single_bracket_is_not_signed()
    {
        VisitContent content = Samples.With(arch => arch with
        {
            Advised = null,
            Bare = ToothMap<BareTooth>.Same(Samples.UpperTeeth.Skip(1), BareTooth.NotBonded),
        });

        Assert.Equal(
            [PracticeRules.BondedTeethBelongToTheirArch],
            SigningChecks.Missing(Samples.Today, content, Mira, Arches).Select(broken => broken.Rule));
    }

    [Fact]
    public void An_arch_whose_appliance_is_off_needs_nothing()
    {
        ArchTreatment ended = Samples.Upper(Mira.Id);
        ended.Debond(Samples.Today.AddDays(-7));

        Assert.Empty(SigningChecks.Missing(
            Samples.Today, VisitContent.Blank with { NextInWeeks = 6 }, Mira, [ended]));
    }

    [Fact]
    public void Amending_leaves_what_was_signed_as_it_was()
    {
        Visit visit = Samples.Visit(Mira.Id);
        visit.Sign(Samples.Orthodontist, Samples.Now, Mira, Arches);
        Signature? signed = visit.Signed;

        visit.Amend(Samples.Assistant, Samples.Now.AddHours(1), "Elastics given.", "Forgotten.");

        Assert.Equal(Samples.Complete, visit.Content);
        Assert.Equal(signed, visit.Signed);
        Assert.Equal("Elastics given.", Assert.Single(visit.Amendments).Text);
    }
}
