using System.Net;
using System.Text.Json;
using System.Text.Json.Nodes;
using Archwright.Cli.Tests.Running;
using Archwright.Cli.Tests.Verbs;
using Archwright.ExampleClient;
using Archwright.Exchange.Tests.Schemas;
using Archwright.Practice.Clients;
using Run = Archwright.Cli.Tests.Running.Run;

namespace Archwright.Cli.Tests.Serving;

/// <summary>The API computes what the command line computes, and refuses what the reader of case files refuses. Rests
/// on the command line and on the real server.</summary>
[Trait("basis", "independent")]
public sealed class ApiComputeTests(ServedPractice practice)
{
    private const string Mild = "upper-mild.json";

    [Fact]
    public async Task Solve_answers_with_the_document_of_the_command_line()
    {
        using HttpClient client = await practice.ClientAsync(ApiScope.Compute);
        using var folder = new Folder();
        await File.WriteAllTextAsync(folder.File(Mild), ServedPractice.Example(Mild));

        using HttpResponseMessage answer = await client.PostAsync(
            "/api/v1/solve", ServedPractice.Json(ServedPractice.Example(Mild)));
        Run run = await Run.Of("solve", folder.File(Mild), "--json");

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal("application/json", answer.Content.Headers.ContentType?.MediaType);
        Assert.Equal(WithoutTime(run.Output), WithoutTime(await answer.Content.ReadAsStringAsync()));
    }

    [Theory]
    [InlineData("compare?stock=niti-014,ss-016", "archwright-compare/1")]
    [InlineData("forecast?weeks=3", "archwright-forecast/1")]
    [InlineData("visit?stock=niti-014,niti-016", "archwright-visit/1")]
    [InlineData("ladder?stock=niti-014,ss-019x025", "archwright-ladder/1")]
    public async Task A_job_is_taken_done_and_answered_and_its_percent_ends_at_100(string what, string format)
    {
        (_, string token) = await practice.TokenAsync(ApiScope.Compute);
        using var client = new ArchwrightClient(await practice.AddressAsync(), token);
        var seen = new Seen();

        using JsonDocument answer = await client.RunAsync(what, ServedPractice.Example(Mild), seen);

        Assert.Equal(format, answer.RootElement.GetProperty("format").GetString());
        Assert.Equal(100, seen.Percents[^1]);
        Assert.Equal(seen.Percents.Order(), seen.Percents);
    }

    [Fact]
    public async Task Who_prefers_to_wait_gets_the_answer_itself_and_it_is_that_of_the_command_line()
    {
        using HttpClient client = await practice.ClientAsync(ApiScope.Compute);
        client.DefaultRequestHeaders.Add("Prefer", "wait=30");
        using var folder = new Folder();
        await File.WriteAllTextAsync(folder.File(Mild), ServedPractice.Example(Mild));

        using HttpResponseMessage answer = await client.PostAsync(
            "/api/v1/forecast?weeks=2", ServedPractice.Json(ServedPractice.Example(Mild)));
        Run run = await Run.Of("forecast", folder.File(Mild), "--weeks", "2", "--json");

        Assert.SkipWhen(answer.StatusCode == HttpStatusCode.Accepted, "Thirty seconds were too few on this machine.");
        Assert.Equal(run.Output, await answer.Content.ReadAsStringAsync());
    }

    [Fact]
    public async Task All_that_is_wrong_with_a_case_is_listed_with_path_and_mend_and_nothing_is_computed()
    {
        using HttpClient client = await practice.ClientAsync(ApiScope.Compute);
        string wrong = ServedPractice.Example(Mild)
            .Replace("\"arch\":", "\"arcs\":", StringComparison.Ordinal);

        foreach (string what in new[]
                 {
                     "solve", "compare", "forecast?weeks=0", "forecast?weeks=x",
                     "forecast?whole_law=maybe", "visit?stock=niti-0", "visit?x=1",
                     "visit?why_not=niti-0", "visit?sensitivity=maybe", "ladder?stock=niti-0", "ladder?to=rope",
                     "ladder?sequence=niti-014,niti-014", "ladder?prices=niti-014:cheap", "ladder?prices=niti-0:1",
                     "ladder?prices=niti-014:1,niti-014:2", "ladder?draws=-1", "ladder?seed=x", "ladder?weeks=2",
                     "solve?friction=3", "forecast?friction=oily", "visit?friction=-1", "ladder?friction=NaN",
                     "forecast?soft_tissue=21", "visit?soft_tissue=firm", "ladder?soft_tissue=-1",
                     "solve?soft_tissue=1",
                 })
        {
            using HttpResponseMessage answer = await client.PostAsync($"/api/v1/{what}", ServedPractice.Json(wrong));
            JsonElement[] problems = await ProblemsAsync(answer, HttpStatusCode.BadRequest);

            Assert.Contains(problems, one => one.GetProperty("path").GetString() == "arcs"
                && one.GetProperty("code").GetString() == "AW-KEY-001");
            Assert.All(problems, one => Assert.NotEqual("", one.GetProperty("mend").GetString()));
            string? query = what.Contains('?', StringComparison.Ordinal) ? what.Split('?', '=')[1] : null;
            if (query is not null)
                Assert.Contains(problems, one => one.GetProperty("path").GetString() == query);
        }
    }

