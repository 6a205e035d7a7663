using AxisSim.Core.Drives;
using AxisSim.Core.Dynamics;
using AxisSim.Core.Gearing;
using AxisSim.Core.Motion;
using AxisSim.Core.Motors;
using AxisSim.Core.Mount;
using AxisSim.Core.Numerics;
using AxisSim.Core.Payloads;
using AxisSim.Core.Sky;
using AxisSim.Core.Stepping.Jobs;
using AxisSim.Core.Stepping.Lanes;

namespace AxisSim.Core.Stepping;

/// <summary>Turns a setup into the constants and the start state of a lane.</summary>
internal static class LaneSetup
{
    public static LaneParameters Parameters(MountSetup setup, MountAxis axis, AxisParameters p, double h)
    {
        AxisModel model = setup.Axis(axis);
        StepperMotor motor = model.Motor;
        ChopperDrive drive = model.Drive;
        double steps = StepsPerRadian(motor);
        double kick = h * h * steps / p.RotorInertia;
        double axisKick = h * h / p.AxisInertia;
        double km = motor.TorqueConstantNewtonMetresPerAmpere * Math.PI / 24.0;
        double later = setup.Tracks(axis) ? drive.TrackingCurrentAmperes : drive.HoldingCurrentAmperes;
        double probe = setup.Disturbances.SyncProbe ? SyncProbe.HoldingTorqueShare * motor.HoldingTorqueNewtonMetres : 0.0;
        double regulator = h / drive.RegulatorSeconds;
        double regulatorDecay = LaneMath.Exp(-regulator);
        var lane = new LaneParameters
        {
            TorqueKick = km * kick,
            DetentKick = 4.0 * motor.DetentTorqueNewtonMetres * kick,
            RotorDrag = (p.RotorViscous + p.PlanDamping) * h / p.RotorInertia,
            PlanDrag = p.PlanDamping * h / p.RotorInertia,
            ProbeKick = probe * kick,
            RotorCoulombKick = p.RotorCoulomb * kick,
            RegulatorDecay = regulatorDecay,
            RegulatorShare = PhaseLaw.Share(regulator, regulatorDecay),
            MeshStiffness = p.Mesh.Stiffness,
            MeshDamping = p.Mesh.Damping / h,
            HalfBacklash = p.Mesh.HalfBacklash,
            MeshFree = p.Mesh.HalfBacklash > 0.0 ? 0.0 : double.PositiveInfinity,
            Clutch = p.Clutch,
            AxisKick = axisKick,
            AxisDrag = p.AxisViscous * h / p.AxisInertia,
            AxisCoulombKick = p.AxisCoulomb * axisKick,
            AxisBreakawayKick = p.AxisBreakaway * axisKick,
            StepsPerRadian = steps,
            RotorKick = kick,
            EmfConstant = km / (steps * h),
            RegulatorRate = regulator,
        };
        lane.Levels.Of(LaneLevel.SlewMicrostepping) = drive.SlewCurrentAmperes;
        lane.Levels.Of(LaneLevel.SlewFullStepping) = drive.SlewCurrentAmperes * drive.FullStepCurrentFraction;
        lane.Levels.Of(LaneLevel.LaterMicrostepping) = later;
        lane.Levels.Of(LaneLevel.LaterFullStepping) = later * drive.FullStepCurrentFraction;
        lane.Levels.Of(LaneLevel.Unity) = 1.0;
        Gears(ref lane, p, kick, h);
        Supply(ref lane, setup, model, h);
        Payload(ref lane, model, p, h);
        Error(ref lane, model.Train.Worm);
        Load(ref lane, setup, axis);
        return lane;
    }

    /// <summary>Full steps of the rotor per rad.</summary>
    public static double StepsPerRadian(StepperMotor motor) => motor.RotorTeeth / (0.5 * Math.PI);

