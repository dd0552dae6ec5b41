using System.Net;
using System.Net.Http.Headers;
using System.Text.Json;
using Archwright.Practice.Audit;
using Archwright.Practice.Clients;
using Archwright.Practice.People;
using Archwright.Storage.Desks;
using Archwright.Storage.Model;
using Archwright.Storage.Opening;
using Microsoft.EntityFrameworkCore;

namespace Archwright.Cli.Tests.Serving;

/// <summary>Who may ask the API and for what. Rests on the real server.</summary>
[Trait("basis", "law")]
public sealed class ApiDoorTests(ServedPractice practice)
{
    public static TheoryData<string, string> Closed => new()
    {
        { "GET", "/api/v1/patients?name=a" }, { "GET", $"/api/v1/patients/{Guid.NewGuid()}" },
        { "GET", $"/api/v1/patients/{Guid.NewGuid()}/visits" }, { "GET", $"/api/v1/visits/{Guid.NewGuid()}" },
        { "POST", "/api/v1/solve" }, { "POST", "/api/v1/compare" }, { "POST", "/api/v1/forecast?weeks=1" },
        { "POST", "/api/v1/visit" }, { "POST", "/api/v1/ladder" }, { "GET", $"/api/v1/jobs/{Guid.NewGuid()}" },
        { "GET", $"/api/v1/jobs/{Guid.NewGuid()}/answer" }, { "DELETE", $"/api/v1/jobs/{Guid.NewGuid()}" },
        { "POST", $"/api/v1/jobs/{Guid.NewGuid()}/retry" },
    };

