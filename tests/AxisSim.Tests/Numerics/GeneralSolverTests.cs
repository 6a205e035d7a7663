using AxisSim.Core.Drives;
using AxisSim.Core.Dynamics;
using AxisSim.Core.Gearing;
using AxisSim.Core.Motion;
using AxisSim.Core.Motors;
using AxisSim.Core.Mount;
using AxisSim.Core.Sky;
using AxisSim.Core.Stepping;
using AxisSim.Tests.Assemblies;

namespace AxisSim.Tests.Numerics;

/// <summary>The program's own pieces against stored solutions of the same equations by SUNDIALS CVODE with events (tests/reference/README.md).</summary>
/// <remarks>
/// Tolerances: about three times the difference measured at 5 us (rotor angle in rad for the motor alone, axis error in arcsec for the whole axis); and the
/// default step of 50 us must do worse by what second order says.
/// </remarks>
public sealed class GeneralSolverTests
{
    private const double Fine = 5e-6;
    private const double Coarse = 50e-6;

    /// <summary>Ten times the step must cost at least this factor: second order gives 100; measured 97 to 160.</summary>
    private const double LeastGain = 50.0;

    [Fact]
    public void A_SingleFullStepOfAFreeRotor() => Converges("A", h => MotorAlone(
        "A", Motor(1e-4), BenchmarkCase.Drive, h, 0.0, default, t => 3 * Math.PI / 400, full: true, start: -Math.PI / 200, damping: 0), 1e-5);

    [Fact]
    public void B_FullSteppingUnderLoad() => Converges("B", h => MotorAlone(
        "B", Motor(1e-5), BenchmarkCase.Drive, h, 1.2e-5, new LoadRamp(0, 1, 0.05), RunUp(40, 0.2, Math.PI / 400), full: true, start: 0, damping: 5e-3), 5e-7);

    [Fact]
    public void C_MicrosteppingWithTheSupplySaturated() => Converges("C", h => MotorAlone(
        "C", Motor(1e-5), Fine12Volts, h, 1.2e-5, new LoadRamp(0, 1, 0.05), RunUp(38, 0.2, 0), full: false, start: 0, damping: 0), 3e-6);

    [Fact]
    public void D_LinearAxis() => Converges("D", h => WholeAxis("D", Linear, 4.0, 1 * BenchmarkCase.Degree, h), 3e-3);

    [Fact]
    public void E_AxisWithFrictionBacklashLossAndPeriodicError() => Converges("E", h => WholeAxis("E", Rough(0.3), 4.0, 2 * BenchmarkCase.Degree, h), 2e-3);

    [Fact]
    public void G_SupplySag() => Converges("G", h => MotorAlone(
        "G", Motor(1e-5), BenchmarkCase.Drive with { SupplyResistanceOhms = 0.3, BusCapacitanceFarads = 1e-3 }, h, 1.2e-5, new LoadRamp(0, 1, 0.05), RunUp(40, 0.2, Math.PI / 400), full: true, start: 0, damping: 5e-3), 5e-7);

    /// <summary>Order of the step in smooth full-step running: slope of the error over steps from 5 to 40 us, against the general solver.</summary>
    [Fact]
    public void OrderOfConvergenceIsTwo()
    {
        double[] steps = [5e-6, 10e-6, 20e-6, 40e-6];
        double[] errors = [.. steps.Select(h => MotorAlone("B", Motor(1e-5), BenchmarkCase.Drive, h, 1.2e-5, new LoadRamp(0, 1, 0.05), RunUp(40, 0.2, Math.PI / 400), full: true, start: 0, damping: 5e-3))];
        (double _, double order) = MathNet.Numerics.Fit.Line([.. steps.Select(x => Math.Log(x))], [.. errors.Select(x => Math.Log(x))]);
        Assert.True(order >= LeastOrder, $"order {order}; errors {string.Join(", ", errors)}");
    }

    /// <summary>What is promised; measured 2.0.</summary>
    private const double LeastOrder = 1.9;

