using Archwright.Dentition.Catalogue;
using Archwright.Dentition.Teeth;
using Archwright.Practice.Answers;
using Archwright.Practice.Bench;
using Archwright.Practice.Leaflets;
using Archwright.Practice.Settings;
using Archwright.Practice.Values;
using Archwright.Practice.Visits;
using Archwright.Storage.Desks;
using Archwright.Storage.Opening;
using Archwright.Web.Bench;
using Archwright.Web.Drawing;
using Archwright.Web.Sessions;
using Archwright.Web.Words;
using Microsoft.AspNetCore.Components;

namespace Archwright.Web.Answers;

/// <summary>Answers to what patients ask about their wires, for the practice to show or print: for nobody in
/// particular, or for the patient of a visit, with their own wire in the picture.</summary>
public sealed partial class AnswersPage : IDisposable
{
    // The wire in a mouth [°C].
    internal const double Mouth = 36;

    private readonly CancellationTokenSource leaving = new();
    private PatientFile? file;
    private Visit? visit;
    private PracticeSettings settings = new();
    private Listing<OwnText> ownTexts = Listing<OwnText>.Empty;
    private AnswerSheet? sheet;
    private BenchChart? chart;
    private IReadOnlyList<AnswerWire> bent = [];
    private IReadOnlyList<(string Arch, string Wire)> own = [];
    private string chosen = "";
    private string language = "en";
    private Guid? shown;
    private bool isShown;
    private bool missing;

    /// <summary>The visit; null for answers to nobody in particular.</summary>
    [Parameter]
    public Guid? Id { get; set; }

    [Inject]
    private PatientFiles Files { get; set; } = null!; // injected, like all below

    [Inject]
    private PracticeDatabase Database { get; set; } = null!;

    [Inject]
    private TextDesk Texts { get; set; } = null!;

    [Inject]
    private BenchLab Lab { get; set; } = null!;

    [Inject]
    private CurrentStaff Staff { get; set; } = null!;

    private bool IsReady => bent.Count > 0;

    /// <inheritdoc/>
    public void Dispose()
    {
        leaving.Cancel();
        leaving.Dispose();
    }

    /// <inheritdoc/>
    protected override async Task OnParametersSetAsync()
    {
        if (isShown && shown == Id)
            return;

        (isShown, shown) = (true, Id);
        (file, visit, own, missing) = (null, null, [], false);
        settings = await Database.SettingsAsync();
        ownTexts = await Texts.OwnAsync();
        language = settings.Language;
        if (Id is { } id)
        {
            file = await Files.OfVisitAsync(id, await Staff.ActorAsync());
            missing = file is null;
            if (file is null)
                return;

            visit = file.Visits.Single(one => one.Id == id);
            language = settings.LanguageFor(file.Patient.Language);
            own =
            [
                .. Enum.GetValues<Jaw>()
                    .Select(jaw => (Say.Arch(jaw), visit.Content.Arch(jaw)?.Decided?.WireId ?? ""))
                    .Where(one => AnswerWires.For(one.Item2) is not null),
            ];
        }

        await ChooseAsync(own.Count > 0 ? own[0].Wire : "");
    }

    private async Task ChooseAsync(string wire)
    {
        (chosen, bent, chart) = (wire, [], null);
        Write();
        (CatalogueWire first, CatalogueWire other) = AnswerWires.For(wire) ?? AnswerWires.General;
        bool isTheirs = AnswerWires.For(wire) is not null;
        try
        {
            BenchSheet one = await Lab.SheetAsync(first, Mouth, BenchQuestion.Usual.Slot, leaving.Token);
            BenchSheet two = await Lab.SheetAsync(other, Mouth, BenchQuestion.Usual.Slot, leaving.Token);
            if (chosen != wire)
                return;

            bent = [new AnswerWire("A", first, isTheirs, one.Bend, one.Set), new("B", other, false, two.Bend, two.Set)];
        }
        catch (Exception left) when (left is OperationCanceledException or ObjectDisposedException)
        {
            return; // the page is left
        }

        if (bent.All(answer => answer.Bend.IsThere))
        {
            chart = BenchChart.Draw(
                [.. bent.Select((answer, i) => (answer.Letter, i, answer.Bend))], AnswerSheet.Grams);
        }

        Write();
    }

    private void Speak(string code)
    {
        language = code;
        Write();
    }

    private void Write() =>
        sheet = AnswerSheet.Write(LeafletTexts.In(language, ownTexts), settings.Name, bent);
}