    private static void Gears(ref LaneParameters lane, AxisParameters p, double kick, double h)
    {
        double even = 0.5 * (p.Loss.Driving + p.Loss.BackDriving);
        double odd = 0.5 * (p.Loss.Driving - p.Loss.BackDriving);
        if (p.ShaftInertia <= 0.0)
        {
            lane.WormPerNode = 1.0 / (p.WormRatio * lane.StepsPerRadian);
            lane.NodeKick = kick / p.WormRatio;
            lane.MeshFrictionKick = even * lane.NodeKick;
            lane.MeshFrictionOdd = odd * lane.NodeKick;
            return;
        }

        double shaftKick = h * h / p.ShaftInertia;
        lane.WormPerNode = 1.0 / p.WormRatio;
        lane.ShaftPerRotor = 1.0 / (p.StageRatio * lane.StepsPerRadian);
        lane.StageStiffness = p.StageMesh.Stiffness;
        lane.StageDamping = p.StageMesh.Damping / h;
        lane.StageHalfBacklash = p.StageMesh.HalfBacklash;
        lane.StageFree = p.StageMesh.HalfBacklash > 0.0 ? 0.0 : double.PositiveInfinity;
        lane.StageKick = kick / p.StageRatio;
        lane.StageFrictionKick = 0.5 * (p.StageLoss.Driving + p.StageLoss.BackDriving) * lane.StageKick;
        lane.StageFrictionOdd = 0.5 * (p.StageLoss.Driving - p.StageLoss.BackDriving) * lane.StageKick;
        lane.ShaftKick = shaftKick;
        lane.ShaftFrictionKick = even * shaftKick / p.WormRatio;
        lane.ShaftFrictionOdd = odd * shaftKick / p.WormRatio;
    }

    private static void Supply(ref LaneParameters lane, MountSetup setup, AxisModel model, double h)
    {
        StepperMotor motor = model.Motor;
        ChopperDrive drive = model.Drive;
        lane.Inductance = motor.InductanceHenries;
        lane.ColdResistance = motor.ResistanceOhms;
        lane.StepSeconds = h;
        lane.StepsPerSecond = 1.0 / h;
        lane.SupplyVolts = drive.SupplyVolts;
        lane.PerSupplyVolt = 1.0 / drive.SupplyVolts;
        lane.SupplyResistance = drive.SupplyResistanceOhms;
        lane.BusPerStep = h / drive.BusCapacitanceFarads;
        lane.StepPerBus = drive.BusCapacitanceFarads / h;
        lane.BusDecay = drive.SupplyResistanceOhms > 0.0 ? LaneMath.Exp(-lane.BusPerStep / drive.SupplyResistanceOhms) : 0.0;
        lane.BrakeLimit = drive.BrakeLimitVolts;
        lane.ThermalResistance = motor.ThermalResistanceKelvinPerWatt;
        lane.ThermalDecay = LaneMath.Exp(-MoveRun.BlockSteps * h / motor.ThermalTimeConstantSeconds);
        lane.Ambient = setup.Disturbances.AmbientCelsius;
        lane.ResistanceGrowth = lane.ThermalResistance > 0.0 ? Winding.CopperPerKelvin : 0.0;
    }

    private static void Payload(ref LaneParameters lane, AxisModel model, AxisParameters p, double h)
    {
        lane.PayloadKick = p.PayloadInertia > 0.0 ? h * h / p.PayloadInertia : 0.0;
        lane.PayloadStiffness = p.PayloadStiffness;
        lane.PayloadDamping = p.PayloadDamping / h;
        lane.PayloadShare = model.Flexible?.InertiaShare ?? 0.0;
    }

    private static void Error(ref LaneParameters lane, WormStage worm)
    {
        PeriodicError error = worm.PeriodicError;
        (lane.ErrorFirst, lane.ErrorFirstPhase) = (error.FirstAmplitudeRadians, error.FirstPhaseRadians);
        (lane.ErrorSecond, lane.ErrorSecondPhase) = (error.SecondAmplitudeRadians, error.SecondPhaseRadians);
        (lane.ErrorRunout, lane.ErrorRunoutPhase) = (error.RunoutAmplitudeRadians, error.RunoutPhaseRadians);
        lane.WormTurns = worm.Ratio;
    }

    /// <summary>Start state.</summary>
    public static LaneState Start(MountSetup setup, MountAxis axis, MovePlan plan, MotorPlan shaftPlan, AxisParameters parameters, LaneParameters p)
    {
        WormStage worm = setup.Axis(axis).Train.Worm;
        double startRadians = axis == MountAxis.Polar ? setup.Move.Start.PolarRadians : setup.Move.Start.DeclinationRadians;
        double carried = -new MoveLoad(setup, axis, plan).Outside(startRadians, 0.0);
        AxisState start = AxisAssembly.Start(parameters, carried, shaftPlan, worm.PeriodicError, worm.Ratio);
        double fullSteps = p.StepsPerRadian * start.Rotor;
        ChopperDrive drive = setup.Axis(axis).Drive;
        LaneMath.SinCosOfQuarters(fullSteps, out double sin, out double cos);
        double a = drive.SlewCurrentAmperes * cos;
        double b = drive.SlewCurrentAmperes * sin;
        var state = new LaneState
        {
            Rotor = fullSteps,
            Shaft = start.Shaft,
            Axis = start.Axis,
            Payload = start.Payload,
            CurrentA = a,
            CurrentB = b,
            Stored = 0.5 * p.Inductance * ((a * a) + (b * b)),
            Volts = p.SupplyVolts,
            VoltsBefore = p.SupplyVolts,
            Celsius = p.Ambient,
            Factor = 1.0,
        };
        LaneBlock.Winding(ref state, ref p);
        return state;
    }

