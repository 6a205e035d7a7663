using AxisSim.Core.Dynamics;
using AxisSim.Core.Motors;
using AxisSim.Core.Outcomes;
using AxisSim.Tests.Assemblies;

namespace AxisSim.Tests.Published;

/// <summary>
/// Textbook vibration problems with the target values that a finite-element verification manual publishes for them (pymapdl, verif/vmNN.dat; each
/// names its textbook). Here: the axis on its mesh with the rotor held; pounds and inches stand for any consistent units.
/// </summary>
public sealed class TextbookVibration
{
    // Targets are printed with five digits.
    private const double Digits = 1e-5;

    /// <summary>VM73 (Tse, Morse, Hinkle 1963, p. 175, case 1): Coulomb decay; W = 10 lb, g = 386, k = 30 lb/in, F = 1.875 lb, u0 = -1 in.</summary>
    [Theory]
    [InlineData(0.09, 0.87208)]
    [InlineData(0.102, 0.83132)]
    [InlineData(0.183, -0.74874)]
    public void CoulombDecay(double time, double target)
    {
        AxisDynamics<NoMotor, FunctionLoad> mass = OnSpring(10.0 / 386.0, 30.0, coulomb: 1.875, start: -1.0);
        Stepping.Run(ref mass, 2e-6, time);
        Assert.Equal(target, mass.State.Axis, 2.0 * Digits);
    }

    /// <summary>The same: each whole cycle loses 4F/k = 0.25 in, and it ends at rest within F/k of the middle.</summary>
    [Fact]
    public void CoulombDecayEndsAtRest()
    {
        AxisDynamics<NoMotor, FunctionLoad> mass = OnSpring(10.0 / 386.0, 30.0, coulomb: 1.875, start: -1.0);
        Stepping.Run(ref mass, 10e-6, 2.0);
        double rest = mass.State.Axis;
        Assert.Equal(0.0, mass.State.AxisSpeed);
        Assert.True(Math.Abs(rest) <= 1.875 / 30.0, $"rest at {rest}");
        Stepping.Run(ref mass, 10e-6, 5.0);
        Assert.Equal(rest, mass.State.Axis); // true stick: not a bit of creep
    }

    /// <summary>VM71 (Thomson, p. 41): free decay with viscous damping; m = 0.02590673, k = 30, u0 = 1.</summary>
    [Theory]
    [InlineData(3.52636, 0.47420)]
    [InlineData(1.76318, 0.18998)]
    [InlineData(0.352636, -0.52108)]
    [InlineData(0.0, -0.99688)]
    public void ViscousDecay(double damping, double target)
    {
        AxisDynamics<NoMotor, FunctionLoad> mass = OnSpring(0.02590673, 30.0, damping, start: 1.0);
        Stepping.Run(ref mass, 5e-6, 0.09);
        Assert.Equal(target, mass.State.Axis, 2.0 * Digits);
    }

    /// <summary>VM72 (Thomson, p. 45): logarithmic decrement; c = 0.12; ratio of successive peaks 1.5350 and period 0.18507 s.</summary>
    [Fact]
    public void LogarithmicDecrement()
    {
        AxisDynamics<NoMotor, FunctionLoad> mass = OnSpring(0.02590673, 30.0, 0.12, start: 1.0);
        double before = 0.0;
        var peaks = new List<(double Time, double Value)>();
        Stepping.Run(ref mass, 2e-6, 0.5, null, (double t, ref AxisDynamics<NoMotor, FunctionLoad> d) =>
        {
            if (before > 0.0 && d.State.AxisSpeed <= 0.0)
            {
                peaks.Add((t, d.State.Axis));
            }

            before = d.State.AxisSpeed;
        });
        Assert.Equal(1.5350, peaks[0].Value / peaks[1].Value, 3e-4); // exact 1.53514
        Assert.Equal(0.18507, peaks[1].Time - peaks[0].Time, Digits);
    }

