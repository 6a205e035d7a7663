using AxisSim.Core.Drives;
using AxisSim.Core.Dynamics;
using AxisSim.Core.Motors;
using AxisSim.Tests.Assemblies;

namespace AxisSim.Tests.Published;

/// <summary>The two-phase machine and its pull-out torque against published values and closed forms.</summary>
public sealed class StepperMachines
{
    /// <summary>
    /// Simon, Optimal State Estimation (Wiley 2006), MotorSim.m: two-phase permanent-magnet machine, R = 1.9, L = 0.003, lambda = 0.1, J = 0.00018, B = 0.001,
    /// u = (sin 2 pi t, cos 2 pi t). Published steady state: w = -6.2832, current 0.3708 A (Euler steps of 0.0005 s). Its torque carries a factor 1.5,
    /// folded here into J and B.
    /// </summary>
    [Fact]
    public void SimonSteadyState()
    {
        const double Step = 100e-6;
        var law = new TwoPhaseLaw(1.0, 0.1, 0.0);

        // sin(2 pi t) and cos(2 pi t) are the cosine and sine of pi/2 - 2 pi t: a field that turns backwards.
        var motor = new SineVoltageStepper(law, 1.9, 0.003, 1.0, Math.PI / 2, Step);
        var parameters = new AxisParameters { RotorInertia = 0.00018 / 1.5, RotorViscous = 0.001 / 1.5 };
        var machine = new AxisDynamics<SineVoltageStepper, NoLoad>(parameters, motor, default, default);
        double most = 0.0;
        double speed = 0.0;
        double atPeak = 0.0;
        Stepping.Run(ref machine, Step, 10.0, t => -2.0 * Math.PI * t, (double t, ref AxisDynamics<SineVoltageStepper, NoLoad> d) =>
        {
            if (t > 9.0)
            {
                double current = d.Motor.Reading.CurrentA;
                atPeak = current > most ? t : atPeak;
                most = Math.Max(most, current);
                speed = d.State.RotorSpeed;
            }
        });
        Assert.Equal(-6.2832, speed, 1e-4);
        Assert.Equal(0.3708, most, 1e-4);
        Assert.Equal(1.36 - 1.0, atPeak - Math.Floor(atPeak), 0.005); // published i_a = 0.3708 cos(2 pi (t - 1.36)), two decimals; exact shift 0.3587

        // Published theta = -6.2835 t + 2.3679 with Euler's error in both figures; recomputed without it the phase is 2.3672.
        double phase = machine.State.Rotor + (2.0 * Math.PI * 10.0);
        Assert.Equal(2.3672, phase - (2.0 * Math.PI * Math.Round((phase - 2.3672) / (2.0 * Math.PI))), 2e-3);
    }

    /// <summary>
    /// Pull-out under sinusoidal voltage (Acarnley, Stepping Motors, chapter 5, and synchronous-machine theory; numbers derived) for the parameter set of Bodson and Chiasson
    /// (from memory): L 1.5 mH, R 0.55 ohm, Km 0.19, Nr 50, 24 V peak.
    /// </summary>
    [Theory]
    [InlineData(1, 8.150445)]
    [InlineData(10, 4.673405)]
    [InlineData(50, 1.134020)]
    [InlineData(100, 0.571263)]
    [InlineData(200, 0.286171)]
    public void PullOutUnderSinusoidalVoltage(double speed, double torque)
    {
        Assert.Equal(torque, PullOutLaw.UnderVoltage(0.19, 0.55, 1.5e-3, 50, 24, speed), 1e-6);

        // By scan of the load angle.
        double scanned = Enumerable.Range(0, 100001).Max(i => PullOutLaw.UnderVoltageAt(0.19, 0.55, 1.5e-3, 50, 24, speed, Math.PI * 2.0 * i / 100000));
        Assert.Equal(torque, scanned, 1e-6);

        // By simulation: the rotor turned steadily at a lag; mean torque of the settled last turns; the lag scanned around its best. The promise is 0.1 %.
        double simulated = BestLag(lag => Held(
            speed,
            lag,
            new SineVoltageStepper(new TwoPhaseLaw(50, 0.19, 0.0), 0.55, 1.5e-3, 24, 0.0, StepFor(speed)),
            StepFor(speed)));
        Assert.Equal(torque, simulated, 1e-3 * torque);
    }

