using Archwright.Mechanics.Alloys;
using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Slots;

namespace Archwright.Mechanics.Engagement;

/// <content>A wire starts where another of its section rests in the same slots; one with memory, where it would rest
/// without.</content>
/// <remarks>The slots decide most of the shape, whatever the alloy: without ties that press, elastic wires of one
/// section and one Poisson's ratio rest alike, with forces as their moduli. An elastic wire finds that shape on half of
/// the nodes that a wire with memory needs, and without asking its fibres; what is left to the whole law is how much
/// softer it is. It is a new wire, so the way to its first rest leaves nothing behind.</remarks>
public sealed partial class Engager
{
    /// <summary>As <see cref="Engage"/>, from where an elastic wire of the same section rests in the same slots: for
    /// those who have that answer already. Where it does not lead to a rest, the wire is engaged as ever.</summary>
    /// <param name="elastic">Engaged, and not moved since.</param>
    /// <param name="cancellation">To stop.</param>
    /// <exception cref="ArgumentException">It has other slots, another section, or a memory.</exception>
    /// <exception cref="OperationCanceledException">It was asked to stop.</exception>
    /// <exception cref="ObjectDisposedException">One of the two has been disposed of.</exception>
    public EngagementResult EngageFrom(Engager elastic, CancellationToken cancellation = default)
    {
        Require(elastic);
        if (!elastic.Arrangement.Slots.AsSpan().SequenceEqual(Arrangement.Slots.AsSpan()))
            throw new ArgumentException("It has other slots.", nameof(elastic));

        return EngageNear(elastic, cancellation);
    }

    /// <summary>As <see cref="Apply"/>, to where an elastic wire of the same section rests in the moved slots: its
    /// shape is where the search starts, if one stride takes this wire there. What the wire remembers of the way is
    /// that of one stride, as ever.</summary>
    /// <param name="step">Where to.</param>
    /// <param name="elastic">Engaged there.</param>
    /// <param name="cancellation">To stop.</param>
    /// <exception cref="InvalidOperationException"><see cref="Engage"/> has not been called.</exception>
    /// <exception cref="ArgumentException">A moved slot does not exist, or the other wire has other slots, another
    /// section, or a memory.</exception>
    /// <exception cref="OperationCanceledException">It was asked to stop.</exception>
    /// <exception cref="ObjectDisposedException">One of the two has been disposed of.</exception>
    public EngagementResult ApplyFrom(Step step, Engager elastic, CancellationToken cancellation = default)
    {
        Require(elastic);
        if (elastic.Arrangement.Slots.Length != Arrangement.Slots.Length)
            throw new ArgumentException("It has other slots.", nameof(elastic));

        return ApplyNear(step, elastic, cancellation);
    }

    private void Require(Engager elastic)
    {
        ArgumentNullException.ThrowIfNull(elastic);
        ObjectDisposedException.ThrowIf(elastic._isDisposed, elastic);
        if (elastic.Arrangement.Wire.Section != Arrangement.Wire.Section
            || elastic.Arrangement.Wire.Alloy is not LinearElastic)
        {
            throw new ArgumentException("It has another section, or a memory.", nameof(elastic));
        }
    }

    private SearchEnd Jump(Engager elastic, SlotFrame[] target, CancellationToken cancellation)
    {
        SetOut(Arrangement.Temperature);
        if (elastic._rod.Mesh.Nodes == 0 || LongestStride(target) < 1 || _warmedTo != _warmedFrom
            || _rod.Contacts.HasFriction)
        {
            return SearchEnd.Stalled;
        }

        double force = _rod.Contacts.LargestForce();
        target.CopyTo(_rod.Frames, 0);
        _rod.Contacts.CopyFrom(elastic._rod.Contacts);
        double other = _rod.Contacts.LargestForce();
        if (other > 0)
            _rod.Contacts.ScaleForces(force / other);

        // The wire lies along the arch where it lay: only what is felt there moves it.
        double farther = _slide.Shift - elastic._slide.Shift;
        _rod.Contacts.Slide(farther);
        Span<double> there = _before.AsSpan(0, _rod.Mesh.Nodes);
        for (int i = 0; i < there.Length; i++)
            there[i] = _rod.Mesh.S[i] - farther;
        MeshTransfer.Carry(elastic._rod.Mesh, elastic._rod.State, there, _rod.State);
        AttachFixedRows();
        _rod.Contacts.ForgetElements();

        SearchEnd end = Settle(NearIterationsWithMemory, near: true, cancellation);
        if (end == SearchEnd.Converged)
        {
            _rod.Law.Commit(_rod.Mesh, _rod.State);
            return end;
        }

        PutBackWhole();
        return end;
    }

    private SearchEnd FromElastic(Engager? given, SlotFrame[] target, CancellationToken cancellation)
    {
        if (given is not null)
            return given._rod.Mesh.Nodes > 0 ? From(given, target, cancellation) : SearchEnd.Stalled;
        if (!_rod.Law.Remembers)
            return SearchEnd.Stalled;

        // Along the path from rest, which is long, the wire goes with its whole law.
        Alloy alloy = Arrangement.Wire.Alloy;
        using var elastic = new Engager(
            Arrangement with
            {
                Wire = Arrangement.Wire with { Alloy = LinearElastic.WithShear(alloy.Young, alloy.Shear) },
            },
            Options with { MostIterations = 1 });
        return elastic.Engage(cancellation).Converged ? From(elastic, target, cancellation) : SearchEnd.Stalled;
    }

    private SearchEnd From(Engager elastic, SlotFrame[] target, CancellationToken cancellation)
    {
        target.CopyTo(_rod.Frames, 0);
        _rod.Contacts.CopyFrom(elastic._rod.Contacts);
        _rod.Contacts.ScaleForces(Arrangement.Wire.Alloy.Young / elastic.Arrangement.Wire.Alloy.Young);
        _slide.StandAs(elastic._slide);
        PlanTouched();
        BuildMesh();
        MeshTransfer.Carry(elastic._rod.Mesh, elastic._rod.State, _rod.Mesh.S, _rod.State);
        _rod.Contacts.ForgetElements();

        SearchEnd end = Settle(NearIterationsWithMemory, near: true, cancellation);
        if (end != SearchEnd.Converged)
            Restraints.Fill(_rod.Contacts, Arrangement, _layout.Places);
        return end;
    }
}
