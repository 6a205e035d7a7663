using AxisSim.Core.Batches;
using AxisSim.Core.Dynamics;
using AxisSim.Core.Gearing;
using AxisSim.Core.Lanes;
using AxisSim.Core.Motion;
using AxisSim.Core.Motors;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Studies;

/// <summary>One axis at a steady motor speed under many steady loads side by side: which of them keep sync.</summary>
/// <remarks>
/// <para>The whole axis is stepped as a move steps it: rotor, elastic stages, mesh with backlash and loss, bearings, payload, supply, sync probe. The load is a torque about the
/// axis that opposes the motion, as gravity and wind do; it is told as the torque that it asks of the shaft at steady speed. Periodic error is left out (it belongs to
/// what is needed), the clutch holds, the windings stay at the ambient temperature.</para>
/// <para>Each lane begins in the steady running that its load asks for, so there is no run-up to excite anything. What that start leaves over (the phase of the currents, the
/// swing of the first full steps) dies out under damping of the rotor against its plan that is added for some hundredths of a second; then the axis is left to itself.
/// A full-stepping drive begins with a sine of the same running mean, for under strong damping a rotor would not get over a load by the swing of its steps.</para>
/// </remarks>
internal sealed class SteadyLanes
{
    /// <summary>Damping that is added at first, as a share of critical; it leaves nothing to swing.</summary>
    private const double StrongShare = 0.7;

    /// <summary>Damping that is added next where the drive full-steps: little enough for the rotor to overshoot its steps as it will without.</summary>
    private const double LightShare = 0.15;

    private const int Steps = MoveRun.BlockSteps;

    private readonly AxisModel _model;
    private readonly AxisParameters _p;
    private readonly LaneParameters _row;
    private readonly LaneFeatures _features;
    private readonly MeshLoss _loss;
    private readonly bool _fullStepping;
    private readonly double _speed;
    private readonly double _step;
    private readonly double _ambient;
    private readonly double _swing;

    public SteadyLanes(MountSetup setup, MountAxis axis, bool fullStepping, double speed)
    {
        AxisModel model = setup.Axis(axis);
        _model = model with { Train = model.Train with { ClutchNewtonMetres = double.PositiveInfinity } };
        MountSetup bare = setup.With(axis, _model) with { Disturbances = setup.Disturbances with { SyncProbe = true } };
        (_fullStepping, _speed) = (fullStepping, speed);
        _p = AxisAssembly.Parameters(bare, axis);
        StepChoice choice = StepChoice.For(StepChoice.DefaultSeconds, _model, _p, SteadyPlan(0.0, speed));
        Workable = choice.Workable;
        _step = choice.StepSeconds;
        _row = LaneRows.Parameters(bare, axis, _p, _step);
        _features = new LaneFeatures(_p.ShaftInertia > 0.0, _p.PayloadInertia > 0.0, _model.Drive.SupplyResistanceOhms > 0.0, Pose: false);
        _loss = AxisAssembly.TotalLoss(_model.Train, setup.Disturbances.ColdGreaseFactor);
        _ambient = setup.Disturbances.AmbientCelsius;
        ClosedFormNewtonMetres = PullOutLaw.OnDrive(_model.Motor, _model.Drive, fullStepping, _model.Drive.SupplyVolts, speed);
        _swing = Math.Sqrt(_model.Motor.RotorTeeth * _model.Motor.TorqueConstantNewtonMetresPerAmpere * _model.Drive.SlewCurrentAmperes / _p.RotorInertia);
    }

    /// <summary>Whether some step is short enough for it.</summary>
    public bool Workable { get; }

    /// <summary>Closed form of the pull-out torque, N m.</summary>
    public double ClosedFormNewtonMetres { get; }

    /// <summary>Shaft torque that the axis' own bearings ask for, N m: the least load there is, unless something helps.</summary>
    public double OwnNewtonMetres => _loss.InputTorque(Drag / _model.Train.TotalRatio, 1.0);

