using AxisSim.Core.Drives;
using AxisSim.Core.Motors;
using AxisSim.Tests.Assemblies;

namespace AxisSim.Tests.Unit.Core.Motors;

/// <summary>Linearised stability against the simulated machine, and against the published law.</summary>
public sealed class SmallSwingTests
{
    // Three times the greatest measured: the fit of a swing has as much.
    private const double GrowthShare = 0.02;
    private const double GrowthPerSecond = 0.3;
    private const double FrequencyShare = 0.001;
    private const double Inertia = 1.2e-5;
    private const double FullSquare = 4.0 / Math.PI;

    private static readonly StepperMotor Plain = BenchmarkCase.Motor with { DetentTorqueNewtonMetres = 0.0, CoulombTorqueNewtonMetres = 0.0, ViscousNewtonMetreSecondsPerRadian = 0.0 };

    private static readonly ChopperDrive Drive = BenchmarkCase.Drive with { RegulatorSeconds = 40e-6, MicrostepsPerFullStep = 1024 };

    [Theory]
    [InlineData(4.0, 0.0)]
    [InlineData(10.0, 0.05)]
    [InlineData(20.0, 0.0)]
    [InlineData(20.0, 0.05)]
    [InlineData(40.0, 0.05)]
    [InlineData(80.0, 0.0)]
    public void Under_sinusoidal_voltage_the_simulated_machine_swings_so(double speed, double load)
    {
        SmallSwing swing = SmallSwings.UnderVoltage(Plain, 12.0, Inertia, 0.0, speed, load)!.Value;
        AssertAlike(swing, SimulatedSwing.UnderVoltage(Plain, 12.0, Inertia, 0.0, speed, load, swing.FrequencyHertz, 0.05));
    }

    [Theory]
    [InlineData(false, 20.0, 0.05)] // regulated
    [InlineData(false, 40.0, 0.0)] // clamped for part of each turn
    [InlineData(false, 120.0, 0.05)]
    [InlineData(true, 10.0, 0.05)] // regulated, clamped after each edge
    [InlineData(true, 20.0, 0.0)]
    [InlineData(true, 38.0, 0.05)]
    [InlineData(true, 50.0, 0.05)]
    [InlineData(true, 80.0, 0.0)] // never reaches its current
    [InlineData(true, 120.0, 0.05)]
    public void On_a_chopper_the_simulated_machine_swings_so(bool full, double speed, double load)
    {
        // What is damped strongly dies into the noise of the fit: it is watched for a shorter time.
        SmallSwing swing = SmallSwings.OnDrive(Plain, Drive, full, Inertia, 2e-4, speed, load)!.Value;
        AssertAlike(swing, SimulatedSwing.OnDrive(Plain, Drive, full, Inertia, 2e-4, speed, load, swing.FrequencyHertz, swing.GrowthPerSecond < -20.0 ? 0.05 : 0.1));
    }

    /// <summary>With detent torque, bearings and a drive that is clamped at times: a growing swing of another motor, and one that decays.</summary>
    [Theory]
    [InlineData(80.0, 0.1)]
    [InlineData(30.0, 0.1)]
    public void A_whole_motor_swings_so(double speed, double load)
    {
        StepperMotor motor = BenchmarkCase.Motor with { StepsPerRevolution = 200, ResistanceOhms = 0.55, InductanceHenries = 1.5e-3, RatedCurrentAmperes = 2.0, HoldingTorqueNewtonMetres = 0.54 };
        ChopperDrive drive = Drive with { SlewCurrentAmperes = 2.0 };
        SmallSwing swing = SmallSwings.OnDrive(motor, drive, true, 4.5e-5, 0.0, speed, load)!.Value;
        AssertAlike(swing, SimulatedSwing.OnDrive(motor, drive, true, 4.5e-5, 0.0, speed, load, swing.FrequencyHertz, 0.2));
    }

    [Fact]
    public void Regulated_currents_damp_nothing()
    {
        SmallSwing swing = SmallSwings.OnDrive(Plain, Drive, false, Inertia, 2e-4, 20.0, 0.05)!.Value;
        Assert.Equal(-2e-4 / (2.0 * Inertia), swing.GrowthPerSecond, 1e-3);

        // Km I less the regulator's lag, less what the load takes of the stiffness.
        double held = 0.18856 * 1.5 / Math.Sqrt(1.0 + (0.08 * 0.08)), stiffness = 100.0 * Math.Sqrt((held * held) - (0.05 * 0.05));
        Assert.Equal(Math.Sqrt(stiffness / Inertia) / (2.0 * Math.PI), swing.FrequencyHertz, 0.05);
    }

