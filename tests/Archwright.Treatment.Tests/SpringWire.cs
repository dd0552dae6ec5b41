using System.Collections.Immutable;
using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Slots;
using Archwright.Treatment.Forecasts;

namespace Archwright.Treatment.Tests;

/// <summary>In place of a wire: a spring at each slot that pulls it home, each for itself. Its forecasts take a
/// millisecond, and the answer can be worked out by hand.</summary>
internal sealed class SpringWire(Arrangement arrangement, double stiffness = 0.5, double turning = 5) : IWireInPlace
{
    private SlotFrame[] _places = [.. arrangement.Slots.Select(slot => slot.Actual)];

    /// <summary>Fails on moves from this engagement on; never by itself.</summary>
    public int FailsFrom { get; init; } = int.MaxValue;

    public int Engagements { get; private set; }

    public EngagementResult Engage(CancellationToken cancellation) => Result();

    public EngagementResult MoveTo(ReadOnlySpan<SlotFrame> places, CancellationToken cancellation)
    {
        cancellation.ThrowIfCancellationRequested();
        _places = places.ToArray();
        return Result();
    }

    public void ReadStiffness(Span<double> matrix)
    {
        int size = 6 * _places.Length;
        matrix.Clear();
        for (int i = 0; i < size; i++)
            matrix[i * size + i] = i % 6 < 3 ? -stiffness : -turning;
    }

    public void Keep()
    {
    }

    public void TakeBack()
    {
    }

    private EngagementResult Result()
    {
        Engagements++;
        double energy = 0;
        var loads = ImmutableArray.CreateBuilder<SlotLoad>(_places.Length);
        for (int i = 0; i < _places.Length; i++)
        {
            SlotFrame home = arrangement.Slots[i].Rest;
            Vector3 away = _places[i].Centre - home.Centre;
            Vector3 turned = (Vector3.Cross(home.Along, _places[i].Along)
                + Vector3.Cross(home.Outward, _places[i].Outward)
                + Vector3.Cross(home.Third, _places[i].Third)) * 0.5;
            energy += stiffness * Vector3.Dot(away, away) / 2 + turning * Vector3.Dot(turned, turned) / 2;
            loads.Add(new SlotLoad(
                arrangement.Slots[i].Label,
                new Wrench(away * -stiffness, turned * -turning, _places[i].Centre),
                ContactState.OneEdge, 0, 0));
        }

        return new EngagementResult
        {
            Converged = Engagements < FailsFrom,
            Obstacle = Engagements < FailsFrom ? null : new Obstacle(2, 9, 3, "The tie at 45 would open."),
            Residual = 0, Slots = loads.MoveToImmutable(), LargestStrain = 0, StoredEnergy = energy, CentreLine = [],
            Iterations = 1,
        };
    }
}
