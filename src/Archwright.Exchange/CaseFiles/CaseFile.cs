using System.Collections.Immutable;
using Archwright.Dentition.Positions;
using Archwright.Dentition.Teeth;
using Archwright.Mechanics.Engagement;

namespace Archwright.Exchange.CaseFiles;

/// <summary>A case as a file describes it: a wire, the slots it is to go into, and what happens afterwards.</summary>
/// <remarks>Two cases with equal contents are not equal as records: the arrays inside compare by reference.</remarks>
public sealed record CaseFile
{
    /// <summary>The word of <see cref="Jaw"/> for an upper arch.</summary>
    public const string Upper = "upper";

    /// <summary>The word of <see cref="Jaw"/> for a lower arch.</summary>
    public const string Lower = "lower";

    /// <summary>The word of <see cref="Jaw"/> for a bench set-up without teeth.</summary>
    public const string Bench = "bench";

    /// <summary>What the case is called; may be empty.</summary>
    public string Title { get; init; } = "";

    /// <summary><see cref="Upper"/>, <see cref="Lower"/> or <see cref="Bench"/>.</summary>
    public required string Jaw { get; init; }

    /// <summary>One a slot, in order; null on a bench.</summary>
    public required ImmutableArray<ToothNumber?> Teeth { get; init; }

    /// <summary>Wire, rest shape, ends, slots and temperature.</summary>
    public required Arrangement Arrangement { get; init; }

    /// <summary>One a slot, in order: how slot axes turn into labial, occlusal and mesial.</summary>
    public required ImmutableArray<ClinicalAxes> Axes { get; init; }

    /// <summary>Teeth of the arch that are not there, as the file says.</summary>
    public ImmutableArray<AbsentTooth> Absent { get; init; } = [];

    /// <summary>Teeth between the first slot and the last of which the file says nothing: neither slot nor absent.
    /// </summary>
    public ImmutableArray<ToothNumber> Unsaid
    {
        get
        {
            if (Jaw == Bench || Teeth.Any(tooth => tooth is null))
                return [];

            IReadOnlyList<ToothNumber> row = Jaw == Upper ? ToothNumber.UpperArch : ToothNumber.LowerArch;
            return
            [
                .. row.SkipWhile(tooth => tooth != Teeth[0]).TakeWhile(tooth => tooth != Teeth[^1])
                    .Where(tooth => !Teeth.Contains(tooth) && Absent.All(one => one.Tooth != tooth)),
            ];
        }
    }

    /// <summary>Steps after engagement, in order.</summary>
    public ImmutableArray<Step> Then { get; init; } = [];

    /// <summary>Catalogue id of the wire; null when it is written out.</summary>
    public string? WireId { get; init; }

    /// <summary>Catalogue id of the alloy of a wire whose section is written out; null otherwise.</summary>
    public string? AlloyId { get; init; }

    /// <summary>One a slot: the offset as the file gives it, so that it is written back with the same figures; null
    /// where the file gives the actual frame. Empty when there is no file.</summary>
    public ImmutableArray<ClinicalOffset?> Offsets { get; init; } = [];

    /// <summary>One a step, and in it one a move: the offset as the file gives it; null where it gives a
    /// frame.</summary>
    public ImmutableArray<ImmutableArray<ClinicalOffset?>> StepOffsets { get; init; } = [];

    /// <summary>Whether any slot has friction.</summary>
    public bool HasFriction => Arrangement.Slots.Any(slot => slot.Friction > 0);

    /// <summary>The same with one coefficient of friction in every slot.</summary>
    /// <param name="coefficient">0 for none.</param>
    public CaseFile WithFriction(double coefficient) =>
        this with { Arrangement = Arrangement.WithFriction(coefficient) };

    /// <summary>Lips and cheeks: how many times as firm as those of average people; 0 for none.</summary>
    public double SoftTissue { get; init; }

    /// <summary>The <c>visit</c> object as JSON text; null when there is none.</summary>
    public string? VisitJson { get; init; }

    /// <summary>The case of an arch that was built from the tables.</summary>
    /// <param name="setup">The arch.</param>
    /// <param name="title">What the case is to be called.</param>
    public static CaseFile Of(ArchSetup setup, string title = "")
    {
        ArgumentNullException.ThrowIfNull(setup);
        return new CaseFile
        {
            Title = title,
            Jaw = setup.Jaw.Word(),
            Teeth = [.. setup.Teeth.Select(tooth => (ToothNumber?)tooth)],
            Axes = setup.Axes,
            Offsets = [.. setup.Offsets.Select(offset => (ClinicalOffset?)offset)],
            Arrangement = setup.Arrangement,
            WireId = setup.Wire.Id,
        };
    }
}
