using Archwright.Benchmarks;
using BenchmarkDotNet.Running;

const string Usage = """
    Archwright.Benchmarks --quick               one table of medians, a minute or two
    Archwright.Benchmarks --calculix-case ID    one arch with gliding wire points, as JSON (see benchmarks/calculix)
    Archwright.Benchmarks --calculix-case ID --once     the same, solved once
    Archwright.Benchmarks --again NAME          one piece of work for twenty seconds, for a profiler
    Archwright.Benchmarks --filter '*'          BenchmarkDotNet with its own options
    """;

switch (args)
{
    case ["--quick"]:
        QuickTable.Print(Console.Out);
        return 0;

    case ["--calculix-case", var id]:
        CalculixCase.Print(id, once: false, Console.Out);
        return 0;

    case ["--calculix-case", var id, "--once"]:
        CalculixCase.Print(id, once: true, Console.Out);
        return 0;

    case ["--again", var name]:
        if (Again.Run(name, Console.Out))
            return 0;

        Console.Error.WriteLine($"There is no '{name}'. What can be repeated: {Again.Names}.");
        return 2;

    case [] or ["--help"]:
        Console.WriteLine(Usage);
        return 0;

    default:
        BenchmarkSwitcher.FromAssembly(typeof(QuickTable).Assembly).Run(args, new InProcessConfig());
        return 0;
}
