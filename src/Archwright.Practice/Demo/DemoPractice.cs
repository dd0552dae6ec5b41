using System.Globalization;
using Archwright.Dentition.Teeth;
using Archwright.Practice.Courses;
using Archwright.Practice.People;
using Archwright.Practice.Settings;
using Archwright.Practice.Stock;
using Archwright.Practice.Values;
using Archwright.Practice.Visits;

namespace Archwright.Practice.Demo;

/// <summary>Somebody of the demo practice, with the sign-in that the screen shows.</summary>
/// <param name="UserName">What is typed.</param>
/// <param name="Name">As shown.</param>
/// <param name="Role">What they may do.</param>
/// <param name="Part">Their part in words: "orthodontist, owner".</param>
public sealed record DemoSignIn(string UserName, string Name, StaffRole Role, string Part);

/// <summary>The invented practice: twelve patients who do not exist, their courses computed by this program. A wire's
/// dates, notes and breakages are those of the scenario; where the teeth stood at each visit is a forecast of a
/// simulated patient whose rate is hidden, read with the errors of a measurement.</summary>
public sealed record DemoPractice
{
    /// <summary>The password of all demo sign-ins. It protects nothing: nobody here exists.</summary>
    public const string Password = "fernhollow-demo";

    /// <summary>Name of the practice, and that it is a demo.</summary>
    public required PracticeSettings Settings { get; init; }

    /// <summary>Who works there.</summary>
    public required IReadOnlyList<DemoSignIn> Staff { get; init; }

    /// <summary>The patients.</summary>
    public required IReadOnlyList<Patient> Patients { get; init; }

    /// <summary>Their arches.</summary>
    public required IReadOnlyList<ArchTreatment> Treatments { get; init; }

    /// <summary>Visits past and of the day.</summary>
    public required IReadOnlyList<Visit> Visits { get; init; }

    /// <summary>The shelf.</summary>
    public required IReadOnlyList<StockLot> Lots { get; init; }

    /// <summary>Makes the practice as it stands on a day.</summary>
    /// <param name="today">The day on which it is opened.</param>
    public static DemoPractice Make(DateOnly today)
    {
        DemoFile file = DemoFile.Read();
        var computed = DemoPlaces.Read();
        DemoCourse[] courses =
            [.. Enumerable.Range(0, file.Patients.Count).Select(i => new DemoCourse(file, i, today, computed))];
        return new DemoPractice
        {
            Settings = new PracticeSettings { Name = file.Practice.Name, IsDemo = true },
            Staff = [.. file.Staff.Select(SignIn)],
            Patients = [.. courses.Select(course => course.Patient)],
            Treatments = [.. courses.SelectMany(course => course.Treatments)],
            Visits = [.. courses.SelectMany(course => course.Visits)],
            Lots = [.. file.Stock.Select(lot => Lot(lot, today))],
        };
    }

    /// <summary>The sign-ins alone, for the screen.</summary>
    public static IReadOnlyList<DemoSignIn> SignIns() => [.. DemoFile.Read().Staff.Select(SignIn)];

    internal static DemoSignIn SignIn(DemoStaff staff)
    {
        string[] names = [.. staff.Name.Split(' ').Where(name => name != "Dr")];
        StaffRole role = staff.Role.StartsWith("orthodontist", StringComparison.Ordinal) ? StaffRole.Orthodontist
            : staff.Role.StartsWith("receptionist", StringComparison.Ordinal) ? StaffRole.Reception
            : StaffRole.Assistant;
        return new DemoSignIn(names[0].ToLowerInvariant(), staff.Name, role, staff.Role);
    }

    private static StockLot Lot(DemoLot lot, DateOnly today) => StockLot.Receive(
        lot.Wire,
        lot.Arch == Jaw.Upper.Word() ? Jaw.Upper : Jaw.Lower,
        lot.Form,
        lot.Lot,
        lot.ExpiresInDays is { } days ? today.AddDays(days) : null,
        lot.OnHand,
        lot.ReorderAt);

    internal static TimeOnly Time(string text) => TimeOnly.ParseExact(text, "HH:mm", CultureInfo.InvariantCulture);

    internal static Listing<ToothNumber> Teeth(IEnumerable<ToothNumber> teeth) => Listing<ToothNumber>.Of(teeth);
}
