using AxisSim.Core.Dynamics;
using AxisSim.Core.Gearing;
using AxisSim.Core.Motion;
using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Studies;

/// <summary>Shaft torque that a planned move needs, with the swing of axis and payload on their springs: what the shaft must pass if the rotor keeps to its plan.</summary>
/// <remarks>
/// <para>The axis follows the plan by the equations of the move: mesh with backlash and damping, periodic error, bearings with true stick and breakaway,
/// gravity, wind, a changing inertia, the flexible payload. Elastic stages and the field that the rotor yields to are in series with the mesh, without the inertia of the worm shaft and the rotor. With the mesh torque <c>t</c> the shaft needs
/// <c>t (1 + e')/n</c>, the loss of the gears in the direction of motion, and the inertia of the rotor's side times its acceleration. A trapezoid's jump of acceleration so asks for up to
/// twice the inertial part, half a swing later. On a slow plan it becomes the quasi-static need of <see cref="ShaftNeed"/>.</para>
/// <para>What is left out: the swings of the rotor itself, by which it may be knocked out of step where the load changes flanks, and the clutch. The rotor's own friction belongs to its
/// pull-out torque.</para>
/// <para>Scheme: drift, kick, drift, second order; twenty or more steps to the fastest swing. Units N m; the sign is that of a torque towards greater angles.</para>
/// </remarks>
internal sealed class NeedRun
{
    private const double SweepRadians = 0.2;

    // The field as a spring of two slopes that takes up the work 2 T/Nr up to its greatest torque, as the field does on the way to the angle of no return (pi):
    // Nr T/2 up to half the torque, then so soft that the rest of the work fits.
    private const double FirstSlope = 0.5;
    private const double SoftFromShare = 0.5;
    private const double SecondSlope = (1.0 - SoftFromShare) * (1.0 + SoftFromShare) / (2.0 * (2.0 - (SoftFromShare * SoftFromShare)));

    private const double LeastSteps = 2000.0;
    private const double MostSteps = 2e6;

    // Gravity and wind are evaluated once so many steps, and are linear between.
    private const int Slow = 4;

    private readonly MountSetup _setup;
    private readonly MountAxis _axis;
    private readonly MovePlan _plan;
    private readonly MotorPlan _own;
    private readonly AxisParameters _p;
    private readonly MoveLoad _load;
    private readonly Yielding _driving;
    private readonly Yielding _braking;
    private readonly MeshLoss _loss;
    private readonly PeriodicError _error;
    private readonly double _turns;
    private readonly double _ratio;
    private readonly double _rotorSide;
    private readonly double _share;

    public NeedRun(MountSetup setup, MountAxis axis, MovePlan plan)
    {
        (_setup, _axis, _plan, _own) = (setup, axis, plan, plan.At(axis));
        _p = AxisAssembly.Parameters(setup, axis);
        AxisModel model = setup.Axis(axis);
        GearTrain train = model.Train;
        _ratio = train.TotalRatio;
        _load = new MoveLoad(setup, axis, plan);
        _loss = AxisAssembly.TotalLoss(train, setup.Disturbances.ColdGreaseFactor);
        (_error, _turns) = (train.Worm.PeriodicError, train.Worm.Ratio);
        _rotorSide = model.Motor.RotorInertiaKilogramSquareMetres + train.ReflectedTrainInertia;
        _share = _p.PayloadInertia / (_p.PayloadInertia + _p.AxisInertia);
        _driving = OnField(model, 1.0 + _loss.Driving);
        _braking = OnField(model, Math.Max(0.0, 1.0 - _loss.BackDriving));
    }