    /// <summary>Pull-out torque, read as the load angle passes half a turn: at 5 us, and at the default step within the promised 1 %.</summary>
    [Theory]
    [InlineData(5e-6, 1e-5)]
    [InlineData(StepChoice.DefaultSeconds, 0.01 * 0.2746)]
    public void H_PullOutUnderASlowRamp(double step, double tolerance)
    {
        double torque = double.NaN;
        Func<double, double> plan = RunUp(60, 0.3, Math.PI / 400);
        Alone(Motor(1e-5), BenchmarkCase.Drive, step, 1.2e-5, new LoadRamp(0.5, 0.2, 0.48), plan, full: true, start: 0, damping: 5e-3, until: 2.0, (t, lag, load) =>
        {
            if (double.IsNaN(torque) && Math.Abs(lag) > Math.PI)
            {
                torque = load;
            }
        });
        Assert.Equal(ReferenceTable.Read("H_scalars").Scalar("lost_sync_load_torque_Nm"), torque, tolerance);
    }

    [Fact]
    public void I_LoadThatDrivesBackWithUnequalEfficiencies()
    {
        AxisModel rough = Rough(0.3);
        AxisModel driven = rough with
        {
            Motor = rough.Motor with { CoulombTorqueNewtonMetres = 5e-4 },
            Drive = rough.Drive with { FullStepCurrentFraction = 0.85 },
            Train = rough.Train with { Worm = rough.Train.Worm with { GivenDrivingEfficiency = 0.8, GivenBackDrivingEfficiency = 0.4 } },
        };
        Converges("I", h => WholeAxis("I", driven, 100.0, 2 * BenchmarkCase.Degree, h), 5e-4);
    }

    /// <summary>The whole slew at the program's own default step, helping and opposing.</summary>
    [Theory]
    [InlineData("F_helping", 4.0)]
    [InlineData("F_opposing", -4.0)]
    public void F_NinetyDegreeSlewAtTheDefaultStep(string name, double imbalance)
    {
        MountSetup setup = BenchmarkCase.Setup(BenchmarkCase.Unquantised(BenchmarkCase.Axis), imbalance, 90 * BenchmarkCase.Degree, 3.0);
        var run = new MoveRun(setup, MountAxis.Polar, new MovePlan(setup), StepChoice.DefaultSeconds);
        var none = default(NoObserver);
        Assert.True(run.RunTo(35.0, ref none, stopWhenLost: true));
        double error = (run.State.Axis - (run.ShaftPlan.Position(run.TimeSeconds) / 720)) / BenchmarkCase.Arcsecond;
        Assert.Equal(ReferenceTable.Read(name + "_scalars").Scalar("final_axis_error_arcsec"), error, FinalPositionArcseconds);
    }

    /// <summary>What is promised for the default step: the final axis position within 0.02 arcsec.</summary>
    private const double FinalPositionArcseconds = 0.02;

    private static void Converges(string name, Func<double, double> worstAt, double tolerance)
    {
        double fine = worstAt(Fine);
        double coarse = worstAt(Coarse);
        Assert.True(fine <= tolerance, $"case {name}: worst error {fine} at 5 us, allowed {tolerance}");
        Assert.True(coarse >= LeastGain * fine, $"case {name}: {coarse} at 50 us is not {LeastGain} times {fine} at 5 us");
    }

    private static AxisModel Linear
    {
        get
        {
            AxisModel axis = BenchmarkCase.Unquantised(BenchmarkCase.Axis);
            return axis with
            {
                Motor = axis.Motor with { CoulombTorqueNewtonMetres = 0 },
                Drive = axis.Drive with { ChangeoverRadiansPerSecond = double.PositiveInfinity },
                Train = axis.Train with { BacklashRadians = 0, Worm = axis.Train.Worm with { GivenDrivingEfficiency = 1, PeriodicError = PeriodicError.None } },
                Bearings = axis.Bearings with { CoulombNewtonMetres = 0 },
                Motion = new AxisMotion { SlewRateRadiansPerSecond = 2 * BenchmarkCase.Degree, Ramp = Ramp.OfSeconds(0.2) },
            };
        }
    }

    private static AxisModel Rough(double ramp) => BenchmarkCase.Unquantised(BenchmarkCase.Axis) with
    {
        Motion = new AxisMotion { SlewRateRadiansPerSecond = 3 * BenchmarkCase.Degree, Ramp = Ramp.OfSeconds(ramp) },
    };

