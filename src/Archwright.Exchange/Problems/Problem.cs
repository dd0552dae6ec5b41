using System.Collections.Immutable;

namespace Archwright.Exchange.Problems;

/// <summary>One thing that is wrong in a file of the user's: what, where, and how to mend it.</summary>
/// <param name="Code">Stable code, listed in <see cref="ProblemCodes"/> and in <c>docs/problems.md</c>:
/// <c>AW-SLOT-003</c>.</param>
/// <param name="Path">Place inside the file: <c>slots[3].height_mm</c>, <c>line 4, column 17</c>, or
/// <see cref="WholeFile"/>.</param>
/// <param name="Message">What is wrong, with the figure given and the limit, in the user's words and units.</param>
/// <param name="Remedy">How to mend it.</param>
public sealed record Problem(string Code, string Path, string Message, string Remedy)
{
    /// <summary>The <see cref="Path"/> of a problem that concerns the file as a whole.</summary>
    public const string WholeFile = "(whole file)";
}

/// <summary>What became of reading a file: the value, or every problem that was found.</summary>
/// <typeparam name="T">What the file describes.</typeparam>
public sealed class Read<T>
    where T : class
{
    private Read(T? value, ImmutableArray<Problem> problems)
    {
        Value = value;
        Problems = problems;
    }

    /// <summary>What was read; null exactly when there are <see cref="Problems"/>.</summary>
    public T? Value { get; }

    /// <summary>All that is wrong, in the order of the file as far as there is one; empty when all is well.</summary>
    public ImmutableArray<Problem> Problems { get; }

    /// <summary>A file that was read without a problem.</summary>
    /// <param name="value">What it describes.</param>
    public static Read<T> Of(T value)
    {
        ArgumentNullException.ThrowIfNull(value);
        return new Read<T>(value, []);
    }

    /// <summary>A file that was refused.</summary>
    /// <param name="problems">At least one.</param>
    /// <exception cref="ArgumentException">There is no problem.</exception>
    public static Read<T> Refused(ImmutableArray<Problem> problems) =>
        problems.IsDefaultOrEmpty
            ? throw new ArgumentException("A refused file has at least one problem.", nameof(problems))
            : new Read<T>(null, problems);
}