    /// <summary>Time, signed motor speed (rad/s) and shaft torque (N m), step after step from the start of the move.</summary>
    public IEnumerable<NeedPoint> Until(double endSeconds)
    {
        double step = Math.Min(StepSeconds, endSeconds / LeastSteps);
        if (step <= 0.0 || endSeconds > MostSteps * step)
        {
            // Nothing moves, or the modes are so fast for so long that their swing is beside the point.
            var still = new ShaftNeed(_setup, _axis, _plan);
            for (double i = 0.5; i < LeastSteps; i++)
            {
                double time = i * endSeconds / LeastSteps;
                (double rate, double torque) = still.At(time);
                yield return new NeedPoint(time, rate, torque);
            }

            yield break;
        }

        Follower s = Start();
        double outside = 0.0;
        double outsideRate = 0.0;
        double steps = Math.Ceiling(endSeconds / step);
        for (double i = 0.0; i < steps; i++)
        {
            double start = i * step;
            int part = (int)(i % Slow);
            if (part == 0)
            {
                outside = _load.Outside(_own.Position(start), start);
                outsideRate = (_load.Outside(_own.Position(start + (Slow * step)), start + (Slow * step)) - outside) / Slow;
            }

            yield return Step(ref s, start, step, outside + ((part + 0.5) * outsideRate));
        }
    }

    /// <summary>Mesh, elastic stages and the field that the rotor yields to, in series; of the torque of the mesh the rotor feels a share.</summary>
    private Yielding OnField(AxisModel model, double felt)
    {
        double torque = model.Motor.TorqueConstantNewtonMetresPerAmpere * model.Drive.SlewCurrentAmperes;
        double field = model.Motor.RotorTeeth * torque * _ratio * _ratio;
        double soft = felt > 0.0 ? SoftFromShare * torque * _ratio / felt : double.PositiveInfinity;
        double damping = model.DampingNewtonMetreSecondsPerRadian * _ratio * _ratio;
        return new Yielding(InSeries(FirstSlope * field, damping, felt), InSeries(SecondSlope * field, damping, felt), soft);
    }

    private MeshContact InSeries(double field, double damping, double felt)
    {
        bool elastic = _p.ShaftInertia > 0.0;
        double square = _p.WormRatio * _p.WormRatio;
        double stage = elastic ? 1.0 / (_p.StageMesh.Stiffness * square) : 0.0;
        double stiffness = 1.0 / ((1.0 / _p.Mesh.Stiffness) + stage + (felt / field));

        // Each gives way by its own compliance, and its damping counts with the square of its part in the motion.
        double Part(double compliance) => stiffness * stiffness * compliance * compliance;
        return _p.Mesh with
        {
            Stiffness = stiffness,
            Damping = (Part(1.0 / _p.Mesh.Stiffness) * _p.Mesh.Damping) + (elastic ? Part(stage) * _p.StageMesh.Damping * square : 0.0) + (felt > 0.0 ? Part(felt / field) * damping / felt : 0.0),
            HalfBacklash = _p.Mesh.HalfBacklash + (elastic ? _p.StageMesh.HalfBacklash / _p.WormRatio : 0.0),
        };
    }

    private double StepSeconds
    {
        get
        {
            double fastest = Math.Max(Math.Sqrt((_braking.Firm.Stiffness + _p.PayloadStiffness) / _p.AxisInertia), (Math.Max(_braking.Firm.Damping, Math.Max(_driving.Firm.Damping, _driving.Soft.Damping)) + _p.AxisViscous) / _p.AxisInertia);
            if (_p.PayloadInertia > 0.0)
            {
                fastest = Math.Max(fastest, Math.Max(Math.Sqrt(_p.PayloadStiffness / _p.PayloadInertia), _p.PayloadDamping * ((1.0 / _p.PayloadInertia) + (1.0 / _p.AxisInertia))));
            }

            return SweepRadians / fastest;
        }
    }

    /// <summary>At rest on the plan, pressed against one flank by gravity and wind, wound up and bent by them.</summary>
    private Follower Start()
    {
        double angle = _own.Position(0.0);
        double carried = -_load.Outside(angle, 0.0);
        double twist = carried == 0.0 ? 0.0 : (carried / _braking.Firm.Stiffness) + Math.CopySign(_braking.Firm.HalfBacklash, carried);
        double axis = PeriodicErrorLaw.Value(_error, _turns, angle) - twist;
        double bend = _p.PayloadInertia > 0.0 ? _share * carried / _p.PayloadStiffness : 0.0;
        return new Follower { Axis = axis, Payload = axis - bend };
    }

