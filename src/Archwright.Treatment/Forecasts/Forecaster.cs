using System.Collections.Immutable;
using Archwright.Dentition.Teeth;
using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Slots;

namespace Archwright.Treatment.Forecasts;

/// <summary>Looks ahead: engages the wire and lets the teeth move with it, week by week.</summary>
public static class Forecaster
{
    /// <summary>One forecast with the median rate; no chance in it.</summary>
    /// <param name="request">What of.</param>
    /// <param name="cancellation">Gives up between time steps and inside an engagement.</param>
    /// <returns>The days reached. A wire that cannot be engaged or followed is an ordinary result: see
    /// <see cref="Forecast.Stop"/>.</returns>
    /// <exception cref="ArgumentException">The request does not hold together; the message says what is
    /// wrong.</exception>
    /// <exception cref="OperationCanceledException">It was given up.</exception>
    public static Forecast Run(ForecastRequest request, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(request);
        request.Check();
        using var wire = new EngagedWireInPlace(request.Arrangement, FittedPlaces.Of(request));
        return Run(request, wire, cancellation);
    }

    /// <summary>Many forecasts over what is not known of the patient and the teeth: ranges in place of
    /// points.</summary>
    /// <param name="request">What of; its rate is the belief that is drawn from.</param>
    /// <param name="settings">How many, and with which seed.</param>
    /// <param name="progress">Told the number of draws done, each number once; from any thread.</param>
    /// <param name="cancellation">Gives up between and inside draws.</param>
    /// <exception cref="ArgumentException">Request or settings do not hold together.</exception>
    /// <exception cref="OperationCanceledException">It was given up.</exception>
    public static DrawnForecast RunDraws(
        ForecastRequest request,
        DrawSettings settings,
        IProgress<int>? progress = null,
        CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(request);
        ArgumentNullException.ThrowIfNull(settings);
        request.Check();
        settings.Check();
        return Draws.Run(request, settings, progress, cancellation);
    }

    internal static Forecast Run(ForecastRequest request, IWireInPlace wire, CancellationToken cancellation)
    {
        var arch = new MovingArch(request);
        SlotFrame[] places = [.. request.Arrangement.Slots.Select(slot => slot.Actual)];
        var march = new March(
            arch, wire, places, request.StepTolerance,
            new Waiting(arch, request.OverloadedTeethWait, already: 7 * request.WeeksInPlace));
        var diary = new Diary(request, arch);
        if (!march.TryBegin(cancellation))
        {
            diary.First(places, march.Engaged);
            return diary.Forecast(march, Stop(request, march));
        }

        diary.First(places, march.Engaged);
        bool whole = march.TryReach(
            7 * request.Weeks,
            (start, days, step, engaged) => diary.Write(start, days, step, march.Engaged, engaged),
            cancellation);
        return diary.Forecast(march, whole ? null : Stop(request, march));
    }

    private static ForecastStop Stop(ForecastRequest request, March march)
    {
        Obstacle obstacle = march.Obstacle!;
        ToothNumber? tooth = obstacle.Slot >= 0 ? request.Teeth[obstacle.Slot] : null;
        return new ForecastStop(march.Day, tooth, obstacle.Reason);
    }
}
