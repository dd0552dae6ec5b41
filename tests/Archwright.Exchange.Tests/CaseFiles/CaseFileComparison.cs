using System.Collections.Immutable;
using Archwright.Exchange.CaseFiles;
using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Slots;

namespace Archwright.Exchange.Tests.CaseFiles;

/// <summary>Compares cases member by member: exactly, but for directions, which are normalised once more on
/// reading.</summary>
internal static class CaseFileComparison
{
    /// <summary>Normalising a unit vector again moves it by rounding alone.</summary>
    private const double Rounding = 1e-14;

    public static byte[] Written(CaseFile caseFile)
    {
        using var stream = new MemoryStream();
        CaseWriter.Write(caseFile, stream);
        return stream.ToArray();
    }

    public static CaseFile WrittenAndRead(CaseFile caseFile)
    {
        var read = Texts.ReadCase(Written(caseFile));
        Assert.True(read.Value is not null, string.Join("\n", read.Problems));
        return read.Value!;
    }

    public static void AssertSame(CaseFile expected, CaseFile actual)
    {
        Assert.Equal(expected.Title, actual.Title);
        Assert.Equal(expected.Jaw, actual.Jaw);
        Assert.Equal(expected.Teeth.AsEnumerable(), actual.Teeth);
        Assert.Equal(expected.Axes.AsEnumerable(), actual.Axes);
        Assert.Equal(expected.WireId, actual.WireId);
        Assert.Equal(expected.AlloyId, actual.AlloyId);
        Assert.Equal(expected.VisitJson, actual.VisitJson);
        Assert.Equal(expected.Absent.AsEnumerable(), actual.Absent);
        Assert.Equal(expected.SoftTissue, actual.SoftTissue);
        AssertSame(expected.Arrangement, actual.Arrangement);
        Assert.Equal(expected.Then.Length, actual.Then.Length);
        foreach ((Step e, Step a) in expected.Then.Zip(actual.Then))
            AssertSame(e, a);
    }

    private static void AssertSame(Arrangement expected, Arrangement actual)
    {
        Assert.Equal(expected.Wire, actual.Wire);
        Assert.Equal(expected.Ends, actual.Ends);
        Assert.Equal(expected.Temperature, actual.Temperature);
        AssertSame(expected.Rest, actual.Rest);
        Assert.Equal(expected.Slots.Length, actual.Slots.Length);
        foreach ((Slot e, Slot a) in expected.Slots.Zip(actual.Slots))
        {
            Assert.Equal(e with { Rest = default, Actual = default }, a with { Rest = default, Actual = default });
            AssertNear(e.Rest, a.Rest);
            AssertNear(e.Actual, a.Actual);
        }
    }

    private static void AssertSame(RestShape expected, RestShape actual)
    {
        Assert.Equal(expected.GetType(), actual.GetType());
        if (expected is RestShape.Points e && actual is RestShape.Points a)
        {
            Assert.Equal(e.Path.AsEnumerable(), a.Path);
            Assert.Equal((e.Outward.IsDefault ? [] : e.Outward).AsEnumerable(), a.Outward.IsDefault ? [] : a.Outward);
        }
    }

    private static void AssertSame(Step expected, Step actual)
    {
        Assert.Equal(expected.Temperature, actual.Temperature);
        ImmutableArray<(int Slot, SlotFrame Actual)> moves = expected.Moves.IsDefault ? [] : expected.Moves;
        Assert.Equal(moves.Length, actual.Moves.Length);
        foreach (((int Slot, SlotFrame Actual) e, (int Slot, SlotFrame Actual) a) in moves.Zip(actual.Moves))
        {
            Assert.Equal(e.Slot, a.Slot);
            AssertNear(e.Actual, a.Actual);
        }
    }

    private static void AssertNear(SlotFrame expected, SlotFrame actual)
    {
        AssertNear(expected.Centre, actual.Centre);
        AssertNear(expected.Along, actual.Along);
        AssertNear(expected.Outward, actual.Outward);
    }

    private static void AssertNear(Vector3 expected, Vector3 actual) => Assert.True(
        (expected - actual).Length <= Rounding * (1 + expected.Length), $"{expected} against {actual}");
}
