using System.Collections.Immutable;
using Archwright.Dentition.Catalogue;
using Archwright.Treatment.Decisions;

namespace Archwright.Treatment.Ladders;

/// <summary>What a search goes through: today's arch, the wires, the patient's rate, and by what it is
/// judged.</summary>
internal sealed class LadderSpace
{
    private IReadOnlyList<LadderFit>? _first;

    public required ILadderArch Today { get; init; }

    /// <summary>The wire in place; null on bonding day.</summary>
    public LadderFit? Present { get; init; }

    /// <summary>Whether the wire in place stays until the next visit, whatever the rules say of it.</summary>
    public bool PresentStays { get; init; }

    /// <summary>The wire in place where a ladder may begin with it.</summary>
    public LadderFit? Staying => Present is { } present && (present.Allowed || PresentStays) ? present : null;

    /// <summary>Wires in order of stiffness, the working wire last.</summary>
    public required ImmutableArray<LadderWire> Wires { get; init; }

    public required CatalogueWire Working { get; init; }

    public required LadderRules Rules { get; init; }

    /// <summary>Rate of the patient.</summary>
    public required double Rate { get; init; }

    /// <summary>Most visits until the working wire is in: no sequence is followed farther.</summary>
    public required int MostVisits { get; init; }

    public int? Threads { get; init; }

    /// <summary>Whether wires and states are looked at that the pruning would leave out.</summary>
    public bool Exhaustive { get; init; }

    /// <summary>Crowns that stand this close are not told apart: half of the error of a step of the forecast [mm].
    /// </summary>
    public double Alike { get; init; } = LadderCourse.StepTolerance / 2;

    public CancellationToken Cancellation { get; init; }

    /// <summary>Where no first wire goes in with every tooth tied as it is: those that do with some let go. Null where
    /// teeth are never let go.</summary>
    public Func<IReadOnlyList<LadderFit>, LadderRules, IReadOnlyList<LadderFit>>? Loosen { get; init; }

    /// <summary>The same space under other rules.</summary>
    /// <param name="rules">Which; a wire that may go in first under the rules as they are is taken first.</param>
    public LadderSpace Under(LadderRules rules) => new()
    {
        _first = First.Count > 0 ? First : null,
        Today = Today, Present = Present, PresentStays = PresentStays,
        Wires = Wires, Working = Working, Rules = rules, Rate = Rate,
        MostVisits = MostVisits, Threads = Threads, Exhaustive = Exhaustive, Alike = Alike,
        Cancellation = Cancellation, Loosen = Loosen,
    };

    /// <summary>What may go in at a visit after the wire in place, lightest first; twins are tried where the first of
    /// them may not.</summary>
    /// <remarks>Of one alloy, what holds a section inside it that the mechanics refuses is not engaged: it is stiffer
    /// in every way and has less play, see <see cref="WireSearch"/>.</remarks>
    public List<LadderFit> MayGoIn(ILadderArch arch, LadderFit? present, IEnumerable<LadderWire> among) =>
        [.. Tried(arch, present, among).Where(fit => fit.Allowed)];

    /// <summary>What may go in today; found once.</summary>
    public IReadOnlyList<LadderFit> First => _first ??= FindFirst();

    private IReadOnlyList<LadderFit> FindFirst()
    {
        if (PresentStays)
            return [];

        bool stays = Present is { Allowed: true };
        IEnumerable<LadderWire> among = stays ? Above(Present!) : Wires.Where(one => one.Wire.Id != Present?.Wire.Id);
        List<LadderFit> tried = Tried(Today, Present, among);
        IReadOnlyList<LadderFit> allowed = [.. tried.Where(fit => fit.Allowed)];
        return stays || allowed.Count > 0 || Loosen is null ? allowed : Loosen(tried, Rules);
    }

    /// <summary>Wires that may follow by their stiffness alone; a wire tied at a distance may be tied anew.</summary>
    public IEnumerable<LadderWire> Above(LadderFit present) => Wires.Where(one =>
        Rules.IsStep(present.Wire, one.Wire, Working) || present.HasLooseTies && one.Wire.Id == present.Wire.Id);

    private List<LadderFit> Tried(ILadderArch arch, LadderFit? present, IEnumerable<LadderWire> among)
    {
        List<LadderFit> found = [];
        List<CatalogueWire> ruledOut = [];
        foreach (LadderWire one in among)
        {
            Cancellation.ThrowIfCancellationRequested();
            if (!Exhaustive && ruledOut.Exists(thinner => thinner.Alloy.Id == one.Wire.Alloy.Id
                && WireSize.Contains(one.Wire.Section, thinner.Section)))
            {
                continue;
            }

            LadderFit fit = arch.Fit(one.Wire, present, Rules);
            if (fit is { KeepsThickerOut: true, Figures.IsUnanswered: false })
                ruledOut.Add(one.Wire);
            if (fit.IsRuledOut && (fit.Figures.IsWholeLaw || fit.Figures.IsUpperBound))
            {
                fit = one.Twins.Select(twin => arch.Fit(twin, present, Rules)).FirstOrDefault(other => other.Allowed)
                    ?? fit;
            }

            found.Add(fit);
        }

        return found;
    }
}
