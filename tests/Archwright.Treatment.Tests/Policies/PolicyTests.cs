using System.Text;
using Archwright.Dentition.Comparison;
using Archwright.Treatment.Policies;

namespace Archwright.Treatment.Tests.Policies;

/// <summary>The policy file. Rests on the file itself and on the table of ceilings.</summary>
[Trait("basis", "law")]
public sealed class PolicyTests
{
    [Fact]
    public void The_policy_holds_the_ceilings_of_the_comparison() => Assert.Equal(
        ForceCeilings.Default.All.Select(one => (one.Tooth, one.Kind, one.Limit.Value)),
        VisitPolicy.Default.Ceilings.All.Select(one => (one.Tooth, one.Kind, one.Limit.Value)));

    [Fact]
    public void The_weights_add_up_to_one()
    {
        VisitPolicy policy = VisitPolicy.Default;

        Assert.Equal(1, policy.WeightDelivered + policy.WeightProgress + policy.WeightComfort, 12);
    }

    [Theory]
    [InlineData("\"value\": 0.25,", "\"value\": 25,")]
    [InlineData("\"name\": \"keep_share\"", "\"name\": \"keeps_share\"")]
    [InlineData("\"unit\": \"mm/week\"", "\"unit\": \"mm\"")]
    [InlineData("\"how\": \"found\"", "\"how\": \"guessed\"")]
    [InlineData("\"act\": \"look-first\"", "\"act\": \"look\"")]
    public void A_slip_in_the_file_is_refused_with_its_path_and_a_remedy(string right, string wrong)
    {
        using Stream stream = typeof(VisitPolicy).Assembly
            .GetManifestResourceStream("Archwright.Treatment.Policies.visit-policy.json")!; // part of the library
        using var reader = new StreamReader(stream);
        string text = reader.ReadToEnd();
        Assert.Contains(right, text, StringComparison.Ordinal);
        int at = text.IndexOf(right, StringComparison.Ordinal);
        string broken = string.Concat(text.AsSpan(0, at), wrong, text.AsSpan(at + right.Length));

        PolicyReading reading = PolicyReader.Read(new MemoryStream(Encoding.UTF8.GetBytes(broken)));

        Assert.Null(reading.Policy);
        Assert.NotEmpty(reading.Problems);
        Assert.All(reading.Problems, problem => Assert.NotEmpty(problem.Path + problem.Remedy));
    }

    [Fact]
    public void A_file_that_is_no_json_is_refused() =>
        Assert.NotEmpty(PolicyReader.Read(new MemoryStream("{ \"format\": "u8.ToArray())).Problems);
}
