using System.Globalization;
using Archwright.Dentition.Teeth;
using Archwright.Treatment.Decisions;

namespace Archwright.Cli.Visits;

/// <summary>Words of the report of a visit.</summary>
internal static class VisitWords
{
    /// <summary>What is in place and what was said, in one line.</summary>
    public static string Today(VisitQuestion question)
    {
        string present = !question.PresentIsKnown ? "Which wire is in place is not said"
            : question.Present is not { } wire ? "No wire in place: bonding day"
            : wire.Weeks is { } weeks
                ? $"In place: {wire.Wire.Title}, for {Figure(weeks, "0.#")} weeks"
                : $"In place: {wire.Wire.Title}";
        string discomfort = question.Discomfort is { } score ? $"; worst discomfort {Figure(score, "0.#")} of 10" : "";
        string age = question.AgeYears is { } years ? $"; age {Figure(years, "0.#")}" : "";
        string alerts = question.Alerts is { Count: > 0 } some
            ? "; alerts: " + string.Join(", ", some.Order().Select(alert => alert.Word())) : "";
        return present + discomfort + age + alerts + ".";
    }

    /// <summary>What is recommended, in a few words.</summary>
    public static string Headline(VisitAdvice advice) => advice.Step switch
    {
        AdvisedStep.Keep => $"Recommended: keep {advice.Wire!.Figures.Wire.Id}",        // kept: there is one
        AdvisedStep.StepUp when advice.Question.Present is null =>
            $"Recommended: first wire {advice.Wire!.Figures.Wire.Id}",
        AdvisedStep.StepUp => $"Recommended: step up to {advice.Wire!.Figures.Wire.Id}",
        AdvisedStep.StepDown => $"Recommended: step down to {advice.Wire!.Figures.Wire.Id}",
        _ => "Look first: no wire is put forward",
    };

    /// <summary>Ties, interval, comfort and equals.</summary>
    public static IEnumerable<string> Details(VisitAdvice advice, ToothNotation notation)
    {
        if (advice.Wire is { } wire)
        {
            yield return advice.PartialTies.IsEmpty
                ? "Ties: every tooth fully."
                : "Ties: at a distance or passed by at "
                    + string.Join(", ", advice.PartialTies.Select(tooth => tooth.Show(notation)))
                    + "; every other tooth fully.";
            string[] ties =
            [
                .. advice.Options.Where(option => option.TiesWithBest
                    && option.Figures.Wire.Id != wire.Figures.Wire.Id).Select(option => option.Figures.Wire.Id),
            ];
            if (ties.Length > 0 && advice.Step != AdvisedStep.Keep)
            {
                yield return $"As good, as far as is known: {string.Join(", ", ties.Take(8))}"
                    + (ties.Length > 8 ? $" and {ties.Length - 8} more." : ".");
            }
        }
        else if (advice.Nearest is { } nearest)
        {
            yield return $"Nearest: {nearest.Figures.Wire.Id}.";
        }

        yield return $"Next visit in {advice.Interval.Mid} weeks ({advice.Interval.Low} to {advice.Interval.High}).";
        if (advice.Comfort is { } comfort)
            yield return "Comfort: " + comfort.Sentence;
    }

    /// <summary>Why an option is or is not the one put forward.</summary>
    public static string Why(WireOption option) => option.WhyNotThis;

    /// <summary>Whether it is allowed and equal to the first, as a sign.</summary>
    public static string Mark(WireOption option) =>
        option.TiesWithBest ? "=" : option.Allowed ? "may" : "no";

    /// <summary>A figure; what rounds to nothing has no sign.</summary>
    public static string Figure(double value, string format)
    {
        string text = value.ToString(format, CultureInfo.InvariantCulture);
        return text.StartsWith('-') && !text.AsSpan().ContainsAnyInRange('1', '9') ? text[1..] : text;
    }
}
