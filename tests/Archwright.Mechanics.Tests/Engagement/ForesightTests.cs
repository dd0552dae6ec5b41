using System.Collections.Immutable;
using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Sections;
using Archwright.Mechanics.Slots;
using MathNet.Numerics.LinearAlgebra;

namespace Archwright.Mechanics.Tests.Engagement;

/// <summary>Slots on springs let go under a wire between walls with play: which of them it will touch is foreseen, and
/// the wire engaged where the slots come to stand says whether that is so.</summary>
public sealed class ForesightTests
{
    private const double ShiftStiffness = 1; // [N/mm]
    private const double TurnStiffness = 30; // [N·mm/rad]

    /// <summary>Where springs and wire would rest if it were linear between the walls it touches, its loads are others
    /// as soon as walls let go or take in. With the walls foreseen they are those expected but for the bending of
    /// the wire: the errors of all arches together fall to less than a quarter (found: 0.60 N to 0.11 N).</summary>
    [Fact, Trait("basis", "law")]
    public void The_wire_answers_as_foreseen_where_its_slots_come_to_stand()
    {
        double without = 0;
        double with = 0;
        int compared = 0;
        foreach (Engager engager in Cases())
        {
            var springs = new Springs(engager);
            if (!springs.TryBegin())
                continue;

            double[] first = springs.Rest();
            if (springs.Error(first) is not { } plain)
                continue;

            double[] rest = springs.Foreseen(first, out int times);
            if (times == 0 || springs.Error(rest) is not { } foreseen)
                continue;

            without += plain;
            with += foreseen;
            compared++;
        }

        TestContext.Current.TestOutputHelper?.WriteLine($"{compared} arches: {without:0.000} N without, {with:0.000}");
        Assert.True(compared >= 6, $"{compared}");
        Assert.True(with < 0.25 * without, $"{with} against {without} N");
    }

    /// <summary>Looking ahead leaves no trace: the wire answers the next step to the last digit as it would
    /// have.</summary>
    [Theory, Trait("basis", "law")]
    [InlineData(1)]
    [InlineData(3)]
    [InlineData(13)]
    public void Looking_ahead_changes_nothing(int number)
    {
        Engager? looked = Engaged(number);
        Engager? plain = Engaged(number);
        Assert.NotNull(looked);
        Assert.NotNull(plain);
        var springs = new Springs(looked);
        Assert.True(springs.TryBegin());
        springs.Foreseen(springs.Rest(), out _);
        double[] ignored = new double[36 * plain.Arrangement.Slots.Length * plain.Arrangement.Slots.Length];
        Assert.True(plain.TryTouchedStiffness(ignored));

        Step step = Engager.Relieving(plain.Arrangement, 0.1);
        EngagementResult expected = plain.Apply(step, TestContext.Current.CancellationToken);
        EngagementResult found = looked.Apply(step, TestContext.Current.CancellationToken);
        Assert.Equal(expected.Converged, found.Converged);
        Assert.Equal(
            expected.Slots.Select(slot => slot.OnTooth), found.Slots.Select(slot => slot.OnTooth));
    }

    [Fact, Trait("basis", "docs")]
    public void A_wire_that_is_not_engaged_foresees_nothing()
    {
        var engager = new Engager(new RandomArch(1).Arrangement);
        Assert.Throws<InvalidOperationException>(
            () => engager.TryForesee(new double[6], new Springs(engager), new double[36], new Wrench[1]));
    }

    // Benchmark arches between walls with play, displaced by shares of what they say, with thin wires and a thick one.
    private static IEnumerable<Engager> Cases()
    {
        foreach (string id in (string[])["arch-edges-13-high", "arch-edges-13-labial", "arch-edges-22-all"])
        {
            foreach ((double share, Section section) in Shares())
            {
                Arrangement arch = BenchmarkFile.Arch(BenchmarkFile.Case("arch", id)).Each(slot => slot with
                {
                    Hold = Hold.Walls, Height = 0.559, Depth = 0.7, Tie = Tie.Closed(),
                    Actual = slot.Rest.Moved((slot.Actual.Centre - slot.Rest.Centre) * share, default),
                });
                var engager = new Engager(arch with { Wire = arch.Wire with { Section = section } });
                if (engager.Engage(TestContext.Current.CancellationToken).Converged)
                    yield return engager;
            }
        }
    }

