using System.Collections.Immutable;
using System.Reflection;
using Archwright.Dentition.Comparison;
using Archwright.Treatment.Decisions;

namespace Archwright.Treatment.Policies;

/// <summary>Everything by which the advice at a visit judges: ceilings, thresholds, weights, intervals and what alerts
/// do, each with its source. Immutable.</summary>
/// <remarks>The program's own is <c>Policies/visit-policy.json</c>; a practice may put its own in its place. What is
/// advised quotes the <see cref="Version"/>.</remarks>
public sealed record VisitPolicy
{
    private static readonly Lazy<VisitPolicy> Embedded = new(ReadEmbedded);

    private readonly ImmutableDictionary<string, PolicyFigure> _figures;

    internal VisitPolicy(ImmutableDictionary<string, PolicyFigure> figures) => _figures = figures;

    /// <summary>The policy that comes with the program.</summary>
    public static VisitPolicy Default => Embedded.Value;

    /// <summary>Name and version, quoted with every advice.</summary>
    public required string Version { get; init; }

    /// <summary>Most load by tooth and kind of movement.</summary>
    public required ForceCeilings Ceilings { get; init; }

    /// <summary>Which load they are held against.</summary>
    public JudgedLoad JudgedLoad { get; init; } = JudgedLoad.OnceGiven;

    /// <summary>Weeks to the next visit, by kind of wire.</summary>
    public required ImmutableArray<PolicyInterval> Intervals { get; init; }

    /// <summary>What alerts do.</summary>
    public required ImmutableArray<PolicyAlert> Alerts { get; init; }

    /// <summary>Soreness over time against its peak, in order of time.</summary>
    public required ImmutableArray<SorenessPoint> Soreness { get; init; }

    /// <summary>Where <see cref="Soreness"/> comes from.</summary>
    public required string SorenessSource { get; init; }

    /// <summary>All figures, in the order of the file's description.</summary>
    public IReadOnlyList<PolicyFigure> Figures =>
    [
        .. PolicyFigureKind.All.Where(kind => _figures.ContainsKey(kind.Name)).Select(kind => _figures[kind.Name]),
    ];

    /// <summary>A wire that moves no tooth faster is spent [mm/week].</summary>
    public double SpentSpeed => Of(PolicyFigureKind.SpentSpeed);

    /// <summary>A wire that delivers at least this share of what is left by the next visit is kept.</summary>
    public double KeepShare => Of(PolicyFigureKind.KeepShare);

    /// <summary>A wire in place for less is not judged spent by its time [weeks].</summary>
    public double EarlyWeeks => Of(PolicyFigureKind.EarlyWeeks);

    /// <summary>An arch of which no tooth is farther off counts as aligned [mm at the crown].</summary>
    public double AlignedWithin => Of(PolicyFigureKind.AlignedWithin);

    /// <summary>Largest permanent set that is let pass [mm].</summary>
    public double LargestSet => Of(PolicyFigureKind.LargestSet);

    /// <summary>Largest ratio of the stiffness of the next wire to that of the present one.</summary>
    public double LargestStep => Of(PolicyFigureKind.LargestStep);

    /// <summary>Greatest stiffness of a first wire [N·mm²].</summary>
    public double FirstWireStiffness => Of(PolicyFigureKind.FirstWireStiffness);

    /// <summary>From this discomfort on no heavier wire is put forward [of 10].</summary>
    public double HighDiscomfort => Of(PolicyFigureKind.HighDiscomfort);

    /// <summary>Sum of forces on engagement at which the comfort index stands in the middle of its scale [N].</summary>
    public double ComfortHalfForce => Of(PolicyFigureKind.ComfortHalfForce);

    /// <summary>Mean worst soreness after a new wire [of 10].</summary>
    public double PeakSoreness => Of(PolicyFigureKind.PeakSoreness);

    /// <summary>How far people's worst soreness lies from its mean, either way [of 10].</summary>
    public double SorenessSpread => Of(PolicyFigureKind.SorenessSpread);

    /// <summary>Most nickel of a wire for a patient who reacts to it [% by weight].</summary>
    public double MostNickel => Of(PolicyFigureKind.MostNickel);

    /// <summary>Factor on the ceilings where support is reduced.</summary>
    public double ReducedSupport => Of(PolicyFigureKind.ReducedSupport);

    /// <summary>How far a tie at a distance pulls the wire toward a tooth [mm].</summary>
    public double PartialPull => Of(PolicyFigureKind.PartialPull);

    /// <summary>Most teeth that are proposed to be tied at a distance.</summary>
    public int PartialTeeth => (int)Math.Round(Of(PolicyFigureKind.PartialTeeth));

    /// <summary>Weight of the movement delivered.</summary>
    public double WeightDelivered => Of(PolicyFigureKind.WeightDelivered);

    /// <summary>Weight of the way toward the working wire.</summary>
    public double WeightProgress => Of(PolicyFigureKind.WeightProgress);

