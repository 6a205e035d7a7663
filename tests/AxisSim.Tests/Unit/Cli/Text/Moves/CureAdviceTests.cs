using AxisSim.Cli.Text.Moves;
using AxisSim.Core.Mount;
using AxisSim.Core.Payloads;
using AxisSim.Core.Questions;
using AxisSim.Core.Sky;
using AxisSim.Core.Studies;
using AxisSim.Files.Scenarios;
using AxisSim.Tests.Invented;

namespace AxisSim.Tests.Unit.Cli.Text.Moves;

/// <summary>What a cure suggests must be a setting that the reader takes, and must mean what was found to arrive.</summary>
public sealed class CureAdviceTests
{
    // Suggestions carry four digits, rounded to the side that arrives.
    private const double FourDigits = 1e-3;

    private static readonly string Nominal = Repository.PathOf("scenarios", "nominal.toml");

    [Fact]
    public void A_longer_ramp_is_read_back() =>
        Assert.Equal(1.4, Apply(Advice(CureKind.LongerRamp, 1.0, 1.4)).Motion.Ramp.Seconds);

    [Fact]
    public void With_an_acceleration_in_the_scenario_the_ramp_becomes_an_acceleration()
    {
        // 3 deg/s in 1.4 s is 2.142857 deg/s^2; the suggestion must not be steeper.
        MoveReport report = SampleReports.Arriving();
        report = report with { Setup = report.Setup with { Polar = SampleReports.Model(Ramp.OfAcceleration(3.0 * Math.PI / 180.0)) } };
        CureAdvice advice = CureAdvices.Advice(report, MountAxis.Polar, new Cure(CureKind.LongerRamp, 1.0, 1.4, 1.4), 1.4);
        Assert.Equal(["polar.motion.acceleration=2.142 deg/s^2"], advice.Settings);
        Assert.Null(Apply(advice).Motion.Ramp.Seconds);
    }

    [Fact]
    public void A_lower_slew_rate_is_read_back_and_not_faster()
    {
        double rate = 0.0412345678;
        double read = Apply(Advice(CureKind.LowerSlewRate, 0.05, rate)).Motion.SlewRateRadiansPerSecond;
        Assert.InRange(read, rate * (1.0 - FourDigits), rate);
    }

    [Fact]
    public void More_current_is_peak_current_and_not_less()
    {
        double read = Apply(Advice(CureKind.MoreCurrent, 1.2, 1.4142135)).Drive.SlewCurrentAmperes;
        Assert.InRange(read, 1.4142135, 1.4142135 * (1.0 + FourDigits));
    }

    [Fact]
    public void A_changeover_is_read_back_at_the_motor() =>
        Assert.InRange(Apply(Advice(CureKind.Changeover, 20.0, 28.27)).Drive.ChangeoverRadiansPerSecond, 28.27 * (1.0 - FourDigits), 28.27 * (1.0 + FourDigits));

    [Fact]
    public void No_changeover_is_never() =>
        Assert.Equal(double.PositiveInfinity, Apply(Advice(CureKind.Changeover, 20.0, double.PositiveInfinity)).Drive.ChangeoverRadiansPerSecond);

    [Fact]
    public void A_higher_voltage_takes_a_brake_limit_with_it()
    {
        AxisModel read = Apply(Advice(CureKind.MoreVoltage, 24.0, 36.0));
        Assert.Equal(36.0, read.Drive.SupplyVolts);
        
        // The limit of the scenario keeps its ratio to the voltage: 30 V x 36/24.
        Assert.Equal(45.0, read.Drive.BrakeLimitVolts, 9);
    }

    [Fact]
    public void A_lumped_imbalance_is_scaled_and_keeps_its_sign()
    {
        CureAdvice advice = Advice(CureKind.BetterBalance, 2.57, 1.285);
        ScenarioResult result = ScenarioReader.ReadFile(Nominal, [.. advice.Settings]);
        Assert.Equal(-2.0, Assert.IsType<LumpedLoad>(result.Scenario!.PolarLoad).ImbalanceNewtonMetres, 6);
    }

    [Fact]
    public void With_bodies_better_balance_moves_the_counterweight_where_that_is_enough()
    {
        // Paper: 20 kg x 0.3 m = 14 kg x d, so d = 0.4286 m; to a millimetre, 14 kg x 0.4 mm x g x cos 54.4 deg = 0.03 N m remain.
        MoveReport report = SampleReports.Stalling();
        var cure = new Cure(CureKind.BetterBalance, 9.96, 6.0, 5.4);
        Assert.Equal(["counterweight.distance=0.429 m"], CureAdvices.Advice(report, MountAxis.Polar, cure, 6.0).Settings);
        CureAdvice finer = CureAdvices.Advice(report, MountAxis.Polar, cure, 0.01);
        Assert.Empty(finer.Settings);
        Assert.Contains("axissim balance \"my mount.toml\" --set \"polar.motion.ramp_time=2 s\"", finer.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Better_balance_names_the_nearest_place_of_the_counterweight_too()
    {
        // Paper: at most 6 N m at polar -5 deg, where the bar hangs most across: (6 kg m - 14 kg x d) x g cos 54.4 deg cos 5 deg = 6 N m at d = 0.3532 m.
        var cure = new Cure(CureKind.BetterBalance, 9.96, 6.0, 5.4);
        string sentence = CureAdvices.Advice(SampleReports.Stalling(), MountAxis.Polar, cure, 6.0).Sentence;
        Assert.Contains("does that from 0.354 m on from the polar axis instead of 0.3 m, and balances best at 0.429 m", sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void A_firmer_clutch_is_read_back_and_not_weaker()
    {
        CureAdvice advice = Advice(CureKind.FirmerClutch, 60.0, 71.23456);
        Assert.InRange(Apply(advice).Train.ClutchNewtonMetres, 71.23456, 71.23456 * (1.0 + FourDigits));
        Assert.Contains("no more than its maker allows", advice.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_kind_of_cure_has_words_of_its_own_whether_it_helps_or_not()
    {
        Cure[] cures = [.. Enum.GetValues<CureKind>().Select(kind => new Cure(kind, 1.0, 1.1, 1.1))];
        Assert.Distinct(cures.Select(CureAdvices.NoHelp));
        Assert.Distinct(cures.Select(cure => CureAdvices.Advice(SampleReports.Arriving(), MountAxis.Polar, cure, 1.1).Sentence));
    }

    private static CureAdvice Advice(CureKind kind, double from, double to) =>
        CureAdvices.Advice(SampleReports.Arriving(), MountAxis.Polar, new Cure(kind, from, to, to), to);

    private static AxisModel Apply(CureAdvice advice)
    {
        ScenarioResult result = ScenarioReader.ReadFile(Nominal, [.. advice.Settings]);
        Assert.True(result.Scenario is not null, string.Join('\n', result.Problems));
        return result.Scenario.Setup.Axis(MountAxis.Polar);
    }
}
