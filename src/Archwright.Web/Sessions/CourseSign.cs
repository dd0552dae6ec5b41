namespace Archwright.Web.Sessions;

/// <summary>How a patient's teeth move against what was expected.</summary>
/// <param name="Word">In two or three words.</param>
/// <param name="Mark">A mark, so that nothing hangs on colour.</param>
/// <param name="Tone">Class of the mark.</param>
/// <param name="Why">The figures behind it; empty when there are none.</param>
public sealed record CourseSign(string Word, string Mark, string Tone, string Why)
{
    /// <summary>Still being computed.</summary>
    public static CourseSign Computing { get; } = new("computing", "…", "plain", "");

    /// <summary>Nothing to compare with.</summary>
    /// <param name="why">Why not.</param>
    public static CourseSign NotKnown(string why) => new("not known", "–", "plain", why);
}
