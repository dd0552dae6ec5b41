using Archwright.Practice.Leaflets;
using Archwright.Practice.Values;
using Archwright.Web.PatientPages;

namespace Archwright.Web.Tests.PatientPages;

/// <summary>What the patient's page is sent of an arch in space. Rests on what was released.</summary>
[Trait("basis", "law")]
public sealed class SpaceAnswerTests
{
    [Fact]
    public void Every_tooth_has_its_surfaces_and_slot_and_every_week_its_places()
    {
        double[] frame = [1, 2, 3, -1, 0, 0, 0, 1, 0, 0, 0, -1];
        var space = new SpacePictures(
            Listing<string>.Of(["11", "21"]), Listing<double>.Of([3, 0.56, 0.71, 3.5, 0.56, 0.71]), 0.2,
            Listing<SpaceWeek>.Of(
            [
                new SpaceWeek(0, Listing<double>.Of([.. frame, .. frame]), Listing<double>.Of([0, 0, 0, 1, 0, 0])),
                new SpaceWeek(1, Listing<double>.Of([.. frame, .. frame]), Listing<double>.Empty),
            ]));

        SpaceAnswer answer = SpaceAnswer.Of(isUpper: false, space);

        SpaceAnswer without = SpaceAnswer.Of(
            isUpper: false, space with { Slots = Listing<double>.Of([3, 0.56, 0.71, 0, 0, 0]) });

        Assert.Equal([false, true], without.Teeth.Select(tooth => tooth.Slot is null)); // no bracket on the second
        Assert.Equal(-1, answer.Jaw);
        Assert.Equal(["11", "21"], answer.Teeth.Select(tooth => tooth.Iso));
        Assert.Equal([3, 3.5], answer.Teeth.Select(tooth => tooth.Slot!.Width));
        Assert.All(answer.Teeth, tooth => Assert.True(tooth.Crown.Points > 100 && tooth.Root.Triangles > 100));
        Assert.Equal(4 * answer.Teeth.Sum(tooth => tooth.Crown.Points + tooth.Root.Points), answer.Points.Length);
        Assert.Equal([24, 24], answer.Weeks.Select(week => week.Frames.Count));
        Assert.Equal([6, 0], answer.Weeks.Select(week => week.Line.Count));
    }
}
