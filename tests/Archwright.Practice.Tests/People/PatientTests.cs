using Archwright.Practice.People;

namespace Archwright.Practice.Tests.People;

/// <summary>Age, search name and alerts of a patient. Rests on the calendar.</summary>
[Trait("basis", "law")]
public sealed class PatientTests
{
    [Theory]
    [InlineData("2012-03-03", "2026-03-02", 13)]
    [InlineData("2012-03-02", "2026-03-02", 14)]
    [InlineData("2012-02-29", "2026-02-28", 14)] // who is born on a leap day has a birthday on 28 February
    [InlineData("2012-02-29", "2028-02-28", 15)]
    public void A_year_is_added_on_the_birthday(string born, string day, int age)
    {
        Patient patient = Patient.Create(
            Samples.Details with { BornOn = Date(born) }, practiceIsDemo: true, Samples.Today);

        Assert.Equal(age, patient.AgeOn(Date(day)));
    }

    [Theory]
    [InlineData("  Inés   VALDORO ", "ines valdoro")]
    [InlineData("Mei-Lin", "mei-lin")]
    [InlineData("Åse Łukasz Groß", "ase lukasz gross")]
    public void Names_are_found_without_accents_and_capitals(string typed, string compared) =>
        Assert.Equal(compared, Patient.SearchText(typed));

    [Fact]
    public void An_ended_alert_no_longer_holds_but_stays_readable()
    {
        Patient patient = Samples.Patient();
        Alert alert = patient.Raise(AlertKind.Nickel, "Rash.", Samples.Today.AddDays(-9));

        patient.End(alert.Id, Samples.Today, "Patch test negative.", Samples.Orthodontist);

        Assert.Empty(patient.AlertsOn(Samples.Today));
        Assert.Single(patient.AlertsOn(Samples.Today.AddDays(-1)));
        Assert.Equal("Patch test negative. (Dr Iva Lund)", Assert.Single(patient.Alerts).EndedBecause);
    }

    private static DateOnly Date(string text) =>
        DateOnly.ParseExact(text, "yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);
}
