using System.Collections.Concurrent;
using System.Globalization;
using Archwright.Dentition.Teeth;
using Archwright.Practice.Advice;
using Archwright.Practice.Courses;
using Archwright.Practice.Values;
using Archwright.Practice.Visits;
using Archwright.Storage.Desks;
using Archwright.Treatment.Uncertainty;
using Archwright.Web.Words;

namespace Archwright.Web.Sessions;

/// <summary>Compares what is seen at a visit with the range that the forecast from the last one gave. Each comparison
/// is made once, however many screens ask for it, and kept in memory.</summary>
/// <param name="diary">Reads what a comparison rests on.</param>
public sealed class CourseWatch(Diary diary) : IDisposable
{
    // Readings of the index scatter: differences below half a millimetre are noise (D. Macauley et al., J Dent 2012;40:
    // 1127-1133, found: single contacts scatter by more than a fifth).
    private const double Noise = 0.5;

    // Against the last visit, more than this is worse whatever was forecast: twice what counts as noise of a change.
    private const double Worse = 1;

    private readonly ConcurrentDictionary<(Guid Visit, Guid Revision), CourseSign> known = new();
    private readonly SemaphoreSlim one = new(1);

    /// <inheritdoc/>
    public void Dispose() => one.Dispose();

    /// <summary>Looks at the arches of a day's entry; the graver sign counts.</summary>
    /// <exception cref="OperationCanceledException">It was given up.</exception>
    public async Task<CourseSign> LookAsync(DayEntry entry, CancellationToken cancellation = default)
    {
        (Guid, Guid) key = (entry.Visit.Id, entry.Visit.Revision);
        if (known.TryGetValue(key, out CourseSign? before))
            return before;

        await one.WaitAsync(cancellation);
        try
        {
            if (known.TryGetValue(key, out CourseSign? meanwhile))
                return meanwhile; // another screen asked for it while this one waited

            if (await diary.CourseAsync(entry.Visit.Id, cancellation) is not { } course)
                return CourseSign.NotKnown("no longer in the diary");

            CourseSign sign = await Task.Run(() => Look(course, cancellation), cancellation);
            known[(course.Visit.Id, course.Visit.Revision)] = sign;
            return sign;
        }
        finally
        {
            one.Release();
        }
    }

    private static CourseSign Look(VisitCourse course, CancellationToken cancellation)
    {
        if (course.LastSigned is null)
            return CourseSign.NotKnown("first visit");

        CourseSign[] signs =
        [
            .. course.Treatments.Select(treatment => Look(course, course.LastSigned, treatment, cancellation)),
        ];
        return signs.OrderByDescending(sign => Array.IndexOf(Gravity, sign.Word)).FirstOrDefault()
            ?? CourseSign.NotKnown("no appliance");
    }

    // From the least to the gravest.
    private static readonly string[] Gravity = ["not known", "on course", "slower", "needs a look"];

    private static CourseSign Look(
        VisitCourse course, Visit last, ArchTreatment treatment, CancellationToken cancellation)
    {
        Jaw jaw = treatment.Jaw;
        if (course.Visit.Content.Arch(jaw) is not { Seen: { } now } arch)
            return CourseSign.NotKnown($"{jaw.Word()} arch not looked at yet");
        if (PastInputs.After(last, treatment) is not { } past)
            return CourseSign.NotKnown($"{jaw.Word()} positions of the last visit are not on record");

        int weeks = Math.Clamp((course.Visit.Day.DayNumber - last.Day.DayNumber) / 7, 1, 52);
        try
        {
            double? seen = ArchModel.Irregularity(treatment, arch.Bare, now.Positions);
            double? before = ArchModel.Irregularity(treatment, past.Inputs.Bare, past.Inputs.Positions);
            if (seen is null || before is null)
                return CourseSign.NotKnown($"{jaw.Word()} front teeth are not all there");
            if (seen > before + Worse)
                return Sign("needs a look", "!", "stop", jaw, seen.Value, $"{Figures.Mm(before.Value)} last time");

            Outlook outlook = Outlook.Band(
                past.Inputs, past.WireId, weeks, course.Patient.AgeOn(last.Day), cancellation);
            return outlook.Weeks.Length > weeks && outlook.Weeks[weeks].Irregularity is { } band
                ? Against(jaw, seen.Value, band)
                : CourseSign.NotKnown(outlook.WhyItStops ?? $"{jaw.Word()}: no forecast");
        }
        catch (ArgumentException cannot)
        {
            return CourseSign.NotKnown(cannot.Message);
        }
    }

    private static CourseSign Against(Jaw jaw, double seen, Percentiles band)
    {
        string expected = string.Create(
            CultureInfo.InvariantCulture, $"expected {band.P10:0.0} to {band.P90:0.0}, ± {Noise:0.0} of reading");
        return seen > band.P90 + Noise
            ? Sign("slower", "▼", "warn", jaw, seen, expected)
            : Sign("on course", "✓", "good", jaw, seen, expected);
    }

    private static CourseSign Sign(string word, string mark, string tone, Jaw jaw, double seen, string against) =>
        new(word, mark, tone, $"{jaw.Word()} irregularity {Figures.Mm(seen)}, {against}");
}
