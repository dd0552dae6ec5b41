namespace Archwright.Treatment.Decisions;

/// <summary>What is known of a patient that changes which wire may be put forward.</summary>
public enum PatientAlert
{
    /// <summary>Reacts to nickel.</summary>
    Nickel,

    /// <summary>Roots have become shorter, or may.</summary>
    Resorption,

    /// <summary>A medicine that changes how teeth move.</summary>
    Medication,

    /// <summary>Hygiene so poor that progress has to wait.</summary>
    Hygiene,

    /// <summary>Less bone than usual round some roots.</summary>
    ReducedSupport,
}

/// <summary>Words of the alerts.</summary>
public static class PatientAlerts
{
    /// <summary>All alerts, in order.</summary>
    public static IReadOnlyList<PatientAlert> All { get; } = Enum.GetValues<PatientAlert>();

    /// <summary>The word of the case file: "reduced-support".</summary>
    public static string Word(this PatientAlert alert) => alert switch
    {
        PatientAlert.Nickel => "nickel",
        PatientAlert.Resorption => "resorption",
        PatientAlert.Medication => "medication",
        PatientAlert.Hygiene => "hygiene",
        PatientAlert.ReducedSupport => "reduced-support",
        _ => throw new ArgumentOutOfRangeException(nameof(alert), alert, "No such alert."),
    };

    /// <summary>Reads the word of an alert.</summary>
    public static bool TryParse(string word, out PatientAlert alert)
    {
        foreach (PatientAlert one in All)
        {
            if (one.Word() == word)
            {
                alert = one;
                return true;
            }
        }

        alert = default;
        return false;
    }
}