    /// <summary>VM75 (Thomson, p. 102): step of force; m = 0.5, k = 200, F = 200: u(0.2) = 1.6536 undamped, greatest 2; c = 10: 1.1531.</summary>
    [Fact]
    public void StepOfForce()
    {
        AxisDynamics<NoMotor, FunctionLoad> free = OnSpring(0.5, 200.0, force: _ => 200.0);
        Stepping.Run(ref free, 5e-6, 0.2);
        Assert.Equal(1.6536, free.State.Axis, 1e-4);
        AxisDynamics<NoMotor, FunctionLoad> damped = OnSpring(0.5, 200.0, 10.0, force: _ => 200.0);
        Stepping.Run(ref damped, 5e-6, 0.2);
        Assert.Equal(1.1531, damped.State.Axis, 1e-4);
    }

    /// <summary>VM86 (Thomson, p. 56): harmonic force 10 sin 20 t on m = 0.5, k = 200, c = 6: steady amplitude 0.0833.</summary>
    [Fact]
    public void HarmonicForce()
    {
        AxisDynamics<NoMotor, FunctionLoad> mass = OnSpring(0.5, 200.0, 6.0, force: t => 10.0 * Math.Sin(20.0 * t));
        double most = 0.0;
        Stepping.Run(ref mass, 50e-6, 6.0, null, (double t, ref AxisDynamics<NoMotor, FunctionLoad> d) => most = t > 5.0 ? Math.Max(most, d.State.Axis) : 0.0);
        Assert.Equal(0.0833, most, 1e-4);
    }

    /// <summary>VM81 (Thomson, p. 110): a mass of 0.5 falls through a gap of 1 in and meets a spring of 1973.92 lb/in: contact at 0.07198 s with 27.79 in/s, 1.5505 in at 0.1 s.</summary>
    [Fact]
    public void GapThenSpring()
    {
        var parameters = new AxisParameters { RotorInertia = double.PositiveInfinity, Mesh = new MeshContact(1973.92, 0.0, 1.0), AxisInertia = 0.5 };
        var mass = new AxisDynamics<NoMotor, FunctionLoad>(parameters, default, new FunctionLoad(axis: (_, _) => 0.5 * 386.0), default);
        double contact = 0.0;
        double speed = 0.0;
        Stepping.Run(ref mass, 1e-6, 0.1, null, (double t, ref AxisDynamics<NoMotor, FunctionLoad> d) =>
        {
            if (contact == 0.0 && d.State.Axis >= 1.0)
            {
                (contact, speed) = (t, d.State.AxisSpeed);
            }
        });
        Assert.Equal(0.07198, contact, Digits);
        Assert.Equal(27.79, speed, 0.01); // exact 27.785
        Assert.Equal(1.5505, mass.State.Axis, 2e-4);
    }

    /// <summary>VM89 (Thomson, p. 163): two masses 0.5 and 1 between springs 200, 800, 200: 2.5814 and 8.3263 Hz with ratios 0.92116 and -2.1711. Here: axis and flexible payload.</summary>
    [Theory]
    [InlineData(2.5814, 0.921165)]
    [InlineData(8.3263, -2.171165)]
    public void TwoMasses(double hertz, double ratio)
    {
        var parameters = new AxisParameters
        {
            RotorInertia = double.PositiveInfinity,
            Mesh = new MeshContact(200.0, 0.0, 0.0),
            AxisInertia = 0.5,
            PayloadInertia = 1.0,
            PayloadStiffness = 800.0,
        };
        var load = new FunctionLoad(payload: (_, x) => -200.0 * x);
        var pair = new AxisDynamics<NoMotor, FunctionLoad>(parameters, default, load, new AxisState { Axis = ratio, Payload = 1.0 });
        var crossings = new List<double>();
        double before = 1.0;
        Stepping.Run(ref pair, 20e-6, 3.0, null, (double t, ref AxisDynamics<NoMotor, FunctionLoad> d) =>
        {
            double now = d.State.Payload;
            if (before * now < 0.0)
            {
                crossings.Add(t - (20e-6 * now / (now - before)));
            }

            before = now;
        });
        Assert.Equal(hertz, (crossings.Count - 1) / 2.0 / (crossings[^1] - crossings[0]), 1e-4 * hertz);
        Assert.Equal(ratio, pair.State.Axis / pair.State.Payload, 0.01); // it stays in the mode; near a node the quotient is touchy
    }