    [Fact]
    public async Task A_visit_tells_the_same_chain_of_figures_as_the_command_line()
    {
        using var folder = new Folder();
        string path = VisitTraceTests.Case(folder);
        string text = await File.ReadAllTextAsync(path);

        string answer = await AnswerAsync("visit?explain=33&why_not=niti-014&sensitivity=true", text);
        Run run = await Run.Of(
            "visit", path, "--explain", "33", "--why-not", "niti-014", "--sensitivity", "--json");

        using JsonDocument told = JsonDocument.Parse(answer);
        Assert.Equal("33", told.RootElement.GetProperty("explain").GetProperty("tooth").GetString());
        Assert.Equal("niti-014", told.RootElement.GetProperty("why_not").GetProperty("wire").GetString());
        Assert.NotEqual(0, told.RootElement.GetProperty("sensitivity").GetArrayLength());
        Assert.Equal(run.Output, answer);
        Assert.Empty(Schema.Load("archwright-visit-1").Errors(JsonNode.Parse(answer)));
    }

    [Fact]
    public async Task A_ladder_is_the_one_of_the_command_line_with_a_sequence_of_ones_own_and_what_it_costs()
    {
        using var folder = new Folder();
        string path = VisitTraceTests.Case(folder);
        string text = await File.ReadAllTextAsync(path);

        string answer = await AnswerAsync(
            "ladder?stock=niti-014,niti-018&to=niti-018&sequence=niti-014,niti-018&prices=niti-014:4.20,niti-018:2"
            + "&draws=20&seed=7", text);
        Run run = await Run.Of(
            "ladder", path, "--stock", folder.Text("drawer.txt", "niti-014\nniti-018\n"), "--to", "niti-018",
            "--sequence", "niti-014,niti-018",
            "--prices", folder.Text("prices.csv", "id,price\nniti-014,4.20\nniti-018,2\n"),
            "--draws", "20", "--seed", "7", "--json");

        using JsonDocument told = JsonDocument.Parse(answer);
        JsonElement asked = told.RootElement.GetProperty("answers").EnumerateArray().Last();
        Assert.Equal("niti-018", told.RootElement.GetProperty("working_wire").GetString());
        Assert.Equal("asked", asked.GetProperty("kind").GetString());
        Assert.Equal(6.2, asked.GetProperty("cost").GetDouble(), 1e-9);
        Assert.Equal(run.Output, answer);
        Assert.Empty(Schema.Load("archwright-ladder-1").Errors(JsonNode.Parse(answer)));
    }

    [Fact]
    public async Task Friction_lips_and_cheeks_that_are_asked_for_are_those_of_the_command_line()
    {
        using var folder = new Folder();
        string arch = folder.Arch();
        string text = await File.ReadAllTextAsync(arch);
        string[] asked = ["--friction", "wet", "--soft-tissue", "2", "--json"];

        string forecast = await AnswerAsync("forecast?weeks=2&friction=wet&soft_tissue=2", text);
        string visit = await AnswerAsync("visit?stock=niti-014&friction=wet&soft_tissue=2", text);
        string ladder = await AnswerAsync("ladder?stock=niti-014&to=niti-016&friction=wet&soft_tissue=2", text);
        string drawer = folder.Text("drawer.txt", "niti-014\n");

        Assert.Equal((await Run.Of(["forecast", arch, "--weeks", "2", .. asked])).Output, forecast);
        Assert.Equal((await Run.Of(["visit", arch, "--stock", drawer, .. asked])).Output, visit);
        Assert.Equal(
            (await Run.Of(["ladder", arch, "--stock", drawer, "--to", "niti-016", .. asked])).Output, ladder);
        Assert.NotEqual(await AnswerAsync("forecast?weeks=2", text), forecast);
        Assert.Empty(Schema.Load("archwright-forecast-1").Errors(JsonNode.Parse(forecast)));
        Assert.Empty(Schema.Load("archwright-visit-1").Errors(JsonNode.Parse(visit)));
        Assert.Empty(Schema.Load("archwright-ladder-1").Errors(JsonNode.Parse(ladder)));
    }

    [Fact]
    public async Task A_wire_that_rubs_is_solved_with_its_friction()
    {
        using HttpClient client = await practice.ClientAsync(ApiScope.Compute);
        using var folder = new Folder();
        await File.WriteAllTextAsync(folder.File(Mild), ServedPractice.Example(Mild));

        using HttpResponseMessage answer = await client.PostAsync(
            "/api/v1/solve?friction=0.2", ServedPractice.Json(ServedPractice.Example(Mild)));
        Run run = await Run.Of("solve", folder.File(Mild), "--friction", "0.2", "--json");

        string text = await answer.Content.ReadAsStringAsync();
        Assert.Contains("friction_N", text, StringComparison.Ordinal);
        Assert.Equal(WithoutTime(run.Output), WithoutTime(text));
    }

