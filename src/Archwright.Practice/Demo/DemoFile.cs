using System.Text.Json;
using System.Text.Json.Serialization;

namespace Archwright.Practice.Demo;

/// <summary>The file of the invented practice, as it is written. Days count from the day on which the demo is
/// opened.</summary>
internal sealed record DemoFile(
    bool Invented,
    DemoHouse Practice,
    IReadOnlyList<DemoStaff> Staff,
    IReadOnlyList<DemoBooking> Today,
    IReadOnlyList<DemoLot> Stock,
    IReadOnlyList<DemoPatient> Patients)
{
    private static readonly JsonSerializerOptions Options = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower,
    };

    /// <summary>Reads the file that comes with the program.</summary>
    public static DemoFile Read()
    {
        using Stream stream = typeof(DemoFile).Assembly.GetManifestResourceStream("demo-practice.json")
            ?? throw new InvalidOperationException("The demo practice is not in the program.");
        DemoFile file = JsonSerializer.Deserialize<DemoFile>(stream, Options)
            ?? throw new InvalidOperationException("The file of the demo practice is empty.");
        return file with { Patients = [.. file.Patients.Select(InWords)] };
    }

    // What people read names every tooth in words beside its number.
    private static DemoPatient InWords(DemoPatient patient) => patient with
    {
        Plan = DemoTeeth.InWords(patient.Plan),
        Brackets = DemoTeeth.InWords(patient.Brackets),
        Question = DemoTeeth.InWords(patient.Question),
        Alerts = [.. patient.Alerts.Select(DemoTeeth.InWords)],
        Visits =
        [
            .. patient.Visits.Select(visit => visit with
            {
                Note = visit.Note is { } note ? DemoTeeth.InWords(note) : null,
                Breakages =
                [
                    .. visit.Breakages.Select(one => one with { What = DemoTeeth.InWords(one.What) }),
                ],
            }),
        ],
    };
}

internal sealed record DemoHouse(string Name, string Place);

internal sealed record DemoStaff(string Id, string Name, string Role);

internal sealed record DemoBooking(string Patient, string Time, int Minutes, string Kind);

internal sealed record DemoLot(
    string Wire, string Form, string Arch, int OnHand, int ReorderAt, string Lot, int? ExpiresInDays);

internal sealed record DemoPatient
{
    public required string Id { get; init; }

    public required string Name { get; init; }

    public required int Age { get; init; }

    public required string Language { get; init; }

    public string? Guardian { get; init; }

    public required string Plan { get; init; }

    [JsonPropertyName("slot_in")]
    public required double SlotInches { get; init; }

    public required string Prescription { get; init; }

    public required string Brackets { get; init; }

    public required string Ties { get; init; }

    public required IReadOnlyList<string> Alerts { get; init; }

    public required string Question { get; init; }

    public required IReadOnlyList<string> MissingTeeth { get; init; }

    public required DemoArches Start { get; init; }

    public required DemoArches TodayPositions { get; init; }

    public required IReadOnlyList<DemoVisit> Visits { get; init; }
}

internal sealed record DemoArches(
    IReadOnlyDictionary<string, DemoOffset> Upper, IReadOnlyDictionary<string, DemoOffset> Lower);

internal sealed record DemoOffset(
    double LabialMm, double OcclusalMm, double MesialMm, double RotationDeg, double TipDeg, double TorqueDeg);

internal sealed record DemoVisit
{
    public required int Day { get; init; }

    public required string Kind { get; init; }

    public string? UpperWire { get; init; }

    public string? LowerWire { get; init; }

    [JsonPropertyName("discomfort_0_10")]
    public DemoDiscomfort? Discomfort { get; init; }

    public string? Note { get; init; }

    public required string By { get; init; }

    public required string Ties { get; init; }

    public required IReadOnlyList<DemoBreakage> Breakages { get; init; }

    public int? NextInWeeks { get; init; }
}

internal sealed record DemoDiscomfort(int? H4, int? H24, int? D3, int? D7);

internal sealed record DemoBreakage(string Tooth, string What);
