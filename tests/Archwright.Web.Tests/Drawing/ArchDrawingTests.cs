using Archwright.Dentition.Comparison;
using Archwright.Dentition.Teeth;
using Archwright.Mechanics.Slots;
using Archwright.Practice.Advice;
using Archwright.Practice.Tests;
using Archwright.Practice.Values;
using Archwright.Web.Drawing;

namespace Archwright.Web.Tests.Drawing;

/// <summary>Pictures are the right way round. Rests on how the open mouth is photographed: the patient's right on the
/// left; upper front teeth at the top, lower ones at the bottom.</summary>
[Trait("basis", "law")]
public sealed class ArchDrawingTests
{
    [Theory]
    [InlineData(Jaw.Upper, ArchView.Occlusal)]
    [InlineData(Jaw.Upper, ArchView.Frontal)]
    [InlineData(Jaw.Lower, ArchView.Occlusal)]
    [InlineData(Jaw.Lower, ArchView.Frontal)]
    public void The_patients_right_is_on_the_left(Jaw jaw, ArchView view)
    {
        ArchScene scene = ArchDrawing.Draw(Work(jaw), view);

        Assert.All(scene.Teeth, tooth => Assert.Equal(tooth.Tooth.IsRight, tooth.Centre.X < 0));
    }

    [Fact]
    public void Front_teeth_are_at_the_top_above_and_at_the_bottom_below()
    {
        Assert.True(Centre(Jaw.Upper, 11).Y < Centre(Jaw.Upper, 17).Y);
        Assert.True(Centre(Jaw.Lower, 41).Y > Centre(Jaw.Lower, 47).Y);

        static ScenePoint Centre(Jaw jaw, int iso) => ArchDrawing.Draw(Work(jaw), ArchView.Occlusal).Teeth
            .Single(tooth => tooth.Tooth.Iso == iso).Centre;
    }

    [Fact]
    public void A_high_canine_stands_high_and_its_force_points_down_to_the_bite()
    {
        SceneTooth canine = ArchDrawing.Draw(Work(Jaw.Upper), ArchView.Frontal).Teeth
            .Single(tooth => tooth.Tooth.Iso == 13);

        Assert.True(canine.Centre.Y < -0.5);
        Assert.True(canine.ForceLabel.Y > canine.Centre.Y);
        Assert.NotEmpty(canine.Planned);
    }

    [Theory]
    [InlineData(ArchView.Occlusal)]
    [InlineData(ArchView.Frontal)]
    public void The_figure_of_a_long_arrow_stays_on_the_picture_and_the_frame_stands_still(ArchView view)
    {
        AdviceInputs inputs = Samples.Inputs() with
        {
            Positions = ToothMap<ToothOffset>.Empty.With(ToothNumber.FromIso(11), new ToothOffset(LabialMm: 1.2))
                .With(ToothNumber.FromIso(17), new ToothOffset(OcclusalMm: 1.2)),
        };
        ArchScene strong = ArchDrawing.Draw(WireAtWork.Engage(inputs, "ss-016x022", ForceCeilings.Default), view);
        ArchScene weak = ArchDrawing.Draw(WireAtWork.Engage(inputs, "niti-012", ForceCeilings.Default), view);

        Assert.Contains(strong.Teeth, tooth => tooth.ForceN > 5);
        Assert.All(strong.Teeth, tooth =>
        {
            Assert.InRange(tooth.ForceLabel.X, strong.Left + 6, strong.Left + strong.Width - 6);
            Assert.InRange(tooth.ForceLabel.Y, strong.Top + 1, strong.Top + strong.Height - 1);
        });
        Assert.Equal(
            (weak.Left, weak.Top, weak.Width, weak.Height), (strong.Left, strong.Top, strong.Width, strong.Height));
    }

