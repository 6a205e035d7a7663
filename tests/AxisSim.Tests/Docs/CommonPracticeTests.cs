using AxisSim.Core.Outcomes;
using AxisSim.Core.Studies;

namespace AxisSim.Tests.Docs;

/// <summary>Behaviour that is common practice, no source: see docs/paper-estimates.md for where the physics agrees and where it does not.</summary>
[Trait("speed", "slow")]
public sealed class CommonPracticeTests
{
    /// <summary>
    /// The benchmark case at half its rate with a strong imbalance, greatest in the middle of the move. Paper: 140 N m x cos 50 deg + 0.8 = 90.8 N m; over
    /// 720 x 0.45 = 324: 0.280 N m. Microstepped: 0.189 x 1.5 - 0.005 = 0.278 N m. Full-stepped: 4/pi of 0.283 less 0.005: 0.355 N m.
    /// </summary>
    public static readonly string[] Heavy = ["polar.load.imbalance=-140 N*m", "polar.load.phase=45 deg", "polar.clutch.slip_torque=150 N*m", "polar.motion.slew_rate=1.5 deg/s"];

    [Fact]
    public void A_very_heavy_load_stalls_microstepped_and_is_carried_full_stepped()
    {
        AxisOutcome micro = Run("never", Heavy);
        Assert.Equal(MoveEnd.Stalls, micro.Verdict);
        Assert.Equal(MovePhase.Slewing, micro.Loss!.Phase);
        Assert.False(micro.Loss.FullStepping);
        Assert.Equal(MoveEnd.Arrives, Run("7 rad/s", Heavy).Verdict);
    }

    [Fact]
    public void At_twice_the_rate_full_stepping_loses_step_sooner()
    {
        // 120 N m at 3 deg/s: here the supply has less to spare and full-stepping is unstable; microstepping carries what full-stepping does not.
        string[] fast = ["polar.load.imbalance=-120 N*m", .. Heavy[1..3]];
        Assert.Equal(MoveEnd.Arrives, Run("never", fast).Verdict);
        AxisOutcome full = Run("20 rad/s", fast);
        Assert.Equal(MoveEnd.Stalls, full.Verdict);
        Assert.True(full.Loss!.FullStepping);
    }

    [Fact]
    public void Microstepping_throughout_is_quieter_in_the_audible_band()
    {
        // Paper: detent torque alone is 15 mN m / sqrt 2 = 10.6 mN m in either mode. Full steps swing the field by +-45 deg (electrical) about the
        // rotor, some tenths of the load's torque on top; 64 microsteps at 60,000 a second and more are beyond hearing.
        const double Detent = 0.015 / 1.41421356, Quieter = 1.2;
        foreach ((string words, string changeover, string[] settings) in RippleTable.Cases)
        {
            double micro = RippleTable.Ripple("never", settings), full = RippleTable.Ripple(changeover, settings);
            Assert.InRange(micro, 0.0, 1.1 * Detent);
            Assert.True(full > Quieter * micro, $"{words}: {micro} and {full} N m");
        }
    }

    [Theory]
    [InlineData("polar.motion.ramp_time=2 s")]
    [InlineData("counterweight.distance=0.449 m")]
    public void A_longer_ramp_and_better_balance_cure_the_stall_of_the_demo(string setting)
    {
        Assert.Equal(MoveEnd.Stalls, Shipped.Polar("heavy-reflector-stalls", explain: false).Outcome.Verdict);
        Assert.Equal(MoveEnd.Arrives, Shipped.Polar("heavy-reflector-stalls", explain: false, setting).Outcome.Verdict);
    }

    private static AxisOutcome Run(string changeover, string[] settings)
    {
        AxisResult result = Shipped.Polar("nominal-opposing", explain: false, [.. settings, $"polar.drive.changeover={changeover}"]);
        return result.Outcome;
    }
}
