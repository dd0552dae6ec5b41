using System.Runtime.InteropServices;
using Archwright.Dentition.Comparison;
using Archwright.Dentition.Teeth;
using Archwright.Mechanics.Numerics;
using Archwright.Practice.Advice;
using Archwright.Practice.Tests;
using Archwright.Practice.Values;
using Archwright.Web.Drawing;

namespace Archwright.Web.Tests.Drawing;

/// <summary>What the view in space is told. Rests on the solution that is put in.</summary>
[Trait("basis", "law")]
public sealed class ArchSpaceModelTests
{
    private static readonly WireAtWork Work =
        WireAtWork.Engage(Samples.Inputs(), "niti-014", ForceCeilings.Default);

    [Fact]
    public void Frames_and_loads_of_each_tooth_are_told_in_the_frame_of_the_patient()
    {
        ReadOnlySpan<float> told = MemoryMarshal.Cast<byte, float>(ArchSpaceModel.Pose(Work));

        Assert.Equal(ArchSpaceModel.NumbersOfTooth * Work.Arch.Teeth.Length, told.Length);
        for (int i = 0; i < Work.Arch.Teeth.Length; i++)
        {
            ReadOnlySpan<float> one = told.Slice(ArchSpaceModel.NumbersOfTooth * i, ArchSpaceModel.NumbersOfTooth);
            Near(Work.Arch.Slots[i].Actual.Centre, one);
            Near(Work.Result.Slots[i].OnTooth.Force, one[12..]);
            Near(Work.Result.Slots[i].OnTooth.Moment, one[15..]);
            Assert.Equal(Work.Loads[i].Above is null ? 0 : 1, one[18]);
        }
    }

    [Fact]
    public void A_wire_that_does_not_go_in_leaves_neither_line_nor_load()
    {
        WireAtWork without = Work with { Loads = [], WhyNot = "It does not go in." };

        Assert.Empty(ArchSpaceModel.Line(without));
        ReadOnlySpan<float> told = MemoryMarshal.Cast<byte, float>(ArchSpaceModel.Pose(without));
        for (int i = 19; i < told.Length; i += ArchSpaceModel.NumbersOfTooth)
            Assert.Equal(0, told[i]);
    }

    [Fact]
    public void Every_tooth_has_its_part_of_points_and_triangles()
    {
        ArchSpaceModel model = ArchSpaceModel.Of(Work);

        Assert.Equal(Work.Arch.Teeth.Select(tooth => tooth.ToIso()), model.Teeth.Select(tooth => tooth.Iso));
        Assert.Equal(model.Points.Length / 4, model.Teeth.Sum(tooth => tooth.Crown.Points + tooth.Root.Points));
        int[] triangles = MemoryMarshal.Cast<byte, int>(model.Triangles).ToArray();
        foreach (SpacePart part in model.Teeth.SelectMany(tooth => new[] { tooth.Crown, tooth.Root }))
        {
            Assert.InRange(
                triangles.Skip(part.Triangle).Take(part.Triangles).Max(), 1, part.Points / 3 - 1);
        }
    }

    [Fact]
    public void A_tooth_without_a_bracket_has_neither_slot_nor_load()
    {
        ToothNumber bare = ToothNumber.FromIso(12);
        AdviceInputs whole = Samples.Inputs();
        WireAtWork work = WireAtWork.Engage(
            whole with
            {
                Bonded = whole.Bonded.Without(bare),
                Bare = ToothMap<BareTooth>.Empty.With(bare, BareTooth.NotBonded),
            },
            "niti-014", ForceCeilings.Default);
        int place = work.Arch.Teeth.IndexOf(bare);

        ReadOnlySpan<float> told = MemoryMarshal.Cast<byte, float>(ArchSpaceModel.Pose(work));

        Assert.Equal(14, work.Arch.Teeth.Length);
        Assert.Equal(0, told[ArchSpaceModel.NumbersOfTooth * place + 19]);
        Assert.Equal(1, told[ArchSpaceModel.NumbersOfTooth * (place + 1) + 19]);
        Assert.Equal("12", ArchSpaceModel.Of(work).Teeth.Single(tooth => tooth.Slot is null).Iso);
    }

    private static void Near(Vector3 expected, ReadOnlySpan<float> told)
    {
        Assert.Equal(expected.X, told[0], 1e-4);
        Assert.Equal(expected.Y, told[1], 1e-4);
        Assert.Equal(expected.Z, told[2], 1e-4);
    }
}
