using AxisSim.Core.Dynamics;
using AxisSim.Core.Gearing;
using AxisSim.Core.Motors;
using AxisSim.Core.Sky;
using AxisSim.Tests.Assemblies;

namespace AxisSim.Tests.Published;

/// <summary>
/// Examples of the Modelica Standard Library (model text: ModelicaStandardLibrary, commit b756f9deed) against their published reference trajectories
/// (MAP-LIB_ReferenceResults, commit d6a2b9b2, Modelica/Mechanics; DASSL at tolerance 1e-6). Single points are quoted here.
/// </summary>
public sealed class ModelicaMechanics
{
    // An event is told at the end of its step of 5e-6 s (measured: 2 to 5.5e-6 s late), places and speeds differ by what the mesh yields: 1.5e-8 rad and 6e-8 to 3.5e-7 rad/s measured.
    private const double EventSeconds = 1e-5;
    private const double EventRadians = 5e-8;

    /// <summary>LossyGearDemo1: J1 = 1, J2 = 1.5, ratio 2, efficiency 0.5 both ways; 10 sin(2 pi t) on J1, -10 + 2.5 t on J2; it sticks between.</summary>
    [Fact]
    public void LossyGearSticksAndBreaksAway()
    {
        // The gear of the example is rigid; here the output hangs on a mesh so stiff and so damped that it yields by 1e-7 rad.
        const double Step = 5e-6;
        const double Stiffness = 1e8;
        double damping = 2.0 * Math.Sqrt(Stiffness / ((1.0 / 1.5) + (1.0 / 4.0)));
        var parameters = new AxisParameters
        {
            RotorInertia = 1.0, WormRatio = 2.0, Mesh = new MeshContact(Stiffness, damping, 0.0), Loss = MeshLoss.FromEfficiencies(0.5, 0.5), AxisInertia = 1.5,
        };
        var load = new FunctionLoad(rotor: (t, _) => 10.0 * Math.Sin(2.0 * Math.PI * t), axis: (t, _) => -10.0 + (2.5 * t));
        var gear = new AxisDynamics<NoMotor, FunctionLoad>(parameters, default, load, default);
        var events = new List<(double Seconds, double Radians, int Direction)>();
        double speedAtMost = 0.0, speedAtLeast = 0.0, before = 0.0;
        Stepping.Run(ref gear, Step, 0.5, null, (double t, ref AxisDynamics<NoMotor, FunctionLoad> g) =>
        {
            double now = g.State.RotorSpeed;
            if (Math.Sign(now) != Math.Sign(before))
            {
                events.Add((t, g.State.Rotor / 2.0, Math.Sign(now)));
            }

            before = now;
            speedAtLeast = Math.Abs(t - 0.04) < 0.5 * Step ? now / 2.0 : speedAtLeast;
            speedAtMost = Math.Max(speedAtMost, now / 2.0);
        });
        (double Seconds, double Radians, int Direction)[] changes = [.. events.SkipWhile(e => e.Direction != 0)];
        Assert.Equal([0, 1, 0, -1], changes.Select(e => e.Direction));
        Assert.Equal(0.0804771289481, changes[0].Seconds, EventSeconds);
        Assert.Equal(0.1995199008476, changes[1].Seconds, EventSeconds);
        Assert.Equal(0.3713427450236, changes[2].Seconds, EventSeconds);
        Assert.Equal(0.4645394616365, changes[3].Seconds, EventSeconds);
        Assert.Equal(-0.00111688794645, changes[0].Radians, EventRadians);
        Assert.Equal(0.00020835792858, changes[2].Radians, EventRadians);
        Assert.Equal(-0.0162619240, gear.State.RotorSpeed / 2.0, 1e-6);
        Assert.Equal(-0.0208414999, speedAtLeast, 2e-7); // published sample at 0.0400 s
        Assert.Equal(0.0137021233, speedAtMost, 1e-7); // published greatest sample, at 0.3135 s to four digits
    }

