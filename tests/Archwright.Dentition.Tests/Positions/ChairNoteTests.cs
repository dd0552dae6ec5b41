using Archwright.Dentition.Positions;
using Archwright.Dentition.Teeth;

namespace Archwright.Dentition.Tests.Positions;

/// <summary>Where a tooth stands, said as at the chair.</summary>
[Trait("basis", "ours")]
public sealed class ChairNoteTests
{
    [Theory]
    [InlineData(13, "high 2 mm", 0, -2, 0, 0, 0, 0)]
    [InlineData(43, "high 2 mm", 0, 2, 0, 0, 0, 0)]
    [InlineData(43, "2mm low", 0, -2, 0, 0, 0, 0)]
    [InlineData(23, "is 1.5 mm too low", 0, 1.5, 0, 0, 0, 0)]
    [InlineData(12, "1 mm lingually", -1, 0, 0, 0, 0, 0)]
    [InlineData(12, "out by 1 mm", 1, 0, 0, 0, 0, 0)]
    [InlineData(33, "distal 0.5 mm", 0, 0, -0.5, 0, 0, 0)]
    [InlineData(33, "rotated 20° mesial out", 0, 0, 0, 20, 0, 0)]
    [InlineData(33, "rotated 20 degrees mesial side in", 0, 0, 0, -20, 0, 0)]
    [InlineData(33, "20 deg distal out turned", 0, 0, 0, -20, 0, 0)]
    [InlineData(11, "tipped 5° distally", 0, 0, 0, 0, -5, 0)]
    [InlineData(11, "Proclined 8°", 0, 0, 0, 0, 0, 8)]
    [InlineData(11, "high 2 mm, rotated 20° mesial in and out 1 mm", 1, -2, 0, -20, 0, 0)]
    public void Findings_are_read(
        int iso, string words, double labial, double occlusal, double mesial, double rotation, double tip,
        double torque)
    {
        ChairNote note = ChairNote.Read(ToothNumber.FromIso(iso), words);

        Assert.Equal(
            ClinicalOffset.FromDegrees(labial, occlusal, mesial, rotation, tip, torque), note.Offset);
        Assert.Null(note.Assumed);
    }

    [Fact]
    public void A_rotation_without_direction_is_read_and_said()
    {
        ChairNote note = ChairNote.Read(ToothNumber.FromIso(13), "rotated 20°");

        Assert.Equal(ClinicalOffset.FromDegrees(rotationDegrees: 20), note.Offset);
        Assert.Contains("mesial side turned out", note.Assumed, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("high 2", "no figure with its unit")]
    [InlineData("high", "no figure with its unit")]
    [InlineData("", "no figure with its unit")]
    [InlineData("high -2 mm", "no figure with its unit")]
    [InlineData("high 2,5 mm", "no figure with its unit")]
    [InlineData("high 2 inches", "no figure with its unit")]
    [InlineData("high 20°", "measured in mm")]
    [InlineData("rotated 2 mm mesial out", "measured in degrees")]
    [InlineData("tipped 5°", "which way")]
    [InlineData("up 2 mm", "two things")]
    [InlineData("crooked 2 mm", "not understood")]
    [InlineData("rotated 20° clockwise", "not understood")]
    [InlineData("high 2 mm, low 1 mm", "a second time")]
    [InlineData("high 40 mm", "beyond 15 mm")]
    [InlineData("rotated 120° mesial in", "beyond 90 degrees")]
    public void What_is_unclear_is_refused_with_a_way_out(string words, string reason) => Assert.Contains(
        reason,
        Assert.Throws<FormatException>(() => ChairNote.Read(ToothNumber.FromIso(13), words)).Message,
        StringComparison.Ordinal);
}
