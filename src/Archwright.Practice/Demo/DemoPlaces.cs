using System.Globalization;
using System.Text.Json;
using Archwright.Dentition.Teeth;
using Archwright.Practice.Values;

namespace Archwright.Practice.Demo;

/// <summary>Where the invented patients' teeth stood at each visit: computed by the program's own forecast, which takes
/// minutes, and kept in a file, so that the demo opens at once. A test that runs at night computes them again.
/// </summary>
internal sealed class DemoPlaces
{
    private readonly Dictionary<string, Dictionary<string, double[]>> byArchAndDay;

    private DemoPlaces(Dictionary<string, Dictionary<string, double[]>> byArchAndDay) =>
        this.byArchAndDay = byArchAndDay;

    /// <summary>Reads the file that comes with the program.</summary>
    public static DemoPlaces Read()
    {
        using Stream stream = typeof(DemoPlaces).Assembly.GetManifestResourceStream("demo-places.json")
            ?? throw new InvalidOperationException("The courses of the demo practice are not in the program.");
        return new DemoPlaces(
            JsonSerializer.Deserialize<Dictionary<string, Dictionary<string, double[]>>>(stream)
            ?? throw new InvalidOperationException("The file of the demo's courses is empty."));
    }

    /// <summary>Computes all courses anew, which takes minutes.</summary>
    /// <returns>The text of the file.</returns>
    public static string Compute()
    {
        DemoFile file = DemoFile.Read();
        var arches = Enumerable.Range(0, file.Patients.Count)
            .SelectMany(i => Enum.GetValues<Jaw>().Select(jaw => (Index: i, Jaw: jaw)))
            .AsParallel().AsOrdered().WithDegreeOfParallelism(2)
            .Select(one => (
                Name: Name(file.Patients[one.Index].Id, one.Jaw),
                new SimulatedArch(one.Jaw, file.Patients[one.Index], one.Index, null).Places))
            .ToArray() // in order, which the dictionary of a parallel query does not keep
            .ToDictionary(
                one => one.Name,
                one => one.Places.ToDictionary(
                    day => day.Key.ToString(CultureInfo.InvariantCulture), day => Numbers(day.Value)));
        return JsonSerializer.Serialize(arches).Replace("]},", "]},\n", StringComparison.Ordinal) + "\n";
    }

    /// <summary>Places of one arch by day.</summary>
    public Dictionary<int, ToothMap<ToothOffset>> Of(string patient, Jaw jaw) =>
        byArchAndDay.TryGetValue(Name(patient, jaw), out Dictionary<string, double[]>? days)
            ? days.ToDictionary(
                day => int.Parse(day.Key, CultureInfo.InvariantCulture), day => Places(day.Value))
            : [];

    private static string Name(string patient, Jaw jaw) => $"{patient} {jaw.Word()}";

    // Tooth, then the six parts of its offset, to a thousandth.
    private static double[] Numbers(ToothMap<ToothOffset> places) =>
    [
        .. places.SelectMany(pair => new[]
        {
            pair.Key.Iso, Short(pair.Value.LabialMm), Short(pair.Value.OcclusalMm), Short(pair.Value.MesialMm),
            Short(pair.Value.RotationDegrees), Short(pair.Value.TipDegrees), Short(pair.Value.TorqueDegrees),
        }),
    ];

    private static double Short(double value) => Math.Round(value, 3) + 0.0;

    private static ToothMap<ToothOffset> Places(double[] numbers) => ToothMap<ToothOffset>.Of(
        numbers.Chunk(7).Select(one => KeyValuePair.Create(
            ToothNumber.FromIso((int)one[0]),
            new ToothOffset(one[1], one[2], one[3], one[4], one[5], one[6]))));
}
