using System.Globalization;
using Archwright.Validation.Record;
using Archwright.Validation.SetUps;

namespace Archwright.Validation.Tests.SetUps;

/// <summary>Which wire slides best, and where.</summary>
public sealed class SlidingRigTests
{
    private static readonly (string State, double Span)[] Columns =
        [("wet", 5), ("wet", 8), ("dry", 5), ("dry", 8)];

    [Fact, Trait("basis", "docs")]
    public void The_table_of_the_chapter_is_what_is_computed()
    {
        double[][] rows = [.. Rows()];
        Assert.Equal([0.5, 1, 2, 2.94], rows.Select(row => row[0]));
        foreach (double[] row in rows)
        {
            for (int i = 0; i < Columns.Length; i++)
                Assert.Equal(row[i + 1], SlidingRig.Crossing(Pair(row[0], Columns[i].State, Columns[i].Span)), 0.02);
        }
    }

    /// <summary>Below the crossing steel resists less, beyond it NiTi.</summary>
    [Fact, Trait("basis", "law")]
    public void The_two_wires_change_places_at_the_crossing()
    {
        SetUp niti = Pair(2, "wet", 8);
        double crossing = SlidingRig.Crossing(niti);

        Assert.True(SlidingRig.At(niti, crossing - 0.5) > SlidingRig.At(niti.Other(), crossing - 0.5));
        Assert.True(SlidingRig.At(niti, crossing + 0.5) < SlidingRig.At(niti.Other(), crossing + 0.5));
    }

    /// <summary>Two wires of one alloy differ in stiffness alone, and the softer one never resists more.</summary>
    [Fact, Trait("basis", "law")]
    public void Wires_of_one_coefficient_do_not_change_places() =>
        Assert.Throws<InvalidOperationException>(() => SlidingRig.Crossing(new SetUp(
            "law", "wire=ss-014; other_wire=ss-016; slot=22; bracket=140; span=8; tie=2; state=wet")));

    private static SetUp Pair(double tie, string state, double span) => new(
        "sliding", FormattableString.Invariant(
            $"wire=niti-016; other_wire=ss-016; slot=22; bracket=140; span={span}; tie={tie}; state={state}"));

    private static IEnumerable<double[]> Rows()
    {
        using Stream? stream = typeof(SlidingRigTests).Assembly.GetManifestResourceStream("chapters/sliding.md");
        Assert.NotNull(stream);
        using var reader = new StreamReader(stream);
        while (reader.ReadLine() is { } line)
        {
            string[] cells = line.Trim('|').Split('|');
            if (cells.Length == Columns.Length + 1
                && double.TryParse(cells[0], CultureInfo.InvariantCulture, out _))
            {
                yield return [.. cells.Select(cell => double.Parse(cell, CultureInfo.InvariantCulture))];
            }
        }
    }
}
