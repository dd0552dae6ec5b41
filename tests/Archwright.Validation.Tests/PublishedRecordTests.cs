using Archwright.Dentition.Tables;
using Archwright.Validation.Record;
using Archwright.Validation.SetUps;

namespace Archwright.Validation.Tests;

/// <summary>The published record, figure by figure, and the list itself.</summary>
public sealed class PublishedRecordTests
{
    public static TheoryData<string> Ids => [.. PublishedRecord.Checks.Select(check => check.Id)];

    /// <summary>Each rests on the source beside it in <c>Record/checks.csv</c>. A figure from memory fails nothing
    /// alone.</summary>
    [Theory, MemberData(nameof(Ids)), Trait("basis", "published")]
    public void A_published_figure_is_met_or_the_difference_is_on_the_list(string id)
    {
        CheckResult result = PublishedRecord.Compute(Check(id));

        Assert.True(
            result.Verdict != Verdict.Out || result.Reason.Length > 0,
            $"{id}: {result.Computed} {result.Check.Unit}, accepted {result.Check.AcceptWords}: {result.Check.Title}");
    }

    [Fact, Trait("basis", "law")]
    public void There_are_many_checks_of_every_chapter()
    {
        Assert.All(
            PublishedRecord.Checks.GroupBy(check => check.Chapter), chapter => Assert.True(chapter.Count() >= 5));
        Assert.True(PublishedRecord.Checks.Count(check => !check.IsFromMemory) > 150);
    }

    [Fact, Trait("basis", "law")]
    public void Every_set_up_is_asked_for_by_some_check() => Assert.Empty(
        Computations.All.Keys.Except(PublishedRecord.Checks.Select(check => check.Compute)));

    /// <summary>An explanation that is no longer needed would hide the next difference.</summary>
    [Fact, Trait("basis", "law")]
    public void No_explanation_is_left_over() => Assert.All(
        PublishedRecord.Differences,
        difference => Assert.Equal(
            difference.Verdict, PublishedRecord.Compute(Check(difference.Check)).Verdict));

    /// <summary>Whatever is added here makes <c>validate</c> end with exit code 1 for one reason more.</summary>
    [Fact, Trait("basis", "law")]
    public void What_is_out_is_the_alignment_of_crowded_teeth_alone() => Assert.All(
        PublishedRecord.Differences.Where(difference => difference.Verdict == Verdict.Out),
        difference => Assert.StartsWith("alignment-", difference.Check, StringComparison.Ordinal));

    [Fact, Trait("basis", "law")]
    public void The_list_of_explained_differences_stays_short() =>
        Assert.InRange(PublishedRecord.Differences.Count, 1, PublishedRecord.Checks.Count / 10);

    /// <summary>The one number of the torque rig, fitted to 14.2 N·mm at 15° with steel of 17 × 25 mil.</summary>
    [Fact, Trait("basis", "ours")]
    public void The_compliance_of_the_rig_is_fitted_to_the_figure_it_names()
    {
        var steel = new SetUp("fit", Check("torque-compliant-bti-17x25").With + "; other=ss-017x025");
        double ratio = TorqueRig.TorqueRatio(steel);

        Assert.Equal(14.2, TorqueRig.Torque(steel) / ratio, 0.1);
    }

    /// <summary>The one number of another rig, fitted to the middle of 1.5 to 2, steel over beta-titanium.</summary>
    [Fact, Trait("basis", "ours")]
    public void The_compliance_of_the_other_rig_is_fitted_to_the_figure_it_names()
    {
        string titanium = Check("torque-ratio-cuniti").With.ToString().Replace(
            "cuniti35-", "bti-", StringComparison.Ordinal);

        Assert.Equal(1.75, TorqueRig.TorqueRatio(new SetUp("fit", titanium)), 0.02);
    }

    [Theory, Trait("basis", "law")]
    [InlineData(1.05, Verdict.In, "found")]
    [InlineData(1.5, Verdict.Out, "found")]
    [InlineData(1.5, Verdict.Explained, "from memory")]
    [InlineData(double.NaN, Verdict.Out, "found")]
    [InlineData(double.NaN, Verdict.Out, "from memory")]
    public void A_figure_is_judged_by_what_is_accepted(double computed, Verdict verdict, string how) =>
        Assert.Equal(verdict, PublishedRecord.Judge(Planted(how), computed, []).Verdict);

    [Theory, Trait("basis", "law")]
    [InlineData(1.5, Verdict.Explained)]
    [InlineData(1.7, Verdict.Out)]
    [InlineData(double.NaN, Verdict.Out)]
    public void A_known_difference_explains_its_own_range_and_no_more(double computed, Verdict verdict)
    {
        KnownDifference[] known = [new("planted", new Interval(1.4, 1.6), Verdict.Explained, "planted")];

        Assert.Equal(verdict, PublishedRecord.Judge(Planted("found"), computed, known).Verdict);
        Assert.Equal(Verdict.Out, PublishedRecord.Judge(Planted("from memory"), 1.7, known).Verdict);
    }

    private static PublishedCheck Check(string id) => PublishedRecord.Checks.Single(check => check.Id == id);

    private static PublishedCheck Planted(string how) => RecordTables.Checks(Table.Parse(
        "planted.csv",
        "id,chapter,title,compute,with,published,unit,spread,accept,why,source,how\n"
        + $"planted,a,b,c,,1,1,,±0.1,,book,{how}\n"))[0];
}
