using System.Net.Http.Headers;
using System.Text;
using System.Text.Json;

namespace Archwright.ExampleClient;

/// <summary>Asks a practice's Archwright. It needs nothing but the base library.</summary>
public sealed class ArchwrightClient : IDisposable
{
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(500);

    private readonly HttpClient _http;

    /// <summary>A client.</summary>
    /// <param name="address">Where the app is, as "http://127.0.0.1:5080".</param>
    /// <param name="token">The token that the practice gave this program.</param>
    public ArchwrightClient(Uri address, string token)
    {
        _http = new HttpClient { BaseAddress = address };
        _http.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", token);
    }

    /// <summary>Force and moment on every tooth.</summary>
    /// <param name="caseText">A case file.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <exception cref="ArchwrightRefusal">The case is wrong; the message lists how to mend it.</exception>
    public async Task<JsonDocument> SolveAsync(string caseText, CancellationToken cancellation = default)
    {
        using HttpResponseMessage answer = await _http.PostAsync("/api/v1/solve", Json(caseText), cancellation);
        return await ReadAsync(answer, cancellation);
    }

    /// <summary>A job, waited for to its end: compare, forecast, visit or ladder.</summary>
    /// <param name="what">With its parameters: "forecast?weeks=8", "ladder?stock=niti-014,ss-019x025".</param>
    /// <param name="caseText">A case file.</param>
    /// <param name="progress">Told the percent done.</param>
    /// <param name="cancellation">Gives up, and tells the server so.</param>
    /// <exception cref="ArchwrightRefusal">The case is wrong, or the job failed or was cancelled.</exception>
    public async Task<JsonDocument> RunAsync(
        string what, string caseText, IProgress<int>? progress = null, CancellationToken cancellation = default)
    {
        using HttpResponseMessage begun = await _http.PostAsync($"/api/v1/{what}", Json(caseText), cancellation);
        using JsonDocument first = await ReadAsync(begun, cancellation);
        string place = $"/api/v1/jobs/{first.RootElement.GetProperty("id").GetString()}";
        try
        {
            while (true)
            {
                using HttpResponseMessage look = await _http.GetAsync(place, cancellation);
                using JsonDocument job = await ReadAsync(look, cancellation);
                progress?.Report(job.RootElement.GetProperty("percent").GetInt32());
                if (job.RootElement.GetProperty("state").GetString() is not ("waiting" or "running"))
                    break;

                await Task.Delay(Pause, cancellation);
            }

            using HttpResponseMessage answer = await _http.GetAsync(place + "/answer", cancellation);
            return await ReadAsync(answer, cancellation);
        }
        catch (OperationCanceledException)
        {
            using HttpResponseMessage gone = await _http.DeleteAsync(place, CancellationToken.None);
            throw;
        }
    }

    /// <inheritdoc/>
    public void Dispose() => _http.Dispose();

    private static StringContent Json(string text) => new(text, Encoding.UTF8, "application/json");

    private static async Task<JsonDocument> ReadAsync(HttpResponseMessage answer, CancellationToken cancellation)
    {
        string text = await answer.Content.ReadAsStringAsync(cancellation);
        JsonDocument document = JsonDocument.Parse(text);
        if (answer.IsSuccessStatusCode)
            return document;

        using (document)
            throw ArchwrightRefusal.Of(document.RootElement);
    }
}

/// <summary>The server refused; the message says what is wrong and how to mend it.</summary>
/// <param name="message">For people.</param>
public sealed class ArchwrightRefusal(string message) : Exception(message)
{
    internal static ArchwrightRefusal Of(JsonElement details)
    {
        var message = new StringBuilder($"{Text(details, "title")}: {Text(details, "detail")}");
        if (details.TryGetProperty("problems", out JsonElement problems))
        {
            foreach (JsonElement one in problems.EnumerateArray())
                message.Append($"\n{Text(one, "path")}: {Text(one, "message")} {Text(one, "mend")}");
        }

        return new ArchwrightRefusal(message.ToString());
    }

    private static string Text(JsonElement of, string key) =>
        of.TryGetProperty(key, out JsonElement value) ? value.GetString() ?? "" : "";
}