    /// <summary>Which parts of the law a setup needs.</summary>
    public static LaneFeatures Features(MountSetup setup, MountAxis axis, AxisParameters p)
    {
        AxisModel model = setup.Axis(axis);
        bool power = model.Drive.SupplyResistanceOhms > 0.0 || model.Motor.ThermalResistanceKelvinPerWatt > 0.0;
        return new LaneFeatures(p.ShaftInertia > 0.0, p.PayloadInertia > 0.0, power, OtherMoves(setup, axis));
    }

    /// <summary>Which slow terms it has.</summary>
    public static LaneTerms Terms(MountSetup setup, MountAxis axis)
    {
        PeriodicError error = setup.Axis(axis).Train.Worm.PeriodicError;
        IReadOnlyList<double> gravity = axis == MountAxis.Polar ? setup.Load.PolarGravity : setup.Load.DeclinationGravity;
        bool moves = OtherMoves(setup, axis);
        bool outside = moves || gravity.Any(k => k != 0.0) || !WindTorque.Calm(setup.Disturbances);
        return new LaneTerms(
            outside,
            moves,
            error != PeriodicError.None,
            error.SecondAmplitudeRadians != 0.0,
            error.RunoutAmplitudeRadians != 0.0,
            setup.Axis(axis).Motor.ThermalResistanceKelvinPerWatt > 0.0);
    }

    /// <summary>A piece of a plan as a lane has it.</summary>
    public static LanePiece Piece(in PlanPiece piece) => new()
    {
        Start = piece.Start,
        Position = piece.Position,
        Velocity = piece.Velocity,
        HalfAcceleration = piece.HalfAcceleration,
        SixthJerk = piece.SixthJerk,
    };

    /// <summary>Whether all that is integrated is a finite number.</summary>
    [System.Runtime.CompilerServices.MethodImpl(System.Runtime.CompilerServices.MethodImplOptions.AggressiveInlining)]
    public static bool IsFinite(in LaneState s) => double.IsFinite(
        s.Rotor + s.RotorSpeed + s.Shaft + s.ShaftSpeed + s.Axis + s.AxisSpeed + s.Slip + s.Payload + s.PayloadSpeed + s.CurrentA + s.CurrentB + s.Volts + s.Celsius);

    // A declination axis feels the polar axis turn even where that only tracks.
    private static bool OtherMoves(MountSetup setup, MountAxis axis) => axis == MountAxis.Polar
        ? setup.Declination is not null && setup.Move.Start.DeclinationRadians != setup.Move.End.DeclinationRadians
        : (setup.Polar is not null && setup.Move.Start.PolarRadians != setup.Move.End.PolarRadians) || setup.Move.FollowUp == FollowUp.Sidereal;

    private static void Load(ref LaneParameters lane, MountSetup setup, MountAxis axis)
    {
        IReadOnlyList<double> j = setup.Load.PolarInertia;
        if (axis == MountAxis.Polar)
        {
            IReadOnlyList<double> k = setup.Load.PolarGravity;
            (lane.Gravity0, lane.Gravity1, lane.Gravity2) = (k[0], k[2], k[4]);
            (lane.Gravity3, lane.Gravity4, lane.Gravity5) = (k[1], k[3], k[5]);
            double start = setup.Load.Inertia(axis, setup.Move.Start.DeclinationRadians);
            (lane.Inertia0, lane.Inertia1, lane.Inertia2, lane.Inertia3, lane.Inertia4) = (j[0] / start, j[1] / start, j[2] / start, j[3] / start, j[4] / start);
            return;
        }

        lane.Inertia0 = 1.0;
        IReadOnlyList<double> q = setup.Load.DeclinationGravity;
        (lane.Gravity0, lane.Gravity1, lane.Gravity2) = (q[0], q[1], q[2]);
        (lane.Gravity3, lane.Gravity4, lane.Gravity5) = (q[3], q[4], q[5]);
        (lane.InertiaHalfSlope1, lane.InertiaHalfSlope2, lane.InertiaHalfSlope3, lane.InertiaHalfSlope4) = (-0.5 * j[1], 0.5 * j[2], -j[3], j[4]);
    }
}