    [Theory, MemberData(nameof(Closed))]
    public async Task Without_a_token_every_door_is_closed(string method, string path)
    {
        using HttpClient client = await practice.ClientAsync();
        using var request = new HttpRequestMessage(new HttpMethod(method), path);

        using HttpResponseMessage answer = await client.SendAsync(request);

        Assert.Equal(HttpStatusCode.Unauthorized, answer.StatusCode);
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType?.MediaType);
        Assert.Equal("Bearer", Assert.Single(answer.Headers.WwwAuthenticate).Scheme);
    }

    [Theory, MemberData(nameof(Closed))]
    public async Task A_token_opens_its_own_scope_and_no_other(string method, string path)
    {
        ApiScope needed = path.Contains("visits", StringComparison.Ordinal) ? ApiScope.Visits
            : path.Contains("patients", StringComparison.Ordinal) ? ApiScope.Patients : ApiScope.Compute;
        using HttpClient without = await practice.ClientAsync([.. ApiScopes.All.Where(one => one != needed)]);
        using HttpClient with = await practice.ClientAsync(needed);

        using HttpResponseMessage refused = await without.SendAsync(new(new HttpMethod(method), path));
        using HttpResponseMessage answered = await with.SendAsync(new(new HttpMethod(method), path));

        Assert.Equal(HttpStatusCode.Forbidden, refused.StatusCode);
        Assert.NotEqual(HttpStatusCode.Forbidden, answered.StatusCode);
        Assert.NotEqual(HttpStatusCode.Unauthorized, answered.StatusCode);
        Assert.True((int)answered.StatusCode < 500, await answered.Content.ReadAsStringAsync());
    }

    [Fact]
    public async Task A_token_that_is_taken_back_is_refused_from_the_next_request_on()
    {
        (ApiClient known, string token) = await practice.TokenAsync(ApiScope.Patients);
        using HttpClient client = await practice.ClientAsync();
        client.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", token);
        Assert.Equal(HttpStatusCode.OK, (await client.GetAsync("/api/v1/patients?name=a")).StatusCode);

        await new ClientDesk(await practice.DatabaseAsync(), TimeProvider.System)
            .RevokeAsync(known.Id, new Actor(Guid.NewGuid(), "Dr Test", StaffRole.Orthodontist));

        Assert.Equal(HttpStatusCode.Unauthorized, (await client.GetAsync("/api/v1/patients?name=a")).StatusCode);
    }

    [Fact]
    public async Task Patients_and_visits_are_read_and_each_reading_stands_in_the_trail_with_the_programs_name()
    {
        (ApiClient known, string token) = await practice.TokenAsync(ApiScope.Patients, ApiScope.Visits);
        using HttpClient client = await practice.ClientAsync();
        client.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", token);

        using JsonDocument found = JsonDocument.Parse(await client.GetStringAsync("/api/v1/patients?name=hana"));
        Guid id = found.RootElement[0].GetProperty("id").GetGuid();
        using JsonDocument patient = JsonDocument.Parse(await client.GetStringAsync($"/api/v1/patients/{id}"));
        using JsonDocument visits = JsonDocument.Parse(await client.GetStringAsync($"/api/v1/patients/{id}/visits"));
        Guid visit = visits.RootElement[0].GetProperty("id").GetGuid();
        using JsonDocument one = JsonDocument.Parse(await client.GetStringAsync($"/api/v1/visits/{visit}"));

        Assert.True(patient.RootElement.GetProperty("invented").GetBoolean());
        Assert.NotEqual(0, patient.RootElement.GetProperty("appliances").GetArrayLength());
        Assert.Equal(id, one.RootElement.GetProperty("patient_id").GetGuid());
        Assert.Equal(JsonValueKind.Object, one.RootElement.GetProperty("content").ValueKind);
        PracticeDatabase database = await practice.DatabaseAsync();
        await using PracticeContext db = database.CreateDbContext();
        Assert.Equal(3, await db.Trail.CountAsync(
            line => line.PatientId == id && line.Act == AuditAct.Read && line.StaffId == known.Id
                && line.StaffName == "Test (program)"));
    }

    [Fact]
    public async Task What_is_not_there_is_a_problem_and_not_a_page()
    {
        using HttpClient client = await practice.ClientAsync(ApiScope.Patients);
        foreach ((string path, HttpStatusCode status) in new[]
                 {
                     ("/api/v1/nothing", HttpStatusCode.NotFound), ("/api/v2/solve", HttpStatusCode.NotFound),
                     ($"/api/v1/patients/{Guid.NewGuid()}", HttpStatusCode.NotFound),
                     ("/api/v1/patients", HttpStatusCode.BadRequest),
                     ("/api/v1/solve", HttpStatusCode.NotFound),
                 })
        {
            using HttpResponseMessage answer = await client.GetAsync(path);
            Assert.Equal((path, status), (path, answer.StatusCode));
            Assert.Equal("application/problem+json", answer.Content.Headers.ContentType?.MediaType);
        }
    }

    [Fact]
    public async Task Whoever_asks_too_often_waits()
    {
        using HttpClient client = await practice.ClientAsync(ApiScope.Patients);
        HttpResponseMessage? refused = null;
        for (int asked = 0; asked < 600 && refused is null; asked++)
        {
            HttpResponseMessage answer = await client.GetAsync("/api/v1/patients");
            if (answer.StatusCode == HttpStatusCode.TooManyRequests)
                refused = answer;
        }

        Assert.NotNull(refused);
        Assert.Equal("application/problem+json", refused.Content.Headers.ContentType?.MediaType);
        Assert.NotNull(refused.Headers.RetryAfter);
    }

    [Fact]
    public async Task The_document_names_every_route_with_its_scope_and_the_page_shows_the_same()
    {
        using HttpClient client = await practice.ClientAsync();

        using JsonDocument document = JsonDocument.Parse(await client.GetStringAsync("/api/v1/openapi.json"));
        string page = await client.GetStringAsync("/api");

        JsonProperty[] paths = [.. document.RootElement.GetProperty("paths").EnumerateObject()];
        Assert.Equal(12, paths.Length);
        foreach (JsonProperty path in paths)
        {
            Assert.Contains(path.Name, page, StringComparison.Ordinal);
            foreach (JsonProperty operation in path.Value.EnumerateObject())
            {
                Assert.NotEqual(0, operation.Value.GetProperty("security").GetArrayLength());
                Assert.Contains(
                    "scope", operation.Value.GetProperty("description").GetString()!, StringComparison.Ordinal);
            }
        }
    }
}
