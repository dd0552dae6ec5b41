using System.Text.Json.Nodes;
using Archwright.Dentition.Catalogue;
using Archwright.Dentition.Positions;
using Archwright.Dentition.Teeth;
using Archwright.Exchange.CaseFiles;
using Archwright.Exchange.Problems;
using Archwright.Exchange.Tests.Schemas;
using Archwright.Mechanics.Alloys;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Sections;
using Archwright.Mechanics.Slots;

namespace Archwright.Exchange.Tests.CaseFiles;

/// <summary>What a case file means, and what is refused. The contract is the description of case files.</summary>
[Trait("basis", "docs")]
public sealed class CaseReaderTests
{
    [Fact]
    public void A_case_is_read_with_all_that_it_says()
    {
        CaseFile read = Texts.Good(Texts.Arch);

        Assert.Equal(("Upper right canine 2 mm high", "upper", 36.0),
            (read.Title, read.Jaw, read.Arrangement.Temperature));
        Assert.Equal(new Wire(Section.Round(0.3556), new LinearElastic(180_000, 0.3)), read.Arrangement.Wire);
        Assert.IsType<RestShape.ThroughRestSlots>(read.Arrangement.Rest);
        Assert.Equal(WireEnds.Free, read.Arrangement.Ends);
        Assert.Equal(["13", "12", "11", "21"], read.Arrangement.Slots.Select(s => s.Label));
        Assert.Equal(["13", "12", "11", "21"], read.Teeth.Select(t => t!.Value.ToIso()));
        Assert.Equal([TieKind.Closed, TieKind.Steel, TieKind.Closed, TieKind.Closed],
            read.Arrangement.Slots.Select(s => s.Tie.Kind));
        Assert.Equal((2.5, 0.5588, 0.7112),
            (read.Arrangement.Slots[1].Width, read.Arrangement.Slots[1].Height, read.Arrangement.Slots[1].Depth));
        Assert.Null(read.WireId);
        Assert.Equal(2, read.Then.Length);
        Assert.Equal(10, read.Then[0].Temperature);
        Assert.Null(read.Then[1].Temperature);
        Assert.Equal(0, Assert.Single(read.Then[1].Moves).Slot);
        Assert.Equal("niti-014", JsonNode.Parse(read.VisitJson!)!["present"]!["catalogue"]!.GetValue<string>());
    }

    /// <summary>Signs: occlusal is up for a lower tooth and down for an upper one; on the right mesial is along the
    /// slot.</summary>
    [Fact]
    public void An_offset_moves_the_slot_in_the_words_of_the_clinic()
    {
        Slot slot = Texts.Good(Texts.Arch).Arrangement.Slots[0];                       // 13: occlusal −2, rotation +20

        Assert.Equal(2, slot.Actual.Centre.Z - slot.Rest.Centre.Z, 1e-12);           // away from the biting plane: up
        Assert.Equal(20, AngleBetween(slot.Rest.Along, slot.Actual.Along), 1e-9);
        Assert.True(Vector3.Dot(slot.Actual.Along, slot.Rest.Outward) > 0);            // the mesial end turns labially
    }

    [Fact]
    public void An_offset_of_a_step_counts_from_the_rest_place_not_from_where_the_slot_was()
    {
        CaseFile read = Texts.Good(Texts.Arch);

        SlotFrame after = read.Then[1].Moves[0].Actual;

        Assert.Equal(1, after.Centre.Z - read.Arrangement.Slots[0].Rest.Centre.Z, 1e-12);
        Assert.True((after.Along - read.Arrangement.Slots[0].Rest.Along).Length < 1e-15);
    }

    [Fact]
    public void A_crown_without_a_bracket_has_a_place_and_holds_no_wire()
    {
        CaseFile read = Texts.Good(Bare);

        Slot slot = read.Arrangement.Slots[1];
        Assert.Equal((false, TieKind.None, 0.5588), (slot.IsBonded, slot.Tie.Kind, slot.Height));
        Assert.Equal(1.5, (slot.Actual.Centre - slot.Rest.Centre).Length, 1e-12);
        Assert.All(read.Arrangement.Slots.RemoveAt(1), other => Assert.True(other.IsBonded));
    }

