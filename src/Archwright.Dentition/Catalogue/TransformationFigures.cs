using Archwright.Dentition.Tables;
using Archwright.Mechanics.Alloys;

namespace Archwright.Dentition.Catalogue;

/// <summary>How an alloy transforms under stress and with temperature: the loop between its loading and its unloading
/// plateau. Stresses are those in tension at <see cref="ReferenceTemperature"/>.</summary>
/// <remarks>All four stresses rise by <see cref="ClausiusClapeyron"/> for each degree. Where the stresses come from,
/// and why those of the grades follow from their austenite finish, is told in <c>docs/theory/dentition.md</c>.
/// </remarks>
public sealed record TransformationFigures
{
    /// <summary>Temperature at which the stresses of the table hold: that of the mouth, and of the standard bending
    /// test [°C].</summary>
    public const double ReferenceTemperature = 36;

    /// <summary>Temperature above which the wire is austenite when no stress acts [°C].</summary>
    public required Sourced AusteniteFinish { get; init; }

    /// <summary>Rise of the transformation stresses with temperature [MPa/K].</summary>
    public required Sourced ClausiusClapeyron { get; init; }

    /// <summary>Strain that a complete transformation adds.</summary>
    public required Sourced TransformationStrain { get; init; }

    /// <summary>Young's modulus of the transformed alloy [MPa].</summary>
    public required Sourced YoungMartensite { get; init; }

    /// <summary>Stress at which the transformation begins on loading [MPa].</summary>
    public required Sourced ForwardStart { get; init; }

    /// <summary>Stress at which it is complete on loading [MPa].</summary>
    public required Sourced ForwardFinish { get; init; }

    /// <summary>Stress at which a complete transformation begins to go back on unloading [MPa].</summary>
    public required Sourced ReverseStart { get; init; }

    /// <summary>Stress at which it has gone back [MPa]; below nil when the austenite finish lies above the reference
    /// temperature: some of it then stays without stress.</summary>
    public required Sourced ReverseFinish { get; init; }

    /// <summary>Asymmetry α: stresses in compression are (1 + α)/(1 − α) times those in tension.</summary>
    public required Sourced Asymmetry { get; init; }

    /// <summary>All figures by their names in words, for lists.</summary>
    public IEnumerable<(string Name, Sourced Figure)> Named =>
    [
        ("austenite finish", AusteniteFinish),
        ("rise of the plateaus with temperature", ClausiusClapeyron),
        ("transformation strain", TransformationStrain),
        ("modulus of the transformed alloy", YoungMartensite),
        ("start of the loading plateau", ForwardStart),
        ("end of the loading plateau", ForwardFinish),
        ("start of the unloading plateau", ReverseStart),
        ("end of the unloading plateau", ReverseFinish),
        ("asymmetry of compression", Asymmetry),
    ];

    /// <summary>The law of these figures.</summary>
    internal Superelastic Law(double young, double poisson) => new(new SuperelasticFigures
    {
        Poisson = poisson,
        ReferenceTemperature = ReferenceTemperature,
        YoungAustenite = young,
        YoungMartensite = YoungMartensite.Value,
        TransformationStrain = TransformationStrain.Value,
        ForwardStart = ForwardStart.Value,
        ForwardFinish = ForwardFinish.Value,
        ReverseStart = ReverseStart.Value,
        ReverseFinish = ReverseFinish.Value,
        ClausiusClapeyron = ClausiusClapeyron.Value,
        Asymmetry = Asymmetry.Value,
    });

    internal bool IsInOrder =>
        ForwardFinish.Value >= ForwardStart.Value
        && ReverseStart.Value >= ReverseFinish.Value
        && ForwardStart.Value >= ReverseFinish.Value
        && ForwardFinish.Value >= ReverseStart.Value
        && ForwardStart.Value + ReverseFinish.Value >= SuperelasticFigures.LeastGap
        && Asymmetry.Value <= 0.9
        && TransformationStrain.Value > 0
        && YoungMartensite.Value > 0;
}
