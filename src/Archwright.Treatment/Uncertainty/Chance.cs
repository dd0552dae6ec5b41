namespace Archwright.Treatment.Uncertainty;

/// <summary>Numbers by chance that are the same everywhere for the same seed and stream.</summary>
/// <remarks>SplitMix64 (G. L. Steele, D. Lea, C. H. Flood, OOPSLA 2014, from memory); normal numbers by the polar
/// method of Marsaglia.</remarks>
internal sealed class Chance
{
    private ulong _state;

    /// <param name="seed">What the caller asks to be the same again.</param>
    /// <param name="stream">Which of many independent sequences.</param>
    public Chance(long seed, int stream)
    {
        _state = Mixed(unchecked((ulong)seed) + 0x9E3779B97F4A7C15UL);
        _state = Mixed(_state ^ unchecked((ulong)stream * 0xD1B54A32D192ED03UL));
    }

    /// <summary>From 0 to below 1.</summary>
    public double Uniform()
    {
        _state = unchecked(_state + 0x9E3779B97F4A7C15UL);
        return (Mixed(_state) >> 11) * (1.0 / (1UL << 53));
    }

    /// <summary>Mean 0, standard deviation 1.</summary>
    public double Normal()
    {
        while (true)
        {
            double u = 2 * Uniform() - 1;
            double v = 2 * Uniform() - 1;
            double square = u * u + v * v;
            if (square is > 0 and < 1)
                return u * Math.Sqrt(-2 * Math.Log(square) / square);
        }
    }

    private static ulong Mixed(ulong z)
    {
        unchecked
        {
            z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL;
            z = (z ^ (z >> 27)) * 0x94D049BB133111EBUL;
            return z ^ (z >> 31);
        }
    }
}
