using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Slots;
using Archwright.Mechanics.Tests.Numerics;
using Archwright.Mechanics.Tests.Rods;
using CsCheck;

namespace Archwright.Mechanics.Tests.Slots;

/// <summary>
/// Every kind of restraint against differences of its own merit function, on random wires that run aslant through the
/// slot. The gradient must be exact. The tangent is exact where the docstring of <see cref="ContactSet"/> says so:
/// second derivatives are weighted by the multiplier and not by p = λ + ρ c, so ρ is taken small and λ large, which
/// makes the two alike; and for a turned section the change of the turn's derivatives by sliding is left out, so there
/// only motions without sliding are compared.
/// </summary>
[Trait("basis", "independent")]
public sealed class ContactSetTests
{
    private const double Step = 1e-4;

    private const double Tolerance = 1e-7;

    private static readonly Gen<int> Seeds = Gen.Int[0, int.MaxValue];

    private static readonly ContactRow Round =
        new() { Kind = RowKind.Walls, Axis = 2, Room = 0.05, Upper = true, Lower = true };

    private static readonly ContactRow Turned = Round with { Across = 0.2, Corner = 0.3, Room = 0.25 };

    private static readonly ContactRow Thread =
        new() { Kind = RowKind.Thread, Axis = 1, Upper = true, Room = 0.3 };

    private static readonly ContactRow Seating =
        new() { Kind = RowKind.Seating, Axis = 1, Pull = 20, Rise = 40, Seat = -0.1 };

    private static readonly ContactRow Fixed =
        new() { Kind = RowKind.Place, Axis = 1, Node = 2, Upper = true, Lower = true };

    /// <summary>Name, row, and the multiplier that makes it act. The station 1 is off the slot's middle.</summary>
    private static readonly Dictionary<string, ContactRow> Rows = new()
    {
        ["upper wall"] = Round with { Multiplier = 10, Station = 1 },
        ["lower wall"] = Round with { Multiplier = -10, Axis = 1 },
        ["no play"] = Round with { Multiplier = -10, Axis = 1, Room = 0, Station = 1 },
        ["turned, upper wall"] = Turned with { Multiplier = 10, Station = 1 },
        ["turned, lower wall"] = Turned with { Multiplier = -10, Axis = 1, Corner = -0.3 },
        ["thread"] = Thread with { Multiplier = 10 },
        ["seating tie"] = Seating,
        ["place"] = Fixed with { Multiplier = 10, Target = 0.1 },
        ["end stop"] = Fixed with { Multiplier = 40, Axis = 0, Lower = false, EndStop = true, Target = -0.2 },
        ["direction"] = Fixed with { Multiplier = -10, Kind = RowKind.Direction },
        ["turn"] = Fixed with { Multiplier = 60, Kind = RowKind.Turn },
        ["pin"] = Fixed with
        {
            Multiplier = -200,
            Kind = RowKind.Pin,
            PinAt = new Vector3(0.1, 0.2, 0.3),
            PinNormal = new Vector3(0.6, 0, 0.8),
        },
    };

    public static TheoryData<string> All => [.. Rows.Keys];

    public static TheoryData<string> Exact =>
        [.. Rows.Keys.Where(name => !name.Contains("turn", StringComparison.Ordinal))];

    public static TheoryData<string> Inside =>
        ["upper wall", "lower wall", "turned, upper wall", "turned, lower wall", "thread", "end stop"];

    public static TheoryData<string> Penalised => [.. Rows.Keys.Where(name => name != "seating tie")];

    [Theory]
    [MemberData(nameof(All))]
    public void The_gradient_is_the_derivative_of_the_merit(string name) => Seeds.Sample(seed =>
    {
        var contact = new RandomContact(seed, penalty: 10, Rows[name]);
        double[] gradient = contact.Gradient(contact.Wire.State, out _);
        double scale = 1 + gradient.Max(Math.Abs);
        Assert.True(scale > 1.1, "The row must act, or nothing is tested.");

        for (int j = 0; j < RandomContact.Unknowns; j++)
        {
            double expected = Differences.Of(x => contact.Merit(contact.Shifted(j, x)), Step);
            Assert.Equal(expected, gradient[j], tolerance: Tolerance * scale);
        }
    }, iter: 20);

    /// <summary>Interior-point search, at its start: slack and gap alike, force μ by slack. Then the merit is the
    /// barrier −μ ln gap, the gradient its derivative, and the tangent its second one (for turned sections but for
    /// sliding, as above).</summary>
    [Theory]
    [MemberData(nameof(Inside))]
    public void From_inside_the_gradient_is_the_derivative_of_the_barrier(string name) => Seeds.Sample(seed =>
    {
        var contact = new RandomContact(seed, penalty: 10, Wide(name));
        contact.Set.Interior = 0.5;
        contact.Set.Starting = true;
        double[] gradient = contact.Gradient(contact.Wire.State, out BlockTridiagonal tangent);
        double scale = 1 + gradient.Max(Math.Abs);
        Assert.True(contact.Set.Rows[0].Inside);
        Assert.True(scale > 1.05, "The row must act, or nothing is tested.");

        for (int j = 0; j < RandomContact.Unknowns; j++)
        {
            double expected = Differences.Of(x => contact.Merit(contact.Shifted(j, x)), Step);
            Assert.Equal(expected, gradient[j], tolerance: Tolerance * scale);
        }

        if (name.Contains("turned", StringComparison.Ordinal))
            return;

        AssertDerivative(contact, tangent);
    }, iter: 20);