    [Fact]
    public void A_tooth_that_is_not_there_has_a_reason_and_one_of_which_nothing_is_said_is_known()
    {
        CaseFile read = Texts.Good(Texts.Edited(Texts.Arch, c =>
        {
            c["slots"]!.AsArray().RemoveAt(1);
            c["absent"] = Texts.Json("[{ \"tooth\": \"14\", \"why\": \"extracted\" }]");
        }));

        Assert.Equal([new AbsentTooth(ToothNumber.FromIso(14), "extracted")], read.Absent);
        Assert.Equal(["12"], read.Unsaid.Select(tooth => tooth.ToIso()));
        Assert.Empty(Texts.Good(Texts.Arch).Unsaid);
    }

    [Theory]
    [InlineData("[{ \"tooth\": \"12\", \"why\": \"missing\" }]", "AW-SLOT-007")]
    [InlineData("[{\"tooth\":\"14\",\"why\":\"missing\"},{\"tooth\":\"14\",\"why\":\"missing\"}]", "AW-SLOT-007")]
    [InlineData("[{ \"tooth\": \"34\", \"why\": \"missing\" }]", "AW-SLOT-009")]
    [InlineData("[{ \"tooth\": \"14\", \"why\": \"gone\" }]", "AW-VALUE-003")]
    [InlineData("[{ \"tooth\": \"14\" }]", "AW-KEY-002")]
    public void An_absent_tooth_that_contradicts_is_refused(string absent, string code) => Assert.Contains(
        Texts.ReadCase(Texts.Edited(Texts.Arch, c => c["absent"] = Texts.Json(absent))).Problems,
        problem => problem.Code == code);

    [Theory]
    [InlineData("\"yes\"")]
    [InlineData("0")]
    public void Bonded_is_true_or_false(string value) => Assert.Equal(
        "AW-VALUE-001",
        Assert.Single(Texts.ReadCase(
            Texts.Replaced(Bare, "\"bonded\":false", $"\"bonded\":{value}")).Problems, one =>
                one.Path.EndsWith("bonded", StringComparison.Ordinal)).Code);

    private static readonly string Bare = Texts.Edited(Texts.Arch, c => c["slots"]![1] = Texts.Json(
        """
        { "tooth": "12", "bonded": false,
          "rest": { "centre_mm": [11, 23, 0], "along": [-0.8, 0.6, 0], "outward": [0.6, 0.8, 0] },
          "offset": { "labial_mm": -1.5 } }
        """));

    [Fact]
    public void What_is_left_out_takes_the_value_of_the_page()
    {
        CaseFile read = Texts.Good("""
            { "format": "archwright-case/1", "arch": "bench", "wire": { "catalogue": "SS-016" },
              "slots": [
                { "tooth": "a", "hold": "point",
                  "rest": { "centre_mm": [8, 0, 0], "along": [-2, 0, 0], "outward": [0, 3, 0] } },
                { "tooth": "b", "width_mm": 3, "height_mm": 0.5, "depth_mm": 0.7,
                  "rest": { "centre_mm": [0, 0, 0], "along": [-1, 0, 0], "outward": [0, 1, 0] } } ] }
            """);

        Assert.Equal(("", 36.0, "ss-016"), (read.Title, read.Arrangement.Temperature, read.WireId));
        Assert.True(WireCatalogue.Default.TryFind("ss-016", out CatalogueWire? wire));
        Assert.Equal(wire.Wire, read.Arrangement.Wire);
        Assert.Equal(0.5, read.Arrangement.Slots[0].Width);
        Assert.Equal(new Vector3(-1, 0, 0), read.Arrangement.Slots[0].Rest.Along);
        Assert.Equal(Tie.Closed(), read.Arrangement.Slots[1].Tie);
        Assert.Equal(Hold.Walls, read.Arrangement.Slots[1].Hold);
        Assert.All(read.Arrangement.Slots, slot => Assert.Equal(slot.Rest, slot.Actual));
        Assert.Equal([ClinicalAxes.Bench, ClinicalAxes.Bench], read.Axes);
        Assert.Equal([null, null], read.Teeth);
        Assert.Empty(read.Then);
        Assert.Null(read.VisitJson);
    }

