using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using Archwright.Exchange.CaseFiles;
using Archwright.Exchange.Csv;
using Archwright.Exchange.Problems;
using Archwright.Exchange.Tests.CaseFiles;
using Archwright.Exchange.Tests.Problems;
using Archwright.Exchange.Tests.Schemas;
using Archwright.Mechanics.Engagement;

namespace Archwright.Exchange.Tests.Fuzzing;

/// <summary>
/// Whatever is done to a file, a reader answers with a value or with problems, never with an exception, and what it
/// takes can be prepared by the solver, written, and read again.
/// </summary>
/// <remarks>2000 spoilt texts in a usual run, 50 000 with ARCHWRIGHT_NIGHTLY=1. ARCHWRIGHT_FUZZ_SEED begins
/// elsewhere; a failure prints the seed of its text.</remarks>
[Trait("basis", "law")]
public sealed class ReaderFuzzTests(ITestOutputHelper output)
{
    private static readonly int Count = Environment.GetEnvironmentVariable("ARCHWRIGHT_NIGHTLY") == "1" ? 50_000 : 2000;

    private static readonly int FirstSeed = int.TryParse(
        Environment.GetEnvironmentVariable("ARCHWRIGHT_FUZZ_SEED"), CultureInfo.InvariantCulture, out int seed) ? seed
            : 1;

    private static readonly Schema CaseSchema = Schema.Load("archwright-case-1");

    [Fact]
    public void A_spoilt_case_gives_a_case_or_problems()
    {
        string[] texts = [Texts.Arch, Texts.Bench, .. SchemaTests.Cases, WholeArch()];
        Fuzz(texts, bytes =>
        {
            Read<CaseFile> read = CaseReader.Read(new MemoryStream(bytes));
            AssertAnswer(read);
            if (read.Value is { } value)
                AssertUsable(value, bytes);
            return read.Value is not null;
        });
    }

    [Fact]
    public void A_spoilt_twist_case_gives_a_twist_case_or_problems() => Fuzz([Texts.Twist], bytes =>
    {
        Read<TwistCase> read = TwistCaseReader.Read(new MemoryStream(bytes));
        AssertAnswer(read);
        return read.Value is not null;
    });

    [Fact]
    public void A_spoilt_bend_case_gives_a_bend_case_or_problems() => Fuzz([Texts.Bend], bytes =>
    {
        Read<BendCase> read = BendCaseReader.Read(new MemoryStream(bytes));
        AssertAnswer(read);
        return read.Value is not null;
    });

    [Fact]
    public void A_spoilt_stock_list_gives_wires_or_problems() =>
        Fuzz([Texts.Stock, "ss-016\n# shelf\nniti-014\n"], bytes =>
    {
        var read = StockReader.Read(new MemoryStream(bytes));
        AssertAnswer(read);
        return read.Value is not null;
    });

    [Fact]
    public void A_spoilt_table_of_ceilings_gives_ceilings_or_problems() => Fuzz([Texts.Ceilings], bytes =>
    {
        var read = CeilingsReader.Read(new MemoryStream(bytes));
        AssertAnswer(read);
        return read.Value is not null;
    });

    private void Fuzz(string[] texts, Func<byte[], bool> isGood)
    {
        int good = 0;
        for (int i = 0; i < Count; i++)
        {
            int seed = FirstSeed + i;
            byte[] bytes = new Mutator(seed).Spoil(texts[seed % texts.Length]);
            try
            {
                if (isGood(bytes))
                    good++;
            }
            catch (Exception e)
            {
                Assert.Fail($"Seed {seed}: {e}\n{Encoding.UTF8.GetString(bytes)}");
            }
        }

        output.WriteLine($"{Count} texts from seed {FirstSeed}, {good} of them still good.");

        // A mutator that spoils everything, or nothing, tests nothing.
        Assert.InRange(good, 1, Count - 1);
    }

    private static void AssertAnswer<T>(Read<T> read)
        where T : class
    {
        Assert.Equal(read.Value is null, !read.Problems.IsEmpty);
        Assert.All(read.Problems, ProblemCodesTests.AssertComplete);
    }

    private static void AssertUsable(CaseFile value, byte[] bytes)
    {
        _ = new Engager(value.Arrangement);
        CaseFileComparison.AssertSame(value, CaseFileComparison.WrittenAndRead(value));
        int mark = bytes.AsSpan().StartsWith<byte>([0xEF, 0xBB, 0xBF]) ? 3 : 0;
        Assert.Empty(CaseSchema.Errors(JsonNode.Parse(bytes.AsSpan(mark))));
    }

    private static string WholeArch()
    {
        JsonNode set = JsonNode.Parse(
            File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "mechanics-benchmarks.json")))!;
        JsonObject arch = BenchmarkCasesTests.ArchText(set["arch"]![3]!);
        arch["wire"]!.AsObject().Remove("rest");
        return arch.ToJsonString();
    }
}
