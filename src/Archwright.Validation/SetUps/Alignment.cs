using System.Collections.Concurrent;
using Archwright.Dentition.Catalogue;
using Archwright.Dentition.Positions;
using Archwright.Dentition.Teeth;
using Archwright.Mechanics.Slots;
using Archwright.Treatment.Forecasts;
using Archwright.Treatment.Patients;
using Archwright.Validation.Record;

namespace Archwright.Validation.SetUps;

/// <summary>Lower front teeth that lack room, aligned by a first wire: made-up arches, and patients of all
/// rates.</summary>
/// <remarks>Nothing in the law of movement was fitted on an alignment trial, and nothing here is to be: the arches
/// are drawn so that they start about as irregular as in the trial, and for no other purpose.</remarks>
internal static class Alignment
{
    /// <summary>How far the cohort is followed.</summary>
    public const int Weeks = 12;

    private const int Arches = 2;

    // Middles of five equal parts of all patients, in standard deviations.
    private static readonly double[] Patients = [-1.2816, -0.5244, 0, 0.5244, 1.2816];

    private static readonly ConcurrentDictionary<(string Wire, bool Rubs), Lazy<IReadOnlyList<Patient>>> Cohorts =
        new();

    /// <summary>Irregularity after <c>weeks</c> over that at the start, means of the cohort.</summary>
    public static double Share(SetUp given) =>
        ShareAfter(Asked(given), (int)given.Number("weeks"));

    /// <summary>The same by wire and week, without friction.</summary>
    public static double ShareAfter(string wire, int week) => ShareAfter((wire, false), week);

    private static double ShareAfter((string Wire, bool Rubs) asked, int week) => Mean(asked, week) / Mean(asked, 0);

    /// <summary>Mean irregularity with <c>wire</c> less that with <c>other</c> after <c>weeks</c> [mm].</summary>
    public static double Difference(SetUp given)
    {
        int weeks = (int)given.Number("weeks");
        return Cohort(Asked(given)).Average(one => one.Course.Weeks[weeks].Irregularity!.Value)
            - Cohort((given.Text("other"), false)).Average(one => one.Course.Weeks[weeks].Irregularity!.Value);
    }

    /// <summary>Mean gain of intercanine width after <c>weeks</c> [mm].</summary>
    public static double WidthGain(SetUp given)
    {
        int weeks = (int)given.Number("weeks");
        return Cohort(Asked(given)).Average(one => Width(one, weeks) - Width(one, 0));
    }

    /// <summary>Days until the irregularity is below <c>below</c> mm, mean of the cohort.</summary>
    public static double Days(SetUp given)
    {
        double below = given.Number("below");
        return Cohort(Asked(given)).Average(one =>
            one.March.Days.First(day => day.Irregularity < below).Day / one.Course.Rate);
    }

    // Keys: wire, and friction = wet for the coefficient of the catalogue in saliva.
    private static (string Wire, bool Rubs) Asked(SetUp given) => (given.Text("wire"), given.Has("friction"));

    private static double Mean((string Wire, bool Rubs) asked, int week) =>
        Cohort(asked).Average(one => one.Course.Weeks[week].Irregularity!.Value);

    private static double Width(Patient patient, int week)
    {
        ForecastRequest request = patient.Request;
        ToothNumber?[] teeth = [.. request.Teeth.Select(tooth => (ToothNumber?)tooth)];
        Slot[] slots =
        [
            .. request.Arrangement.Slots.Select((slot, i) => slot with
            {
                Actual = ClinicalAxes.For(request.Teeth[i]).Displaced(
                    slot.Rest, patient.Course.Weeks[week].Teeth[i]),
            }),
        ];
        return ArchWidths.Intercanine(teeth, slots)!.Value;
    }

    private static IReadOnlyList<Patient> Cohort((string Wire, bool Rubs) asked) =>
        Cohorts.GetOrAdd(asked, of => new Lazy<IReadOnlyList<Patient>>(() => Computed(of.Wire, of.Rubs))).Value;

    private static IReadOnlyList<Patient> Computed(string wire, bool rubs)
    {
        double[] rates = [.. Patients.Select(PatientRate.Unknown.At)];
        var all = new List<Patient>();
        for (int number = 0; number < Arches; number++)
        {
            ForecastRequest request = new CrowdedArch { Seed = 3, Number = number, WireId = wire }.Request(
                (int)Math.Ceiling(Weeks * rates.Max())) with { Rate = new PatientRate(0, 0) };
            if (rubs)
                request = request.WithFriction(Coefficient(wire));
            Forecast march = Forecaster.Run(request);
            foreach (double rate in rates)
            {
                Draw course = march.ReadAt(rate, Weeks);
                if (!course.IsWhole)
                    throw new InvalidOperationException("A made-up arch was not followed: " + march.Stop?.Reason);
                all.Add(new Patient(request, march, course));
            }
        }

        return all;
    }

    private static double Coefficient(string wire) => WireCatalogue.Default.TryFind(wire, out CatalogueWire? found)
        ? found.Alloy.FrictionWet.Value
        : throw new InvalidOperationException($"The catalogue has no wire {wire}.");

    private sealed record Patient(ForecastRequest Request, Forecast March, Draw Course);
}