    private NeedPoint Step(ref Follower s, double start, double step, double outside)
    {
        double middle = start + (0.5 * step);
        double plan = _own.Position(middle);
        double rate = _own.Velocity(middle);
        double slope = _error == PeriodicError.None ? 0.0 : PeriodicErrorLaw.Slope(_error, _turns, plan);
        double error = _error == PeriodicError.None ? 0.0 : PeriodicErrorLaw.Value(_error, _turns, plan);
        double declination = _plan.At(MountAxis.Declination).Position(middle);
        double inertia = _setup.Load.Inertia(_axis, declination);
        double growth = _axis == MountAxis.Polar ? _setup.Load.PolarInertiaSlope(declination) * _plan.At(MountAxis.Declination).Velocity(middle) : 0.0;
        double before = _own.Velocity(start);
        double after = _own.Velocity(start + step);

        double axis = s.Axis + (0.5 * step * (s.AxisRate - before));
        double payload = s.Payload + (0.5 * step * (s.PayloadRate - before));
        Yielding contact = (error - axis) * rate > 0.0 ? _driving : _braking;
        double mesh = contact.Torque(error - axis, (rate * (1.0 + slope)) - s.AxisRate);
        double bond = 0.0;
        if (_p.PayloadInertia > 0.0)
        {
            bond = (_p.PayloadStiffness * (axis - payload)) + (_p.PayloadDamping * (s.AxisRate - s.PayloadRate));
            s.PayloadRate += step * (bond + (_share * outside) - (_share * growth * s.PayloadRate)) / (_share * inertia);
        }

        double push = mesh - bond + ((1.0 - _share) * outside) - ((_p.AxisViscous + ((1.0 - _share) * growth)) * s.AxisRate);
        s.AxisRate = AfterFriction(s.AxisRate, push, step / ((1.0 - _share) * inertia));
        s.Axis = axis + (0.5 * step * (s.AxisRate - after));
        s.Payload = _p.PayloadInertia > 0.0 ? payload + (0.5 * step * (s.PayloadRate - after)) : s.Axis;

        double load = mesh / _ratio;
        double shaft = rate == 0.0 ? load * Math.Max(0.0, 1.0 - _loss.BackDriving) : _loss.InputTorque(load, rate) + (load * slope);

        // Adding zero leaves no negative zero behind.
        return new NeedPoint(middle, rate * _ratio, shaft + (_rotorSide * _ratio * _own.Acceleration(middle)) + 0.0);
    }

    /// <summary>Rate after a kick with dry friction, which can stop a motion but not reverse it.</summary>
    private double AfterFriction(double rate, double push, double perTorque)
    {
        if (rate == 0.0)
        {
            return Math.Abs(push) <= _p.AxisBreakaway ? 0.0 : perTorque * (push - Math.CopySign(_p.AxisCoulomb, push));
        }

        double end = rate + (perTorque * (push - Math.CopySign(_p.AxisCoulomb, rate)));
        return end * rate < 0.0 ? 0.0 : end;
    }

    /// <summary>A contact that is firm up to a torque, and softer beyond.</summary>
    private readonly record struct Yielding(MeshContact Firm, MeshContact Soft, double SoftFrom)
    {
        public double Torque(double twist, double twistRate)
        {
            double firm = SoftFrom / Firm.Stiffness;
            double elastic = Math.Abs(Firm.DeadZone(twist));
            if (elastic <= firm)
            {
                return Firm.Torque(twist, twistRate);
            }

            double spring = Math.CopySign(SoftFrom + (Soft.Stiffness * (elastic - firm)), twist);
            return Soft.Damped(spring, twistRate);
        }
    }

    /// <summary>Axis and payload: angles less the plan, rad; rates, rad/s.</summary>
    private struct Follower
    {
        public double Axis;
        public double AxisRate;
        public double Payload;
        public double PayloadRate;
    }
}
