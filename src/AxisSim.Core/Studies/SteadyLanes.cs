using AxisSim.Core.Batches;
using AxisSim.Core.Dynamics;
using AxisSim.Core.Gearing;
using AxisSim.Core.Motion;
using AxisSim.Core.Motors;
using AxisSim.Core.Mount;
using AxisSim.Core.Sky;
using AxisSim.Core.Stepping.Jobs;
using AxisSim.Core.Stepping.Lanes;
using AxisSim.Core.Stepping;

namespace AxisSim.Core.Studies;

/// <summary>How an axis has come to its steady load.</summary>
internal enum SteadyPast
{
    /// <summary>Quietly: from below the load, with nothing swinging.</summary>
    Calm,

    /// <summary>From further below the load, with the rotor swinging as a run-up through its resonance leaves it; what does not keep itself up dies out on the way as the axis' own damping lets it.</summary>
    Swinging,
}

/// <summary>A load of one lane.</summary>
/// <param name="ShaftNewtonMetres">What it asks of the shaft at steady speed, N m.</param>
/// <param name="Past">How it comes on.</param>
internal readonly record struct SteadyLoadCase(double ShaftNewtonMetres, SteadyPast Past);

/// <summary>One axis at a steady motor speed under many steady loads side by side: which of them keep sync.</summary>
/// <remarks>
/// <para>The whole axis is stepped as a move steps it: rotor, elastic stages, mesh with backlash and loss, bearings, payload, supply, sync probe. The load is a torque about the
/// axis that opposes the motion, as gravity and wind do; it is told as the torque that it asks of the shaft at steady speed. Periodic error is left out (it belongs to
/// what is needed), the clutch holds, the windings stay at the ambient temperature.</para>
/// <para>Each lane begins in the steady running that its load asks for, so there is no run-up. What is not known of that beforehand (the phase of the currents) dies out under
/// strong damping of the rotor against its plan within some hundredths of a second; a full-stepping drive meanwhile commands a sine of the same running mean. Axis and mesh carry the whole load from
/// the start; the rotor is helped to bear it, and the help fades while the axis follows, damped against its steady speed. Then the load is held. At some speeds it matters what went before: the rotor has more than one steady way to run. So each load is tried
/// in both ways of <see cref="SteadyPast"/>; the calm one keeps light damping until its load is there.</para>
/// </remarks>
internal sealed class SteadyLanes
{
    /// <summary>Damping that is added at first, as a share of critical; it leaves nothing to swing.</summary>
    private const double StrongShare = 0.7;

    /// <summary>Damping that is added next where the drive full-steps: little enough for the rotor to overshoot its steps as it will without.</summary>
    private const double LightShare = 0.1;

    // Of the load, the rotor bears so much from the start. Microstepped, that is nearly all: its place on the field is known, and an axis that has to follow far swings.
    // Full-stepped, where the winding lags the voltage as well, it is not.
    private const double CalmFrom = 0.97;
    private const double SwingingFrom = 0.9;
    private const double CalmFromFullStepped = 0.75;
    private const double SwingingFromFullStepped = 0.4;

    /// <summary>Swing of the rotor's field that is left over, rad.</summary>
    private const double SwingRadians = 0.5;

    /// <summary>Damping of the axis that is added until the load is there, as a share of critical: it follows the rotor without overshoot, but not late.</summary>
    private const double AxisShare = 0.3;

    /// <summary>A detent as fast as this many times the axis' own swing may still drive it: at its own frequency, or at twice that by softening and stiffening the field.</summary>
    private const double DetentSwings = 3.0;

    /// <summary>Swings of the axis in which that shows, times the damping ratio: about three time constants.</summary>
    private const double BuildUpShare = 0.6;

    private const double LeastBuildUpSwings = 6.0;
    private const double GreatestBuildUpSwings = 40.0;

    /// <summary>Swings of the axis in which it falls behind under a load that is a little too much.</summary>
    private const double FallSwings = 5.0;

    private const double LeastGrowthSeconds = 0.06;
    private const double GreatestGrowthSeconds = 0.25;
    private const double GrowthFullSteps = 6.0;

    /// <summary>The load angle opens as the rotor takes over its load, and the axis has to follow: below this share of its load that moves nothing.</summary>
    private const double SmallShare = 0.003;

    /// <summary>Greatest decay by damping in a step that is added.</summary>
    private const double GreatestDecay = 0.3;

    /// <summary>Shares of what the rotor is spared at first, one after the other.</summary>
    private static readonly double[] Stairs = [0.75, 0.55, 0.38, 0.25, 0.15, 0.08, 0.04, 0.015];

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
    private readonly AxisSwings _swings;