    /// <summary>
    /// The detent torque <c>Td sin(4 Nr x)</c> changes the stiffness <c>Nr Km I</c> of the field by <c>4 Nr Td</c> once a full step: Mathieu's equation, whose swings of half that rate grow with a quarter
    /// of the share of change. Beyond the first order in that share, a fifth, 3 % are left.
    /// </summary>
    [Theory]
    [InlineData(0.0)]
    [InlineData(2e-4)]
    public void The_detent_drives_swings_at_half_the_rate_of_full_steps(double damping)
    {
        StepperMotor detent = Plain with { DetentTorqueNewtonMetres = 0.015 };
        double hertz = StaticTorque.ResonanceHertz(detent, StaticTorque.Peak(detent, 1.5, 0.0), Inertia), speed = 2.0 * hertz * detent.FullStepRadians;
        SmallSwing swing = SmallSwings.OnDrive(detent, Drive, false, Inertia, damping, speed, 0.0)!.Value;
        double grown = 2.0 * Math.PI * hertz * 0.015 / StaticTorque.Peak(detent, 1.5, 0.0);
        Assert.Equal(grown - (damping / (2.0 * Inertia)), swing.GrowthPerSecond, 0.03 * grown);
        Assert.Equal(hertz, swing.FrequencyHertz, 1e-3 * hertz);
    }

    [Theory]
    [InlineData(80.0, 0.05)]
    [InlineData(150.0, 0.0)]
    public void At_the_voltage_limit_full_steps_are_a_voltage_of_four_over_pi(double speed, double load)
    {
        SmallSwing chopped = SmallSwings.OnDrive(Plain, Drive, true, Inertia, 2e-4, speed, load)!.Value, fed = SmallSwings.UnderVoltage(Plain, FullSquare * 24.0, Inertia, 2e-4, speed, load)!.Value;
        Assert.Equal(fed.GrowthPerSecond, chopped.GrowthPerSecond, 2e-3 * Math.Abs(fed.GrowthPerSecond));
        Assert.Equal(fed.FrequencyHertz, chopped.FrequencyHertz, 1e-3 * fed.FrequencyHertz);
    }

    /// <summary>Slow swings, here of a great inertia: the published place of the instability, <c>Nr w = R/L</c>, and the law's worst value -Km^2/8R at sqrt(3) of it.</summary>
    [Fact]
    public void Slow_swings_are_driven_above_the_rate_of_the_windings()
    {
        const double Great = 0.5;
        double edge = 1.5 / 3e-3 / 100.0, worst = Math.Sqrt(3.0) * edge;
        Assert.Equal(0.0, SmallSwings.SlowDamping(Plain, edge), 1e-12);
        Assert.Equal(-0.18856 * 0.18856 / (8.0 * 1.5), SmallSwings.SlowDamping(Plain, worst), 1e-6);
        Assert.True(SmallSwings.SlowDamping(Plain, worst) < Math.Min(SmallSwings.SlowDamping(Plain, 0.95 * worst), SmallSwings.SlowDamping(Plain, 1.05 * worst)));
        foreach (double speed in new[] { 0.5 * edge, worst, 2.0 * edge, 4.0 * edge })
        {
            foreach (double load in new[] { 0.0, 0.1 })
            {
                SmallSwing swing = SmallSwings.UnderVoltage(Plain, 12.0, Great, 0.0, speed, load)!.Value;
                Assert.Equal(-SmallSwings.SlowDamping(Plain, speed) / (2.0 * Great), swing.GrowthPerSecond, 0.02 * Math.Abs(swing.GrowthPerSecond));
            }
        }
    }

    /// <summary>Hardly turning, a voltage-fed motor is damped by the current that its swing drives through resistance and inductance.</summary>
    [Fact]
    public void At_standstill_the_windings_damp()
    {
        const double Great = 0.01; // swings hardly damped, as the formula takes them
        SmallSwing swing = SmallSwings.UnderVoltage(Plain, 3.0, Great, 0.0, 0.01, 0.0)!.Value;
        Assert.Equal(-SmallSwings.StandstillDamping(Plain, 2.0 * Math.PI * swing.FrequencyHertz) / (2.0 * Great), swing.GrowthPerSecond, 0.005 * Math.Abs(swing.GrowthPerSecond));
    }

