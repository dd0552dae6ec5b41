using Archwright.Treatment.Movement;

namespace Archwright.Treatment.Forecasts;

/// <summary>Which teeth stand still for the time being, because their ligament was pressed beyond the law's
/// range.</summary>
/// <remarks>
/// A tooth waits once under a wire: from the first overload for <see cref="MovementLaw.LagOf"/> days over its rate,
/// whatever becomes of the load, for what was pressed dead must be cleared away first; then it moves with the law.
/// Slow movers wait longer: dead patches lasted longest in the slowest dogs (von Böhl M et al., Am J Orthod
/// Dentofacial Orthop 2004;125:615–623). That lag and speed share one rate is ours, and keeps time and rate tied
/// together as in <see cref="Course"/>.
/// </remarks>
internal sealed class Waiting
{
    private readonly MovingArch _arch;
    private readonly double _already;
    private readonly bool _isOn;
    private readonly double[] _left;

    /// <param name="arch">The teeth.</param>
    /// <param name="isOn">Off: nobody waits.</param>
    /// <param name="already">Days that the wire has been in place: part of a lag, or all of it, is over.</param>
    public Waiting(MovingArch arch, bool isOn, double already)
    {
        _arch = arch;
        _isOn = isOn;
        _already = already;
        _left = new double[arch.Count];
        Array.Fill(_left, double.NaN);
    }

    /// <summary>Whether a tooth stands still.</summary>
    public bool Stands(int tooth) => _left[tooth] > 0;

    /// <summary>Days until the next tooth comes free; infinite when none waits.</summary>
    public double UntilNext
    {
        get
        {
            double next = double.PositiveInfinity;
            foreach (double left in _left)
                next = left > 0 ? Math.Min(next, left) : next;
            return next;
        }
    }

    /// <summary>Time goes by, and loads may have risen.</summary>
    public void Pass(double days, ReadOnlySpan<Six> loads)
    {
        const double nothing = 1e-9;
        for (int i = 0; i < _left.Length && _isOn; i++)
        {
            double rate = _arch.Rates[i];
            if (double.IsNaN(_left[i]) && rate > 0)
            {
                double lag = MovementLaw.LagOf(ToothAnswer.Stress(_arch.Supports[i], loads[i])) / rate;
                _left[i] = lag > 0 ? Math.Max(0, lag - _already) : double.NaN;
            }
            else if (_left[i] > 0)
            {
                _left[i] = _left[i] - days > nothing ? _left[i] - days : 0;
            }
        }
    }
}