    [Theory]
    [MemberData(nameof(Exact))]
    public void The_tangent_is_the_derivative_of_the_gradient(string name) => Seeds.Sample(seed =>
    {
        var contact = new RandomContact(seed, penalty: 1e-6, Rows[name]);
        contact.Gradient(contact.Wire.State, out BlockTridiagonal tangent);

        AssertDerivative(contact, tangent);
    }, iter: 20);

    [Theory]
    [InlineData("turned, upper wall")]
    [InlineData("turned, lower wall")]
    public void The_tangent_of_a_turned_section_is_exact_without_sliding(string name) => Seeds.Sample(seed =>
    {
        var contact = new RandomContact(seed, penalty: 1e-6, Rows[name]);
        contact.Gradient(contact.Wire.State, out BlockTridiagonal tangent);
        Station at = contact.Set.Stations[Rows[name].Station];
        double[] a = WithoutSliding(contact, at);
        double[] b = WithoutSliding(contact, at);

        double expected = Differences.Of(x => Dot(a, contact.Gradient(contact.Shifted(b, x), out _)), Step);

        Assert.Equal(expected, Dot(a, RandomContact.Times(tangent, b)), tolerance: 1e-6 * (1 + Math.Abs(expected)));
    }, iter: 60);

    // Two numbers ρ, the same multiplier: the tangents differ by ρ ∇c ∇cᵀ alone, and that is exact for all rows.
    [Theory]
    [MemberData(nameof(Penalised))]
    public void The_stiff_part_of_the_tangent_is_the_square_of_the_row(string name) => Seeds.Sample(seed =>
    {
        var contact = new RandomContact(seed, penalty: 10, Rows[name]);
        double[] gradient = contact.Gradient(contact.Wire.State, out BlockTridiagonal stiff);
        double p = contact.Set.Rows[0].Effective;
        contact.Set.Penalty = 4;
        contact.Gradient(contact.Wire.State, out BlockTridiagonal soft);

        double[] x = RandomVector(contact);
        double[] difference = [.. RandomContact.Times(stiff, x).Zip(RandomContact.Times(soft, x), (s, t) => s - t)];
        double slope = Dot(gradient, x) / p;
        AssertEqual([.. gradient.Select(g => 6 * slope * g / p)], difference, 10);
    }, iter: 20);

    /// <summary>The load on the tooth is the change of the merit when the slot moves: a tooth that yields to it lets
    /// the wire relax. Shift and turn about the slot's centre.</summary>
    [Theory]
    [MemberData(nameof(All))]
    public void The_load_on_the_tooth_is_the_derivative_by_the_motion_of_the_slot(string name) => Seeds.Sample(seed =>
    {
        if (Rows[name].Kind == RowKind.Pin)
            return;

        var contact = new RandomContact(seed, penalty: 10, Rows[name]);
        if (Rows[name].Kind == RowKind.Turn)
            contact.Frames[0] = Aligned(contact);
        SlotFrame frame = contact.Frames[0];
        contact.Gradient(contact.Wire.State, out _);
        (Vector3 force, Vector3 moment) = contact.Set.OnTooth(0, contact.Wire.State, contact.Frames, contact.Wire.Mesh);

        for (int k = 0; k < 3; k++)
        {
            Vector3 unit = new(k == 0 ? 1 : 0, k == 1 ? 1 : 0, k == 2 ? 1 : 0);
            double byShift = Differences.Of(x => contact.Merit(frame.Moved(unit * x, default)), Step);
            double byTurn = Differences.Of(x => contact.Merit(frame.Moved(default, unit * x)), Step);
            Assert.Equal(-byShift, Vector3.Dot(force, unit), tolerance: Tolerance * 40);
            Assert.Equal(-byTurn, Vector3.Dot(moment, unit), tolerance: Tolerance * 40);
        }
    }, iter: 20);

    [Fact]
    public void A_frictionless_force_is_normal_to_a_round_wire() => Seeds.Sample(seed =>
    {
        var contact = new RandomContact(seed, penalty: 10, Rows["upper wall"]);
        contact.Gradient(contact.Wire.State, out _);
        (Vector3 force, _) = contact.Set.OnTooth(0, contact.Wire.State, contact.Frames, contact.Wire.Mesh);

        Assert.True(force.Length > 1);
        Assert.Equal(0, Vector3.Dot(force, contact.Set.Stations[1].P), tolerance: 1e-11 * force.Length);
    }, iter: 50);