    [Theory]
    [InlineData(ArchView.Occlusal)]
    [InlineData(ArchView.Frontal)]
    public void A_tooth_without_a_bracket_has_a_crown_alone_and_an_absent_one_stands_at_its_empty_place(ArchView view)
    {
        ToothNumber bare = ToothNumber.FromIso(12);
        ToothNumber gone = ToothNumber.FromIso(17);
        AdviceInputs whole = Samples.Inputs();
        AdviceInputs inputs = whole with
        {
            Bonded = Listing<ToothNumber>.Of(whole.Bonded.Where(tooth => tooth != bare && tooth != gone)),
            Bare = ToothMap<BareTooth>.Empty.With(bare, BareTooth.NotBonded).With(gone, BareTooth.Absent),
        };
        WireAtWork work = WireAtWork.Engage(inputs, "niti-014", ForceCeilings.Default);

        ArchScene scene = ArchDrawing.Draw(work, view, inputs.Bare);
        ArchScene before = ArchDrawing.Draw(
            WireAtWork.Engage(whole, "niti-014", ForceCeilings.Default), view, whole.Bare);

        Assert.Null(work.WhyNot);
        Assert.True(Of(scene) is { Bare: BareTooth.NotBonded, Slot: "", Force: "", Turn: "", ForceN: null });
        WireAtWork alone = WireAtWork.Engage(
            whole with { Bonded = whole.Bonded.Without(bare), Bare = inputs.Bare.Without(gone) }, "niti-014",
            ForceCeilings.Default);
        Assert.Equal(Of(before).Outline, Of(ArchDrawing.Draw(alone, view)).Outline);
        SceneTooth place = scene.Teeth[0];
        Assert.True(place is { Bare: BareTooth.Absent, Slot: "", ForceN: null } && place.Tooth == gone);
        Assert.Equal(FromNeighbour(before), FromNeighbour(scene), 0.6); // unrolled along another end of the arch
        Assert.Equal(before.Width, scene.Width, 0.6);
        Assert.DoesNotContain(ArchDrawing.Draw(work, view).Teeth, tooth => tooth.Tooth == gone);

        SceneTooth Of(ArchScene one) => one.Teeth.Single(tooth => tooth.Tooth == bare);
        static double FromNeighbour(ArchScene of) => of.Teeth[1].Centre.X - of.Teeth[0].Centre.X;
    }

    [Fact]
    public void A_wire_that_does_not_go_in_leaves_neither_line_nor_force()
    {
        WireAtWork work = WireAtWork.Engage(
            Samples.Inputs() with { SlotCode = "018" }, "ss-021x025", ForceCeilings.Default);

        ArchScene scene = ArchDrawing.Draw(work, ArchView.Occlusal);

        Assert.NotNull(work.WhyNot);
        Assert.Empty(work.Loads);
        Assert.Empty(scene.Wire);
        Assert.All(scene.Teeth, tooth => Assert.True(tooth.Force.Length == 0 && tooth.ForceN is null));
    }

    // A search that found no rest has a line all the same: that of the shape it gave up at.
    [Theory]
    [InlineData(ArchView.Occlusal)]
    [InlineData(ArchView.Frontal)]
    public void The_line_of_a_wire_that_found_no_rest_is_not_drawn(ArchView view)
    {
        WireAtWork given = Work(Jaw.Upper) with { WhyNot = "No rest was found.", Loads = [] };

        ArchScene scene = ArchDrawing.Draw(given, view);

        Assert.NotEmpty(given.Result.CentreLine);
        Assert.Empty(scene.Wire);
        Assert.All(scene.Teeth, tooth => Assert.True(
            tooth.Force.Length == 0 && tooth.Turn.Length == 0 && tooth.ForceN is null));
    }

    private static WireAtWork Work(Jaw jaw)
    {
        Listing<ToothNumber> teeth = Listing<ToothNumber>.Of(jaw.Teeth().Where(tooth => tooth.Position <= 7));
        ToothNumber canine = ToothNumber.FromIso(jaw == Jaw.Upper ? 13 : 43);
        return WireAtWork.Engage(
            Samples.Inputs() with
            {
                Jaw = jaw,
                Bonded = teeth,
                Positions = ToothMap<ToothOffset>.Empty.With(canine, new ToothOffset(OcclusalMm: -1)),
                Ties = ToothMap<TieKind>.Same(teeth, TieKind.Closed),
            },
            "niti-014",
            ForceCeilings.Default);
    }
}
