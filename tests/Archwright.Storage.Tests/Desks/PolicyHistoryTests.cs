using Archwright.Storage.Desks;
using Archwright.Storage.Tests.Opening;

namespace Archwright.Storage.Tests.Desks;

/// <summary>What the program judged by, and since when. Rests on both databases.</summary>
[Trait("basis", "independent")]
public sealed class PolicyHistoryTests(PostgresServer server)
{
    public static TheoryData<string> Kinds => [.. TestDatabase.Kinds];

    [Theory, MemberData(nameof(Kinds))]
    public async Task A_line_is_added_when_something_is_new_and_only_then(string kind)
    {
        using TestDatabase made = await TestDatabase.MakeAsync(kind, server);
        var history = new PolicyHistory(made.Database, made.Clock);

        await history.NoteAsync("policy", "1", "a");
        await history.NoteAsync("policy", "1", "a");
        await history.NoteAsync("ceilings", "1", "c");
        await history.NoteAsync("policy", "1", "b"); // another text under the same name
        await history.NoteAsync("policy", "1", "b");

        Assert.Equal(
            [("policy", "b"), ("ceilings", "c"), ("policy", "a")],
            (await history.AllAsync()).Select(one => (one.Kind, one.Text)));
    }
}
