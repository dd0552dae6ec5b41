using System.Globalization;
using Archwright.Dentition.Catalogue;
using Archwright.Practice.Bench;
using Archwright.Practice.Settings;
using Microsoft.AspNetCore.Components;

namespace Archwright.Web.Bench;

/// <summary>Wires side by side without a patient. The address holds what is asked; the answers are computed in the
/// background.</summary>
public sealed partial class BenchPage : IDisposable
{
    private const string BenchCaution =
        "A bench is not a mouth: stated sizes, straight wires, no chewing. Real slots are often larger, so real play "
        + "is often more. It shows how wires differ; the clinician decides.";

    // Common practice, no source: what a wire meets in a mouth.
    private static readonly (int Degrees, string Words)[] Temperatures =
        [(5, "ice-cold drink"), (22, "room"), (36, "mouth"), (55, "hot drink")];

    private static readonly string[] Slots = ["018", "022"];

    // A passive lid, an elastic tie, and a steel one as in docs/theory/sliding.md [N].
    private static readonly double[] Ties = [0, 1, 2.94];

    private readonly Dictionary<string, BenchSheet> sheets = new(StringComparer.Ordinal);
    private BenchQuestion question = BenchQuestion.Usual;
    private IReadOnlyList<string> problems = [];
    private IReadOnlyList<BenchPanel> panels = [];
    private IReadOnlyList<string> inShort = [];
    private CancellationTokenSource? asking;
    private bool isAsked;
    private int shownTemperature = BenchQuestion.Usual.Temperature;
    private int waiting;

    /// <summary>Ids of the wires, as the address has them.</summary>
    [SupplyParameterFromQuery(Name = "wires")]
    public string? Wires { get; set; }

    /// <summary>Temperature, as the address has it.</summary>
    [SupplyParameterFromQuery(Name = "temperature")]
    public string? Temperature { get; set; }

    /// <summary>Slot, as the address has it.</summary>
    [SupplyParameterFromQuery(Name = "slot")]
    public string? Slot { get; set; }

    /// <summary>Force of the tie, as the address has it.</summary>
    [SupplyParameterFromQuery(Name = "tie")]
    public string? Tie { get; set; }

    /// <summary>Wet or dry, as the address has it.</summary>
    [SupplyParameterFromQuery(Name = "state")]
    public string? State { get; set; }

    [Inject]
    private BenchLab Lab { get; set; } = null!; // injected, like all below

    [Inject]
    private PracticeSettings Settings { get; set; } = null!;

    [Inject]
    private NavigationManager Navigation { get; set; } = null!;

    /// <inheritdoc/>
    public void Dispose() => asking?.Cancel(); // it holds no timer and no handle

    /// <inheritdoc/>
    protected override async Task OnParametersSetAsync()
    {
        (BenchQuestion asked, problems) = BenchQuestion.Read(Wires, Temperature, Slot, Tie, State);
        if (asked == question && isAsked)
            return;

        isAsked = true;
        (question, shownTemperature) = (asked, asked.Temperature);
        asking?.Cancel();
        asking = new CancellationTokenSource();
        await AnswerAsync(asked, asking.Token);
    }

    private async Task AnswerAsync(BenchQuestion asked, CancellationToken token)
    {
        sheets.Clear();
        IReadOnlyList<CatalogueWire> wires = asked.Found;
        foreach (CatalogueWire wire in wires)
        {
            if (Lab.Known(wire, asked.Temperature, asked.Slot) is { } known)
                sheets[wire.Id] = known;
        }

        Show(wires);
        try
        {
            foreach (CatalogueWire wire in wires.Where(one => !sheets.ContainsKey(one.Id)))
            {
                BenchSheet sheet = await Lab.SheetAsync(wire, asked.Temperature, asked.Slot, token);
                token.ThrowIfCancellationRequested();
                sheets[wire.Id] = sheet;
                Show(wires);
                StateHasChanged();
            }
        }
        catch (OperationCanceledException)
        {
            // Another question has been asked meanwhile, or the page is left.
        }
    }

    private void Show(IReadOnlyList<CatalogueWire> wires)
    {
        BenchedWire[] there =
        [
            .. wires.Select((wire, i) => (wire, i)).Where(one => sheets.ContainsKey(one.wire.Id))
                .Select(one => new BenchedWire(Letter(one.i), one.i, sheets[one.wire.Id])),
        ];
        waiting = wires.Count - there.Length;
        var maker = new BenchPanels(question, Settings.Force);
        panels = there.Length > 0 ? maker.Of(there) : [];
        inShort = waiting == 0 ? maker.InShort(there) : [];
    }

    private void Ask(BenchQuestion other) => Navigation.NavigateTo(other.Address, replace: true);

    private static string Letter(int place) => ((char)('A' + place)).ToString(CultureInfo.InvariantCulture);

    private static string Pressed(bool pressed) => pressed ? "true" : "false";

    private int Whole(ChangeEventArgs change) =>
        int.TryParse(change.Value as string, NumberStyles.Integer, CultureInfo.InvariantCulture, out int whole)
            ? Math.Clamp(whole, BenchTests.Coldest, BenchTests.Warmest)
            : question.Temperature;
}
