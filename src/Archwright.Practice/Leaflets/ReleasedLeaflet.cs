using Archwright.Practice.People;
using Archwright.Practice.Rules;
using Archwright.Practice.Visits;

namespace Archwright.Practice.Leaflets;

/// <summary>A leaflet that a clinician has released: from then on it may be handed out, printed and seen behind a
/// link. It stays as it was released; a new release takes its place.</summary>
public sealed class ReleasedLeaflet
{
    private ReleasedLeaflet()
    {
    }

    /// <summary>Identity; rises with time.</summary>
    public Guid Id { get; private set; }

    /// <summary>Whose.</summary>
    public Guid PatientId { get; private set; }

    /// <summary>Which visit it tells of.</summary>
    public Guid VisitId { get; private set; }

    /// <summary>What it says, as released.</summary>
    public Leaflet Leaflet { get; private set; } = null!; // set by Release and by the storage

    /// <summary>What is shown of the wires and the weeks to come, as released.</summary>
    public LeafletPictures Pictures { get; private set; } = LeafletPictures.None;

    /// <summary>Name of the clinician.</summary>
    public string ReleasedBy { get; private set; } = "";

    /// <summary>When.</summary>
    public DateTimeOffset ReleasedAt { get; private set; }

    /// <summary>Releases a leaflet.</summary>
    /// <param name="visit">The visit; signed.</param>
    /// <param name="leaflet">What it says.</param>
    /// <param name="pictures">What is shown beside it.</param>
    /// <param name="by">Who; an orthodontist.</param>
    /// <param name="at">When.</param>
    /// <exception cref="RuleBrokenException">The visit is not signed, or somebody else than an orthodontist
    /// asks.</exception>
    public static ReleasedLeaflet Release(
        Visit visit, Leaflet leaflet, LeafletPictures pictures, Actor by, DateTimeOffset at)
    {
        PracticeRules.OnlyAnOrthodontistReleasesALeaflet.Keep(
            by.Role == StaffRole.Orthodontist, $"{by.Name} may look at the leaflet; an orthodontist releases it.");
        PracticeRules.ALeafletTellsOfASignedVisit.Keep(
            visit.State == VisitState.Signed, "Sign the visit first: the leaflet tells of what was signed.");
        return new ReleasedLeaflet
        {
            Id = Guid.CreateVersion7(at),
            PatientId = visit.PatientId,
            VisitId = visit.Id,
            Leaflet = leaflet,
            Pictures = pictures,
            ReleasedBy = by.Name,
            ReleasedAt = at,
        };
    }
}
