using Archwright.Cli.Running;

using var terminal = Terminal.OfThisProcess();
return await CommandLine.RunAsync(args, terminal);
