using System.Collections.Immutable;
using Archwright.Dentition.Catalogue;
using Archwright.Dentition.Teeth;
using Archwright.Mechanics.Slots;
using Archwright.Treatment.Patients;

namespace Archwright.Treatment.Decisions;

/// <summary>The wire in place.</summary>
/// <param name="Wire">Which.</param>
/// <param name="Weeks">How long it has been in place; null when nobody said.</param>
public sealed record PresentWire(CatalogueWire Wire, double? Weeks)
{
    /// <summary>Where the slots stood when it was fitted, in order; empty when that is not known.</summary>
    public ImmutableArray<SlotFrame> FittedPlaces { get; init; } = [];
}

/// <summary>What is asked at a visit: which wire goes into this arch until the next one. What is not known is null
/// and asked for; nothing is assumed in its place.</summary>
public sealed record VisitQuestion
{
    /// <summary>The arch as seen today.</summary>
    public required ArchToday Arch { get; init; }

    /// <summary>Whether it is known which wire is in place, or that none is.</summary>
    public bool PresentIsKnown { get; init; } = true;

    /// <summary>The wire in place; null on bonding day, or when it is not known.</summary>
    public PresentWire? Present { get; init; }

    /// <summary>The wires to choose from; empty means nothing is in stock.</summary>
    public required ImmutableArray<CatalogueWire> Choice { get; init; }

    /// <summary>Whether <see cref="Choice"/> is the practice's stock rather than the whole catalogue.</summary>
    public bool ChoiceIsStock { get; init; }

    /// <summary>The wire that this arch is to work with in the end; null when nobody said.</summary>
    public CatalogueWire? WorkingWire { get; init; }

    /// <summary>Alerts of the patient; null when nobody said whether there are any.</summary>
    public ImmutableHashSet<PatientAlert>? Alerts { get; init; }

    /// <summary>Worst discomfort after the last wire, 0 to 10; null when it was not asked.</summary>
    public double? Discomfort { get; init; }

    /// <summary>Age [years]; null when nobody said.</summary>
    public double? AgeYears { get; init; }

    /// <summary>The patient's rate where it was learnt from earlier visits; null: believed from the age.</summary>
    public PatientRate? LearntRate { get; init; }

    /// <summary>What is believed of the patient's rate.</summary>
    public PatientRate Rate => LearntRate ?? PatientRate.ForAge(AgeYears);

    /// <summary>Whether the patient has an alert that is known.</summary>
    public bool Has(PatientAlert alert) => Alerts is { } known && known.Contains(alert);

    /// <summary>The tooth of a slot.</summary>
    public ToothNumber Tooth(int slot) => Arch.Teeth[slot];

    /// <exception cref="ArgumentException">The first thing that does not hold together.</exception>
    internal void Check()
    {
        if (Arch.Teeth.IsDefaultOrEmpty || Arch.Teeth.Length != Arch.Arrangement.Slots.Length)
            throw new ArgumentException("A visit needs one tooth for every slot.", nameof(Arch));
        foreach (ToothNumber tooth in Arch.Teeth)
        {
            if (!Anatomy.TryOf(tooth, out _))
                throw new ArgumentException($"{tooth} has no row in the table of anatomy.", nameof(Arch));
        }

        if (Discomfort is { } score && !(score is >= 0 and <= 10))
            throw new ArgumentException("Discomfort is a score from 0 to 10.", nameof(Discomfort));
        if (Present is { Weeks: { } weeks } && !(weeks is >= 0 and <= 520))
            throw new ArgumentException("A wire has been in place for 0 to 520 weeks.", nameof(Present));
        if (Choice.IsDefault)
            throw new ArgumentException("The wires to choose from are not given.", nameof(Choice));
    }
}
