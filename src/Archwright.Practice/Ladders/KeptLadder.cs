using Archwright.Dentition.Teeth;
using Archwright.Practice.Values;
using Archwright.Treatment.Ladders;

namespace Archwright.Practice.Ladders;

/// <summary>A figure among patients: a quick one, the usual one, a slow one. Null: not within the longest ladder.
/// </summary>
/// <param name="Low">One in ten lies below.</param>
/// <param name="Usual">The median.</param>
/// <param name="High">One in ten lies above.</param>
public sealed record LadderSpread(double? Low, double? Usual, double? High);

/// <summary>One wire of a sequence.</summary>
public sealed record KeptWire
{
    /// <summary>Which.</summary>
    public required string WireId { get; init; }

    /// <summary>Whether it is in place already.</summary>
    public required bool IsInPlace { get; init; }

    /// <summary>The visit at which it goes in for the usual patient; 0 is the day of the positions.</summary>
    public required int AtVisit { get; init; }

    /// <summary>Weeks from the day of the positions until it goes in.</summary>
    public required LadderSpread FromWeek { get; init; }

    /// <summary>Weeks that it stays in; 0 for the last, which stays.</summary>
    public required LadderSpread Weeks { get; init; }

    /// <summary>Weeks from visit to visit while it is in; 0 for the last.</summary>
    public required int Interval { get; init; }

    /// <summary>Largest force on a tooth when it goes in [N]; null where none is known.</summary>
    public double? LargestForceN { get; init; }

    /// <summary>ISO number of that tooth; empty where none is known.</summary>
    public string LargestForceTooth { get; init; } = "";

    /// <summary>Index from 0 to 10 that rises with the forces on engagement; null for the wire in place.</summary>
    public double? ComfortIndex { get; init; }

    /// <summary>Teeth to be tied at a distance.</summary>
    public Listing<ToothNumber> PartialTies { get; init; } = Listing<ToothNumber>.Empty;

    /// <summary>Wires that answer alike and may be taken in its place.</summary>
    public Listing<string> Twins { get; init; } = Listing<string>.Empty;

    /// <summary>What the rules of the visit say against it, one sentence each.</summary>
    public Listing<string> Against { get; init; } = Listing<string>.Empty;
}

/// <summary>One sequence of wires.</summary>
public sealed record KeptSequence
{
    /// <summary>What it is good for; one sequence may be the best in more than one way.</summary>
    public required Listing<LadderKind> Kinds { get; init; }

    /// <summary>Others from which it does not differ by more than is known.</summary>
    public Listing<LadderKind> TiesWith { get; init; } = Listing<LadderKind>.Empty;

    /// <summary>The wires in order.</summary>
    public required Listing<KeptWire> Wires { get; init; }

    /// <summary>Visits after the day of the positions until the last wire is in.</summary>
    public required LadderSpread Visits { get; init; }

    /// <summary>Weeks until then.</summary>
    public required LadderSpread Weeks { get; init; }

    /// <summary>Worst comfort index of its engagements.</summary>
    public required double ComfortIndex { get; init; }

    /// <summary>Largest force on a tooth when a wire goes in [N].</summary>
    public required double LargestForceN { get; init; }

    /// <summary>Why it ends before its last wire; empty where it does not.</summary>
    public string Stop { get; init; } = "";

    /// <summary>Whether everything better was ruled out; false where the search ended before.</summary>
    public required bool IsProven { get; init; }
}

/// <summary>The ladders of an arch as they were found, kept with all they rest on. A plan to talk about: the clinician
/// decides at every visit anew.</summary>
public sealed record KeptLadder
{
    /// <summary>What it rests on.</summary>
    public required LadderBasis Basis { get; init; }

    /// <summary>The wire that it is to end with.</summary>
    public required string WorkingWire { get; init; }

    /// <summary>Whether nobody named that wire.</summary>
    public required bool WorkingIsAssumed { get; init; }

    /// <summary>Whether the working wire, or one no lighter, is in place: nothing more is needed.</summary>
    public bool IsAtWorkingWire { get; init; }

    /// <summary>What the rules say against the wire in place, one sentence each. Where they do and it was not decided
    /// to stay, the ladders begin with another.</summary>
    public Listing<string> AgainstPresent { get; init; } = Listing<string>.Empty;

    /// <summary>Fewest visits, gentlest, fastest; the same sequence stands once. Where none keeps to the ceilings, the
    /// one that passes them least, if there is one.</summary>
    public required Listing<KeptSequence> Sequences { get; init; }

    /// <summary>Why no sequence keeps to the rules, or none is needed; empty where there is one.</summary>
    public string Because { get; init; } = "";

    /// <summary>Where a ceiling is in the way: what binds, and what might be considered, in sentences.</summary>
    public Listing<string> Considerations { get; init; } = Listing<string>.Empty;

    /// <summary>By which factor the ceilings would have to stand higher for the sequence shown; null where it keeps to
    /// them.</summary>
    public double? CeilingFactor { get; init; }

    /// <summary>What to heed.</summary>
    public required Listing<string> Cautions { get; init; }

    /// <summary>What was not said and matters, as questions.</summary>
    public required Listing<string> Missing { get; init; }

    /// <summary>Version of the policy.</summary>
    public required string PolicyVersion { get; init; }

    /// <summary>Version of the program.</summary>
    public required string ProgramVersion { get; init; }

    /// <summary>When it was computed.</summary>
    public required DateTimeOffset ComputedAt { get; init; }

    /// <summary>What has changed since; nothing means that it still holds.</summary>
    /// <param name="now">What it would rest on now.</param>
    /// <param name="policyVersion">The policy now.</param>
    /// <param name="programVersion">The program now.</param>
    public Listing<LadderChange> WhatChanged(LadderBasis now, string policyVersion, string programVersion)
    {
        List<LadderChange> changes = [.. Basis.ChangesTo(now)];
        if (policyVersion != PolicyVersion)
            changes.Add(LadderChange.Policy);
        if (programVersion != ProgramVersion)
            changes.Add(LadderChange.Program);
        return Listing<LadderChange>.Of(changes);
    }
}
