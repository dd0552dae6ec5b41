namespace Archwright.Cli.Running;

/// <summary>Writes complaints to standard error: where, what, how to mend.</summary>
internal static class Complaints
{
    /// <summary>Most complaints of one run that are written out; the rest are counted.</summary>
    public const int Most = 20;

    /// <summary>Writes them, each wrapped to the width.</summary>
    public static void Write(TextWriter error, IReadOnlyList<Complaint> complaints, int width)
    {
        foreach (Complaint complaint in complaints.Take(Most))
            Write(error, complaint, width);

        if (complaints.Count > Most)
            error.WriteLine($"… and {complaints.Count - Most} more.");
    }

    private static void Write(TextWriter error, Complaint complaint, int width)
    {
        if (complaint.Where.Length > 0)
        {
            error.WriteLine(complaint.Where);
            Indented(error, complaint.What, width);
            Indented(error, complaint.Mend, width);
            return;
        }

        foreach (string line in Wrap.Lines("archwright: " + complaint.What, width))
            error.WriteLine(line);
        Indented(error, complaint.Mend, width);
    }

    private static void Indented(TextWriter error, string text, int width)
    {
        foreach (string line in Wrap.Lines(text, width - 2))
            error.WriteLine("  " + line);
    }
}
