using System.Collections.Immutable;
using System.Globalization;
using Archwright.Cli.Running;
using Archwright.Dentition.Catalogue;
using Archwright.Exchange.CaseFiles;
using Archwright.Mechanics.Alloys;
using Archwright.Mechanics.Engagement;

namespace Archwright.Cli.Solving;

/// <summary>A case whose wire has its whole law.</summary>
internal static class WholeLaw
{
    /// <summary>Share of the elastic limit from which the whole law is asked: the shear that goes with torque is not in
    /// the largest strain.</summary>
    private const double RoomForShear = 0.7;

    /// <summary>Whether the wire of a case has a law with memory.</summary>
    public static bool Holds(CaseFile file) => file.Arrangement.Wire.Alloy is not LinearElastic;

    /// <summary>The case with the whole law of its catalogue wire, put in at the first temperature and taken through
    /// the others before anything else happens.</summary>
    /// <param name="file">The case.</param>
    /// <param name="temperatures">One or more [°C].</param>
    public static CaseFile Of(CaseFile file, IReadOnlyList<double> temperatures)
    {
        ImmutableArray<Step> history = [.. temperatures.Skip(1).Select(degrees => new Step(degrees, []))];
        return file with
        {
            Arrangement = file.Arrangement with
            {
                Wire = file.Arrangement.Wire with { Alloy = AlloyOf(file) },
                Temperature = temperatures[0],
            },
            Then = [.. history, .. file.Then],
            StepOffsets = file.StepOffsets.IsDefaultOrEmpty
                ? file.StepOffsets
                : [.. history.Select(_ => ImmutableArray<Dentition.Positions.ClinicalOffset?>.Empty),
                    .. file.StepOffsets],
        };
    }

    /// <summary>Solves a case with as much of the law of its wire as it asks for: the elastic part where the wire stays
    /// in it, or else the whole law; where that finds no answer, the first modulus, and why.</summary>
    /// <param name="file">The case.</param>
    /// <param name="repeats">Timed solves, cold and warm; 0 for none.</param>
    /// <param name="cancellation">Stops it.</param>
    /// <exception cref="Refusal">The arrangement is impossible; exit 2.</exception>
    public static SolvedCase Solve(CaseFile file, int repeats, CancellationToken cancellation)
    {
        if (CaseAlloy(file) is not { } alloy || alloy.WholeLaw is LinearElastic)
            return CaseSolver.Solve(file, repeats, cancellation) with { Law = Written(file) };

        EngagementResult elastic = CaseSolver.EngageOne(file.Arrangement, cancellation);
        bool isEngaged = elastic.Converged && elastic.Obstacle is null;
        bool isElastic = file.Then.IsEmpty && elastic.LargestStrain <= RoomForShear * alloy.ElasticStrain.Value;
        if (!isEngaged || isElastic)
        {
            return CaseSolver.Solve(file, repeats, cancellation) with
            {
                Law = new LawUsed(isElastic ? LawKind.Elastic : LawKind.FirstModulus),
            };
        }

        SolvedCase whole = CaseSolver.Solve(Of(file, [file.Arrangement.Temperature]), repeats, cancellation);
        return WhyNot(whole) is { } reason
            ? CaseSolver.Solve(file, repeats, cancellation) with
            {
                Law = new LawUsed(LawKind.FirstModulus, reason),
            }
            : whole with { Law = new LawUsed(LawKind.Whole) };
    }

    /// <summary>What the figures of a case rest on that is solved as it stands.</summary>
    public static LawUsed Written(CaseFile file) => new(
        CaseAlloy(file) is null ? LawKind.AsWritten : Holds(file) ? LawKind.Whole : LawKind.FirstModulus);

    // A tie that would open is an answer; no equilibrium is none.
    private static string? WhyNot(SolvedCase whole)
    {
        int lost = whole.Steps.TakeWhile(step => step.Result.Converged).Count();
        bool isLost = !whole.Engaged.Result.Converged || lost < whole.Case.Then.Length;
        if (!isLost)
            return null;

        string where = whole.Engaged.Result.Converged ? $" in step {lost + 1}" : "";
        string residual = whole.Last.Result.Residual.ToString("0.00", CultureInfo.InvariantCulture);
        return whole.Last.Result.Obstacle?.Reason is { Length: > 0 } reason
            ? $"{reason.TrimEnd('.')}{where}"
            : $"no equilibrium was found{where} (out of balance by {residual} N)";
    }

    private static Alloy AlloyOf(CaseFile file) => CaseAlloy(file)?.WholeLaw ?? file.Arrangement.Wire.Alloy;

    private static CatalogueAlloy? CaseAlloy(CaseFile file) =>
        file.WireId is { } id && WireCatalogue.Default.TryFind(id, out CatalogueWire? wire)
            ? wire.Alloy
            : file.AlloyId is { } alloyId && WireCatalogue.Default.TryFindAlloy(alloyId, out CatalogueAlloy? known)
                ? known
                : null;
}
