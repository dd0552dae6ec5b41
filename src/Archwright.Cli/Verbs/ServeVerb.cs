using System.CommandLine;
using System.Text.Json;
using Archwright.Cli.Running;
using Archwright.Cli.Serving;
using Archwright.Practice.Demo;
using Archwright.Treatment.Policies;
using Archwright.Web.Hosting;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.Hosting;

namespace Archwright.Cli.Verbs;

/// <summary><c>archwright serve</c>: the practice app on this computer.</summary>
internal static class ServeVerb
{
    private const int UsualPort = 5080;

    /// <summary>Makes the verb.</summary>
    public static Command Create(Terminal terminal)
    {
        UsualOption<int> port = NumberOption.Whole(
            "--port", $"Port on this computer; another free one is taken when it is not free. Usual: {UsualPort}.",
            0, 65535, UsualPort);
        Option<string?> data = RecordsFolder.Option();
        var demo = new Option<bool>("--demo") { Description = "Open the demo practice: everybody in it is invented." };
        var policy = new Option<string?>("--policy")
        {
            Description = "The practice's own policy: ceilings, thresholds, weights, intervals, alerts.",
            HelpName = "FILE.json",
        };
        Option<bool> json = CommonOptions.Json();
        var verb = new Verb("serve", "Open the practice app in the browser of this computer. Ctrl-C ends it.")
        {
            Examples =
            [
                ("archwright serve --demo", "the demo practice, with its sign-ins"),
                ("archwright serve", "your own practice; the first start makes the first account"),
                ("archwright serve --data /srv/practice --port 8080", "another folder, another port"),
            ],
        };
        foreach (Option option in new Option[] { port, data, demo, policy, json })
            verb.Add(option);
        verb.SetAction((parsed, cancellation) =>
        {
            VisitPolicy judged = PolicyFiles.Load(parsed.GetValue(policy));
            return RunAsync(
                terminal,
                new ServeOptions
                {
                    Port = port.Of(parsed),
                    DataFolder = RecordsFolder.Of(parsed.GetValue(data), parsed.GetValue(demo)),
                    Demo = parsed.GetValue(demo),
                    Postgres = RecordsFolder.Postgres,
                    Policy = judged,
                    Answers = new CaseAnswers(judged),
                },
                parsed.GetValue(json),
                cancellation);
        });
        return verb;
    }

    private static async Task<int> RunAsync(
        Terminal terminal, ServeOptions options, bool json, CancellationToken cancellation)
    {
        if (!json)
            terminal.Error.WriteLine(options.Demo ? "Opening the demo practice ..." : "Opening the practice ...");
        WebApplication app;
        try
        {
            app = await PracticeServer.StartAsync(options, cancellation);
        }
        catch (Exception refused) when (refused is IOException or UnauthorizedAccessException)
        {
            throw new Refusal(
                $"the folder {options.DataFolder} cannot be used: {refused.Message}",
                "Give another with --data, or see to it that you may write there.");
        }

        await using (app)
        {
            string address = PracticeServer.Address(app);
            if (json)
            {
                terminal.Output.WriteLine(JsonSerializer.Serialize(
                    new { format = "archwright-serve/1", address, demo = options.Demo }));
            }
            else
            {
                Tell(terminal, options, address);
            }

            await app.WaitForShutdownAsync(cancellation);
        }

        return ExitCode.Done;
    }

    private static void Tell(Terminal terminal, ServeOptions options, string address)
    {
        if (options.Demo)
        {
            terminal.Output.WriteLine("Demo practice: everybody in it is invented. Sign in as:");
            foreach (DemoSignIn one in DemoPractice.SignIns())
                terminal.Output.WriteLine($"  {one.UserName,-8} {DemoPractice.Password}   {one.Name}, {one.Part}");
        }

        terminal.Output.WriteLine($"Records: {options.DataFolder}. Ctrl-C ends the app.");
        terminal.Output.WriteLine(address);
    }
}
