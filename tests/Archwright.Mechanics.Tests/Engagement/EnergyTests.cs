using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Slots;

namespace Archwright.Mechanics.Tests.Engagement;

/// <summary>The stored energy is the work that the slots do on the wire while they travel from rest: law. The work is
/// added up by the trapezoidal rule over small steps, which errs by the square of a step, more where a contact comes or
/// goes. The wire is clamped in the first slot, so that it is at rest along the arch at every step. Four times the
/// default mesh: by default round wires keep the law to 1e-3, but rectangular ones that are torqued between walls only
/// to 0.8 % (#8; 0.5 % with twice, 0.1 % with four times the elements), because a torque enters beside its
/// node.</summary>
[Trait("basis", "law")]
public sealed class EnergyTests
{
    private const int Steps = 40;

    // The default mesh is off by up to 0.8 % on these arches, which would hide what is asked here.
    private static readonly EngagementOptions Fine = new() { ElementsPerGap = 12, ElementsPerSlot = 8 };

    [Theory]
    [InlineData(Hold.EdgePoints, 1e-3)]
    [InlineData(Hold.EdgesOnly, 3e-3)]
    [InlineData(Hold.Walls, 3e-3)]
    public void Stored_energy_is_the_work_of_the_slots(Hold hold, double tolerance)
    {
        foreach (LawCases.Case c in LawCases.Take(6, mostSlots: 6))
        {
            Arrangement arch = LawCases.Held(c.Arrangement.Each(s => s with { Hold = hold })) with
            {
                Rest = new RestShape.ThroughRestSlots(),
            };
            var engager = new Engager(arch.Each(s => s with { Actual = s.Rest }), Fine);
            EngagementResult before = Converged(engager.Engage());
            double work = 0;
            SlotFrame[] at = [.. arch.Slots.Select(s => s.Rest)];
            for (int step = 1; step <= Steps; step++)
            {
                double share = (double)step / Steps;
                SlotFrame[] next = [.. arch.Slots.Select(s => FramePath.Between(s.Rest, s.Actual, share))];
                EngagementResult after = Converged(engager.Apply(
                    new Step(null, [.. next.Select((f, i) => (i, f))])));
                for (int i = 0; i < at.Length; i++)
                {
                    Vector3 shift = next[i].Centre - at[i].Centre;
                    Vector3 turn = FramePath.TurnBetween(at[i], next[i]);
                    work -= Vector3.Dot(before.Slots[i].OnTooth.Force + after.Slots[i].OnTooth.Force, shift) / 2
                        + Vector3.Dot(before.Slots[i].OnTooth.Moment + after.Slots[i].OnTooth.Moment, turn) / 2;
                }

                before = after;
                at = next;
            }

            TestContext.Current.TestOutputHelper?.WriteLine(
                $"#{c.Number}: {work / before.StoredEnergy - 1:e1} of {before.StoredEnergy:0.00}");
            Assert.Equal(before.StoredEnergy, work, tolerance: tolerance * before.StoredEnergy + 1e-6);
        }

        EngagementResult Converged(EngagementResult result)
        {
            Assert.True(result.Converged, result.Obstacle?.Reason);
            return result;
        }
    }
}