    [Fact]
    public void A_wall_that_is_not_touched_does_nothing() => Seeds.Sample(seed =>
    {
        var contact = new RandomContact(seed, penalty: 10, Round with { Room = 2 }, Thread with { Room = 2 });
        double[] gradient = contact.Gradient(contact.Wire.State, out BlockTridiagonal tangent);

        Assert.All(gradient, g => Assert.Equal(0, g));
        Assert.All(tangent.Diagonal(2).ToArray(), k => Assert.Equal(0, k));
        Assert.Equal(0, contact.Merit(contact.Wire.State));
    }, iter: 20);

    // Where a torque enters, the twist jumps; sliding past releases half of one side and half of the other.
    [Fact]
    public void On_a_node_the_rate_of_the_turn_is_the_mean_of_both_sides() => Seeds.Sample(seed =>
    {
        var wire = new RandomWire(seed);
        Vector3 along = RodAssembly.Slope(wire.State, 2).Unit();
        SlotFrame frame = SlotFrame.Create(
            RodAssembly.Position(wire.State, 2), along, Vector3.Cross(along, wire.DrawVector()).Unit());
        Station At(double u)
        {
            Station station = new() { U = u, S = wire.Mesh.S[2] + u, NeedsTurn = true };
            station.Locate(wire.Mesh, wire.State, frame);
            station.Freeze(wire.Mesh, wire.State, frame);
            return station;
        }

        double Rate(double sign) => Differences.Of(x => At(sign * 0.2 + x).Turn, Step) * At(sign * 0.2).Advance;
        double Near(double u) => Differences.Of(x => At(u + x).Turn, 1e-7) * At(u).Advance;

        Assert.NotEqual(0, At(0.2).TurnRate);
        Assert.Equal(Rate(1), At(0.2).TurnRate, tolerance: 1e-7);
        Assert.Equal((Near(-3e-7) + Near(3e-7)) / 2, At(0).TurnRate, tolerance: 1e-5);
    }, iter: 20);

    [Fact]
    public void A_wire_that_ends_before_the_slot_is_reported_missed()
    {
        var contact = new RandomContact(seed: 7, penalty: 10, Round);
        SlotFrame frame = contact.Frames[0];
        SlotFrame[] beyond = [frame.Moved(frame.Along * 30, default)];

        Assert.False(contact.Set.Locate(contact.Wire.Mesh, contact.Wire.State, beyond));
        Assert.Equal(0, contact.Set.MissedSlot);
    }

    // A motion that leaves the crossing where it is: its part along the slot's axis there is taken off through the
    // shape functions.
    private static double[] WithoutSliding(RandomContact contact, in Station at)
    {
        double[] x = RandomVector(contact);
        double[] slide = new double[RandomContact.Unknowns];
        ElementVector.OfPoint(contact.Frames[0].Along, at.Shape).AddTo(slide, at.Element, 1);
        double share = Dot(slide, x) / Dot(slide, slide);
        return [.. x.Zip(slide, (a, b) => a - share * b)];
    }

    private static double[] RandomVector(RandomContact contact) =>
        [.. Enumerable.Range(0, RandomContact.Unknowns).Select(_ => contact.Wire.Draw())];

    // A held section stands along its slot when it is settled; only then is the moment of a turn what the reading says.
    private static SlotFrame Aligned(RandomContact contact)
    {
        Vector3 along = RodAssembly.Slope(contact.Wire.State, 2).Unit();
        Vector3 outward = Vector3.Cross(along, new Vector3(0.3, 0.5, 0.8)).Unit();
        return SlotFrame.Create(RodAssembly.Position(contact.Wire.State, 2), along, outward);
    }

    private static double[] GradientByDifferences(RandomContact contact, int index) => Differences.Of(
        (x, g) => contact.Gradient(contact.Shifted(index, x), out _).CopyTo(g, 0), RandomContact.Unknowns, Step);

    // With so much room that the wire lies well inside, and one wall alone, as two of them nearly balance in the
    // middle.
    private static ContactRow Wide(string name) => Rows[name] with
    {
        Multiplier = 0,
        Room = name switch { "thread" => 0.6, _ when name.Contains("turned", StringComparison.Ordinal) => 1.5, _ => 1 },
        Target = 3,
        Lower = name.Contains("lower", StringComparison.Ordinal),
        Upper = !name.Contains("lower", StringComparison.Ordinal),
    };

    private static double Dot(double[] a, double[] b) => a.Zip(b, (x, y) => x * y).Sum();

    private static void AssertEqual(double[] expected, double[] actual, double scale)
    {
        for (int i = 0; i < expected.Length; i++)
            Assert.Equal(expected[i], actual[i], tolerance: Tolerance * scale);
    }

    private static void AssertDerivative(RandomContact contact, BlockTridiagonal tangent)
    {
        for (int j = 0; j < RandomContact.Unknowns; j++)
        {
            double[] unit = new double[RandomContact.Unknowns];
            unit[j] = 1;
            AssertEqual(GradientByDifferences(contact, j), RandomContact.Times(tangent, unit), 10);
        }
    }
}
