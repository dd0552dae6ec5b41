using Archwright.Treatment.Movement;

namespace Archwright.Treatment.Tests.Movement;

/// <summary>The dose–response against J. C. Nickel et al., Am J Orthod Dentofacial Orthop 2014;145(4 Suppl):S74–S81
/// (found): mean speeds of upper canines in translation, standard error 0.004 mm/day. The law was fitted on these
/// five, so this shows that the fit is good, not that it predicts.</summary>
public sealed class MovementLawTests
{
    private const double TwoStandardErrors = 0.008;

    [Theory, Trait("basis", "published")]
    [InlineData(4, 0.028)]
    [InlineData(13, 0.040)]
    [InlineData(26, 0.050)]
    [InlineData(52, 0.054)]
    [InlineData(78, 0.061)]
    public void A_translated_canine_moves_as_fast_as_measured(double stress, double speed) =>
        Assert.InRange(MovementLaw.Speed(stress), speed - TwoStandardErrors, speed + TwoStandardErrors);

    [Theory, Trait("basis", "published")]
    [InlineData(13)]
    [InlineData(26)]
    [InlineData(39)]
    public void Doubling_the_force_gains_a_little_and_never_doubles_the_speed(double stress) =>
        Assert.InRange(MovementLaw.Speed(2 * stress) / MovementLaw.Speed(stress), 1.05, 1.30);

    [Fact, Trait("basis", "law")]
    public void Speed_rises_with_stress_without_a_jump_and_then_stays()
    {
        double before = 0;
        for (double stress = 0; stress < 200; stress += 0.01)
        {
            double speed = MovementLaw.Speed(stress);
            Assert.InRange(speed, before, before + 2e-4);
            before = speed;
        }

        Assert.Equal(MovementLaw.GreatestSpeed, before);
    }

    [Fact, Trait("basis", "law")]
    public void No_stress_no_movement() => Assert.Equal(0, MovementLaw.Speed(0));
}