    public SteadyLanes(MountSetup setup, MountAxis axis, bool fullStepping, double speed)
    {
        AxisModel model = setup.Axis(axis);
        _model = model with { Train = model.Train with { ClutchNewtonMetres = double.PositiveInfinity } };
        MountSetup bare = setup.With(axis, _model) with { Disturbances = setup.Disturbances with { SyncProbe = true } };
        (_fullStepping, _speed) = (fullStepping, speed);
        _p = AxisAssembly.Parameters(bare, axis);
        _swings = new AxisSwings(_model, _p);
        AxisModel asked = _model with { Drive = _model.Drive with { ChangeoverRadiansPerSecond = fullStepping ? 0.0 : double.PositiveInfinity } };
        StepChoice choice = StepChoice.For(StepChoice.DefaultSeconds, asked, _p, SteadyPlan(speed));
        Workable = choice.Workable;
        _step = choice.StepSeconds;
        _row = LaneSetup.Parameters(bare, axis, _p, _step);
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

    /// <summary>Whether full steps follow each other more slowly than the rotor swings on its field.</summary>
    public bool SwingsBetweenSteps => _fullStepping && 2.0 * Math.PI * _speed / _model.Motor.FullStepRadians < _swing;

    /// <summary>Time in which the detent, where it is slow enough to meet the axis' own swing or twice that, has driven this up, s; else 0.</summary>
    public double BuildUpSeconds => AxisSwings.DetentPerElectricalTurn * _model.Motor.RotorTeeth * _speed < DetentSwings * _swings.Axis
        ? Math.Clamp(BuildUpShare / Math.Min(_model.Train.DampingRatio, _model.Flexible?.DampingRatio ?? 1.0), LeastBuildUpSwings, GreatestBuildUpSwings) * _swings.LongestSeconds
        : 0.0;

    /// <summary>Time in which a load that is a little too much has the axis fall behind, s.</summary>
    public double FallSeconds => FallSwings * _swings.LongestSeconds;

    /// <summary>Shaft torque that the axis' own bearings ask for, N m: the least load there is, unless something helps.</summary>
    public double OwnNewtonMetres => _loss.InputTorque(Drag / _model.Train.TotalRatio, 1.0);

    /// <summary>Time in which the axis follows the opening load angle, s; 0 where it hardly has to.</summary>
    private double FollowSeconds
    {
        get
        {
            double n = _model.Train.TotalRatio;
            double opened = _p.Mesh.Stiffness / (_model.Motor.RotorTeeth * n);
            double load = n * ClosedFormNewtonMetres / (1.0 + _loss.Driving);
            return opened < SmallShare * load ? 0.0 : _swings.LongestSeconds;
        }
    }

    /// <summary>Bearing friction at the axis, N m.</summary>
    private double Drag => _p.AxisCoulomb + (_p.AxisViscous * _speed / _model.Train.TotalRatio);

    /// <summary>Plan of a shaft that turns at a steady speed without end.</summary>
    private static MotorPlan SteadyPlan(double speed) => new(0.0, MotionProfile.Trapezoid(0.0, 1.0, 1.0), speed, 1.0);

    /// <summary>Which of some loads keep sync.</summary>
    /// <param name="loads">Loads.</param>
    /// <param name="seconds">Time watched once a load has its full size, s.</param>
    /// <returns>For each the time from then on for which sync was kept, s; infinite where it is not lost, negative where it was lost before.</returns>
    public double[] Kept(IReadOnlyList<SteadyLoadCase> loads, double seconds)
    {
        double calm = (20.0 / _swing) + (5.0 * _model.Motor.InductanceHenries / _model.Motor.ResistanceOhms);
        double settled = calm + (6.0 / (LightShare * _swing));
        double growth = Math.Max(Math.Clamp(GrowthFullSteps * _model.Motor.FullStepRadians / _speed, LeastGrowthSeconds, GreatestGrowthSeconds), FollowSeconds);
        var team = new SteadyTeam(_features, _step, loads.Count, new LaneCommands(_model, SteadyPlan(_speed), _fullStepping ? calm : double.PositiveInfinity, _step), _row);
        LaneParameters strong = Damped(StrongShare);
        strong.Levels.Of(LaneLevel.SlewMicrostepping) *= _fullStepping ? PullOutLaw.SquareWaveFundamental * _model.Drive.FullStepCurrentFraction : 1.0;
        for (int i = 0; i < loads.Count; i++)
        {
            LaneState state = Start(loads[i]);
            team.Put(i, Helped(strong, loads[i], 1.0, i, ref state), state);
        }

        team.Run(calm);
        LaneParameters light = Damped(LightShare);
        LaneParameters swinging = Still(_row);
        team.Change((int i, ref LaneParameters row, ref LaneState state) =>
        {
            bool swings = loads[i].Past == SteadyPast.Swinging;
            row = Helped(swings ? swinging : light, loads[i], 1.0, i, ref state);
            double kick = swings ? _row.StepsPerRadian * SwingRadians / _model.Motor.RotorTeeth * _swing * _step : 0.0;
            state.RotorSpeed += kick;
            state.RotorMidSpeed += kick;
        });
        team.Run(settled);
        for (int stair = 0; stair < Stairs.Length; stair++)
        {
            team.Change((int i, ref LaneParameters row, ref LaneState state) => row = Helped(loads[i].Past == SteadyPast.Swinging ? swinging : light, loads[i], Stairs[stair], i, ref state));
            team.Run(settled + ((stair + 1) * growth / Stairs.Length));
        }

        team.Change((int i, ref LaneParameters row, ref LaneState state) => row = Helped(_row, loads[i], 0.0, i, ref state));
        team.Run(settled + growth + seconds);
        return [.. team.LostSeconds.Select(lost => lost - settled - growth)];
    }

    /// <summary>A lane whose rotor is relieved of a share of what it is spared at first, as if the plan dragged it along, and whose damping asks for nothing at steady speed.</summary>
    private LaneParameters Helped(LaneParameters row, SteadyLoadCase load, double share, int index, ref LaneState state)
    {
        double spared = (1.0 - BorneFrom(load.Past)) * Math.Max(0.0, load.ShaftNewtonMetres);
        row.PlanDrag += share * spared * row.RotorKick / (_row.StepsPerRadian * _speed * _step);

        // Every other lane sees the sync probe mirrored: the phase of a small disturbance must not decide.
        row.ProbeKick = (index & 1) == 0 ? row.ProbeKick : -row.ProbeKick;

        // What the added damping takes at steady speed is pushed back, on the axis alone.
        double outside = -AxisLoad(load.ShaftNewtonMetres);
        double pushed = (row.AxisDrag - _row.AxisDrag) * _speed * _step / (_model.Train.TotalRatio * _row.AxisKick);
        state.Torque = outside + pushed;
        row.PayloadShare = pushed == 0.0 ? row.PayloadShare : row.PayloadShare * outside / state.Torque;
        return row;
    }

    private double BorneFrom(SteadyPast past) => (past, _fullStepping) switch
    {
        (SteadyPast.Calm, false) => CalmFrom,
        (SteadyPast.Calm, true) => CalmFromFullStepped,
        (_, false) => SwingingFrom,
        _ => SwingingFromFullStepped,
    };

    private double AxisLoad(double shaftTorque) => (_model.Train.TotalRatio * shaftTorque / (1.0 + _loss.Driving)) - Drag;

    private LaneParameters Damped(double share)
    {
        LaneParameters row = _row;
        row.PlanDrag = Math.Max(row.PlanDrag, 2.0 * share * _swing * _step);
        row.RotorDrag = (_p.RotorViscous * _step / _p.RotorInertia) + row.PlanDrag;
        return Still(row);
    }

    /// <summary>The same with the axis damped against its steady speed, and a flexible payload against the axis to critical, or as far as the step allows.</summary>
    private LaneParameters Still(LaneParameters row)
    {
        row.AxisDrag += Math.Min(2.0 * AxisShare * _swings.Axis * _step, GreatestDecay);
        if (_p.PayloadInertia > 0.0)
        {
            double perTorque = (1.0 / _p.AxisInertia) + (1.0 / _p.PayloadInertia);
            row.PayloadDamping = Math.Max(row.PayloadDamping, Math.Min(2.0 * Math.Sqrt(_p.PayloadStiffness / perTorque) / _step, GreatestDecay / (_step * _step * perTorque)));
        }

        return row;
    }

    /// <summary>Steady running under a shaft torque, as far as it is known without running: field and rotor may be a little off.</summary>
    private LaneState Start(SteadyLoadCase load)
    {
        StepperMotor motor = _model.Motor;
        double n = _model.Train.TotalRatio;
        double outside = AxisLoad(load.ShaftNewtonMetres);
        double mesh = outside + Drag;
        double share = PullOutLaw.RegulatorShare(motor.RotorTeeth, _speed, _model.Drive.RegulatorSeconds);
        double current = _model.Drive.SlewCurrentAmperes * share * (_fullStepping ? PullOutLaw.SquareWaveFundamental * _model.Drive.FullStepCurrentFraction : 1.0);
        double field = -Math.Acos(share);
        double rotor = (BorneFrom(load.Past) * load.ShaftNewtonMetres) + _p.RotorCoulomb + (_p.RotorViscous * _speed);
        double lag = field - Math.Asin(Math.Clamp(rotor / (motor.TorqueConstantNewtonMetresPerAmpere * current), -1.0, 1.0));
        double rotorAngle = lag / motor.RotorTeeth;
        double node = _p.ShaftInertia > 0.0 ? (rotorAngle / _p.StageRatio) - Twist(_p.StageMesh, mesh / _p.WormRatio * (1.0 + _p.Loss.Driving)) : rotorAngle;
        double axis = (node / _p.WormRatio) - Twist(_p.Mesh, mesh);
        double bend = _p.PayloadInertia > 0.0 ? _row.PayloadShare * outside / _p.PayloadStiffness : 0.0;
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
            Torque = -outside,
        };
        LaneParameters row = _row;
        LaneBlock.Winding(ref state, ref row);
        return state;
    }

    private static double Twist(MeshContact contact, double torque) =>
        torque == 0.0 ? 0.0 : (torque / contact.Stiffness) + Math.CopySign(contact.HalfBacklash, torque);
}