    [Theory]
    [InlineData("visit?explain=18", "The case has no tooth “18”. Write one of its ISO numbers: 43")]
    [InlineData("visit?why_not=ss-018", "ss-018 is not among the wires to choose from")]
    [InlineData("ladder?to=ss-021x025", "the lowest slot")]
    public async Task What_reads_well_and_cannot_be_told_is_refused_with_a_mend(string what, string reason)
    {
        using var folder = new Folder();
        string path = VisitTraceTests.Case(folder);
        string text = (await File.ReadAllTextAsync(path))
            .Replace("\"height_mm\":0.5588", "\"height_mm\":0.4572", StringComparison.Ordinal);

        ArchwrightRefusal refusal = await Assert.ThrowsAsync<ArchwrightRefusal>(() => AnswerAsync(what, text));

        Assert.Contains(reason, refusal.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("--", refusal.Message, StringComparison.Ordinal); // words of another door
    }

    [Fact]
    public async Task A_case_without_teeth_reads_well_and_is_refused_with_a_mend()
    {
        (_, string token) = await practice.TokenAsync(ApiScope.Compute);
        using var client = new ArchwrightClient(await practice.AddressAsync(), token);
        using var folder = new Folder();
        string bench = await File.ReadAllTextAsync(folder.Case("three-slots.json"));

        ArchwrightRefusal refusal = await Assert.ThrowsAsync<ArchwrightRefusal>(
            () => client.RunAsync("forecast?weeks=2", bench));

        Assert.Contains("bench set-up", refusal.Message, StringComparison.Ordinal);
        Assert.Contains("Name a case with teeth", refusal.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("forecast?weeks=104&draws=1000")]
    [InlineData("ladder")]
    public async Task A_job_is_cancelled_tried_again_and_seen_by_its_own_client_alone(string what)
    {
        using HttpClient client = await practice.ClientAsync(ApiScope.Compute);
        using HttpClient other = await practice.ClientAsync(ApiScope.Compute);

        using HttpResponseMessage begun = await client.PostAsync(
            $"/api/v1/{what}", ServedPractice.Json(ServedPractice.Example(Mild)));
        string place = begun.Headers.Location!.ToString(); // asserted by the status
        Assert.Equal(HttpStatusCode.Accepted, begun.StatusCode);
        Assert.Equal(HttpStatusCode.Conflict, (await client.GetAsync(place + "/answer")).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await other.GetAsync(place)).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await other.DeleteAsync(place)).StatusCode);

        Assert.Equal(HttpStatusCode.NoContent, (await client.DeleteAsync(place)).StatusCode);
        Assert.Equal("cancelled", await StateAsync(client, place));

        Assert.Equal(HttpStatusCode.Accepted, (await client.PostAsync(place + "/retry", null)).StatusCode);
        Assert.Contains(await StateAsync(client, place), new[] { "waiting", "running" });
        await client.DeleteAsync(place);
    }

    [Fact]
    public async Task A_body_that_is_too_large_is_not_read()
    {
        using HttpClient client = await practice.ClientAsync(ApiScope.Compute);

        using HttpResponseMessage answer = await client.PostAsync(
            "/api/v1/solve", ServedPractice.Json(new string(' ', 1_000_001)));

        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, answer.StatusCode);
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType?.MediaType);
    }

    // As it is written, to the byte.
    private async Task<string> AnswerAsync(string what, string caseText)
    {
        (_, string token) = await practice.TokenAsync(ApiScope.Compute);
        using var client = new ArchwrightClient(await practice.AddressAsync(), token);
        using JsonDocument answer = await client.RunAsync(what, caseText);
        return answer.RootElement.GetRawText() + "\n";
    }

    private static async Task<string?> StateAsync(HttpClient client, string place)
    {
        using JsonDocument job = JsonDocument.Parse(await client.GetStringAsync(place));
        return job.RootElement.GetProperty("state").GetString();
    }

    private static async Task<JsonElement[]> ProblemsAsync(HttpResponseMessage answer, HttpStatusCode status)
    {
        string text = await answer.Content.ReadAsStringAsync();
        Assert.Equal(status, answer.StatusCode);
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType?.MediaType);
        using JsonDocument details = JsonDocument.Parse(text);
        return [.. details.RootElement.GetProperty("problems").EnumerateArray().Select(one => one.Clone())];
    }

    private static string WithoutTime(string forces) =>
        string.Join('\n', forces.Split('\n').Where(line => !line.Contains("_ms\"", StringComparison.Ordinal)));

    private sealed class Seen : IProgress<int>
    {
        public List<int> Percents { get; } = [];

        public void Report(int value) => Percents.Add(value);
    }
}
