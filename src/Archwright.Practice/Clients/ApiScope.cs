namespace Archwright.Practice.Clients;

/// <summary>What a client may ask the API for.</summary>
public enum ApiScope
{
    /// <summary>Computing on cases that it sends itself; nothing of the records is read.</summary>
    Compute,

    /// <summary>Finding and reading patients.</summary>
    Patients,

    /// <summary>Reading visits.</summary>
    Visits,
}

/// <summary>Words of the scopes.</summary>
public static class ApiScopes
{
    /// <summary>All scopes.</summary>
    public static IReadOnlyList<ApiScope> All { get; } = Enum.GetValues<ApiScope>();

    /// <summary>As requests and pages name it: "patients:read".</summary>
    public static string Word(this ApiScope scope) => scope switch
    {
        ApiScope.Compute => "compute",
        ApiScope.Patients => "patients:read",
        ApiScope.Visits => "visits:read",
        _ => throw new ArgumentOutOfRangeException(nameof(scope), scope, "No such scope."),
    };

    /// <summary>What it opens, for whoever gives it.</summary>
    public static string Means(this ApiScope scope) => scope switch
    {
        ApiScope.Compute => "solve, compare, forecast and judge cases that the client sends; reads no record",
        ApiScope.Patients => "find patients and read who they are, their alerts and appliances",
        ApiScope.Visits => "read visits, booked and signed",
        _ => throw new ArgumentOutOfRangeException(nameof(scope), scope, "No such scope."),
    };
}
