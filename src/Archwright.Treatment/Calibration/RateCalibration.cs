using System.Collections.Immutable;
using Archwright.Dentition.Positions;
using Archwright.Dentition.Teeth;
using Archwright.Treatment.Forecasts;
using Archwright.Treatment.Patients;
using Archwright.Treatment.Support;

namespace Archwright.Treatment.Calibration;

/// <summary>What observed places of teeth say about this patient's rate of movement.</summary>
/// <remarks>
/// The model. The rate r is one factor on the whole patient, and time enters the law of movement only together with
/// it: teeth are after t weeks at rate r where they are after r·t weeks at rate 1. So one forecast at rate 1 answers
/// for every r. With x(τ) its places, an observation of tooth i after t weeks is
/// <code>
///     y = x_i(r t) + e,   e normal with variance 2 s² + (q · way_i(r t))²,
/// </code>
/// s the error of one measured coordinate (it enters twice, once in the first places), q the spread of one tooth's
/// rate round its owner's (<see cref="PatientRate.ToothSpread"/>), way the movement so far. Angles count by the arms
/// of turning of <see cref="ToothSupport"/>. Prior: lognormal. The posterior of ln r is computed on a grid and
/// handed on by its mean and standard deviation, widened by nothing. What the model leaves out: teeth err together
/// where the arch or the wire differ from what was said.
/// </remarks>
public static class RateCalibration
{
    private const int Half = 120;
    private const double Reach = 3.5;

    /// <summary>Error of one measured coordinate of a tooth [mm]: standard deviation. Common practice, no source; the
    /// limits of agreement of the irregularity index, −1.97 to 1.29 mm over five contacts (from photographs), would
    /// be met by 0.26 mm.</summary>
    public const double UsualError = 0.25;

    /// <summary>The belief of the request, brought up to date.</summary>
    /// <param name="request">The forecast that was made when the wire was fitted; its rate is the prior.</param>
    /// <param name="observed">What was found since, with the same wire in place.</param>
    /// <param name="error">Standard deviation of a measured coordinate [mm].</param>
    /// <param name="cancellation">Gives up inside the forecast.</param>
    /// <exception cref="ArgumentException">The request does not hold together, nothing was observed, a week is not
    /// after the start, a tooth has no slot, or the wire cannot be followed at all.</exception>
    /// <exception cref="OperationCanceledException">It was given up.</exception>
    public static PatientRate Update(
        ForecastRequest request,
        IReadOnlyList<ObservedArch> observed,
        double error = UsualError,
        CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(request);
        ArgumentNullException.ThrowIfNull(observed);
        return Update(request, observed, error, one => Forecaster.Run(one, cancellation));
    }

    internal static PatientRate Update(
        ForecastRequest request, IReadOnlyList<ObservedArch> observed, double error,
        Func<ForecastRequest, Forecast> run)
    {
        Check(request, observed, error);
        PatientRate prior = request.Rate;
        if (prior.LogSpread == 0)
            return prior;

        double longest = observed.Max(one => one.Week) * prior.At(Reach);
        Forecast forecast = run(request with
        {
            Rate = new PatientRate(0, 0),
            Weeks = (int)Math.Clamp(Math.Ceiling(longest), 1, ForecastRequest.MostWeeks),
        });
        if (forecast.Days.Length < 2)
            throw new ArgumentException(forecast.Stop?.Reason ?? "The wire cannot be followed.", nameof(request));

        var logarithms = new double[2 * Half + 1];
        var weights = new double[logarithms.Length];
        for (int i = 0; i < weights.Length; i++)
        {
            double deviation = Reach * (i - Half) / Half;
            logarithms[i] = prior.LogMedian + prior.LogSpread * deviation;
            weights[i] = -deviation * deviation / 2;
            foreach (ObservedArch one in observed)
                weights[i] += LogLikelihood(forecast, one, Math.Exp(logarithms[i]), error);
        }

        return Moments(logarithms, weights);
    }

    private static double LogLikelihood(Forecast forecast, ObservedArch observed, double rate, double error)
    {
        double day = Math.Min(7 * observed.Week * rate, forecast.Days.Length - 1);
        int before = (int)day;
        int after = Math.Min(before + 1, forecast.Days.Length - 1);
        double share = day - before;
        double sum = 0;
        for (int i = 0; i < forecast.Days[0].Teeth.Length; i++)
        {
            ToothDay start = forecast.Days[0].Teeth[i];
            if (!observed.Teeth.TryGetValue(start.Tooth, out ObservedTooth? found))
                continue;

            double[] from = Coordinates(start.Tooth, start.Offset);
            double[] low = Coordinates(start.Tooth, forecast.Days[before].Teeth[i].Offset);
            double[] high = Coordinates(start.Tooth, forecast.Days[after].Teeth[i].Offset);
            double?[] seen = Coordinates(start.Tooth, found);
            for (int k = 0; k < from.Length; k++)
            {
                if (seen[k] is not double place)
                    continue;

                double expected = low[k] + share * (high[k] - low[k]);
                double own = PatientRate.ToothSpread * (expected - from[k]);
                double variance = 2 * error * error + own * own;
                double off = place - expected;
                sum -= off * off / (2 * variance) + Math.Log(variance) / 2;
            }
        }

        return sum;
    }

    // Shifts and, as movements of the crown, turns [mm].
    private static double[] Coordinates(ToothNumber tooth, ClinicalOffset offset) =>
        [.. Coordinates(tooth, ObservedTooth.Of(offset)).Select(part => part!.Value)];

    private static double?[] Coordinates(ToothNumber tooth, ObservedTooth offset)
    {
        ToothSupport support = ToothSupport.Of(tooth);
        return
        [
            offset.Labial, offset.Occlusal, offset.Mesial,
            offset.Rotation * support.TurningArms.Z, offset.Tip * support.TurningArms.Y,
            offset.Torque * support.TurningArms.X,
        ];
    }

    private static PatientRate Moments(double[] logarithms, double[] weights)
    {
        double most = weights.Max();
        double sum = 0;
        double mean = 0;
        double square = 0;
        for (int i = 0; i < weights.Length; i++)
        {
            double weight = Math.Exp(weights[i] - most);
            sum += weight;
            mean += weight * logarithms[i];
            square += weight * logarithms[i] * logarithms[i];
        }

        mean /= sum;
        return new PatientRate(mean, Math.Sqrt(Math.Max(0, square / sum - mean * mean)));
    }

    private static void Check(ForecastRequest request, IReadOnlyList<ObservedArch> observed, double error)
    {
        request.Check();
        if (observed.Count == 0)
            throw new ArgumentException("Nothing was observed.", nameof(observed));
        if (!(error is >= 0.01 and <= 5))
            throw new ArgumentException("A measured place errs by 0.01 to 5 mm.", nameof(error));

        foreach (ObservedArch one in observed)
        {
            if (!(one.Week is > 0 and <= ForecastRequest.MostWeeks))
                throw new ArgumentException($"Week {one.Week} is not after the start.", nameof(observed));

            foreach ((ToothNumber tooth, ObservedTooth offset) in one.Teeth)
            {
                if (!request.Teeth.Contains(tooth))
                    throw new ArgumentException($"Tooth {tooth} was observed but has no slot.", nameof(observed));
                if (!offset.IsFinite)
                    throw new ArgumentException($"The place of {tooth} is not a finite number.", nameof(observed));
            }
        }
    }
}
