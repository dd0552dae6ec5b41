using System.Collections.Immutable;

namespace Archwright.Exchange.Problems;

/// <summary>Gathers the problems of one file.</summary>
internal sealed class ProblemList
{
    /// <summary>Most problems that are spelled out; the rest is counted.</summary>
    public const int Most = 1000;

    private readonly List<Problem> _problems = [];
    private int _unlisted;

    /// <summary>True while nothing is wrong.</summary>
    public bool IsEmpty => _problems.Count == 0;

    /// <summary>How many there are, listed or not.</summary>
    public int Count => _problems.Count + _unlisted;

    public void Add(ProblemCode code, string path, string message, string remedy)
    {
        if (_problems.Count < Most)
            _problems.Add(new Problem(code.Code, path.Length == 0 ? Problem.WholeFile : path, message, remedy));
        else
            _unlisted++;
    }

    public ImmutableArray<Problem> ToImmutable() => _unlisted == 0 ? [.. _problems] :
    [
        .. _problems,
        new Problem(
            ProblemCodes.MoreProblems.Code,
            Problem.WholeFile,
            $"There are {_unlisted} more problems than the {Most} listed.",
            "Mend those listed and read the file again."),
    ];

    /// <summary>The value if nothing is wrong, else the problems.</summary>
    public Read<T> Settle<T>(T? value)
        where T : class =>
        IsEmpty && value is not null ? Problems.Read<T>.Of(value) : Problems.Read<T>.Refused(ToImmutable());
}
