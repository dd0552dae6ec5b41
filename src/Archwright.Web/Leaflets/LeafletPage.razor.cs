using Archwright.Practice.Leaflets;
using Archwright.Practice.Links;
using Archwright.Practice.People;
using Archwright.Practice.Rules;
using Archwright.Practice.Settings;
using Archwright.Practice.Values;
using Archwright.Practice.Visits;
using Archwright.Storage.Desks;
using Archwright.Storage.Opening;
using Archwright.Web.PatientPages;
using Archwright.Web.Sessions;
using Archwright.Web.Words;
using Microsoft.AspNetCore.Components;

namespace Archwright.Web.Leaflets;

/// <summary>Where a leaflet is looked at and released, and links to it are made and taken back.</summary>
public partial class LeafletPage
{
    private const int UsualDays = 60;

    private PatientFile? file;
    private Visit? visit;
    private Actor? actor;
    private Leaflet? draft;
    private IReadOnlyList<ReleasedLeaflet> released = [];
    private IReadOnlyList<PatientLink> links = [];
    private PracticeSettings settings = new();
    private Listing<OwnText> ownTexts = Listing<OwnText>.Empty;
    private QrPicture? qr;
    private string language = "en";
    private string ownWords = "";
    private string address = "";
    private string told = "";
    private string toldTone = "";
    private int days = UsualDays;
    private bool missing;
    private bool isBusy;

    /// <summary>The visit.</summary>
    [Parameter]
    public Guid Id { get; set; }

    [Inject]
    private PatientFiles Files { get; set; } = null!; // injected, like all below

    [Inject]
    private LeafletDesk Desk { get; set; } = null!;

    [Inject]
    private TextDesk Texts { get; set; } = null!;

    [Inject]
    private PictureMaker Pictures { get; set; } = null!;

    [Inject]
    private PracticeDatabase Database { get; set; } = null!;

    [Inject]
    private CurrentStaff Staff { get; set; } = null!;

    [Inject]
    private TimeProvider Clock { get; set; } = null!;

    [Inject]
    private NavigationManager Navigation { get; set; } = null!;

    private bool IsReleased => released.Any(one => one.Leaflet == draft);

    private string Base => settings.PublicAddress.Length > 0
        ? settings.PublicAddress.TrimEnd('/')
        : Navigation.BaseUri.TrimEnd('/');

    private bool IsOwnComputer => Uri.TryCreate(Base, UriKind.Absolute, out Uri? uri) && uri.IsLoopback;

    /// <inheritdoc/>
    protected override async Task OnParametersSetAsync()
    {
        if (visit?.Id == Id)
            return;

        actor = await Staff.ActorAsync();
        file = await Files.OfVisitAsync(Id, actor);
        missing = file is null;
        if (file is null)
            return;

        settings = await Database.SettingsAsync();
        ownTexts = await Texts.OwnAsync();
        visit = file.Visits.Single(one => one.Id == Id);
        language = settings.LanguageFor(file.Patient.Language);
        await LoadAsync(file);
        if (released.Count > 0)
            language = released[0].Leaflet.Language;
        Draft();
    }

    private async Task LoadAsync(PatientFile opened)
    {
        released = await Desk.OfVisitAsync(Id);
        links = await Desk.LinksAsync(opened.Patient.Id);
    }

    private void Speak(string code)
    {
        language = code;
        Draft();
    }

    private void Draft() => draft = visit is null ? null : LeafletWriter.Write(
        visit, LeafletTexts.In(language, ownTexts), settings.Name, ownWords);

    private async Task ReleaseAsync()
    {
        if (file is null || visit is null || actor is null || draft is not { } shown)
            return;

        isBusy = true;
        try
        {
            (PatientFile opened, Visit told) = (file, visit);
            LeafletPictures pictures = await Task.Run(() => Pictures.Of(opened, told));
            await Desk.ReleaseAsync(told.Id, shown, pictures, actor);
            await LoadAsync(opened);
            Tell("Released. It may be printed, and links may be made.", "good");
        }
        catch (RuleBrokenException broken)
        {
            Tell(broken.Message, "stop");
        }
        finally
        {
            isBusy = false;
        }
    }

    private async Task LinkAsync(Guid leaflet)
    {
        if (file is null || actor is null)
            return;

        try
        {
            (_, string secret) = await Desk.LinkAsync(leaflet, days, actor);
            address = $"{Base}{PatientRoutes.Path}/{secret}";
            qr = QrPicture.Of(address);
            await LoadAsync(file);
            Tell("", "");
        }
        catch (RuleBrokenException broken)
        {
            Tell(broken.Message, "stop");
        }
    }

    private async Task RevokeAsync(Guid link)
    {
        if (file is null || actor is null)
            return;

        await Desk.RevokeAsync(link, actor);
        (address, qr) = ("", null);
        await LoadAsync(file);
        Tell("Taken back: the link opens nothing any more.", "good");
    }

    private string Life(PatientLink link) =>
        link.RevokedAt is { } back ? $"taken back {Figures.Day(DateOnly.FromDateTime(back.Date))}"
        : link.HoldsAt(Clock.GetUtcNow()) ? $"holds until {Figures.Day(DateOnly.FromDateTime(link.ExpiresAt.Date))}"
        : "expired";

    private void Tell(string words, string tone) => (told, toldTone) = (words, tone);
}