    [Theory]
    [InlineData("""{ "kind": "closed" }""", TieKind.Closed, 0, 0, 0, double.PositiveInfinity)]
    [InlineData("""{ "kind": "closed", "holds_N": 40 }""", TieKind.Closed, 0, 0, 0, 40)]
    [InlineData("""{ "kind": "steel" }""", TieKind.Steel, 2.94, 1000, 0, double.PositiveInfinity)]
    [InlineData("""{ "kind": "steel", "force_N": 1.5 }""", TieKind.Steel, 1.5, 1000, 0, double.PositiveInfinity)]
    [InlineData("""{ "kind": "elastic" }""", TieKind.Elastic, 2, 1, 0, double.PositiveInfinity)]
    [InlineData("""{ "kind": "spring", "stiffness_N_per_mm": 5, "holds_N": 9 }""", TieKind.Spring, 3, 5, 0, 9)]
    [InlineData("""{ "kind": "partial" }""", TieKind.Partial, 0, 0, 2, double.PositiveInfinity)]
    [InlineData("""{ "kind": "partial", "reach_mm": 3.5 }""", TieKind.Partial, 0, 0, 3.5, double.PositiveInfinity)]
    [InlineData("""{ "kind": "none" }""", TieKind.None, 0, 0, 0, double.PositiveInfinity)]
    public void A_tie_has_its_own_figures_or_those_of_the_table(
        string tie, TieKind kind, double force, double stiffness, double reach, double holds)
    {
        Tie read = Texts.Good(Texts.Edited(Texts.Arch, c => c["slots"]![1]!["tooth"]!.Parent!["tie"] = Texts.Json(tie)))
            .Arrangement.Slots[1].Tie;

        Assert.Equal((kind, force, stiffness, reach, holds),
            (read.Kind, read.SeatingForce, read.Stiffness, read.Reach, read.Holds));
    }

    [Fact]
    public void A_wire_thicker_than_the_slot_is_refused_in_words_that_a_tired_person_understands()
    {
        Problem problem = Assert.Single(Texts.ReadCase(Texts.Edited(Texts.Arch, c =>
        {
            c["wire"] = Texts.Json(
                """{ "alloy": { "catalogue": "ss" }, "section": { "shape": "round", "diameter_mm": 0.457 } }""");
            c["slots"]![3]!["height_mm"] = 0.4;
        })).Problems);

        Assert.Equal("AW-SLOT-003", problem.Code);
        Assert.Equal("slots[3].height_mm", problem.Path);
        Assert.Equal("The slot at tooth 21 is 0.400 mm high, the wire 0.457 mm thick: it does not go in.",
            problem.Message);
        Assert.Equal(
            "Give the slot's real height (nominal are 0.457 and 0.559 mm), or choose a wire up to 0.400 mm.",
            problem.Remedy);
    }

    [Theory]
    [InlineData(0.4572, true)]
    [InlineData(0.45719999999999994, true)]     // 0.018 in turned into millimetres in doubles
    [InlineData(0.457199, true)]                // a nanometre
    [InlineData(0.45719, false)]
    public void A_wire_that_just_fills_the_slot_goes_in(double height, bool fits)
    {
        string text = Texts.Edited(Texts.Arch, c =>
        {
            c["wire"] = Texts.Json(
                """{ "alloy": { "catalogue": "ss" }, "section": { "shape": "round", "diameter_mm": 0.4572 } }""");
            c["slots"]![3]!["height_mm"] = height;
        });

        Read<CaseFile> read = Texts.ReadCase(text);

        Assert.Equal(fits, read.Value is not null);
        if (fits)
            Assert.Equal(0.4572, read.Value!.Arrangement.Slots[3].Height);
    }

    [Theory]
    [InlineData("""{ "kind": "partial" }""")]
    [InlineData("""{ "kind": "none" }""")]
    public void A_wire_that_does_not_lie_in_the_slot_may_be_thicker(string tie) =>
        Texts.Good(Texts.Edited(Texts.Arch, c =>
    {
        c["slots"]![1]!["height_mm"] = 0.3;
        c["slots"]![1]!["tie"] = Texts.Json(tie);
    }));

