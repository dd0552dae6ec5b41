using System.Collections.Immutable;
using Archwright.Dentition.Positions;
using Archwright.Dentition.Teeth;
using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Slots;
using Archwright.Treatment.Movement;

namespace Archwright.Treatment.Forecasts;

/// <summary>Writes down the whole days of a march; between the ends of a step it interpolates.</summary>
internal sealed class Diary(ForecastRequest request, MovingArch arch)
{
    private const double LeastEnergy = 1e-9;

    private readonly List<ForecastDay> _days = [];
    private readonly ToothNumber?[] _teeth = [.. request.Teeth.Select(tooth => (ToothNumber?)tooth)];
    private double _firstEnergy;

    /// <summary>Today, with the wire just engaged and the teeth as they were found.</summary>
    public void First(ReadOnlySpan<SlotFrame> places, EngagementResult engaged)
    {
        _firstEnergy = engaged.StoredEnergy;
        var wrenches = new Wrench[arch.Count];
        var loads = new Six[arch.Count];
        for (int i = 0; i < arch.Count; i++)
        {
            wrenches[i] = engaged.Converged ? engaged.Slots[i].OnTooth : default;
            loads[i] = engaged.Converged
                ? arch.AtResistance(i, places[i], wrenches[i]) + arch.Besides(i, places[i])
                : arch.Besides(i, places[i]);
        }

        double[] rates = [.. loads.Select((load, i) => Waits(i, load) ? 0 : arch.Rates[i])];
        _days.Add(Day(0, places, wrenches, loads, engaged.StoredEnergy, rates));
    }

    /// <summary>The whole days that end within a step.</summary>
    public void Write(double start, double days, MovementStep step, EngagementResult from, EngagementResult to)
    {
        var places = new SlotFrame[arch.Count];
        var wrenches = new Wrench[arch.Count];
        var loads = new Six[arch.Count];
        for (int day = _days.Count; day <= start + days + 1e-9; day++)
        {
            double share = days > 0 ? Math.Clamp((day - start) / days, 0, 1) : 1;
            for (int i = 0; i < arch.Count; i++)
            {
                places[i] = arch.Moved(i, step.Start[i], step.Motion[i] * share);
                wrenches[i] = Between(from.Slots[i].OnTooth, to.Slots[i].OnTooth, share, places[i].Centre);
                loads[i] = step.LoadBefore[i] * (1 - share) + step.Load[i] * share;
            }

            double energy = from.StoredEnergy * (1 - share) + to.StoredEnergy * share;
            _days.Add(Day(day, places, wrenches, loads, energy, step.Rates));
        }
    }

    /// <summary>All that was written.</summary>
    public Forecast Forecast(March march, ForecastStop? stop)
    {
        int spent = _days.FindIndex(day => day.Day > 0
            && day.Teeth.All(tooth => tooth.Movement.Stress < MovementLaw.LeastStress));
        return new Forecast
        {
            Days = [.. _days],
            Stop = stop,
            SpentOnDay = spent >= 0 ? _days[spent].Day : null,
            Steps = march.Steps,
            Engagements = march.Engagements,
        };
    }

    // A wire fitted today: whose ligament it presses beyond the law's range.
    private bool Waits(int tooth, Six load) => request is { OverloadedTeethWait: true, WeeksInPlace: 0 }
        && MovementLaw.LagOf(ToothAnswer.Stress(arch.Supports[tooth], load)) > 0;

    private ForecastDay Day(
        int day, ReadOnlySpan<SlotFrame> places, Wrench[] wrenches, Six[] loads, double energy, double[] rates)
    {
        var teeth = ImmutableArray.CreateBuilder<ToothDay>(arch.Count);
        for (int i = 0; i < arch.Count; i++)
            teeth.Add(Tooth(i, places[i], wrenches[i], loads[i], rates[i]));

        double activation = _firstEnergy > LeastEnergy ? Math.Sqrt(Math.Max(0, energy) / _firstEnergy) : 0;
        return new ForecastDay(day, Irregularity(places), activation, energy, teeth.MoveToImmutable());
    }

    private ToothDay Tooth(int i, SlotFrame place, Wrench wire, Six load, double rate)
    {
        ToothNumber tooth = arch.Teeth[i];
        ClinicalAxes axes = ClinicalAxes.For(tooth);
        Vector3 resistance = arch.Supports[i].ResistanceOf(place);
        var whole = new Wrench(
            MovingArch.InSpace(place, load.Linear), MovingArch.InSpace(place, load.Angular), resistance);
        return new ToothDay(
            tooth,
            place,
            axes.Between(request.Arrangement.Slots[i].Rest, place),
            wire,
            axes.Resolve(place, wire),
            whole,
            ToothMovement.Read(tooth, arch.Supports[i], axes.Resolve(place, whole), load, rate))
        {
            SoftTissueForce = arch.LipsAndCheeks.Outward(i, place),
        };
    }

    private double? Irregularity(ReadOnlySpan<SlotFrame> places)
    {
        var slots = new Slot[places.Length];
        for (int i = 0; i < slots.Length; i++)
            slots[i] = request.Arrangement.Slots[i] with { Actual = places[i] };
        return IrregularityIndex.TryOf(_teeth, slots, out IrregularityIndex? index) ? index.Sum : null;
    }

    private static Wrench Between(Wrench from, Wrench to, double share, Vector3 about) => new(
        from.Force * (1 - share) + to.Force * share, from.Moment * (1 - share) + to.Moment * share, about);
}