    /// <summary>
    /// The chopper against its two bounds, for the same motor (24 V): with 12 A at 100 rad/s the voltage governs and the full-stepped torque is the closed form with the square wave's
    /// fundamental 4 Vdc/pi, 0.7369 N m (derived by simulation elsewhere); with 3 A at low speed the current governs.
    /// </summary>
    [Fact]
    public void ChopperAtTheVoltageBound()
    {
        double bound = PullOutLaw.UnderVoltage(0.19, 0.55, 1.5e-3, 50, PullOutLaw.SquareWaveFundamental * 24, 100);
        Assert.Equal(0.7369, bound, 2e-3);
        Assert.Equal(0.7369, ChopperTorque(12, 100, full: true), 5e-3);
    }

    /// <summary>At 50 rad/s with 3 A, microstepped, the current governs: 0.557 N m by simulation elsewhere, just below Km I = 0.57, where voltage alone allows 1.134.</summary>
    [Fact]
    public void ChopperAtTheCurrentBound()
    {
        double torque = ChopperTorque(3, 50, full: false);
        Assert.Equal(0.557, torque, 0.015);
        Assert.InRange(torque, 0.0, 0.19 * 3);
    }

    /// <summary>Over the speed range the simulated torque never passes the two bounds together, and meets the current bound at low speed: Km I microstepped, 4/pi Km I full-stepped.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void ChopperOverTheSpeedRange(bool full)
    {
        const double Amperes = 3.0;
        double current = Amperes * (full ? PullOutLaw.SquareWaveFundamental : 1.0);
        foreach (double speed in new[] { 1.0, 3.0, 10.0, 30.0, 60.0, 100.0, 150.0, 250.0 })
        {
            double bound = PullOutLaw.UnderCurrentAndVoltage(0.19, 0.55, 1.5e-3, 50, current, PullOutLaw.SquareWaveFundamental * 24, speed);
            double torque = ChopperTorque(Amperes, speed, full);
            Assert.True(torque <= 1.003 * bound, $"{torque} N m at {speed} rad/s is above the bound {bound}"); // 0.3 %: ripple that a window of whole turns leaves
            if (speed <= 3.0)
            {
                Assert.Equal(0.19 * current, torque, 0.02 * torque); // the regulator's 100 us take up to 1 % of the square wave
            }

            // Harmonics and the finite rise of the current cost up to a third around the corner, little on either side.
            Assert.True(torque >= 0.6 * bound, $"{torque} N m at {speed} rad/s is far below the bound {bound}");
        }
    }

