using Archwright.Dentition.Comparison;
using Archwright.Dentition.Teeth;
using Archwright.Mechanics.Engagement;
using Archwright.Practice.Advice;
using Archwright.Practice.People;
using Archwright.Practice.Settings;
using Archwright.Practice.Values;
using Archwright.Practice.Visits;
using Archwright.Storage.Desks;
using Archwright.Web.Chair;
using Archwright.Web.Drawing;
using Archwright.Web.Sessions;
using Archwright.Web.Words;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Hosting;

namespace Archwright.Web.Pages;

/// <summary>One visit at the chair.</summary>
public sealed partial class ChairPage
{
    private const int WeeksAhead = 12;
    private const int SaveAfterMilliseconds = 700;

    private ChairState? state;
    private Actor? actor;
    private Visit? next;
    private VisitSaved? conflict;
    private WireAtWork? work;
    private WireAtWork? drawn; // the arch with the wire where one is in; what both views show
    private ArchScene? scene;
    private Outlook? outlook;
    private AdviceProgress? progress;
    private ArchView view = ArchView.Occlusal;
    private string told = "";
    private string toldTone = "";
    private string adviceFault = "";
    private string solveFault = "";
    private string forecastFault = "";
    private bool forecasting;
    private bool inSpace;
    private bool hasSpace;
    private bool atWork;
    private bool dragging;
    private bool missing;
    private bool saving;
    private bool gone;
    private Task lastSave = Task.CompletedTask;
    private int week;
    private int drawing;
    private CancellationTokenSource? solving;
    private CancellationTokenSource? advising;
    private CancellationTokenSource? looking;
    private CancellationTokenSource? expecting;
    private CancellationTokenSource? savingSoon;

    /// <summary>The visit.</summary>
    [Parameter]
    public Guid Id { get; set; }

    [Inject]
    private PatientFiles Files { get; set; } = null!; // injected, like all below

    [Inject]
    private VisitDesk Desk { get; set; } = null!;

    [Inject]
    private Shelf Shelf { get; set; } = null!;

    [Inject]
    private IWireAdvisor Advisor { get; set; } = null!;

    [Inject]
    private ForceCeilings Ceilings { get; set; } = null!;

    [Inject]
    private PracticeSettings Settings { get; set; } = null!;

    [Inject]
    private CurrentStaff Staff { get; set; } = null!;

    [Inject]
    private IWebHostEnvironment Host { get; set; } = null!;

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        gone = true;
        foreach (CancellationTokenSource? source in new[] { solving, advising, looking, expecting, savingSoon })
        {
            if (source is not null)
                await source.CancelAsync();
        }

