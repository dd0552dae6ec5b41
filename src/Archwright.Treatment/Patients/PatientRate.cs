using Archwright.Treatment.Movement;

namespace Archwright.Treatment.Patients;

/// <summary>How fast this patient's teeth move, as a factor on the law of the mean person: a lognormal
/// belief.</summary>
/// <param name="LogMedian">Logarithm of the median factor.</param>
/// <param name="LogSpread">Standard deviation of the logarithm; zero when it is held for known.</param>
/// <remarks>People differ more than forces do: at equal stress the fastest tooth of 41 people was nine times as fast
/// as the slowest (Nickel et al. 2014). The prior is what is believed of a patient of whom nothing but the age is
/// known.</remarks>
public sealed record PatientRate(double LogMedian, double LogSpread)
{
    /// <summary>Nothing is known, not even the age: mean factor 1.</summary>
    public static PatientRate Unknown { get; } = Prior(groupMean: 1);

    /// <summary>The median factor.</summary>
    public double Median => Math.Exp(LogMedian);

    /// <summary>What is believed of a patient of this age.</summary>
    /// <param name="ageYears">Age; null when it is not known.</param>
    /// <exception cref="ArgumentOutOfRangeException">It is not an age.</exception>
    /// <remarks>Growing people are on average 1.6 times as fast as grown ones; the law's mean stands half-way, as its
    /// source pooled both.</remarks>
    public static PatientRate ForAge(double? ageYears)
    {
        if (ageYears is not double age)
            return Unknown;

        if (!(age is >= 0 and <= 120))
            throw new ArgumentOutOfRangeException(nameof(ageYears), ageYears, "An age is between 0 and 120 years.");

        double ratio = MovementConstants.GrowingOverGrown.Value;
        double grown = 2 / (1 + ratio);
        return Prior(age < MovementConstants.GrowingUntil.Value ? ratio * grown : grown);
    }

    /// <summary>The factor at a quantile of the belief.</summary>
    /// <param name="deviation">How many standard deviations above the median.</param>
    public double At(double deviation) => Math.Exp(LogMedian + LogSpread * deviation);

    /// <summary>Standard deviation of the logarithm by which one tooth differs from its owner's others.</summary>
    public static double ToothSpread { get; } = MovementConstants.SpreadBetweenPeople.Value
        * Math.Sqrt(1 - Math.Sqrt(MovementConstants.SharedByTeethOfOnePerson.Value));

    // The trials' spread is that of one tooth; with a correlation r of two teeth of a person (r² in the table), r of
    // the variance is the person's. The law gives the mean of people, whose logarithms scatter round the median.
    private static PatientRate Prior(double groupMean)
    {
        double whole = MovementConstants.SpreadBetweenPeople.Value;
        double correlation = Math.Sqrt(MovementConstants.SharedByTeethOfOnePerson.Value);
        return new PatientRate(Math.Log(groupMean) - whole * whole / 2, whole * Math.Sqrt(correlation));
    }
}