    [Fact]
    public void All_problems_of_a_file_come_at_once()
    {
        string text = Texts.Edited(Texts.Arch, c =>
        {
            c["arch"] = "uper";
            c["temperature_degC"] = "warm";
            c["colour"] = "blue";
            c["wire"]!["alloy"]!["young_MPa"] = 1e308;
            c["wire"]!["section"]!["diameter_mm"] = 0;
            c["slots"]![0]!["height_mm"] = -1;
            c["slots"]![0]!["offset"]!["tip_deg"] = 200;
            c["slots"]![1]!["rest"]!["along"] = new JsonArray(0, 0, 0);
            c["slots"]![2]!.AsObject().Remove("width_mm");
            c["slots"]![3]!["tie"] = Texts.Json("""{ "kind": "glue" }""");
            c["then"]![0] = Texts.Json("{}");
            c["visit"]!["slot_in"] = 22;
        });

        Assert.Equal(
            new HashSet<(string, string)>
            {
                ("AW-VALUE-003", "arch"), ("AW-VALUE-001", "temperature_degC"), ("AW-KEY-001", "colour"),
                ("AW-VALUE-002", "wire.alloy.young_MPa"), ("AW-VALUE-002", "wire.section.diameter_mm"),
                ("AW-VALUE-002", "slots[0].height_mm"), ("AW-VALUE-002", "slots[0].offset.tip_deg"),
                ("AW-FRAME-001", "slots[1].rest.along"), ("AW-KEY-002", "slots[2].width_mm"),
                ("AW-VALUE-003", "slots[3].tie.kind"), ("AW-STEP-001", "then[0]"), ("AW-VALUE-003", "visit.slot_in"),
            },
            Texts.ReadCase(text).Problems.Select(p => (p.Code, p.Path)).ToHashSet());
    }

    public static TheoryData<string> BadNumbers => ["\"0.5\"", "\"NaN\"", "null", "true", "[1]", "{}"];

    [Theory, MemberData(nameof(BadNumbers))]
    public void What_is_no_number_is_refused_wherever_a_number_is_wanted(string value)
    {
        foreach (Schema.Bounded number in Schema.Load("archwright-case-1").Bounds(JsonNode.Parse(Texts.Arch)))
        {
            if (number.Path is "visit.slot_in")
                continue;

            string text = Texts.Edited(Texts.Arch, c => Texts.Set(c, number.Path, JsonNode.Parse(value)));

            Assert.Contains(Texts.ReadCase(text).Problems, p => p.Code == "AW-VALUE-001" && p.Path == number.Path);
        }
    }

    [Fact]
    public void A_number_beyond_all_bounds_is_out_of_range_and_not_infinite() => Assert.Equal(
        ("AW-VALUE-002", "slots[1].width_mm"),
        Texts.ReadCase(Texts.Replaced(Texts.Arch, "\"width_mm\": 2.5", "\"width_mm\": 1e999"))
            .Problems.Select(p => (p.Code, p.Path)).Single());

    [Theory]
    [InlineData("title", "two\nlines")]
    [InlineData("title", "\u001b[31mred")]
    [InlineData("slots[1].tooth", "12\u007f")]
    [InlineData("slots[1].tooth", "")]
    public void A_text_that_would_garble_a_screen_or_a_table_is_refused(string path, string text) => Assert.Contains(
        Texts.ReadCase(Texts.Edited(Texts.Arch, c => Texts.Set(c, path, text))).Problems,
        p => p.Code == "AW-VALUE-006" && p.Path == path);

    [Fact, Trait("basis", "docs")]
    public void Friction_of_a_slot_is_taken_from_the_file_and_is_nil_where_it_is_left_out()
    {
        string text = Texts.Edited(Texts.Arch, c =>
        {
            c["slots"]![1]!["friction"] = 0.2;
            c["slots"]![2]!.AsObject().Remove("friction");
        });

        CaseFile file = Texts.ReadCase(text).Value!;

        Assert.Equal(0.2, file.Arrangement.Slots[1].Friction);
        Assert.Equal(0, file.Arrangement.Slots[2].Friction);
        Assert.True(file.HasFriction);
    }

    [Fact]
    public void A_law_that_is_not_solved_yet_is_checked_before_it_is_refused()
    {
        string text = Texts.Edited(Texts.Arch, c => c["wire"]!["alloy"] = Texts.Json(
            """{ "law": "elastic-plastic", "young_MPa": 180000, "poisson": 0.7, "yield_MPa": 1600 }"""));

        Assert.Equal(
            [("AW-VALUE-002", "wire.alloy.poisson"), ("AW-KEY-002", "wire.alloy.hardening_MPa")],
            Texts.ReadCase(text).Problems.Select(p => (p.Code, p.Path)));
    }

