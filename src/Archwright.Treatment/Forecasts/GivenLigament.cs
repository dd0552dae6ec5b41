using System.Collections.Immutable;
using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Slots;

namespace Archwright.Treatment.Forecasts;

/// <summary>The first instant of a forecast alone: a wire engaged on rigid teeth, and then each tooth on the initial
/// mobility of its ligament, until wire, teeth and crowns that touch rest together.</summary>
internal static class GivenLigament
{
    // A ligament gives by hundredths of a millimetre, so its rest is found finer than a step of a forecast.
    private const double Tolerance = 0.005;

    /// <summary>Teeth and loads at that rest, in order.</summary>
    /// <param name="request">Wire, slots and teeth; the weeks to come play no part.</param>
    /// <param name="cancellation">Gives up inside an engagement.</param>
    /// <returns>Null where no common rest was found, on the mesh of forecasts or on the finer one of a single
    /// engagement.</returns>
    /// <exception cref="ArgumentException">The request does not hold together.</exception>
    /// <exception cref="OperationCanceledException">It was given up.</exception>
    public static ImmutableArray<ToothDay>? Of(ForecastRequest request, CancellationToken cancellation)
    {
        request.Check();
        return On(mesh: null, request, cancellation) ?? On(EngagementOptions.Default, request, cancellation);
    }

    private static ImmutableArray<ToothDay>? On(
        EngagementOptions? mesh, ForecastRequest request, CancellationToken cancellation)
    {
        var arch = new MovingArch(request);
        using var wire = new EngagedWireInPlace(request.Arrangement, FittedPlaces.Of(request), mesh);
        SlotFrame[] places = [.. request.Arrangement.Slots.Select(slot => slot.Actual)];
        var march = new March(arch, wire, places, Tolerance, new Waiting(arch, isOn: false, already: 0));
        if (!march.TryBegin(cancellation))
            return null;

        // The ligaments may be let give by shares: the last share is the whole.
        Diary? rest = null;
        bool whole = march.TryReach(
            day: 0,
            (start, days, step, engaged) =>
            {
                rest = new Diary(request, arch);
                rest.Write(start, days, step, march.Engaged, engaged);
            },
            cancellation);
        return whole ? rest?.Forecast(march, stop: null).Days[0].Teeth : null;
    }
}