    private static IEnumerable<(double Share, Section Section)> Shares() =>
        from section in (Section[])[Section.Round(0.356), Section.Round(0.406), Section.Rectangular(0.406, 0.559, 0.05)]
        from share in (double[])[0.15, 0.2, 0.25, 0.3, 0.35, 0.4, 0.45]
        select (share, section);

    private static Engager? Engaged(int number)
    {
        var engager = new Engager(new RandomArch(number).Arrangement);
        return engager.Engage(TestContext.Current.CancellationToken).Converged ? engager : null;
    }

    private sealed class Springs(Engager engager) : IGivingSlots
    {
        private readonly ImmutableArray<Slot> _slots = engager.Arrangement.Slots;
        private readonly int _size = 6 * engager.Arrangement.Slots.Length;
        private Matrix<double> _stiffness = Matrix<double>.Build.Dense(1, 1);
        private Vector<double> _loads = Vector<double>.Build.Dense(1);

        public bool TryBegin()
        {
            double[] stiffness = new double[_size * _size];
            if (!engager.TryTouchedStiffness(stiffness))
                return false;

            _stiffness = Matrix<double>.Build.Dense(_size, _size, (i, j) => stiffness[i * _size + j]);
            EngagementResult now = engager.Apply(new Step(null, []), TestContext.Current.CancellationToken);
            _loads = Six([.. now.Slots.Select(slot => slot.OnTooth)]);
            engager.Undo();
            return now.Converged && engager.TryTouchedStiffness(stiffness);
        }

        // Springs and wire in balance, with the wire linear.
        public double[] Rest() => Held().Solve(_loads).ToArray();

        public void Answer(ReadOnlySpan<double> loads, Span<double> motions) =>
            Held().Solve(Vector<double>.Build.DenseOfArray(loads.ToArray())).ToArray().CopyTo(motions);

        public double[] Foreseen(double[] rest, out int times)
        {
            double[] stiffness = new double[_size * _size];
            var loads = new Wrench[_slots.Length];
            for (times = 0; times < 8 && engager.TryForesee(rest, this, stiffness, loads); times++)
            {
                double[] found = stiffness;
                _stiffness = Matrix<double>.Build.Dense(_size, _size, (i, j) => found[i * _size + j]);
                _loads = Six(loads);
                rest = Rest();
            }

            return rest;
        }

        /// <summary>Largest difference of a force from the one expected, with the slots moved so [N].</summary>
        public double? Error(double[] motions)
        {
            var moves = Enumerable.Range(0, _slots.Length).Select(i => (i, _slots[i].Actual.Moved(
                new Vector3(motions[6 * i], motions[6 * i + 1], motions[6 * i + 2]),
                new Vector3(motions[6 * i + 3], motions[6 * i + 4], motions[6 * i + 5])))).ToImmutableArray();
            EngagementResult there = engager.Apply(new Step(null, moves), TestContext.Current.CancellationToken);
            if (!there.Converged)
                return null;

            engager.Undo();
            Vector<double> expected = _loads + _stiffness * Vector<double>.Build.DenseOfArray(motions);
            return Enumerable.Range(0, _slots.Length).Max(i => (there.Slots[i].OnTooth.Force
                - new Vector3(expected[6 * i], expected[6 * i + 1], expected[6 * i + 2])).Length);
        }

        private Matrix<double> Held() => Matrix<double>.Build.DenseDiagonal(
            _size, _size, i => i % 6 < 3 ? ShiftStiffness : TurnStiffness) - _stiffness;

        private Vector<double> Six(Wrench[] loads) => Vector<double>.Build.DenseOfEnumerable(
            loads.Select((load, i) => load.MovedTo(_slots[i].Actual.Centre)).SelectMany(load => (double[])
                [load.Force.X, load.Force.Y, load.Force.Z, load.Moment.X, load.Moment.Y, load.Moment.Z]));
    }
}