    /// <summary>Bearing friction at the axis, N m.</summary>
    private double Drag => _p.AxisCoulomb + (_p.AxisViscous * _speed / _model.Train.TotalRatio);

    /// <summary>Plan of a shaft that turns at a steady speed without end.</summary>
    public static MotorPlan SteadyPlan(double startRadians, double speed) => new(startRadians, MotionProfile.Trapezoid(0.0, 1.0, 1.0), speed, 1.0);

    /// <summary>Which of some shaft torques keep sync.</summary>
    /// <param name="torques">Shaft torques, N m.</param>
    /// <param name="seconds">Time for which sync must be kept after the added damping is gone, s.</param>
    /// <returns>For each the time at which sync was lost, s; infinite where it is kept.</returns>
    public double[] Run(ReadOnlySpan<double> torques, double seconds)
    {
        double calm = (20.0 / _swing) + (5.0 * _model.Motor.InductanceHenries / _model.Motor.ResistanceOhms);
        double light = _fullStepping ? calm + (6.0 / (LightShare * _swing)) : calm;
        double[] lost = new double[torques.Length];
        Array.Fill(lost, double.PositiveInfinity);
        int lanes = torques.Length;
        int[] cases = [.. Enumerable.Range(0, lanes)];
        ILaneEngine engine = LaneWidths.Engine(BatchWidth.Best, lanes);
        LaneParameters row = Damped(StrongShare);
        row.SlewMicrostepping *= _fullStepping ? PullOutLaw.SquareWaveFundamental * _model.Drive.FullStepCurrentFraction : 1.0;
        for (int i = 0; i < lanes; i++)
        {
            engine.Put(i, Probed(row, i), Start(torques[i]));
        }

        FillUp(engine, lanes);
        var commands = new LaneCommands(_model, SteadyPlan(0.0, _speed), _fullStepping ? calm : double.PositiveInfinity, _step);
        var block = new LaneCommand[Steps];
        var kinds = new LaneStepKind[Steps];
        var parts = new LaneParts[Steps];
        LaneState first = engine.State(0);
        var signs = new LaneSign[((lanes - 1) / engine.Width) + 1];
        var job = new LaneJob(_features, default, _step, Shared: true, OwnParts: false);
        long calmBlocks = (long)Math.Ceiling(calm / (Steps * _step));
        long lightBlocks = (long)Math.Ceiling(light / (Steps * _step));
        long blocks = lightBlocks + (long)Math.Ceiling(seconds / (Steps * _step));
        for (long b = 0; b < blocks && lanes > 0; b++)
        {
            if (b == calmBlocks || b == lightBlocks)
            {
                row = b == lightBlocks ? _row : Damped(LightShare);
                for (int i = 0; i < lanes; i++)
                {
                    engine.Put(i, Probed(row, cases[i]), engine.State(i));
                }

                FillUp(engine, lanes);
            }

            commands.Fill(block, kinds);
            for (int k = 0; k < Steps; k++)
            {
                if (kinds[k].Split)
                {
                    LaneBlock.Parts(block[k].Split, ref parts[k], ref first, ref row);
                }
            }

            int vectors = ((lanes - 1) / engine.Width) + 1;
            engine.Commands(block, parts, kinds, withParts: true);
            engine.Plan(commands.PlanFullSteps);
            engine.Block(vectors, kinds, job, signs, []);
            if (!signs.AsSpan(0, vectors).Contains(LaneSign.Attention))
            {
                continue;
            }

            for (int i = lanes - 1; i >= 0; i--)
            {
                if (signs[i / engine.Width] == LaneSign.Attention && Lost(engine.State(i), commands.PlanFullSteps))
                {
                    lost[cases[i]] = (b + 1) * Steps * _step;
                    lanes--;
                    engine.Copy(lanes, i);
                    cases[i] = cases[lanes];
                }
            }

            FillUp(engine, lanes);
        }

        return lost;
    }

    private static bool Lost(in LaneState s, double planFullSteps) =>
        !LaneRows.IsFinite(s) || Math.Abs(s.Rotor - (0.5 * s.RotorSpeed) - planFullSteps) > MoveRun.LostFullSteps;