    [Fact]
    public void Above_the_pull_out_torque_there_is_no_steady_running()
    {
        Assert.Null(SmallSwings.UnderVoltage(Plain, 12.0, Inertia, 0.0, 40.0, 0.4));
        Assert.Null(SmallSwings.OnDrive(Plain, Drive, true, Inertia, 2e-4, 40.0, 0.4));
        Assert.Null(SmallSwings.OnDrive(Plain, Drive, false, Inertia, 2e-4, 10.0, 0.3));
    }

    /// <summary>
    /// Full steps: where the steps meet the rotor's frequency or half of it they swing it too far, however damped it usually is (simulated at 5.77 and 6.06 rad/s the
    /// unloaded rotor loses step, at 3.05 every other step differs, at 6.3 all is well); without damping also at twice its frequency, at half the rate of steps
    /// (parametric resonance), and where the supply no longer drives the current, by the windings.
    /// </summary>
    [Fact]
    [Trait("speed", "slow")]
    public void Bands_are_told_with_their_edges()
    {
        double usual = 0.05 * StaticTorque.CriticalDamping(Plain, StaticTorque.Peak(Plain, 1.5, 0.0), 6e-6);
        IReadOnlyList<double> speeds = SmallSwings.Speeds(Plain, Drive, 6e-6, 120.0);
        IReadOnlyList<SwingBand> damped = SmallSwings.Bands(Plain, Drive, true, 6e-6, usual, speeds), bare = SmallSwings.Bands(Plain, Drive, true, 6e-6, 0.0, speeds);
        Assert.All(new[] { 3.05, 5.0, 5.77, 6.06 }, speed => Assert.Contains(damped, band => band.FromRadiansPerSecond < speed && speed < band.ToRadiansPerSecond));
        Assert.InRange(damped.Max(band => band.ToRadiansPerSecond), 6.06, 6.3);
        Assert.Empty(SmallSwings.Bands(Plain, Drive, false, 6e-6, 1e-6, [.. speeds.Where(speed => speed < 60.0)]));

        SwingBand parametric = Assert.Single(bare, band => band.FromRadiansPerSecond < 12.0 && 12.0 < band.ToRadiansPerSecond);
        Assert.Equal(0.5 * parametric.WorstRadiansPerSecond / Plain.FullStepRadians, parametric.Worst!.Value.FrequencyHertz, 0.1);
        SwingBand windings = bare[^1];
        Assert.InRange(windings.FromRadiansPerSecond, 50.0, 75.0);
        Assert.Equal(120.0, windings.ToRadiansPerSecond, 1e-9);
        SmallSwing At(double speed) => SmallSwings.OnDrive(Plain, Drive, true, 6e-6, 0.0, speed, 0.0)!.Value;
        foreach (SwingBand band in new[] { parametric, windings })
        {
            Assert.True(At(0.998 * band.FromRadiansPerSecond).GrowthPerSecond < 0.0);
            Assert.True(At(1.002 * band.FromRadiansPerSecond).GrowthPerSecond > 0.0);
            Assert.Equal(At(band.WorstRadiansPerSecond), band.Worst!.Value);
        }

        // What the steps do there shows in a swing that is damped a little more than that, so that it stays small: it decays four times slower than by its damping.
        SmallSwing twelve = SmallSwings.OnDrive(Plain, Drive, true, 6e-6, 1e-3, 12.0, 0.0)!.Value;
        Assert.InRange(twelve.GrowthPerSecond, -30.0, -10.0);
        (double growth, double hertz) = SimulatedSwing.OnDrive(Plain, Drive, true, 6e-6, 1e-3, 12.0, 0.0, 400.0, 0.08);
        Assert.Equal(twelve.GrowthPerSecond, growth, 0.03 * (1e-3 / 12e-6)); // it begins with 0.1 rad, not so small
        Assert.Equal(twelve.FrequencyHertz, hertz, FrequencyShare * hertz);
    }

    private static void AssertAlike(SmallSwing expected, (double Growth, double Hertz) simulated)
    {
        Assert.Equal(expected.GrowthPerSecond, simulated.Growth, Math.Max(GrowthPerSecond, GrowthShare * Math.Abs(expected.GrowthPerSecond)));
        Assert.Equal(expected.FrequencyHertz, simulated.Hertz, FrequencyShare * expected.FrequencyHertz);
    }
}
