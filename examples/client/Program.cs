using System.Globalization;
using System.Text.Json;
using Archwright.ExampleClient;

// Asks for the forces of a case, for the weeks ahead, and for the way to a working wire:
//   ARCHWRIGHT=http://127.0.0.1:5080 TOKEN=awt_… dotnet run --project examples/client -- examples/upper-mild.json
if (args is not [string file]
    || Environment.GetEnvironmentVariable("ARCHWRIGHT") is not { Length: > 0 } address
    || Environment.GetEnvironmentVariable("TOKEN") is not { Length: > 0 } token)
{
    Console.Error.WriteLine("Set ARCHWRIGHT and TOKEN, and name one case file.");
    return 2;
}

using var client = new ArchwrightClient(new Uri(address), token);
string text = await File.ReadAllTextAsync(file);
try
{
    using JsonDocument forces = await client.SolveAsync(text);
    foreach (JsonElement slot in forces.RootElement.GetProperty("slots").EnumerateArray())
    {
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"tooth {slot.GetProperty("tooth").GetString()}: labial {slot.GetProperty("labial_N").GetDouble():0.00} N, "
            + $"occlusal {slot.GetProperty("occlusal_N").GetDouble():0.00} N"));
    }

    using JsonDocument weeks = await client.RunAsync("forecast?weeks=8", text);
    Console.WriteLine(string.Create(
        CultureInfo.InvariantCulture,
        $"forecast: {weeks.RootElement.GetProperty("weeks").GetArrayLength() - 1} weeks, as far as is known"));
    using JsonDocument ladder = await client.RunAsync("ladder?stock=niti-014,niti-018&to=niti-018", text);
    JsonElement answers = ladder.RootElement.GetProperty("answers");
    Console.WriteLine(answers.GetArrayLength() == 0
        ? $"ladder: none. {ladder.RootElement.GetProperty("because").GetString()}"
        : "ladder: " + string.Join(", then ", answers[0].GetProperty("steps").EnumerateArray()
            .Select(step => step.GetProperty("wire").GetString())));
    return 0;
}
catch (ArchwrightRefusal refusal)
{
    Console.Error.WriteLine(refusal.Message);
    return 1;
}