    /// <summary>Backlash: J = 5 on a spring-damper (c = 20e3, d = 50) through a dead zone of pi/4; phi(0) = pi/2. Here: the axis on its mesh, the rotor held.</summary>
    [Theory]
    [InlineData(Math.PI / 4, 0.05, -1.07836433, -42.5653991)]
    [InlineData(Math.PI / 4, 0.1, 0.249831095, 52.8937414)]
    [InlineData(Math.PI / 4, 0.2, -0.961839345, 12.0021583)]
    [InlineData(Math.PI / 4, 0.5, -0.309939733, -17.2283051)]
    [InlineData(Math.PI / 4, 1.0, -0.155570367, -7.0229304)]
    [InlineData(0.0, 0.1, 0.954156409, -1.30334722)]
    [InlineData(0.0, 0.5, 0.129291453, -0.880206904)]
    [InlineData(0.0, 1.0, 0.0105180348, -0.143703314)]
    public void Backlash(double backlash, double time, double angle, double speed)
    {
        // Peak angle 1.57 rad and speed 66 rad/s: 1e-4 of each; the published run itself is good to about 1e-5.
        const double AngleTolerance = 1e-4;
        const double SpeedTolerance = 5e-3;
        var parameters = new AxisParameters { RotorInertia = double.PositiveInfinity, Mesh = new MeshContact(20e3, 50.0, 0.5 * backlash), AxisInertia = 5.0 };
        var axis = new AxisDynamics<NoMotor, NoLoad>(parameters, default, default, new AxisState { Axis = Math.PI / 2 });
        Stepping.Run(ref axis, 5e-6, time);
        Assert.Equal(angle, axis.State.Axis, AngleTolerance);
        Assert.Equal(speed, axis.State.AxisSpeed, SpeedTolerance);
    }

    /// <summary>Backlash leaves contact at 0.0261592175 s with -66.1964949764 rad/s, which then stays.</summary>
    [Fact]
    public void BacklashFreeFlight()
    {
        var parameters = new AxisParameters { RotorInertia = double.PositiveInfinity, Mesh = new MeshContact(20e3, 50.0, Math.PI / 8), AxisInertia = 5.0 };
        var axis = new AxisDynamics<NoMotor, NoLoad>(parameters, default, default, new AxisState { Axis = Math.PI / 2 });
        double left = 0.0;
        Stepping.Run(ref axis, 1e-6, 0.03, null, (double t, ref AxisDynamics<NoMotor, NoLoad> d) =>
        {
            if (left == 0.0 && d.State.Axis < Math.PI / 8)
            {
                left = t - ((d.State.Axis - (Math.PI / 8)) / d.State.AxisSpeed);
            }
        });
        Assert.Equal(0.0261592175, left, 2e-6);
        Assert.Equal(-66.1964949764, axis.State.AxisSpeed, 1e-3);
    }

    /// <summary>First: J = 0.1, gear 10, J = 2 with a damper of 10 on its output, spring 1e4, J = 2; 10 sin(2 pi 5 t) on the motor.</summary>
    [Theory]
    [InlineData(0.1, 0.0228988364, 0.494672899)]
    [InlineData(0.25, 0.0436539011, 0.240201058)]
    [InlineData(0.5, 0.0962001194, 0.471930773)]
    [InlineData(0.75, 0.141226563, 0.159517282)]
    [InlineData(1.0, 0.162860012, -0.138332379)]
    public void MotorGearShaftLoad(double time, double angle, double speed)
    {
        AxisDynamics<NoMotor, FunctionLoad> axis = First(t => 10.0 * Math.Sin(2.0 * Math.PI * 5.0 * t), damper: 10.0);
        Stepping.Run(ref axis, 20e-6, time);
        Assert.Equal(angle, axis.State.Axis, 1e-5); // the published run: 3e-6
        Assert.Equal(speed, axis.State.AxisSpeed, 5e-4); // the published run: 2e-4
    }