        solving = advising = looking = expecting = savingSoon = null;
        if (state?.IsDirty == true && conflict is null)
            await SaveAsync();
    }

    /// <inheritdoc/>
    protected override async Task OnParametersSetAsync()
    {
        if (state?.Visit.Id == Id)
            return;

        // A program that was built without Node has no view in space, and says nothing of it here.
        hasSpace = Host.WebRootFileProvider.GetFileInfo("_content/Archwright.Web/gen/space.js").Exists;
        await SaveAsync(); // of the visit before, when the same page goes on to another
        actor = await Staff.ActorAsync();
        PatientFile? file = await Files.OfVisitAsync(Id, actor);
        missing = file is null;
        if (file is null)
            return;

        state = new ChairState(file, file.Visits.Single(visit => visit.Id == Id), await Shelf.AllAsync());
        await ComputeAsync();
        if (state is { IsSigned: false, IsSeenToday: true } && (state.Arch.Advised is null || state.IsAdviceOvertaken))
            _ = AdviseAsync();
        else
            _ = LookAheadAsync();
    }

    // The day of the visit before this one; that of this one where there is none.
    private DateOnly LastDay => state!.File.Visits // a state is there where this is shown
        .Where(one => one.Day < state.Visit.Day).Select(one => one.Day).DefaultIfEmpty(state.Visit.Day).Max();

    private static string Pressed(bool pressed) => pressed ? "true" : "false";

    private string PositionsWords()
    {
        if (week > 0)
            return $"Forecast, week {week}: expected, not seen. Teeth numbered by {Say.Notation(Settings.Notation)}.";

        string bare = Say.Bare(state!.Bare, Settings.Notation); // a state is there where this is shown

        string when = state.IsSeenToday
            ? $"Positions of today, {Say.From(state.Arch.Seen!.From)}"
            : state.Drawn is { } old
                ? $"Not looked at today: positions of {Figures.Day(old.On)}"
                : "No positions on record";
        return $"{when}. {bare}{(bare.Length > 0 ? " " : "")}Patient's right is on the left. "
            + $"Teeth numbered by {Say.Notation(Settings.Notation)}.";
    }

    private string WireWords()
    {
        if (solveFault.Length > 0)
            return solveFault;
        if (work is null)
            return "No wire is shown.";

        string wire = Say.Wire(work.Arch.Wire.Id);
        if (work.WhyNot is { } why)
            return $"{wire}: {why}";

        return work.IsWorking
            ? $"Forces of {wire} at work, once every displaced tooth has come {Engager.Relief:0 %} of its way."
            : atWork
                ? $"Forces of {wire} on engagement: its state at work was not found."
                : $"Forces of {wire} on the teeth, on engagement.";
    }

    // Draws and solves what is on the screen. A solve that is overtaken by a newer question is given up, and its result
    // dropped; until the newer one is there, the picture with its own caption stays.
    private async Task ComputeAsync()
    {
        int mine = ++drawing;
        CancellationToken token = Renew(ref solving);
        if (state?.Inputs is not { } inputs)
            return;

        string wire = state.ShownWire.Length > 0 ? state.ShownWire : "niti-014";
        bool isReal = state.ShownWire.Length > 0;
        AdviceInputs shown = week > 0 && outlook is not null
            ? inputs with { Positions = outlook.Weeks[week].Positions }
            : inputs;
        try
        {
            bool relieved = atWork && isReal;
            WireAtWork solved = await Task.Run(() =>
            {
                WireAtWork engaged = WireAtWork.Engage(shown, wire, Ceilings, token);
                return (relieved ? engaged.AtWork(token) : null) ?? engaged;
            }, token);
            if (mine != drawing)
                return;

            solveFault = "";
            work = isReal ? solved : null;
            drawn = isReal ? solved : solved with { Loads = [], WhyNot = "" };
            scene = ArchDrawing.Draw(drawn, view, shown.Bare);
        }
        catch (OperationCanceledException)
        {
            return; // overtaken: the newer one draws
        }
        catch (ArgumentException cannot) when (mine == drawing)
        {
            work = drawn = null;
            scene = null;
            solveFault = cannot.Message;
        }

        StateHasChanged();
    }

    private async Task ShowAsync(string wire)
    {
        state!.Shown = wire;
        week = 0;
        outlook = null;
        await ComputeAsync();
        _ = LookAheadAsync();
    }

    private async Task LookAheadAsync()
    {
        if (state?.Inputs is not { } inputs || work is not { WhyNot: null } shown)
            return;

        CancellationToken token = Renew(ref looking);
        try
        {
            double age = state.File.Patient.AgeOn(state.Visit.Day);
            Outlook found = await Task.Run(
                () => Outlook.Median(inputs, shown.Arch.Wire.Id, WeeksAhead, age, token), token);
            if (token.IsCancellationRequested)
                return;

            outlook = found;
            StateHasChanged();
        }
        catch (Exception given) when (given is OperationCanceledException or ArgumentException)
        {
            // Overtaken by a newer question, or nothing to look ahead from; the picture of today stands.
        }
    }

    private async Task SlideAsync(ChangeEventArgs change)
    {
        week = int.TryParse(change.Value?.ToString(), out int asked) && outlook is not null
            ? Math.Clamp(asked, 0, outlook.Weeks.Length - 1)
            : 0;
        await ComputeAsync();
    }

    private async Task AdviseAsync()
    {
        if (state is not { IsSigned: false, IsSeenToday: true, Inputs: { } inputs })
            return;

        CancellationToken token = Renew(ref advising);
        Jaw jaw = state.Jaw;
        state.Advise(jaw, null);
        adviceFault = "";
        progress = new AdviceProgress(0, inputs.Stock.Count);
        StateHasChanged();
        var steps = new Progress<AdviceProgress>(step => _ = InvokeAsync(() =>
        {
            if (progress is not null && !token.IsCancellationRequested)
            {
                progress = step;
                StateHasChanged();
            }
        }));
        try
        {
            Recommendation advice = await Task.Run(() => Advisor.Advise(inputs, steps, token), token);
            state.Advise(jaw, advice);
            await ComputeAsync();
            _ = LookAheadAsync();
        }
        catch (OperationCanceledException)
        {
            return; // a newer question shows its own progress
        }
        catch (ArgumentException cannot)
        {
            adviceFault = cannot.Message;
        }

        progress = null;
        await ChangedAsync();
    }

    private async Task CancelAdvice()
    {
        progress = null;
        if (advising is not null)
            await advising.CancelAsync();
    }

    private async Task PositionsChangedAsync()
    {
        week = 0;
        outlook = null;
        await ComputeAsync();
        _ = AdviseAsync(); // at once: the advice on other positions goes with it
        await ChangedAsync();
    }

    // Another discomfort may mean another advice.
    private async Task NotedAsync()
    {
        if (state!.IsAdviceOvertaken)
            _ = AdviseAsync();
        await ChangedAsync();
    }

    private async Task UndoAsync()
    {
        state!.Undo();
        await ComputeAsync();
        await ChangedAsync();
    }

    private async Task TurnAsync(Jaw jaw)
    {
        // At once, before anything is awaited: the next tap may come already, and it means this arch.
        state!.Turn(jaw);
        forecastFault = "";
        week = 0;
        outlook = null;
        work = drawn = null;
        scene = null;
        await CancelAdvice();
        await ComputeAsync();
        if (state is { IsSigned: false, IsSeenToday: true } && (state.Arch.Advised is null || state.IsAdviceOvertaken))
            _ = AdviseAsync();
        else
            _ = LookAheadAsync();
    }

    private async Task WorkAsync(bool asked)
    {
        atWork = asked;
        await ComputeAsync();
    }

    // Where the last visit's forecast has the teeth today. Whoever taps it has looked, and found them so.
    private async Task AsForecastAsync()
    {
        if (state is not { IsSigned: false } || forecasting)
            return;

        (forecasting, forecastFault) = (true, "");
        ChairState asked = state;
        Jaw jaw = asked.Jaw;
        CancellationToken token = Renew(ref expecting);
        try
        {
            ToothMap<ToothOffset> expected = await Task.Run(() => asked.Expected(jaw, token), token);
            if (state == asked && asked.Jaw == jaw && !token.IsCancellationRequested)
            {
                asked.See(PositionsFrom.AsForecast, expected);
                await PositionsChangedAsync();
            }
        }
        catch (OperationCanceledException)
        {
            // Stopped, or the page was left: the positions stay as they were.
        }
        catch (ArgumentException cannot)
        {
            forecastFault = cannot.Message;
        }
        finally
        {
            forecasting = false;
        }
    }

    private async Task StopForecastAsync()
    {
        if (expecting is not null)
            await expecting.CancelAsync();
    }

    private async Task LookAsync(ArchView asked)
    {
        inSpace = false;
        view = asked;
        await ComputeAsync();
    }

    private void Select(ToothNumber tooth) => state!.Selected = state.Selected == tooth ? null : tooth;

    private async Task DragAsync(ToothDrag drag)
    {
        if (state is null || state.IsSigned)
            return;

        // The first move takes the advice away, also one that is on its way, and draws everything; from then on what
        // does not follow the finger stays as it is. Whatever else is computed of the old place is given up.
        if (drag.Begins)
        {
            await CancelAdvice();
            Renew(ref looking);
        }

        dragging = !drag.Begins;
        state.Selected = drag.Tooth;
        state.Drag(drag, view);
        await ComputeAsync();
    }

    private Task DropAsync()
    {
        dragging = false;
        return PositionsChangedAsync();
    }

    private async Task ReadAlert(Guid alert)
    {
        state!.Edit(content => content with
        {
            AlertsRead = content.AlertsRead.Contains(alert)
                ? content.AlertsRead.Without(alert)
                : content.AlertsRead.With(alert),
        });
        await ChangedAsync();
    }

    private void Tell(string words, string tone) => (told, toldTone) = (words, tone);

    // A page that was left starts nothing new: whoever still awaited something on it gets a token that is cancelled.
    // The sources hold no timer and no handle, so that nothing needs disposing.
    private CancellationToken Renew(ref CancellationTokenSource? source)
    {
        source?.Cancel();
        source = gone ? null : new CancellationTokenSource();
        return source?.Token ?? new CancellationToken(canceled: true);
    }
}