    /// <summary>Rotor resonance <c>sqrt(Nr T/J)/2 pi</c> (Jones, University of Iowa, stepping motor physics): two phases on at rated current, detent off, load free.</summary>
    [Fact]
    public void RotorResonance()
    {
        const double Step = 10e-6;
        StepperMotor motor = BenchmarkCase.Motor with { DetentTorqueNewtonMetres = 0, ViscousNewtonMetreSecondsPerRadian = 0, CoulombTorqueNewtonMetres = 0 };
        double expected = Math.Sqrt(100 * 0.40 / 6e-6) / (2.0 * Math.PI); // 410.94 Hz by hand
        double rest = Math.PI / 4 / 100;
        var command = new PhaseCommand(new MicrostepTable(64), 100, 1.0, [new DriveEvent(0, 1.5, true)]);
        var law = new ChopperStepper(motor, BenchmarkCase.Drive with { RegulatorSeconds = 1e-6, SupplyVolts = 1000 }, command, new WindingHeat(20, 0, 1), Step);
        law.SetCurrents(1.5, 1.5);
        var rotor = new AxisDynamics<ChopperStepper, NoLoad>(new AxisParameters { RotorInertia = 6e-6 }, law, default, new AxisState { Rotor = rest + 1e-4 });
        var crossings = new List<double>();
        double before = 1e-4;
        Stepping.Run(ref rotor, Step, 0.1, _ => rest, (double t, ref AxisDynamics<ChopperStepper, NoLoad> d) =>
        {
            double now = d.State.Rotor - rest;
            if (before * now < 0.0)
            {
                crossings.Add(t - (Step * now / (now - before)));
            }

            before = now;
        });
        Assert.Equal(410.94, expected, 0.01);
        Assert.Equal(expected, (crossings.Count - 1) / 2.0 / (crossings[^1] - crossings[0]), 1e-3 * expected); // swing of 0.01 electrical rad; the regulator damps a little
    }

    private static double StepFor(double speed) => Math.Min(50e-6, 0.1 / (50 * speed));

    private static double ChopperTorque(double amperes, double speed, bool full)
    {
        double step = StepFor(speed);
        var motor = new StepperMotor
        {
            StepsPerRevolution = 200,
            HoldingTorqueNewtonMetres = 0.19 * Math.Sqrt(2) * amperes,
            RatedCurrentAmperes = amperes,
            ResistanceOhms = 0.55,
            InductanceHenries = 1.5e-3,
            RotorInertiaKilogramSquareMetres = 4.5e-5,
        };
        var drive = new ChopperDrive { SupplyVolts = 24, SlewCurrentAmperes = amperes, TrackingCurrentAmperes = amperes, HoldingCurrentAmperes = amperes, MicrostepsPerFullStep = 256, RegulatorSeconds = 100e-6 };
        return BestLag(lag =>
        {
            var command = new PhaseCommand(new MicrostepTable(256), 50, 1.0, [new DriveEvent(0, amperes, full)]);
            return Held(speed, lag, new ChopperStepper(motor, drive, command, new WindingHeat(20, 0, 1), step), step);
        });
    }

    /// <summary>Greatest of a smooth function of the lag: a coarse scan, then finer about its best.</summary>
    private static double BestLag(Func<double, double> torque)
    {
        double best = 0.0;
        double centre = 0.5 * Math.PI;
        double width = Math.PI;
        for (int round = 0; round < 5; round++)
        {
            (double lag, double value) = Enumerable.Range(-8, 17).Select(i => centre + (width * i / 8.0)).Select(l => (l, torque(l))).MaxBy(x => x.Item2);
            (centre, best) = (lag, Math.Max(best, value));
            width *= 0.2;
        }

        return best;
    }

    /// <summary>Mean torque over the last electrical turns of a rotor that turns steadily behind its command.</summary>
    private static double Held<TMotor>(double speed, double lagElectrical, TMotor motor, double step)
        where TMotor : struct, IMotorLaw
    {
        var start = new AxisState { Rotor = -lagElectrical / 50.0, RotorSpeed = speed };
        var machine = new AxisDynamics<TMotor, NoLoad>(new AxisParameters { RotorInertia = double.PositiveInfinity }, motor, default, start);
        double turn = 2.0 * Math.PI / (50.0 * speed);
        double settle = Math.Max(0.03, turn); // ten time constants L/R
        double window = turn * Math.Ceiling(0.05 / turn);
        double sum = 0.0;
        double time = 0.0;
        Stepping.Run(ref machine, step, settle + window, t => speed * t, (double t, ref AxisDynamics<TMotor, NoLoad> d) =>
        {
            if (t > settle)
            {
                sum += d.MotorTorque * step;
                time += step;
            }
        });
        return sum / time;
    }
}
