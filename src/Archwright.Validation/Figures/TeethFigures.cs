using Archwright.Treatment.Movement;
using Archwright.Validation.Record;
using Archwright.Validation.SetUps;

namespace Archwright.Validation.Figures;

/// <summary>Pictures of teeth that move.</summary>
internal static class TeethFigures
{
    // Mean speeds of the five stresses and two standard errors; the law was fitted on the means.
    private static readonly (double Stress, double Speed)[] Means =
        [(4, 0.028), (13, 0.040), (26, 0.050), (52, 0.054), (78, 0.061)];

    private const double TwoStandardErrors = 0.008;

    public static RecordFigure Dose() => new()
    {
        Name = "teeth-dose",
        Title = "Speed of a translated canine against the stress of its ligament",
        Caption = "Bars: means of 82 canines in 41 people and two standard errors (Nickel et al. 2014). The two "
            + "constants of the line were fitted on the five means.",
        Across = "mean compressive stress [kPa]",
        Up = "speed [mm/day]",
        Lines = [new FigureLine("law of movement", [.. Enumerable.Range(0, 101).Select(s => ((double)s, Speed(s)))])],
        Marks = [new FigureMark("measured", [
            .. Means.Select(mean => (mean.Stress, new Interval(
                mean.Speed - TwoStandardErrors, mean.Speed + TwoStandardErrors))),
        ])],
    };

    public static RecordFigure Alignment(IReadOnlyList<CheckResult> results)
    {
        CheckResult[] weeks = [.. results.Where(result => result.Check.Compute == "alignment-share")];
        return new RecordFigure
        {
            Name = "teeth-alignment",
            Title = "Crowded lower front teeth with 0.014 NiTi: irregularity left",
            Caption = "Computed: mean of made-up arches and patients; bars: two groups of 15 patients (Keerthana and "
                + "Chitra 2021). Overloaded teeth wait three weeks; after that the forecast is twice too fast: out. "
                + "Nothing was fitted on this trial.",
            Across = "weeks",
            Up = "share of the irregularity at the start",
            Lines =
            [
                new FigureLine("computed", [
                    .. Enumerable.Range(0, SetUps.Alignment.Weeks + 1).Select(week =>
                        ((double)week, SetUps.Alignment.ShareAfter("niti-014", week))),
                ]),
            ],
            Marks = [new FigureMark("measured", [
                .. weeks.Select(one => (one.Check.With.Number("weeks"), one.Check.Published))])],
        };
    }

    private static double Speed(int stress) => MovementLaw.Speed(stress);
}
