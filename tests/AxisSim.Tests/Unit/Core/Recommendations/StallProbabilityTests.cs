using AxisSim.Core.Mount;
using AxisSim.Core.Questions;
using AxisSim.Core.Recommendations;
using AxisSim.Core.Sky;

namespace AxisSim.Tests.Unit.Core.Recommendations;

/// <summary>Frequencies of failure against a case whose threshold is known from paper.</summary>
public sealed class StallProbabilityTests
{
    private const int Samples = 400;
    private const double Clutch = 30.0;
    private const double Share = 0.2;

    // What ringing is left on the mesh moves the threshold by a tenth of a N m of 30.
    private const double ThresholdSlack = 0.005;

    /// <summary>
    /// The clutch slips when the load on it passes 30 N m, and nothing but an imbalance of 30 N m +-20 % loads it: f above 1 less the inertia's share,
    /// 6 kg m2 x 0.02 rad/s2 (the peak of a ramp whose jerk lasts for all of it) = 0.12 of 30 N m: 0.996. Uniform: P = (1.2 - 0.996)/0.4 = 0.51. Detent torque and ringing are kept out.
    /// </summary>
    [Fact]
    public void A_failure_that_hangs_on_one_uniform_quantity_is_as_frequent_as_its_range_says()
    {
        var tolerances = new Tolerances { ImbalanceShare = Share, FrictionShare = 0.0, ColdShare = 0.0, SupplyShare = 0.0, MotorTorqueShare = 0.0, InertiaShare = 0.0 };
        (MountSetup setup, CheckMove move, AxisSettings settings) = Case();
        const double Threshold = 1.0 - (6.0 * 0.02 / Clutch);
        StallProbability answer = StallProbability.Of(new Asker(new QuestionOptions()), setup, settings, [move], tolerances, Samples, seed: 7);
        ToleranceFactors[] drawn = StallProbability.Draw(tolerances, Samples, seed: 7);
        int above = drawn.Count(f => f.Imbalance > Threshold + ThresholdSlack), below = drawn.Count(f => f.Imbalance < Threshold - ThresholdSlack);
        Assert.InRange(answer.Failed, above, Samples - below);
        Assert.True(Samples - below - above < 20, "the threshold is known well enough for the test to mean something");

        // Four standard deviations of the binomial.
        double p = (1.0 + Share - Threshold) / (2.0 * Share), sigma = Math.Sqrt(p * (1.0 - p) / Samples);
        Assert.InRange((double)answer.Failed / Samples, p - (4.0 * sigma), p + (4.0 * sigma));
        Assert.Equal(ClopperPearson.Upper(answer.Failed, Samples, 0.95), answer.UpperBound);
    }

    [Fact]
    public void A_draw_is_its_seeds_and_within_its_ranges()
    {
        var tolerances = new Tolerances();
        Assert.Equal(StallProbability.Draw(tolerances, 50, 3), StallProbability.Draw(tolerances, 50, 3));
        Assert.NotEqual(StallProbability.Draw(tolerances, 50, 3), StallProbability.Draw(tolerances, 50, 4));
        ToleranceFactors[] uniform = StallProbability.Draw(tolerances, 4000, 1);
        Assert.All(uniform, f => Assert.InRange(f.Friction, 0.7, 1.3));

        // Mean and standard deviation of a uniform and of a normal quantity, to four standard errors.
        Check(uniform, 0.3 / Math.Sqrt(3.0));
        Check(StallProbability.Draw(tolerances with { Distribution = ToleranceDistribution.Normal }, 4000, 1), 0.15);
    }

    private static void Check(ToleranceFactors[] drawn, double deviation)
    {
        double mean = drawn.Average(f => f.Friction), spread = Math.Sqrt(drawn.Average(f => Math.Pow(f.Friction - mean, 2)));
        Assert.Equal(1.0, mean, 4.0 * deviation / Math.Sqrt(drawn.Length));
        Assert.Equal(deviation, spread, 4.0 * deviation / Math.Sqrt(2.0 * drawn.Length));
    }

    private static (MountSetup Setup, CheckMove Move, AxisSettings Settings) Case()
    {
        MountSetup read = Setups.Of("nominal", $"polar.clutch.slip_torque={Clutch} N*m", "polar.axis.friction=0 N*m", "polar.axis.viscous=0 N*m*s/rad",
            "polar.motor.detent_torque=0 N*m", "polar.drive.damping=3e-3 N*m*s/rad", "polar.motion.shape=s-curve", "polar.motion.jerk_share=0.5");

        // Level, opposing, and over 4 degrees as good as constant (cos 2 deg = 0.9994).
        MountSetup setup = read with { Load = read.Load with { PolarGravity = [-Clutch, 0.0, 0.0, 0.0, 0.0, 0.0] } };
        var move = new CheckMove(CheckMoveKind.OpposedAtStart, MountAxis.Polar, PierSide.West, new MountPose(-0.5 * Setups.Degree, 0.0), new MountPose(0.5 * Setups.Degree, 0.0));
        AxisSettings settings = AxisSettings.Of(setup, MountAxis.Polar) with { SlewRateRadiansPerSecond = 0.01, RampSeconds = 1.0, ChangeoverRadiansPerSecond = double.PositiveInfinity };
        return (setup, move, settings);
    }
}
