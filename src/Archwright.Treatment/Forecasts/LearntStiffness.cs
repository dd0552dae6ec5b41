using Archwright.Mechanics.Slots;

namespace Archwright.Treatment.Forecasts;

/// <summary>The wire's stiffness at the centres of resistance, corrected by what each engagement shows.</summary>
/// <remarks>
/// Held in the axes of the teeth, so that it goes along with them. After a motion s that changed the loads by −y,
/// <code>
///     S ← S + y yᵀ/(yᵀs) − S s sᵀ S/(sᵀ S s),
/// </code>
/// the update of Broyden, Fletcher, Goldfarb and Shanno (R. Fletcher, <i>Practical Methods of Optimization</i>, 2nd
/// ed., Wiley 1987, from memory): S then answers s by y, and stays positive definite when yᵀs &gt; 0. Pairs that
/// would not keep it so are passed over.
/// </remarks>
internal sealed class LearntStiffness(int size)
{
    private const double LeastCurvature = 1e-6;

    private readonly double[] _product = new double[size];

    /// <summary>Row-major, symmetric: minus the change of loads by motions [N/mm and kin].</summary>
    public double[] Matrix { get; } = new double[size * size];

    /// <summary>Takes a stiffness at the slots.</summary>
    public void Set(MovingArch arch, ReadOnlySpan<SlotFrame> slots, ReadOnlySpan<double> stiffness)
    {
        SlotTransform.ToResistance(arch, slots, stiffness, Matrix);
        for (int i = 0; i < Matrix.Length; i++)
            Matrix[i] = -Matrix[i];
    }

    /// <summary>Learns from one engagement.</summary>
    /// <param name="motion">s, six a tooth.</param>
    /// <param name="relief">y: how much less the loads became.</param>
    public void Learn(ReadOnlySpan<double> motion, ReadOnlySpan<double> relief)
    {
        double known = 0;
        double shown = 0;
        double motions = 0;
        double reliefs = 0;
        for (int i = 0; i < size; i++)
        {
            double sum = 0;
            ReadOnlySpan<double> row = Matrix.AsSpan(i * size, size);
            for (int j = 0; j < size; j++)
                sum += row[j] * motion[j];
            _product[i] = sum;
            known += sum * motion[i];
            shown += relief[i] * motion[i];
            motions += motion[i] * motion[i];
            reliefs += relief[i] * relief[i];
        }

        if (!(shown > LeastCurvature * Math.Sqrt(motions * reliefs)) || !(known > 0) || !double.IsFinite(reliefs))
            return;

        for (int i = 0; i < size; i++)
        {
            for (int j = 0; j < size; j++)
                Matrix[i * size + j] += relief[i] * relief[j] / shown - _product[i] * _product[j] / known;
        }
    }
}
