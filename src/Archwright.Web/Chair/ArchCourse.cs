using Archwright.Dentition.Teeth;
using Archwright.Practice.Advice;
using Archwright.Practice.Courses;
using Archwright.Practice.Visits;
using Archwright.Storage.Desks;
using Archwright.Web.Drawing;
using Archwright.Web.Words;

namespace Archwright.Web.Chair;

/// <summary>How one arch has gone, and how it is expected to go on with the wire of the last visit.</summary>
/// <param name="Treatment">Which arch.</param>
/// <param name="Chart">The picture; null when no irregularity is known.</param>
/// <param name="Words">The same in words.</param>
public sealed record ArchCourse(ArchTreatment Treatment, CourseChart? Chart, string Words)
{
    private readonly PatientFile file = null!; // set by Of, the only way to make one
    private readonly IReadOnlyList<(Visit Visit, double Week, double Mm)> seen = [];

    private ArchCourse(
        PatientFile file, ArchTreatment treatment, IReadOnlyList<(Visit, double, double)> seen, CourseChart? chart,
        string words)
        : this(treatment, chart, words)
    {
        this.file = file;
        this.seen = seen;
    }

    /// <summary>What is on record.</summary>
    public static ArchCourse Of(PatientFile file, ArchTreatment treatment)
    {
        List<(Visit Visit, double Week, double Mm)> known = [];
        foreach (Visit visit in file.Visits)
        {
            if (visit.Content.Arch(treatment.Jaw) is { Seen: { } at } arch
                && ArchModel.Irregularity(treatment, arch.Bare, at.Positions) is { } mm)
            {
                known.Add((visit, (visit.Day.DayNumber - treatment.BegunOn.DayNumber) / 7.0, mm));
            }
        }

        return known.Count == 0
            ? new ArchCourse(
                file, treatment, known, null, "Positions are not on record, or not all front teeth are there.")
            : new ArchCourse(
                file, treatment, known, CourseChart.Draw(Points(known), null, 0), Said(known) + " Looking ahead…");
    }

    /// <summary>The same with what is expected.</summary>
    /// <exception cref="OperationCanceledException">It was given up.</exception>
    public ArchCourse LookAhead(int weeks, CancellationToken cancellation)
    {
        if (seen.Count == 0)
            return this;

        (Visit visit, double week, _) = seen.LastOrDefault(one => PastInputs.After(one.Visit, Treatment) is not null);
        if (visit is null)
            return With(null, 0, "No wire is in place, so nothing is forecast.");

        try
        {
            PastInputs past = PastInputs.After(visit, Treatment)!; // seen, with a wire: chosen so above
            string wire = past.WireId;
            Outlook outlook = Outlook.Band(
                past.Inputs, wire, weeks, file.Patient.AgeOn(visit.Day), cancellation);
            return outlook.Weeks.Length > 1
                ? With(
                    outlook,
                    week,
                    $"Band: expected from {Figures.Day(visit.Day)} with {Say.Wire(wire)}, from a slow patient to a "
                    + "quick one (8 of 10 lie between); an estimate, not a promise.")
                : With(null, 0, outlook.WhyItStops ?? "Nothing can be forecast.");
        }
        catch (ArgumentException cannot)
        {
            return With(null, 0, $"Nothing is forecast: {cannot.Message}");
        }
    }

    private ArchCourse With(Outlook? outlook, double from, string words) => new(
        file, Treatment, seen, CourseChart.Draw(Points(seen), outlook, from), $"{Said(seen)} {words}");

    private static List<(double Week, double Mm)> Points(IReadOnlyList<(Visit Visit, double Week, double Mm)> seen) =>
        [.. seen.Select(one => (one.Week, one.Mm))];

    private static string Said(IReadOnlyList<(Visit Visit, double Week, double Mm)> seen) => seen.Count == 1
        ? $"Seen once: {Figures.Mm(seen[0].Mm)}."
        : $"Seen {seen.Count} times, from {Figures.Mm(seen[0].Mm)} to {Figures.Mm(seen[^1].Mm)}.";
}
