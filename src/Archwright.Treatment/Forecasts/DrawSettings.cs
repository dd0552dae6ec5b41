namespace Archwright.Treatment.Forecasts;

/// <summary>How the uncertainty of a forecast is to be explored.</summary>
public sealed record DrawSettings
{
    /// <summary>Most draws of one forecast.</summary>
    public const int MostDraws = 100_000;

    /// <summary>How many; 200 give a percentile to a few hundredths of the spread.</summary>
    public int Draws { get; init; } = 200;

    /// <summary>The same number gives the same forecast, whatever the number of threads.</summary>
    public long Seed { get; init; } = 1;

    /// <summary>Threads at most; null for as many as the machine has.</summary>
    public int? Threads { get; init; }

    /// <exception cref="ArgumentException">A figure is out of range.</exception>
    internal void Check()
    {
        if (Draws is < 1 or > MostDraws)
            throw new ArgumentException($"There are 1 to {MostDraws} draws, not {Draws}.", nameof(Draws));
        if (Threads is < 1)
            throw new ArgumentException("It takes one thread at least.", nameof(Threads));
    }
}
