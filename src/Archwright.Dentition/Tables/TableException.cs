namespace Archwright.Dentition.Tables;

/// <summary>A data table that does not hold what it must. The message names table, line and mend.</summary>
public sealed class TableException : Exception
{
    /// <summary>A fault without words.</summary>
    public TableException()
    {
    }

    /// <summary>A fault in words.</summary>
    public TableException(string message)
        : base(message)
    {
    }

    /// <summary>A fault that another one caused.</summary>
    public TableException(string message, Exception inner)
        : base(message, inner)
    {
    }

    internal TableException(string table, int line, string what, string mend)
        : base($"{table}, line {line}: {what} {mend}")
    {
    }
}
