using Archwright.Mechanics.Slots;

namespace Archwright.Mechanics.Engagement;

/// <content>Slots that give way: what they will touch.</content>
public sealed partial class Engager
{
    private readonly GivingWire _giving;
    private bool _foresees;

    /// <summary>Foresees which walls the wire will touch once its slots, which give way, have moved, and how it answers
    /// between those. The wire itself stays as it is. Asked again, it goes on from the walls foreseen before, until the
    /// next step. Meant for searches that move the slots.</summary>
    /// <param name="motions">How the slots are about to move from where they are: shift, then turn about the slot's
    /// centre, six a slot, in the frame of the case [mm, rad].</param>
    /// <param name="slots">How they give way.</param>
    /// <param name="stiffness">Takes the stiffness at the slots, as <see cref="TryTouchedStiffness"/> gives
    /// it.</param>
    /// <param name="loads">Takes the loads on the teeth with the slots where they are, if the walls foreseen, and no
    /// others, were touched: those that the stiffness goes on from.</param>
    /// <returns>False where no other walls were foreseen than those touched already, where none were found, or where
    /// friction holds the wire; then nothing is known.</returns>
    /// <exception cref="InvalidOperationException">The wire is not engaged.</exception>
    public bool TryForesee(
        ReadOnlySpan<double> motions, IGivingSlots slots, Span<double> stiffness, Span<Wrench> loads)
    {
        ObjectDisposedException.ThrowIf(_isDisposed, this);
        if (_rod.Mesh.Nodes == 0)
            throw new InvalidOperationException("Engage the wire first.");
        if (_rod.Contacts.HasFriction)
            return false;

        if (!_foresees)
        {
            _giving.Keep(_rod.Contacts);
            _rod.Contacts.HoldTouched();
            _foresees = true;
        }

        _rod.Contacts.HoldsSet = true;
        try
        {
            return _giving.TryForesee(_rod, motions, slots, stiffness, loads);
        }
        finally
        {
            _rod.Contacts.HoldsSet = false;
        }
    }

    // Whatever is asked of an engager comes through here first.
    private void ForgetForeseen()
    {
        ObjectDisposedException.ThrowIf(_isDisposed, this);
        if (_foresees)
            _giving.PutBack(_rod.Contacts);
        _foresees = false;
    }
}
