using Archwright.Practice.Leaflets;
using Archwright.Practice.Settings;
using Archwright.Storage.Desks;
using Archwright.Web.Sessions;
using Microsoft.AspNetCore.Components;
using Microsoft.EntityFrameworkCore;

namespace Archwright.Web.Texts;

/// <summary>Where the practice puts words of its own in place of ours.</summary>
public sealed partial class TextsPage
{
    private IReadOnlyList<KeptText> kept = [];
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

    private LeafletTexts Ours => LeafletTexts.In(language);

    private DateOnly Today => DateOnly.FromDateTime(Clock.GetLocalNow().DateTime);

    private OwnTextCheck Check => OwnTextCheck.Of(language, key, draft);

    private bool IsDraft => draft.Trim() != Standing;

    private string Standing => Find(key)?.Words.Text ?? Ours.Ours(key);

    // The question over an answer; empty for texts that stand alone.
    private string Heading => TextList.HeadingOf(Ours, key);

    /// <inheritdoc/>
    protected override async Task OnInitializedAsync()
    {
        kept = await Desk.KeptAsync();
        draft = Standing;
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
