using System.Text.RegularExpressions;

namespace Archwright.Architecture.Tests;

/// <summary>Every test says what it rests on. Rests on the house's own rule (CONTRIBUTING.md, "Tests").</summary>
[Trait("basis", "law")]
public sealed partial class BasisTests
{
    private static readonly string[] Kinds = ["published", "independent", "law", "ours", "docs"];

    [Fact]
    public void Every_test_says_what_it_rests_on() =>
        Findings.None(
            "A test is worth what it rests on: give it or its class a [Trait(\"basis\", …)], one of "
            + string.Join(", ", Kinds),
            Findings.Some("test files", SourceTree.Under("tests/", ".cs").Where(HoldsTests))
                .SelectMany(file => WithoutBasis(file, SourceTree.Lines(file))));

    [Fact]
    public void A_planted_test_without_a_basis_is_found()
    {
        const string first = "public sealed class A";
        const string second = "public sealed class B";
        const string fact = "[Fa" + "ct]";
        const string law = "[Trait(\"basis\", \"law\")]";
        const string test = "public void It_holds()";

        Assert.Single(Found(first, fact, test));
        Assert.Single(Found(first, fact, "[Trait(\"basis\", \"taste\")]", test));
        Assert.Single(Found(law, first, second, fact, test));
        Assert.Empty(Found(first, fact, law, test));
        Assert.Empty(Found(law, first, fact, test));

        static IEnumerable<string> Found(params string[] lines) => WithoutBasis("a.cs", lines);
    }

    private static bool HoldsTests(string file) => TestAttribute().IsMatch(SourceTree.Read(file));

    // Attributes gather until the declaration that they stand above; those of a class hold for the tests below it.
    private static IEnumerable<string> WithoutBasis(string file, string[] lines)
    {
        bool classHasBasis = false;
        string attributes = "";
        foreach ((int index, string item) in lines.Index())
        {
            string line = item.Trim();
            if (line.StartsWith('[') || (attributes.Length > 0 && !Declaration().IsMatch(line)))
            {
                attributes += line + "\n";
                continue;
            }

            if (ClassDeclaration().IsMatch(line))
                classHasBasis = HasBasis(attributes);
            else if (TestAttribute().IsMatch(attributes) && !classHasBasis && !HasBasis(attributes))
                yield return $"{file}:{index + 1} {line}";

            attributes = "";
        }
    }

    private static bool HasBasis(string attributes) =>
        Kinds.Any(kind => attributes.Contains($"Trait(\"basis\", \"{kind}\")", StringComparison.Ordinal));

    [GeneratedRegex(@"\[\s*(Fact|Theory)\b|,\s*(Fact|Theory)\s*[\](,]", RegexOptions.ExplicitCapture)]
    private static partial Regex TestAttribute();

    [GeneratedRegex(@"^(public|internal|private|protected|static|sealed|async)\b")]
    private static partial Regex Declaration();

    [GeneratedRegex(@"^[\w ]*\bclass \w")]
    private static partial Regex ClassDeclaration();
}