    /// <summary>Worst difference of the axis error at the table's times, arcsec.</summary>
    private static double WholeAxis(string name, AxisModel axis, double imbalance, double distance, double step)
    {
        ReferenceTable table = ReferenceTable.Read(name);
        MountSetup setup = BenchmarkCase.Setup(axis, imbalance, distance, 2.0);
        var run = new MoveRun(setup, MountAxis.Polar, new MovePlan(setup), step);
        var look = new AtTimes { Times = table["time_s"], Values = new double[table["time_s"].Length] };
        Assert.True(run.RunTo(table["time_s"][^1] + 0.01, ref look, stopWhenLost: true));
        double[] expected = table["axis_error_arcsec"];
        return Enumerable.Range(0, expected.Length).Max(i => Math.Abs(look.Values[i] - expected[i]));
    }

    /// <summary>Axis error, arcsec, interpolated to set times between steps.</summary>
    private struct AtTimes : IStepObserver
    {
        private int _next;
        private double _before;

        public double[] Times;
        public double[] Values;

        public static bool Wants => true;

        public void See(in StepContext step, MoveRun run)
        {
            double end = step.StartSeconds + step.StepSeconds;
            double error = (run.State.Axis - (step.PlanEndRadians / 720)) / BenchmarkCase.Arcsecond;
            while (_next < Times.Length && Times[_next] <= end + 1e-12)
            {
                double s = (Times[_next] - step.StartSeconds) / step.StepSeconds;
                Values[_next++] = _before + (s * (error - _before));
            }

            _before = error;
        }
    }

    private static ChopperDrive Fine12Volts => BenchmarkCase.Drive with { SupplyVolts = 12, MicrostepsPerFullStep = 4096 };

    private static StepperMotor Motor(double viscous) => BenchmarkCase.Motor with { ViscousNewtonMetreSecondsPerRadian = viscous, CoulombTorqueNewtonMetres = 0 };

    private static Func<double, double> RunUp(double speed, double ramp, double start) =>
        t => start + (t < ramp ? 0.5 * speed * t * t / ramp : speed * (t - (0.5 * ramp)));

    private readonly record struct LoadRamp(double From, double Slope, double Most)
    {
        public double At(double t) => Math.Clamp((t - From) * Slope, 0.0, Most);
    }

    /// <summary>Worst difference of the rotor from the table, rad.</summary>
    private static double MotorAlone(string name, StepperMotor motor, ChopperDrive drive, double step, double addedInertia, LoadRamp load, Func<double, double> plan, bool full, double start, double damping)
    {
        ReferenceTable table = ReferenceTable.Read(name);
        double[] times = table["time_s"];
        double[] expected = table["motor_angle_minus_planned_rad"];
        double worst = 0.0;
        int next = 0;
        Alone(motor, drive, step, addedInertia, load, plan, full, start, damping, times[^1], (t, lag, _) =>
        {
            if (next < times.Length && t > times[next] - (0.5 * step))
            {
                worst = Math.Max(worst, Math.Abs((lag / motor.RotorTeeth) - expected[next]));
                next++;
            }
        });
        Assert.Equal(times.Length, next);
        return worst;
    }

    /// <summary>The motor with a rigid inertia and a load torque; <paramref name="look"/> gets time, load angle (electrical rad) and load.</summary>
    private static void Alone(StepperMotor motor, ChopperDrive drive, double step, double addedInertia, LoadRamp load, Func<double, double> plan, bool full, double start, double damping, double until, Action<double, double, double> look)
    {
        var command = new PhaseCommand(new MicrostepTable(drive.MicrostepsPerFullStep), motor.RotorTeeth, 1.0, [new DriveEvent(0, drive.SlewCurrentAmperes, full)]);
        var law = new ChopperStepper(motor, drive, command, new WindingHeat(20, 0, 1), step);
        law.SetCurrents(1.5, full ? 1.5 : 0.0);
        var parameters = new AxisParameters
        {
            RotorInertia = motor.RotorInertiaKilogramSquareMetres + addedInertia,
            RotorViscous = motor.ViscousNewtonMetreSecondsPerRadian,
            PlanDamping = damping,
        };
        var dynamics = new AxisDynamics<ChopperStepper, FunctionLoad>(parameters, law, new FunctionLoad(rotor: (t, _) => -load.At(t)), new AxisState { Rotor = plan(0) + start });
        Stepping.Run(ref dynamics, step, until, plan, (double t, ref AxisDynamics<ChopperStepper, FunctionLoad> d) =>
        {
            look(t, motor.RotorTeeth * (d.State.Rotor - plan(t)), load.At(t));
        });
    }
}
