using System.Collections.Immutable;
using Archwright.Dentition.Catalogue;
using Archwright.Dentition.Positions;
using Archwright.Exchange.Json;
using Archwright.Mechanics.Alloys;
using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Sections;
using Archwright.Mechanics.Slots;

namespace Archwright.Exchange.CaseFiles;

/// <summary>Writes case files, <c>archwright-case/1</c>. Reading what was written gives the same case, directions to
/// the last rounding error.</summary>
public static class CaseWriter
{
    /// <summary>Writes a case to a stream, which is left open.</summary>
    /// <exception cref="ArgumentException">The case holds something that a case file has no words for: a bench hold
    /// that glides, or an alloy whose moduli give no Poisson's ratio and that is not in the catalogue.</exception>
    public static void Write(CaseFile caseFile, Stream stream)
    {
        ArgumentNullException.ThrowIfNull(caseFile);
        Arrangement arrangement = caseFile.Arrangement;
        using var json = new JsonOut(stream, CaseReader.Format);
        json.Text("title", caseFile.Title);
        json.Text("arch", caseFile.Jaw);
        json.Number("temperature_degC", arrangement.Temperature);
        if (caseFile.SoftTissue > 0)
            json.Number("soft_tissue", caseFile.SoftTissue);
        json.Group("wire", wire => Wire(wire, caseFile));
        json.Groups("slots", Enumerable.Range(0, arrangement.Slots.Length), (slot, i) => Slot(slot, caseFile, i));
        if (!caseFile.Absent.IsEmpty)
            json.Groups("absent", caseFile.Absent, Absent);
        if (!caseFile.Then.IsEmpty)
            json.Groups("then", Enumerable.Range(0, caseFile.Then.Length), (step, i) => Step(step, caseFile, i));
        if (caseFile.VisitJson is { } visit)
            json.Raw("visit", visit);
        json.Finish();
    }

    /// <summary>Writes an arch that was built from the tables to a stream, which is left open.</summary>
    /// <param name="setup">The arch.</param>
    /// <param name="stream">Where it goes.</param>
    /// <param name="title">What the case is to be called.</param>
    public static void Write(ArchSetup setup, Stream stream, string title = "") =>
        Write(CaseFile.Of(setup, title), stream);

    // An id is written only if it still says what the arrangement holds.
    private static void Wire(JsonOut json, CaseFile caseFile)
    {
        Wire wire = caseFile.Arrangement.Wire;
        if (caseFile.WireId is { } id && WireCatalogue.Default.TryFind(id, out CatalogueWire? known)
            && known.Wire == wire)
        {
            json.Text("catalogue", known.Id);
        }
        else
        {
            json.Raw("alloy", Alloy(wire.Alloy, caseFile.AlloyId));
            json.Raw("section", Section(wire.Section));
        }

        Rest(json, caseFile.Arrangement.Rest);
        json.Text("ends", caseFile.Arrangement.Ends switch
        {
            WireEnds.Free => "free",
            WireEnds.Stopped => "stopped",
            WireEnds.Cinched => "cinched",
            var other => throw NoWord($"ends of the kind {other}"),
        });
    }

    private static string Alloy(Alloy alloy, string? id)
    {
        if (id is not null && WireCatalogue.Default.TryFindAlloy(id, out CatalogueAlloy? known) && known.Alloy == alloy)
            return JsonOut.OneLine(("catalogue", JsonOut.Quoted(known.Id)));

        return AlloyWriting.Law(alloy) ?? throw NoWord($"the alloy law {alloy.GetType().Name}");
    }

    private static string Section(Section section) => section.IsRound
        ? JsonOut.OneLine(("shape", "\"round\""), ("diameter_mm", JsonOut.Figure("diameter_mm", section.Thickness)))
        : JsonOut.OneLine(
            ("shape", "\"rectangular\""),
            ("thickness_mm", JsonOut.Figure("thickness_mm", section.Thickness)),
            ("width_mm", JsonOut.Figure("width_mm", section.Width)),
            ("edge_radius_mm", JsonOut.Figure("edge_radius_mm", section.EdgeRadius)));

    private static void Rest(JsonOut json, RestShape rest)
    {
        switch (rest)
        {
            case RestShape.ThroughRestSlots:
                json.Raw("rest", JsonOut.OneLine(("shape", "\"through-rest-slots\"")));
                break;
            case RestShape.Straight:
                json.Raw("rest", JsonOut.OneLine(("shape", "\"straight\"")));
                break;
            case RestShape.Points points:
                json.Group("rest", group =>
                {
                    group.Text("shape", "points");
                    group.Lines("points_mm", points.Path.Select(p => JsonOut.Vector3Text("points_mm", p)));
                    if (!points.Outward.IsDefaultOrEmpty)
                        group.Lines("outward", points.Outward.Select(p => JsonOut.Vector3Text("outward", p)));
                });
                break;
            default:
                throw NoWord($"the rest shape {rest.GetType().Name}");
        }
    }

    private static void Slot(JsonOut json, CaseFile caseFile, int index)
    {
        Slot slot = caseFile.Arrangement.Slots[index];
        json.Text("tooth", slot.Label);
        if (slot.IsBonded)
            Channel(json, slot);
        else
            json.Boolean("bonded", false);
        json.Raw("rest", FrameWriting.Frame(slot.Rest));
        ClinicalOffset? offset = At(caseFile.Offsets, index);
        if (slot.Actual != slot.Rest || offset is null && !caseFile.Offsets.IsEmpty)
            FrameWriting.Place(json, slot.Rest, slot.Actual, caseFile.Axes[index], offset);
    }

    private static void Channel(JsonOut json, Slot slot)
    {
        json.Number("width_mm", slot.Width);
        if (slot.Hold is Hold.Walls or Hold.EdgesOnly)
        {
            json.Number("height_mm", slot.Height);
            json.Number("depth_mm", slot.Depth);
            json.Raw("tie", TieWriting.Tie(slot.Tie));
            if (slot.Friction > 0)
                json.Number("friction", slot.Friction);
            if (slot.Hold == Hold.EdgesOnly)
                json.Text("contact", "edges");
        }
        else
        {
            json.Text("hold", slot.Hold switch
            {
                Hold.Clamped => "clamped",
                Hold.Point => "point",
                Hold.EdgePoints => "edges",
                var other => throw NoWord($"a hold of the kind {other}"),
            });
        }
    }

    private static void Absent(JsonOut json, AbsentTooth absent)
    {
        json.Text("tooth", absent.Tooth.ToIso());
        json.Text("why", absent.Why);
    }

    private static void Step(JsonOut json, CaseFile caseFile, int index)
    {
        Step step = caseFile.Then[index];
        if (step.Temperature is { } temperature)
            json.Number("temperature_degC", temperature);
        if (step.Moves.IsDefaultOrEmpty)
            return;

        ImmutableArray<ClinicalOffset?> offsets =
            index < caseFile.StepOffsets.Length ? caseFile.StepOffsets[index] : [];
        json.Groups("slots", step.Moves.Select((move, i) => (move, Offset: At(offsets, i))), (group, item) =>
        {
            Slot slot = caseFile.Arrangement.Slots[item.move.Slot];
            group.Text("tooth", slot.Label);
            FrameWriting.Place(group, slot.Rest, item.move.Actual, caseFile.Axes[item.move.Slot], item.Offset);
        });
    }

    private static ArgumentException NoWord(string what) => new($"A case file has no word for {what}.", nameof(what));

    private static ClinicalOffset? At(ImmutableArray<ClinicalOffset?> offsets, int index) =>
        index < offsets.Length ? offsets[index] : null;
}