    private static void FillUp(ILaneEngine engine, int lanes)
    {
        for (int i = lanes; lanes > 0 && i % engine.Width != 0; i++)
        {
            engine.Copy(lanes - 1, i);
        }
    }

    /// <summary>Every other lane sees the sync probe mirrored: the phase of a small disturbance must not decide.</summary>
    private static LaneParameters Probed(LaneParameters row, int index)
    {
        row.ProbeKick = (index & 1) == 0 ? row.ProbeKick : -row.ProbeKick;
        return row;
    }

    private LaneParameters Damped(double share)
    {
        LaneParameters row = _row;
        row.PlanDrag = Math.Max(row.PlanDrag, 2.0 * share * _swing * _step);
        row.RotorDrag = (_p.RotorViscous * _step / _p.RotorInertia) + row.PlanDrag;
        return row;
    }

    /// <summary>Steady running under a shaft torque, as far as it is known without running: field and rotor may be a little off.</summary>
    private LaneState Start(double torque)
    {
        StepperMotor motor = _model.Motor;
        double n = _model.Train.TotalRatio;
        double mesh = n * torque / (1.0 + _loss.Driving);
        double load = mesh - Drag;
        double share = PullOutLaw.RegulatorShare(motor.RotorTeeth, _speed, _model.Drive.RegulatorSeconds);
        double current = _model.Drive.SlewCurrentAmperes * share * (_fullStepping ? PullOutLaw.SquareWaveFundamental * _model.Drive.FullStepCurrentFraction : 1.0);
        double field = -Math.Acos(share);
        double rotor = torque + _p.RotorCoulomb + (_p.RotorViscous * _speed);
        double lag = field - Math.Asin(Math.Clamp(rotor / (motor.TorqueConstantNewtonMetresPerAmpere * current), -1.0, 1.0));
        double rotorAngle = lag / motor.RotorTeeth;
        double node = _p.ShaftInertia > 0.0 ? (rotorAngle / _p.StageRatio) - Twist(_p.StageMesh, mesh / _p.WormRatio * (1.0 + _p.Loss.Driving)) : rotorAngle;
        double axis = (node / _p.WormRatio) - Twist(_p.Mesh, mesh);
        double bend = _p.PayloadInertia > 0.0 ? _row.PayloadShare * load / _p.PayloadStiffness : 0.0;
        double rotorSpeed = _row.StepsPerRadian * _speed * _step;
        double shaftSpeed = _speed * _step / _p.StageRatio;
        double axisSpeed = _speed * _step / n;
        (double sin, double cos) = Math.SinCos(field);
        var state = new LaneState
        {
            Rotor = (_row.StepsPerRadian * rotorAngle) + (0.5 * rotorSpeed),
            RotorSpeed = rotorSpeed,
            RotorMidSpeed = rotorSpeed,
            Shaft = node + (0.5 * shaftSpeed),
            ShaftSpeed = shaftSpeed,
            ShaftMidSpeed = shaftSpeed,
            Axis = axis + (0.5 * axisSpeed),
            AxisSpeed = axisSpeed,
            AxisMidSpeed = axisSpeed,
            Payload = axis - bend + (0.5 * axisSpeed),
            PayloadSpeed = axisSpeed,
            PayloadMidSpeed = axisSpeed,
            CurrentA = current * cos,
            CurrentB = current * sin,
            Stored = 0.5 * _row.Inductance * current * current,
            Volts = _row.SupplyVolts,
            VoltsBefore = _row.SupplyVolts,
            Celsius = _ambient,
            Factor = 1.0,
            Torque = -load,
        };
        LaneParameters row = _row;
        LaneBlock.Winding(ref state, ref row);
        return state;
    }

    private static double Twist(MeshContact contact, double torque) =>
        torque == 0.0 ? 0.0 : (torque / contact.Stiffness) + Math.CopySign(contact.HalfBacklash, torque);
}
