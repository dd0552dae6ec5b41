using System.Collections.Immutable;
using System.Text;
using System.Text.Json.Nodes;
using Archwright.Dentition.Positions;
using Archwright.Dentition.Prescriptions;
using Archwright.Dentition.Teeth;
using Archwright.Exchange.CaseFiles;
using Archwright.Exchange.Tests.Schemas;
using Archwright.Mechanics.Alloys;
using Archwright.Mechanics.Slots;
using CsCheck;

namespace Archwright.Exchange.Tests.CaseFiles;

/// <summary>What is written is read again as the same case.</summary>
[Trait("basis", "law")]
public sealed class CaseWriterTests
{
    private static readonly Schema CaseSchema = Schema.Load("archwright-case-1");

    [Fact]
    public void Reading_what_was_written_gives_the_same_case() => RandomCases.Any.Sample(
        one => CaseFileComparison.AssertSame(one, CaseFileComparison.WrittenAndRead(one)), iter: 300);

    [Fact]
    public void Writing_what_was_read_gives_the_same_text() => RandomCases.Any.Sample(
        one =>
        {
            CaseFile once = CaseFileComparison.WrittenAndRead(one);
            CaseFile twice = CaseFileComparison.WrittenAndRead(once);

            // Normalising a unit vector for the second time may still move its last digit; figures do not move at all.
            Assert.Equal(
                WithoutDirections(CaseFileComparison.Written(once)), WithoutDirections(CaseFileComparison.Written(twice)));
        },
        iter: 100);

    [Fact]
    public void What_is_written_follows_the_schema() => RandomCases.Any.Sample(
        one => Assert.Empty(CaseSchema.Errors(JsonNode.Parse(CaseFileComparison.Written(one)))), iter: 100);

    [Theory]
    [InlineData(Texts.Arch)]
    [InlineData(Texts.Bench)]
    public void A_file_made_by_hand_comes_back_as_the_same_case(string text)
    {
        CaseFile read = Texts.Good(text);

        CaseFileComparison.AssertSame(read, CaseFileComparison.WrittenAndRead(read));
    }

    [Fact]
    public void Figures_are_written_as_a_person_gave_them()
    {
        string written = Encoding.UTF8.GetString(CaseFileComparison.Written(Texts.Good(Texts.Arch)));

        Assert.Contains("\"rotation_deg\": 20,", written, StringComparison.Ordinal);
        Assert.Contains("\"occlusal_mm\": -2,", written, StringComparison.Ordinal);
        Assert.Contains("\"poisson\": 0.3 }", written, StringComparison.Ordinal);
        Assert.Contains("\"centre_mm\": [17, 17, 0]", written, StringComparison.Ordinal);
        Assert.EndsWith("}\n", written, StringComparison.Ordinal);
    }

    [Fact]
    public void An_id_that_no_longer_says_what_the_wire_is_gives_way_to_the_wire()
    {
        CaseFile read = Texts.Good(Texts.Bench);
        var changed = read with
        {
            Arrangement = read.Arrangement with { Wire = read.Arrangement.Wire with { Alloy = new LinearElastic(70_000, 0.33) } },
        };

        CaseFile back = CaseFileComparison.WrittenAndRead(changed);

        Assert.Null(back.WireId);
        Assert.Equal(new LinearElastic(70_000, 0.33), back.Arrangement.Wire.Alloy);
    }

    [Fact]
    public void An_offset_that_no_longer_says_where_the_slot_is_gives_way_to_the_frame()
    {
        CaseFile read = Texts.Good(Texts.Arch);
        SlotFrame elsewhere = read.Arrangement.Slots[0].Actual.Moved(new(0, 0, 0.25), default);
        var changed = read with
        {
            Arrangement = read.Arrangement with
            {
                Slots = read.Arrangement.Slots.SetItem(0, read.Arrangement.Slots[0] with { Actual = elsewhere }),
            },
        };

        CaseFile back = CaseFileComparison.WrittenAndRead(changed);

        Assert.Null(back.Offsets[0]);
        Assert.True((back.Arrangement.Slots[0].Actual.Centre - elsewhere.Centre).Length < 1e-14);
    }

    [Fact]
    public void A_hold_without_a_word_in_case_files_is_refused_and_nothing_is_written()
    {
        CaseFile read = Texts.Good(Texts.Bench);
        var changed = read with
        {
            Arrangement = read.Arrangement with
            {
                Slots = read.Arrangement.Slots.SetItem(0, read.Arrangement.Slots[0] with { Hold = Hold.Glide }),
            },
        };
        using var stream = new MemoryStream();

        Assert.Throws<ArgumentException>(() => CaseWriter.Write(changed, stream));
        Assert.Equal(0, stream.Length);
    }

    [Fact]
    public void An_alloy_whose_moduli_give_no_ratio_is_refused_unless_the_catalogue_knows_it()
    {
        CaseFile read = Texts.Good(Texts.Arch);
        var changed = read with
        {
            Arrangement = read.Arrangement with
            {
                Wire = read.Arrangement.Wire with { Alloy = LinearElastic.WithShear(10_000, 20_000) },
            },
        };

        Assert.Throws<ArgumentException>(() => CaseWriter.Write(changed, Stream.Null));
    }

    [Theory]
    [InlineData(Jaw.Upper)]
    [InlineData(Jaw.Lower)]
    public void An_arch_built_from_the_tables_comes_back_as_it_was_built(Jaw jaw)
    {
        ToothNumber canine = jaw.FrontTeeth()[0];
        ArchSetup setup = ArchBuilder.Build(new ArchRequest
        {
            Jaw = jaw,
            Slot = SlotSize.In018,
            WireId = "ss-016",
            Contacts = [0.5, 1, 0.3, 1.2, 0.4],
            Positions = ImmutableDictionary<ToothNumber, ClinicalOffset>.Empty.Add(
                canine, ClinicalOffset.FromDegrees(occlusal: -2, rotationDegrees: 20)),
        });
        using var stream = new MemoryStream();

        CaseWriter.Write(setup, stream, "crowded");
        stream.Position = 0;
        var read = CaseReader.Read(stream);

        Assert.Empty(read.Problems);
        CaseFileComparison.AssertSame(CaseFile.Of(setup, "crowded"), read.Value!);
    }

    private static string WithoutDirections(byte[] written)
    {
        JsonNode root = JsonNode.Parse(written)!;
        Strip(root);
        return root.ToJsonString();
    }

    private static void Strip(JsonNode? node)
    {
        if (node is JsonObject group)
        {
            group.Remove("along");
            group.Remove("outward");
            foreach ((_, JsonNode? value) in group)
                Strip(value);
        }

        foreach (JsonNode? item in node as JsonArray ?? [])
            Strip(item);
    }
}
