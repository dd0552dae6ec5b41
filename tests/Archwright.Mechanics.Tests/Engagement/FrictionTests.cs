using System.Collections.Immutable;
using Archwright.Mechanics.Alloys;
using Archwright.Mechanics.Bench;
using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Slots;

namespace Archwright.Mechanics.Tests.Engagement;

/// <summary>Coulomb friction along the wire.</summary>
public sealed class FrictionTests
{
    private const double Coefficient = 0.2;
    private const double Seating = 2;

    /// <summary>Coulomb's law, T = μ N, with nothing but the tie to press: R. P. Kusy, Angle Orthod 70 (2000) 366–376,
    /// the tie's part of the resistance.</summary>
    [Fact, Trait("basis", "published")]
    public void A_wire_that_only_its_tie_presses_slips_at_the_coefficient_times_the_seating_force()
    {
        Engager engager = Tied();

        EngagementResult drawn = Draw(engager, 0.05);

        Assert.Equal(Coefficient * Seating, drawn.Slots[1].Friction, 2e-3);
        Assert.Equal(-drawn.Slots[0].OnTooth.Force.X, drawn.Slots[1].OnTooth.Force.X, 1e-5);
    }

    [Fact, Trait("basis", "law")]
    public void A_wire_pulled_by_less_than_friction_holds_sticks_and_gives_the_force_back()
    {
        Engager engager = Tied();

        double there = Draw(engager, 5e-4).Slots[1].Friction;
        double back = Draw(engager, 0).Slots[1].Friction;

        Assert.InRange(there, 0.01, 0.5 * Coefficient * Seating);
        Assert.Equal(0, back, 1e-6);
    }

    [Fact, Trait("basis", "law")]
    public void Friction_turns_round_when_the_wire_is_drawn_back()
    {
        Engager engager = Tied();

        double there = Draw(engager, 0.1).Slots[1].Friction;
        double back = Draw(engager, 0).Slots[1].Friction;

        Assert.Equal(-there, back, 2e-3);
    }

    /// <summary>To the first order in the coefficient, drawing the wire through a tipped bracket takes μ Σ|N| (R. P.
    /// Kusy as above), the edges' forces computed without friction; the difference is of the next order.</summary>
    [Theory, Trait("basis", "published")]
    [InlineData(0.02)]
    [InlineData(0.3)]
    public void Binding_of_a_tipped_bracket_is_the_coefficient_times_the_forces_at_its_edges(double coefficient)
    {
        SlidingTest test = new()
        {
            Wire = StraightWire.Of(180_000, 0.4064, StraightWire.Slot(0, Hold.Point)).Wire,
            SlotHeight = 0.5588,
            BracketWidth = 3.556,
            Span = 8,
            Temperature = 36,
        };
        foreach (double more in new[] { 0.01, 0.03 })
        {
            double tip = test.CriticalTip + more;
            double first = coefficient * test.EdgeForces(tip);

            double drawn = test.DrawingForce(tip, coefficient);

            TestContext.Current.TestOutputHelper?.WriteLine($"{more}: {drawn:0.0000} N, first order {first:0.0000} N");
            Assert.Equal(first, drawn, (0.5 * coefficient + 0.01) * first);
        }
    }

    /// <summary>Coulomb's bound, taken from the walls' forces in the result.</summary>
    [Fact, Trait("basis", "law")]
    public void Friction_never_exceeds_the_coefficient_times_what_presses_on_the_slot()
    {
        int slots = 0;
        ForEach(30, engager =>
        {
            EngagementResult result = engager.Apply(Engager.Relieving(engager.Arrangement, 0.1));
            if (!result.Converged)
                return;

            var before = new double[result.Slots.Length];
            foreach (ref readonly ContactRow row in engager.Rod.Contacts.Rows)
            {
                if (row.Kind == RowKind.Friction)
                    before[row.Slot] = row.Effective;
            }

            engager.Rod.Contacts.TakeBounds(engager.Rod.State, engager.Rod.Frames, engager.Rod.Mesh);
            double rounding = 2e-3 * engager.Rod.Contacts.LargestForce();
            foreach (ref readonly ContactRow row in engager.Rod.Contacts.Rows)
            {
                if (row.Kind != RowKind.Friction)
                    continue;

                slots++;
                Assert.InRange(Math.Abs(before[row.Slot]), 0, row.Bound + rounding);
            }
        });
        Assert.True(slots > 100, $"Only {slots} slots were seen.");
    }

    [Fact, Trait("basis", "law")]
    public void With_friction_the_forces_on_the_teeth_add_up_to_nil()
    {
        int seen = 0;
        ForEach(30, engager =>
        {
            EngagementResult result = engager.Apply(Engager.Relieving(engager.Arrangement, 0.1));
            if (!result.Converged)
                return;

            seen++;
            Vector3 sum = result.Slots.Aggregate(default(Vector3), (a, s) => a + s.OnTooth.Force);
            Assert.InRange(sum.Length / Math.Max(0.1, LawCases.LargestForce(result)), 0, 1e-4);
        });
        Assert.True(seen >= 15, $"Only {seen} wires were seen.");
    }

