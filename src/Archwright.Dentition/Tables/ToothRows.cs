using Archwright.Dentition.Teeth;

namespace Archwright.Dentition.Tables;

/// <summary>Rows that are told by jaw and position, the same right and left.</summary>
internal static class ToothRows
{
    /// <summary>The two teeth of a row with the columns <c>jaw</c> and <c>position</c>.</summary>
    public static ToothNumber[] Teeth(TableRow row)
    {
        int position = row.Integer("position");
        if (position is < 1 or > 8)
            throw row.Fault($"the position is {position}.", "It is 1 (central incisor) to 8 (third molar).");

        return row.Required("jaw") switch
        {
            "upper" => [ToothNumber.FromIso(10 + position), ToothNumber.FromIso(20 + position)],
            "lower" => [ToothNumber.FromIso(40 + position), ToothNumber.FromIso(30 + position)],
            string other => throw row.Fault($"the jaw is '{other}'.", "It is 'upper' or 'lower'."),
        };
    }
}
