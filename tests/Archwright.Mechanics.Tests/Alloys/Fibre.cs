using System.Runtime.Intrinsics;
using Archwright.Mechanics.Sections;

namespace Archwright.Mechanics.Tests.Alloys;

/// <summary>One fibre with its history: the first of eight lanes that are all alike.</summary>
internal sealed class Fibre<TLaw>(TLaw law)
    where TLaw : struct, IFibreLaw
{
    public TLaw Law = law;

    public (double Normal, double Shear) State { get; set; }

    /// <summary>Answer to a strain from the committed state; nothing is kept.</summary>
    public FibreAnswer Try(double normal, double shear = 0)
    {
        Law.Respond(
            Vector256.Create(normal), Vector256.Create(shear), Vector256.Create(State.Normal),
            Vector256.Create(State.Shear), out FibreAnswer answer);
        return answer;
    }

    /// <summary>Answer to a strain, for good.</summary>
    public FibreAnswer Take(double normal, double shear = 0)
    {
        FibreAnswer answer = Try(normal, shear);
        State = (answer.NormalState[0], answer.ShearState[0]);
        return answer;
    }
}
