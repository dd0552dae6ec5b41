using System.Text.Json;
using System.Text.RegularExpressions;
using Archwright.Practice.Clients;

namespace Archwright.Cli.Tests.Serving;

/// <summary>What the program writes for whoever runs it names no patient, also when it is told to write more than
/// usual. Rests on the real server.</summary>
[Trait("basis", "law")]
public sealed partial class ApiLogTests(ServedPractice practice)
{
    [Fact]
    public async Task No_name_birth_date_or_token_stands_in_any_log_line()
    {
        (_, string token) = await practice.TokenAsync(ApiScope.Patients, ApiScope.Visits);
        using HttpClient client = await practice.ClientAsync();
        client.DefaultRequestHeaders.Authorization = new("Bearer", token);
        using JsonDocument found = JsonDocument.Parse(await client.GetStringAsync("/api/v1/patients?name=hana"));
        JsonElement who = found.RootElement[0];
        string id = who.GetProperty("id").GetString()!; // every patient has one
        string born = who.GetProperty("born_on").GetString()!;
        await client.GetStringAsync($"/api/v1/patients/{id}");
        await client.GetStringAsync($"/api/v1/patients/{id}/visits");
        await client.GetAsync("/find?q=sugimori");

        Assert.Contains(practice.Log, line => line.Contains("info:", StringComparison.Ordinal)); // it writes at all
        Assert.DoesNotContain(practice.Log, line => Names().IsMatch(line)
            || line.Contains(born, StringComparison.Ordinal) || line.Contains(token, StringComparison.Ordinal));
    }

    [GeneratedRegex("hana|sugimori", RegexOptions.IgnoreCase)]
    private static partial Regex Names();
}