    /// <summary>Whatever the reader checks, it checks between parts of the case, so no direction of the room is
    /// special.</summary>
    [Theory, Trait("basis", "law")]
    [InlineData(0.7, 0.2, -1.1)]
    [InlineData(0, 3.1, 0)]
    [InlineData(-2, 1, 0.5)]
    public void A_case_that_is_turned_as_a_whole_is_as_good_as_before(double x, double y, double z)
    {
        var turn = new Vector3(x, y, z);

        CaseFile read = Texts.Good(Texts.Edited(Texts.Arch, c =>
        {
            foreach (JsonNode? slot in c["slots"]!.AsArray())
            {
                foreach (string key in (string[])["centre_mm", "along", "outward"])
                    slot!["rest"]![key] = Turned(slot["rest"]![key]!, turn);
            }
        }));

        Assert.Equal(4, read.Arrangement.Slots.Length);
    }

    [Theory]
    [InlineData(-16, "AW-SLOT-005")]        // the right slot stands to the left of all others
    [InlineData(1, "AW-SLOT-006")]          // overlaps the middle one
    [InlineData(3.02, "AW-SLOT-006")]       // all but touches it
    [InlineData(0, "AW-SLOT-006")]          // lies on it
    public void Bench_slots_out_of_order_or_in_one_place_are_refused(double x, string code) => Assert.Equal(
        [code],
        Texts.ReadCase(Texts.Edited(Texts.Bench, c => c["slots"]![0]!["rest"]!["centre_mm"]![0] = x))
            .Problems.Select(p => p.Code));

    [Fact]
    public void A_slot_whose_axis_runs_from_left_to_right_is_out_of_order()
    {
        string text = Texts.Replaced(Texts.Bench, "\"along\": [-1, 0, 0], \"outward\": [0, 1, 0]",
            "\"along\": [1, 0, 0], \"outward\": [0, 1, 0]");

        Assert.Contains(Texts.ReadCase(text).Problems, p => p.Code == "AW-SLOT-005");
    }

    [Fact]
    public void Two_slots_moved_into_one_place_are_refused()
    {
        string text = Texts.Edited(Texts.Arch, c => c["slots"]![1]!["actual"] = Texts.Json(
            """{ "centre_mm": [17, 17, 2], "along": [-0.6, 0.8, 0], "outward": [0.8, 0.6, 0] }"""));

        Assert.Equal("AW-SLOT-006", Assert.Single(Texts.ReadCase(text).Problems).Code);
    }

    [Fact]
    public void Teeth_of_both_sides_are_in_order_across_the_midline()
    {
        Assert.Equal(
            ["AW-SLOT-005"],
            Texts.ReadCase(Texts.Edited(Texts.Arch, c =>
            {
                c["slots"]![2]!["tooth"] = "21";
                c["slots"]![3]!["tooth"] = "11";
            })).Problems.Select(p => p.Code));
        Texts.Good(Texts.Edited(Texts.Arch, c =>
        {
            c["arch"] = "lower";
            foreach ((int i, string tooth) in ((string[])["43", "42", "41", "31"]).Index())
                c["slots"]![i]!["tooth"] = tooth;
            c["then"]![1]!["slots"]![0]!["tooth"] = "43";
        }));
    }

    [Theory]
    [InlineData("tie", """{ "kind": "steel" }""", false)]
    [InlineData("tie", """{ "kind": "closed" }""", true)]
    [InlineData("friction", "0", true)]
    [InlineData("contact", "\"walls\"", false)]
    [InlineData("depth_mm", "0.7", false)]
    public void A_hold_stands_alone(string key, string value, bool isGood)
    {
        Read<CaseFile> read = Texts.ReadCase(
            Texts.Edited(Texts.Bench, c => c["slots"]![0]![key] = JsonNode.Parse(value)));

        Assert.Equal(isGood ? [] : ["AW-SLOT-010"], read.Problems.Select(p => p.Code));
    }

    [Fact]
    public void A_visit_is_checked_and_kept_and_its_wires_need_not_be_in_the_catalogue()
    {
        string visit = """{"present":null,"working_wire":"xy-021","stock":["xy-021"],"alerts":["nickel","hygiene"]}""";

        CaseFile read = Texts.Good(Texts.Edited(Texts.Arch, c => c["visit"] = Texts.Json(visit)));

        Assert.Equal(visit, read.VisitJson);
    }

    private static double AngleBetween(Vector3 a, Vector3 b) => Math.Acos(Vector3.Dot(a, b)) * 180 / Math.PI;

    private static JsonArray Turned(JsonNode vector, Vector3 turn)
    {
        var v = new Vector3(vector[0]!.GetValue<double>(), vector[1]!.GetValue<double>(), vector[2]!.GetValue<double>())
            .Turned(turn);
        return new JsonArray(v.X, v.Y, v.Z);
    }
}
