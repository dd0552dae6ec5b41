namespace Archwright.Treatment.Uncertainty;

/// <summary>A figure that is not known to a point: the values below which it lies in 10, 50 and 90 of 100
/// draws.</summary>
/// <param name="P10">Tenth percentile.</param>
/// <param name="P50">Median.</param>
/// <param name="P90">Ninetieth percentile.</param>
public readonly record struct Percentiles(double P10, double P50, double P90)
{
    /// <summary>A figure without chance in it.</summary>
    public static Percentiles Exactly(double value) => new(value, value, value);

    /// <summary>The percentiles of a sample, linear between its sorted members (R. J. Hyndman and Y. Fan, Am Stat
    /// 1996;50:361–365, definition 7; from memory).</summary>
    /// <exception cref="ArgumentException">There are no values.</exception>
    public static Percentiles Of(IEnumerable<double> values)
    {
        double[] sorted = [.. values.Order()];
        if (sorted.Length == 0)
            throw new ArgumentException("A range needs one value at least.", nameof(values));

        return new Percentiles(At(sorted, 0.1), At(sorted, 0.5), At(sorted, 0.9));
    }

    // Infinite members stand for "not within the time looked at"; between a finite and an infinite one lies infinity.
    private static double At(double[] sorted, double share)
    {
        double place = share * (sorted.Length - 1);
        int below = (int)place;
        double rest = place - below;
        return rest == 0 ? sorted[below] : sorted[below] * (1 - rest) + sorted[below + 1] * rest;
    }
}
