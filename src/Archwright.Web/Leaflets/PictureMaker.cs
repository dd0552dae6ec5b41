using Archwright.Dentition.Comparison;
using Archwright.Dentition.Teeth;
using Archwright.Practice.Advice;
using Archwright.Practice.Courses;
using Archwright.Practice.Leaflets;
using Archwright.Practice.People;
using Archwright.Practice.Values;
using Archwright.Practice.Visits;
using Archwright.Storage.Desks;
using Archwright.Web.Drawing;

namespace Archwright.Web.Leaflets;

/// <summary>Draws what a patient is shown beside a leaflet: the wires, and the weeks to the next visit as the forecast
/// has them.</summary>
/// <param name="ceilings">What teeth may bear; needed to engage a wire.</param>
public sealed class PictureMaker(ForceCeilings ceilings)
{
    // A page for an old phone: more weeks than this are not drawn.
    private const int MostWeeks = 12;

    /// <summary>The pictures of a visit.</summary>
    /// <param name="file">Everything about the patient.</param>
    /// <param name="visit">The visit.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <exception cref="OperationCanceledException">It was given up.</exception>
    public LeafletPictures Of(PatientFile file, Visit visit, CancellationToken cancellation = default) => new(
        Listing<ArchPictures>.Of(file.Treatments
            .Where(one => visit.Content.Arch(one.Jaw)?.Decided is { WireId.Length: > 0 })
            .OrderBy(one => one.Jaw)
            .Select(one => Arch(file.Patient, visit, one, cancellation))));

    private ArchPictures Arch(Patient patient, Visit visit, ArchTreatment treatment, CancellationToken cancellation)
    {
        ArchVisit arch = visit.Content.Arch(treatment.Jaw)!; // the caller looked
        var bare = new ArchPictures
        {
            IsUpper = treatment.Jaw == Jaw.Upper,
            Before = arch.Found?.WireId ?? "",
            Now = arch.Decided!.WireId, // the caller looked
            Window = Listing<double>.Empty,
            Weeks = Listing<WeekPicture>.Empty,
            SlotCode = treatment.Appliance.SlotCode,
        };
        if (arch.Seen is not { } seen)
            return bare;

        var inputs = new AdviceInputs
        {
            Jaw = treatment.Jaw,
            SlotCode = treatment.Appliance.SlotCode,
            Bonded = treatment.Appliance.BondedBut(arch.Bare),
            Bare = arch.Bare ?? ToothMap<BareTooth>.Empty,
            Positions = seen.Positions,
            Ties = arch.Ties,
            Ends = arch.RightEnd ?? default,
            Stock = Listing<string>.Empty,
            Alerts = Listing<AlertKind>.Empty,
        };
        try
        {
            int weeks = Math.Clamp(visit.Content.NextInWeeks ?? 6, 1, MostWeeks);
            Outlook outlook = Outlook.Median(inputs, bare.Now, weeks, patient.AgeOn(visit.Day), cancellation);
            return outlook.Weeks.Length > 1 ? Weeks(bare, inputs, outlook, cancellation) : bare;
        }
        catch (ArgumentException)
        {
            return bare; // a wire that the catalogue does not know, or an arch that cannot be built: nothing is drawn
        }
    }

    private ArchPictures Weeks(
        ArchPictures bare, AdviceInputs inputs, Outlook outlook, CancellationToken cancellation)
    {
        List<(int Week, ArchScene Scene)> drawn = [];
        List<(int Week, WireAtWork Work)> worked = [];
        foreach (OutlookWeek week in outlook.Weeks)
        {
            WireAtWork work = WireAtWork.Engage(
                inputs with { Positions = week.Positions }, bare.Now, ceilings, cancellation);
            drawn.Add((week.Week, ArchDrawing.Draw(work, ArchView.Occlusal)));
            worked.Add((week.Week, work));
        }

        ArchScene first = drawn[0].Scene;
        return bare with
        {
            Window = Listing<double>.Of([first.Left, first.Top, first.Width, first.Height]),
            Space = SpaceMaker.Of(worked),
            Weeks = Listing<WeekPicture>.Of(drawn.Select(one => new WeekPicture(
                one.Week,
                Listing<string>.Of(one.Scene.Teeth.Select(tooth => tooth.Outline)),
                one.Scene.Wire))),
        };
    }
}
