using Archwright.Practice.People;
using Archwright.Practice.Rules;
using Archwright.Practice.Visits;
using Archwright.Storage.Desks;
using Archwright.Web.Chair;
using Microsoft.EntityFrameworkCore;

namespace Archwright.Web.Pages;

/// <content>How what is tapped comes into the record: saved soon after, signed, amended.</content>
public sealed partial class ChairPage
{
    private async Task ChangedAsync()
    {
        StateHasChanged();
        CancellationToken token = Renew(ref savingSoon);
        try
        {
            await Task.Delay(SaveAfterMilliseconds, token);
            await SaveAsync();
        }
        catch (OperationCanceledException)
        {
            // Another change came: it saves both.
        }
    }

    // One saving at a time; who asks meanwhile waits for the one that runs.
    private Task SaveAsync() => saving ? lastSave : lastSave = SaveAllAsync();

    // What changes while a saving runs is saved by the same call, after it: nobody else would come for it.
    private async Task SaveAllAsync()
    {
        saving = true;
        try
        {
            while (state is { IsDirty: true } && actor is not null && conflict is null)
                await SaveOnceAsync(state, actor);
        }
        catch (RuleBrokenException broken)
        {
            Tell(broken.Message, "stop");
        }
        finally
        {
            saving = false;
        }

        if (!gone)
            StateHasChanged();
    }

    private async Task SaveOnceAsync(ChairState shown, Actor by)
    {
        VisitContent mine = shown.Content;
        VisitSaved saved = await Desk.NoteAsync(
            new VisitEdit(shown.Visit.Id, shown.Visit.Revision, shown.Saved, mine), by);
        if (saved.Conflicts.Count > 0)
            conflict = saved;
        else
            Took(saved, mine);
    }

    // What was typed while the saving ran is on top of what was saved.
    private void Took(VisitSaved saved, VisitContent mine)
    {
        VisitContent typed = state!.Content;
        state.Accept(saved);
        if (typed != mine)
            state.Edit(_ => VisitMerge.Merge(mine, typed, saved.Content).Content);
        if (saved.OtherName.Length > 0)
            Tell($"{saved.OtherName} has noted something here meanwhile; both stand.", "note");
    }

    private Task KeepMineAsync() => ResolveAsync(conflict!.Content);

    private Task TakeTheirsAsync() => ResolveAsync(
        VisitMerge.Merge(state!.Saved, conflict!.Visit.Content, state.Content).Content);

    private async Task ResolveAsync(VisitContent chosen)
    {
        VisitSaved before = conflict!;
        conflict = null;
        state!.Accept(before with { Content = chosen });
        await SaveAsync();
        await ComputeAsync();
    }

    private async Task SignAsync()
    {
        await SaveAsync();
        if (state is null || actor is null || conflict is not null || state.IsDirty)
            return;

        try
        {
            (Visit signed, Visit following) = await Desk.SignAsync(state.Visit.Id, state.Visit.Revision, actor);
            state.Accept(signed);
            next = following;
            Tell("", "");
        }
        catch (RuleBrokenException broken)
        {
            Tell(broken.Message, "stop");
        }
        catch (DbUpdateConcurrencyException)
        {
            Tell("Somebody has changed this visit or taken from the same lot. Load the page, look, and sign.", "stop");
        }
    }

    private async Task AmendAsync((string Text, string Why) entry)
    {
        try
        {
            state!.Accept(await Desk.AmendAsync(state.Visit.Id, entry.Text, entry.Why, actor!));
            Tell("", "");
        }
        catch (RuleBrokenException broken)
        {
            Tell(broken.Message, "stop");
        }
    }
}