    /// <summary>VM91 (Thomson, p. 138): pendulum of 100 in under 386 in/s2 let go at 36.8699 degrees: period 3.28284 s (small swings: 3.19806).</summary>
    [Fact]
    public void LargePendulumPeriod()
    {
        double start = 36.8699 * Math.PI / 180.0;
        var parameters = new AxisParameters { RotorInertia = double.PositiveInfinity, AxisInertia = 100.0 * 100.0 };
        var pendulum = new AxisDynamics<NoMotor, FunctionLoad>(parameters, default, new FunctionLoad(axis: (_, phi) => -386.0 * 100.0 * Math.Sin(phi)), new AxisState { Axis = start });
        double before = start;
        var downwards = new List<double>();
        Stepping.Run(ref pendulum, 100e-6, 8.0, null, (double t, ref AxisDynamics<NoMotor, FunctionLoad> d) =>
        {
            double now = d.State.Axis;
            if (before > 0.0 && now <= 0.0)
            {
                downwards.Add(t - (100e-6 * now / (now - before)));
            }

            before = now;
        });
        Assert.Equal(3.28284, downwards[1] - downwards[0], Digits);
    }

    /// <summary>
    /// Overshoot exp(-pi z/sqrt(1-z^2)) (derived from the textbook formula) and exact 2 % settle time times natural frequency (the notes' table), for a
    /// damped second-order axis; both read off the simulated axis by the program's own settle law.
    /// </summary>
    [Theory]
    [InlineData(0.1, 0.7292, 38.38)]
    [InlineData(0.2, 0.5266, 19.60)]
    [InlineData(0.3, 0.3723, 11.23)]
    [InlineData(0.5, 0.1630, 8.08)]
    [InlineData(0.7, 0.0460, 5.98)]
    [InlineData(0.9, 0.0015, 4.70)]
    public void OvershootAndSettling(double dampingRatio, double overshoot, double settle)
    {
        const double Step = 1e-3;
        AxisDynamics<NoMotor, FunctionLoad> axis = OnSpring(1.0, 1.0, 2.0 * dampingRatio, force: _ => 1.0);
        var errors = new List<double>();
        Stepping.Run(ref axis, Step, 100.0, null, (double t, ref AxisDynamics<NoMotor, FunctionLoad> d) => errors.Add(d.State.Axis));
        double[] samples = [.. errors];
        Assert.Equal(overshoot, SettleLaw.Overshoot(samples, 1.0, 1.0), 1e-4);
        Assert.Equal(settle, SettleLaw.Time(samples, Step, 1.0, 0.02)!.Value + Step, 0.006); // table to two decimals
    }

    private static AxisDynamics<NoMotor, FunctionLoad> OnSpring(double mass, double stiffness, double viscous = 0.0, double coulomb = 0.0, double start = 0.0, Func<double, double>? force = null)
    {
        var parameters = new AxisParameters
        {
            RotorInertia = double.PositiveInfinity,
            Mesh = new MeshContact(stiffness, 0.0, 0.0),
            AxisInertia = mass,
            AxisViscous = viscous,
            AxisCoulomb = coulomb,
            AxisBreakaway = coulomb,
        };
        var load = new FunctionLoad(axis: force is null ? null : (t, _) => force(t));
        return new AxisDynamics<NoMotor, FunctionLoad>(parameters, default, load, new AxisState { Axis = start });
    }
}