    /// <summary>A slot that is moved there and back takes work from whoever moves it, or none; friction gives nothing
    /// back. Only a round that ends as it began says so: the wire and the other slots hold as much after it as
    /// before.</summary>
    [Fact, Trait("basis", "law")]
    public void A_slot_moved_there_and_back_never_returns_more_work_than_it_took()
    {
        // A wire that sticks and slips bends its path within a stride, by tens of newtons where the arch holds it by
        // more than a hundred; the sum over strides has to be finer than that. What seems to come back falls with the
        // stride.
        const double Stride = 0.000625;
        const int Far = 128;
        int seen = 0;
        ForEach(20, engager =>
        {
            int middle = engager.Arrangement.Slots.Length / 2;
            SlotFrame start = engager.Arrangement.Slots[middle].Actual;
            double work = 0;
            double scale = 0;
            double first = 0;
            double last = 0;

            // The first round brings friction to where the second starts and ends.
            for (int step = 1; step <= 4 * Far; step++)
            {
                int there = Far - Math.Abs(Far - step % (2 * Far));
                int from = Far - Math.Abs(Far - (step - 1) % (2 * Far));
                double before = engager.Arrangement.Slots[middle].Actual == start && step == 1
                    ? 0 : Pull(engager, middle, start);
                EngagementResult result = engager.Apply(
                    new Step(null, [(middle, start.Moved(start.Along * (there * Stride), default))]));
                if (!result.Converged)
                    return;

                double after = Pull(engager, middle, start);
                if (step > 2 * Far)
                    work -= (before + after) / 2 * (there - from) * Stride;
                scale = Math.Max(scale, Math.Abs(after) * Far * Stride);
                first = step == 2 * Far ? after : first;
                last = after;
            }

            if (Math.Abs(last - first) * Far * Stride > 0.01 * scale)
                return;

            seen++;
            Assert.True(work >= -1e-3 * scale - 1e-7, $"{work} N·mm came back, of {scale}.");
        }, elastic: true);
        Assert.True(seen >= 8, $"Only {seen} wires were seen.");
    }

    /// <summary>A wire that sticks gives 5 µm for each newton; that is ours, and with ten times less the loads are the
    /// same within 1 %, where they are such as teeth can bear: on four slots in five. Where the wire sticks on both
    /// sides of a span that hardly changes, the force in between hangs on micrometres, here as in a mouth.</summary>
    [Fact, Trait("basis", "law")]
    public void The_stiffness_of_a_wire_that_sticks_does_not_matter()
    {
        int seen = 0;
        int alike = 0;
        ForEach(60, engager =>
        {
            Arrangement arrangement = engager.Arrangement;
            EngagementResult soft = engager.Apply(Engager.Relieving(arrangement, 0.2));
            var other = new Engager(arrangement);
            other.Rod.Contacts.Grip *= 10;
            if (!other.Engage().Converged || !soft.Converged)
                return;

            EngagementResult firm = other.Apply(Engager.Relieving(arrangement, 0.2));
            if (!firm.Converged || LawCases.LargestForce(soft) > 10)
                return;

            double largest = Math.Max(0.1, LawCases.LargestForce(soft));
            for (int i = 0; i < soft.Slots.Length; i++)
            {
                double difference = (firm.Slots[i].OnTooth.Force - soft.Slots[i].OnTooth.Force).Length;
                TestContext.Current.TestOutputHelper?.WriteLine($"{difference / largest:0.0000} of {largest:0.0} N");
                seen++;
                alike += difference <= 0.01 * largest ? 1 : 0;
            }
        }, elastic: true);
        Assert.True(seen >= 50, $"Only {seen} slots were seen.");
        Assert.True(alike >= 0.8 * seen, $"{alike} of {seen} slots are alike.");
    }

    [Fact, Trait("basis", "law")]
    public void A_coefficient_that_no_pair_of_materials_has_is_refused()
    {
        Arrangement arrangement = Tied().Arrangement;
        foreach (double bad in new[] { -0.1, 3, double.NaN })
        {
            ImmutableArray<Slot> slots = arrangement.Slots.SetItem(1, arrangement.Slots[1] with { Friction = bad });
            ArgumentException error = Assert.Throws<ArgumentException>(
                () => new Engager(arrangement with { Slots = slots }));
            Assert.Contains("friction", error.Message, StringComparison.Ordinal);
        }
    }

    private static double Pull(Engager engager, int slot, SlotFrame start)
    {
        Vector3 sum = default;
        for (int i = 0; i < engager.Rod.Contacts.RowCount; i++)
        {
            if (engager.Rod.Contacts.Rows[i].Slot == slot && engager.Rod.Contacts.Rows[i].Kind != RowKind.Pin)
            {
                sum += engager.Rod.Contacts.OnTooth(
                    i, engager.Rod.State, engager.Rod.Frames, engager.Rod.Mesh).Force;
            }
        }

        return Vector3.Dot(sum, start.Along);
    }

    private static void ForEach(int arches, Action<Engager> check, bool elastic = false)
    {
        for (int number = 0; number < arches; number++)
        {
            Arrangement arrangement = new RandomArch(number).Arrangement;
            if (elastic && arrangement.Wire.Alloy is not LinearElastic)
                continue;

            var engager = new Engager(arrangement.WithFriction(Coefficient));
            if (engager.Engage().Converged)
                check(engager);
        }
    }

    private static Engager Tied()
    {
        // Its base stands where the straight wire lies: only the tie presses.
        Slot bracket = StraightWire.Slot(10, Hold.Walls, y: (0.5 - 0.4064) / 2) with
        {
            Width = 3,
            Friction = Coefficient,
            Tie = Tie.Seating(TieKind.Elastic, Seating, 0),
        };
        var engager = new Engager(StraightWire.Of(180_000, 0.4064, StraightWire.Slot(0, Hold.Clamped), bracket));
        Assert.True(engager.Engage().Converged);
        return engager;
    }

    // The wire is pulled toward +x by the clamp, so the tooth is dragged along.
    private static EngagementResult Draw(Engager engager, double by)
    {
        EngagementResult result = engager.Apply(
            new Step(null, [(0, engager.Arrangement.Slots[0].Rest.Moved(new Vector3(by, 0, 0), default))]));
        Assert.True(result.Converged, result.Obstacle?.Reason);
        return result;
    }
}
