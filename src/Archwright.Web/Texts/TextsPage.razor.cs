using Archwright.Dentition.Catalogue;
using Archwright.Practice.Answers;
using Archwright.Practice.Bench;
using Archwright.Practice.Leaflets;
using Archwright.Practice.Settings;
using Archwright.Practice.Values;
using Archwright.Storage.Desks;
using Archwright.Web.Answers;
using Archwright.Web.Bench;
using Archwright.Web.Drawing;
using Archwright.Web.Sessions;
using Microsoft.AspNetCore.Components;
using Microsoft.EntityFrameworkCore;

namespace Archwright.Web.Texts;

/// <summary>Where the practice puts words of its own in place of ours.</summary>
public sealed partial class TextsPage : IDisposable
{
    private readonly CancellationTokenSource leaving = new();
    private IReadOnlyList<KeptText> kept = [];
    private IReadOnlyList<AnswerWire> bent = [];
    private BenchChart? chart;
    private string language = "en";
    private string key = TextList.Parts[0].Keys[0];
    private string draft = "";
    private string told = "";
    private string tone = "";

    [Inject]
    private TextDesk Desk { get; set; } = null!; // injected, like all below

    [Inject]
    private PracticeSettings Settings { get; set; } = null!;

    [Inject]
    private CurrentStaff Staff { get; set; } = null!;

    [Inject]
    private TimeProvider Clock { get; set; } = null!;

    [Inject]
    private BenchLab Lab { get; set; } = null!;

    private LeafletTexts Ours => LeafletTexts.In(language);

    private DateOnly Today => DateOnly.FromDateTime(Clock.GetLocalNow().DateTime);

    private OwnTextCheck Check => OwnTextCheck.Of(language, key, draft);

    private bool IsDraft => draft.Trim() != Standing;

    private string Standing => Find(key)?.Words.Text ?? Ours.Ours(key);

    private OwnText Word => new(language, key, draft);

    // With the words on the screen in place of those that are kept.
    private Listing<OwnText> Spoken => Listing<OwnText>.Of(
        [.. kept.Select(one => one.Words).Where(one => one.Language != language || one.Key != key), Word]);

    private (Leaflet Leaflet, IReadOnlySet<string> Here)? Sample => TextList.Parts[0].Keys.Contains(key)
        ? SampleLeaflets.Of(Word, kept.Select(one => one.Words), Settings.Name, Today) : null;

    private (AnswerSheet Sheet, IReadOnlySet<string> Here) Answers
    {
        get
        {
            AnswerSheet sheet = Write(Spoken);
            AnswerSheet marked = Write(Listing<OwnText>.Of(
                Spoken.Select(one => one == Word ? one with { Text = one.Text + TextList.Marker } : one)));
            return (sheet, sheet.AllLines().Except(marked.AllLines()).ToHashSet(StringComparer.Ordinal));
        }
    }

    // The text in place of the picture is read where there is none.
    private IReadOnlyList<AnswerWire> Pictured => key == TextList.NoPicture
        ? [.. bent.Select(one => one with { Bend = BenchCurve.Not("sample") })] : bent;

    private AnswerSheet Write(Listing<OwnText> own) =>
        AnswerSheet.Write(LeafletTexts.In(language, own), Settings.Name, Pictured);

    private string Filled(string which) => TextList.Filled(
        Ours, LeafletTexts.In(language, Spoken)[which], Settings.Name, Today);

    /// <inheritdoc/>
    protected override async Task OnInitializedAsync()
    {
        kept = await Desk.KeptAsync();
        language = Settings.Language;
        draft = Standing;
    }

    // Bending the two wires of the answers takes a second or so: the page does not wait for it.
    /// <inheritdoc/>
    protected override async Task OnAfterRenderAsync(bool firstRender)
    {
        if (!firstRender)
            return;

        (CatalogueWire first, CatalogueWire other) = AnswerWires.General;
        try
        {
            BenchSheet one = await Lab.SheetAsync(first, AnswersPage.Mouth, BenchQuestion.Usual.Slot, leaving.Token);
            BenchSheet two = await Lab.SheetAsync(other, AnswersPage.Mouth, BenchQuestion.Usual.Slot, leaving.Token);
            bent = [new AnswerWire("A", first, true, one.Bend, one.Set), new("B", other, false, two.Bend, two.Set)];
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

        StateHasChanged();
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        leaving.Cancel();
        leaving.Dispose();
    }

    private KeptText? Find(string which) =>
        kept.FirstOrDefault(one => one.Words.Language == language && one.Words.Key == which);

    private int Changed(IReadOnlyList<string> keys) => keys.Count(one => Find(one) is not null);

    private void Speak(string code)
    {
        language = code;
        Choose(key);
    }

    private void Choose(string other)
    {
        key = other;
        draft = Standing;
        Tell("", "");
    }

    private async Task KeepAsync()
    {
        try
        {
            OwnTextCheck check = await Desk.KeepAsync(new OwnText(language, key, draft), await Staff.ActorAsync());
            Tell(
                check.IsGood ? "Kept. Leaflets that are written from now on say it." : string.Join(' ', check.Faults),
                check.IsGood ? "good" : "stop");
        }
        catch (DbUpdateException)
        {
            Tell("Somebody else changed this text at the same moment. Their words stand here now.", "stop");
        }

        await LoadAsync();
    }

    private async Task GoBackAsync()
    {
        try
        {
            await Desk.GoBackAsync(language, key, await Staff.ActorAsync());
            Tell("Back to our words.", "good");
        }
        catch (DbUpdateException)
        {
            Tell("Somebody else changed this text at the same moment. Their words stand here now.", "stop");
        }

        await LoadAsync();
    }

    private async Task LoadAsync()
    {
        kept = await Desk.KeptAsync();
        draft = Standing;
    }

    private void Tell(string words, string colour) => (told, tone) = (words, colour);
}