    /// <summary>Weight of discomfort, against a wire.</summary>
    public double WeightComfort => Of(PolicyFigureKind.WeightComfort);

    /// <summary>Ratio of stiffness up to which two wires are not told apart by how far they go.</summary>
    public double AlikeStiffness => Of(PolicyFigureKind.AlikeStiffness);

    /// <summary>Relative error of the movement forecast, besides what people differ.</summary>
    public double ForecastAccuracy => Of(PolicyFigureKind.ForecastAccuracy);

    /// <summary>Most wires that are followed to the next visit.</summary>
    public int FollowedWires => (int)Math.Round(Of(PolicyFigureKind.FollowedWires));

    /// <summary>Most visits of a ladder until the working wire is in.</summary>
    public int LadderVisits => (int)Math.Round(Of(PolicyFigureKind.LadderVisits));

    /// <summary>How many visits more than the fewest the gentlest ladder may take.</summary>
    public int LadderExtraVisits => (int)Math.Round(Of(PolicyFigureKind.LadderExtraVisits));

    /// <summary>Forecasts after which the search for ladders ends with the best it has.</summary>
    public int LadderForecasts => (int)Math.Round(Of(PolicyFigureKind.LadderForecasts));

    /// <summary>A load that is within its ceiling after so many days is brief [days].</summary>
    public int BriefDays => (int)Math.Round(Of(PolicyFigureKind.BriefDays));

    /// <summary>How many times its ceiling a brief load may be; 1 where nothing is let pass.</summary>
    public double BriefFactor(LoadKind kind) => kind switch
    {
        LoadKind.IntrusionForce => Of(PolicyFigureKind.BriefIntrusion),
        LoadKind.LabiolingualForce or LoadKind.MesiodistalForce or LoadKind.ExtrusionForce =>
            Of(PolicyFigureKind.BriefForce),
        _ => 1, // of moments nothing is known
    };

    /// <summary>Relative error of the computed forces.</summary>
    public double ForceAccuracy => Of(PolicyFigureKind.ForceAccuracy);

    /// <summary>The interval of a kind.</summary>
    public PolicyInterval Interval(IntervalKind kind) => Intervals.First(one => one.For == kind);

    /// <summary>What an alert does.</summary>
    public PolicyAlert Alert(PatientAlert alert) => Alerts.First(one => one.Alert == alert);

    /// <summary>A figure by its name, with its meaning and source.</summary>
    /// <exception cref="ArgumentException">There is no such figure.</exception>
    public PolicyFigure Figure(string name) => _figures.TryGetValue(name, out PolicyFigure? figure)
        ? figure
        : throw new ArgumentException($"A policy has no figure '{name}'.", nameof(name));

    /// <summary>This policy with another value of one figure; its version says so.</summary>
    /// <param name="name">Name in the file.</param>
    /// <param name="value">In the unit of the figure.</param>
    /// <exception cref="ArgumentException">There is no such figure, or the value is outside its limits.</exception>
    public VisitPolicy With(string name, double value)
    {
        PolicyFigureKind kind = PolicyFigureKind.All.FirstOrDefault(one => one.Name == name)
            ?? throw new ArgumentException($"A policy has no figure '{name}'.", nameof(name));
        if (!(value >= kind.Low && value <= kind.High))
            throw new ArgumentException($"{name} lies from {kind.Low} to {kind.High} {kind.Unit}.", nameof(value));

        PolicyFigure old = Figure(name);
        return new VisitPolicy(_figures.SetItem(name, old with { Figure = old.Figure with { Value = value } }))
        {
            Version = Changed, Ceilings = Ceilings, JudgedLoad = JudgedLoad, Intervals = Intervals, Alerts = Alerts,
            Soreness = Soreness, SorenessSource = SorenessSource,
        };
    }

    /// <summary>This policy with other ceilings; its version says so.</summary>
    public VisitPolicy WithCeilings(ForceCeilings ceilings) => this with { Ceilings = ceilings, Version = Changed };

    /// <summary>The ceilings times a factor.</summary>
    internal ForceCeilings CeilingsTimes(double factor) => new(
        Ceilings.All.Select(one => one with { Limit = one.Limit with { Value = factor * one.Limit.Value } }));

    private string Changed => Version.EndsWith('*') ? Version : Version + "*";

    private double Of(string name) => _figures.TryGetValue(name, out PolicyFigure? figure) ? figure.Value
        : PolicyFigureKind.All.First(kind => kind.Name == name).Without!.Value; // the reader asked for all others

    private static VisitPolicy ReadEmbedded()
    {
        Assembly assembly = typeof(VisitPolicy).Assembly;
        using Stream stream = assembly.GetManifestResourceStream("Archwright.Treatment.Policies.visit-policy.json")
            ?? throw new InvalidOperationException("The policy is missing from the library. Build it again.");
        return PolicyReader.Read(stream).Policy
            ?? throw new InvalidOperationException("The policy of the library is faulty: a test should have said so.");
    }
}
