using System.Globalization;
using AxisSim.Core.Motors;
using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;
using AxisSim.Core.Studies;
using AxisSim.Files.Scenarios;
using AxisSim.Tests.Assemblies;

namespace AxisSim.Tests.Unit.Core.Studies;

/// <summary>Bands of growing swings against moves of the whole axis, with mesh, backlash, friction and imbalance.</summary>
public sealed class SwingStudyTests
{
    private static readonly double[] s_about = [.. Enumerable.Range(0, 33).Select(i => 6.0 + (0.25 * i))];
    private static readonly string[] s_micro = ["polar.drive.changeover=never", "polar.drive.damping_share=0.02"];
    private static readonly string[] s_full = ["polar.drive.damping_share=0.05"];

    /// <summary>The detent torque, met twice in a swing, drives it (parametric resonance): at half the rate of full steps, in one band of microstepping.</summary>
    [Fact]
    [Trait("speed", "slow")]
    public void Microstepped_the_whole_axis_swings_in_the_band_and_not_beside_it()
    {
        MountSetup setup = Nominal(s_micro);
        SwingBand band = Assert.Single(SwingStudy.Bands(setup, MountAxis.Polar, fullStepping: false, s_about));
        double steps = band.WorstRadiansPerSecond / setup.Polar!.Motor.FullStepRadians;
        Assert.Equal(0.5 * steps, band.Worst!.Value.FrequencyHertz, 0.1);

        // Peak to peak, electrical rad: beside the band what the steps leave, 0.04; in it, until the field's own curve holds it.
        foreach (double speed in new[] { 0.98 * band.FromRadiansPerSecond, 1.02 * band.ToRadiansPerSecond })
        {
            Assert.InRange(Swing(Slewing(speed, s_micro)), 0.0, 0.1);
        }

        foreach (double speed in new[] { 1.02 * band.FromRadiansPerSecond, band.WorstRadiansPerSecond, 0.98 * band.ToRadiansPerSecond })
        {
            Assert.InRange(Swing(Slewing(speed, s_micro)), 0.5, 2.0);
        }
    }

    /// <summary>The low-speed resonance of full steps: the drive begins to full-step at the speed itself, and loses step there, damped as drives usually are.</summary>
    [Fact]
    [Trait("speed", "slow")]
    public void Full_stepped_the_whole_axis_loses_step_in_the_band_and_keeps_it_beside_it()
    {
        MountSetup setup = Nominal(s_full);
        SwingBand band = Assert.Single(SwingStudy.Bands(setup, MountAxis.Polar, fullStepping: true, [.. Enumerable.Range(0, 13).Select(i => 4.0 + (0.5 * i))]));
        Assert.InRange(band.FromRadiansPerSecond, 4.0, 5.5);
        Assert.InRange(band.ToRadiansPerSecond, 6.0, 7.0);
        AxisResult At(double speed) => Slewing(speed, [.. s_full, string.Create(CultureInfo.InvariantCulture, $"polar.drive.changeover={0.97 * speed:R} rad/s")]);
        Assert.Equal(Verdict.Stalls, At(0.5 * (band.FromRadiansPerSecond + band.ToRadiansPerSecond)).Outcome.Verdict);
        Assert.Equal(Verdict.Arrives, At(0.9 * band.FromRadiansPerSecond).Outcome.Verdict);
        Assert.Equal(Verdict.Arrives, At(1.1 * band.ToRadiansPerSecond).Outcome.Verdict);
    }

    [Fact]
    public void The_speeds_asked_for_are_looked_at_and_no_others()
    {
        MountSetup setup = Nominal(s_micro);
        SwingBand dense = Assert.Single(SwingStudy.Bands(setup, MountAxis.Polar, false, s_about));
        SwingBand few = Assert.Single(SwingStudy.Bands(setup, MountAxis.Polar, false, [1e-3, 8.0, 10.8, 14.0]));

        // The edges are searched between what was asked for, to a thousandth.
        Assert.Equal(dense.FromRadiansPerSecond, few.FromRadiansPerSecond, 2e-3 * dense.FromRadiansPerSecond);
        Assert.Equal(dense.ToRadiansPerSecond, few.ToRadiansPerSecond, 2e-3 * dense.ToRadiansPerSecond);
        Assert.Equal(10.8, few.WorstRadiansPerSecond);
        SwingBand last = Assert.Single(SwingStudy.Bands(setup, MountAxis.Polar, false, [8.0, 10.8]));
        Assert.Equal(10.8, last.ToRadiansPerSecond);
        Assert.Empty(SwingStudy.Bands(setup, MountAxis.Polar, false, [8.0, 14.0]));
        Assert.Empty(SwingStudy.Bands(setup, MountAxis.Polar, false, []));
    }