    /// <summary>Its resonance: sqrt(k (1/12 + 1/2))/2 pi = 12.1557 Hz free-free (derived: reflected inertia 0.1 x 100 + 2 = 12).</summary>
    [Fact]
    public void ResonanceOfMotorGearShaftLoad()
    {
        AxisDynamics<NoMotor, FunctionLoad> axis = First(_ => 0.0, damper: 0.0);
        axis.State.Axis = 0.01;
        axis.State.Restart();
        double[] crossings = Crossings(ref axis, 20e-6, 2.0, d => d.State.Axis - (d.State.Rotor / 10.0));
        Assert.Equal(12.1557, (crossings.Length - 1) / 2.0 / (crossings[^1] - crossings[0]), 1e-4 * 12.1557);
    }

    /// <summary>Its antiresonance: the load on its spring with the motor held, sqrt(k/2)/2 pi = 11.2540 Hz.</summary>
    [Fact]
    public void AntiresonanceOfMotorGearShaftLoad()
    {
        var parameters = new AxisParameters { RotorInertia = double.PositiveInfinity, WormRatio = 10.0, Mesh = new MeshContact(1e4, 0.0, 0.0), AxisInertia = 2.0 };
        var axis = new AxisDynamics<NoMotor, FunctionLoad>(parameters, default, default, new AxisState { Axis = 0.01 });
        double[] crossings = Crossings(ref axis, 20e-6, 2.0, d => d.State.Axis);
        Assert.Equal(11.2540, (crossings.Length - 1) / 2.0 / (crossings[^1] - crossings[0]), 1e-4 * 11.2540);
    }

    /// <summary>MultiBody Pendulum: 1 kg at 0.5 m, own inertia 0.001, damper 0.1, from the horizontal, under standard gravity.</summary>
    [Theory]
    [InlineData(0.5, -1.946930014, -5.381712878)]
    [InlineData(1.0, -2.580710653, 3.174144551)]
    [InlineData(2.0, -1.576188266, -4.292337296)]
    [InlineData(5.0, -1.679634642, -2.318147029)]
    public void UnbalancedPendulum(double time, double angle, double speed)
    {
        // With 9.81 instead of 9.80665 m/s2 the angle is off by up to 2e-3, so this tells them apart.
        const double Tolerance = 2e-5;
        var parameters = new AxisParameters { RotorInertia = double.PositiveInfinity, AxisInertia = 0.251, AxisViscous = 0.1 };
        var load = new FunctionLoad(axis: (_, phi) => -1.0 * StandardGravity.MetresPerSecondSquared * 0.5 * Math.Cos(phi));
        var axis = new AxisDynamics<NoMotor, FunctionLoad>(parameters, default, load, default);
        Stepping.Run(ref axis, 100e-6, time);
        Assert.Equal(angle, axis.State.Axis, Tolerance);
        Assert.Equal(speed, axis.State.AxisSpeed, 5.0 * Tolerance);
    }

    private static AxisDynamics<NoMotor, FunctionLoad> First(Func<double, double> torque, double damper)
    {
        var parameters = new AxisParameters
        {
            RotorInertia = 0.1 + (2.0 / 100.0),
            RotorViscous = damper / 100.0,
            WormRatio = 10.0,
            Mesh = new MeshContact(1e4, 0.0, 0.0),
            AxisInertia = 2.0,
        };
        return new AxisDynamics<NoMotor, FunctionLoad>(parameters, default, new FunctionLoad(rotor: (t, _) => torque(t)), default);
    }

    private static double[] Crossings(ref AxisDynamics<NoMotor, FunctionLoad> axis, double step, double until, Func<AxisDynamics<NoMotor, FunctionLoad>, double> value)
    {
        var times = new List<double>();
        double before = value(axis);
        Stepping.Run(ref axis, step, until, null, (double t, ref AxisDynamics<NoMotor, FunctionLoad> d) =>
        {
            double now = value(d);
            if (before * now < 0.0)
            {
                times.Add(t - (step * now / (now - before)));
            }

            before = now;
        });
        return [.. times];
    }
}
