namespace Archwright.Cli.Running;

/// <summary>One thing that is wrong: what, where, how to mend it.</summary>
/// <param name="What">One or more sentences.</param>
/// <param name="Where">Code, file, path in the file; empty for usage.</param>
/// <param name="Mend">What to do; empty when it is plain.</param>
internal sealed record Complaint(string What, string Where = "", string Mend = "");

/// <summary>Ends a verb with complaints and an exit code. Thrown by verbs, caught in one place.</summary>
#pragma warning disable RCS1194 // the usual constructors would allow a refusal that says nothing
internal sealed class Refusal : Exception
#pragma warning restore RCS1194
{
    public Refusal(int exitCode, IReadOnlyList<Complaint> complaints)
        : base(string.Join(" ", complaints.Select(complaint => complaint.What)))
    {
        Code = exitCode;
        Complaints = complaints;
    }

    /// <summary>Bad input or usage with a single complaint.</summary>
    public Refusal(string what, string mend, string where = "")
        : this(ExitCode.BadInput, [new Complaint(what, where, mend)])
    {
    }

    /// <summary>See <see cref="ExitCode"/>.</summary>
    public int Code { get; }

    /// <summary>At least one.</summary>
    public IReadOnlyList<Complaint> Complaints { get; }
}