    /// <summary>Near its resonance the detent swings the rotor by 0.4 rad to either side, and yet it runs alike from step to step: no band, as the moves have it.</summary>
    [Fact]
    public void A_driven_swing_that_decays_is_no_band()
    {
        MountSetup setup = Nominal(s_micro);
        Assert.Empty(SwingStudy.Bands(setup, MountAxis.Polar, false, [.. Enumerable.Range(0, 12).Select(i => 5.0 + (0.05 * i))]));
        Assert.InRange(Swing(Slewing(5.4, s_micro)), 0.6, 0.9);
    }

    /// <summary>Close enough together for a band of a tenth of its speed, from where a step takes two and a half swings up to the top.</summary>
    [Fact]
    public void Speeds_go_up_to_the_top_in_equal_ratios()
    {
        MountSetup setup = Nominal([]);
        IReadOnlyList<double> speeds = SwingStudy.Speeds(setup, MountAxis.Polar, 56.0);
        double hertz = Math.Sqrt(100.0 * 0.4 / Math.Sqrt(2.0) / setup.Polar!.RotorSideInertiaKilogramSquareMetres) / (2.0 * Math.PI);
        Assert.Equal(0.4 * hertz * setup.Polar.Motor.FullStepRadians, speeds[0], 1e-6);
        Assert.Equal(56.0, speeds[^1], 1e-9);
        Assert.All(speeds.Zip(speeds.Skip(1)), pair => Assert.InRange(pair.Second / pair.First, 1.01, 1.03));
        Assert.Empty(SwingStudy.Speeds(setup, MountAxis.Polar, 1.0));
    }

    [Fact]
    public void The_easiest_load_of_a_move_is_the_hardest_of_the_other_way()
    {
        var helping = new SteadyLoad(Nominal([]), MountAxis.Polar);
        var opposing = new SteadyLoad(ScenarioReader.ReadFile(Repository.PathOf("scenarios", "nominal-opposing.toml"), []).Scenario!.Setup, MountAxis.Polar);
        Assert.Equal(opposing.Torque(0.05) - opposing.Friction - 0.005, helping.Friction + 0.005 - helping.LeastTorque(0.05), 1e-9);
        Assert.True(helping.LeastTorque(0.05) < helping.Torque(0.05));
    }

    /// <summary>2e4/720^2 N m/rad of the mesh at the motor, 100 x 0.189 x 1.5 N m/rad of the field; at 27 : 1 it is as stiff as the field.</summary>
    [Fact]
    public void The_share_of_the_train_tells_where_the_load_takes_part()
    {
        Assert.Equal(2e4 / (720.0 * 720.0) / (100.0 * 0.4 / Math.Sqrt(2.0)), SwingStudy.TrainStiffnessShare(Nominal([]), MountAxis.Polar), 1e-6);
        Assert.InRange(SwingStudy.TrainStiffnessShare(Nominal(["polar.stages.belt.ratio=27/144"]), MountAxis.Polar), 0.9, 1.05);
    }

    private static MountSetup Nominal(IReadOnlyList<string> settings) => ScenarioReader.ReadFile(Repository.PathOf("scenarios", "nominal.toml"), settings).Scenario!.Setup;

    private static AxisResult Slewing(double speed, string[] settings)
    {
        double rate = speed / 720.0 * 180.0 / Math.PI;
        string[] move = ["move.end_polar=8 deg", string.Create(CultureInfo.InvariantCulture, $"polar.motion.slew_rate={rate:R} deg/s")];
        return MoveStudy.Run(Nominal([.. settings, .. move]), MountAxis.Polar, new MoveOptions { Explain = false });
    }

    /// <summary>Greatest swing of the load angle within a stretch of the trace, in the third quarter of the slew, which is at the steady rate; electrical rad.</summary>
    private static double Swing(AxisResult result)
    {
        Trace trace = result.Trace;
        TraceRange lag = trace[TraceQuantity.LoadAngleRadians];
        double slew = result.Outcome.SlewSeconds;
        return Enumerable.Range(0, trace.Count)
            .Where(i => trace.ToSeconds[i] > 0.5 * slew && trace.ToSeconds[i] < 0.75 * slew)
            .Max(i => lag.Greatest[i] - lag.Least[i]);
    }
}
