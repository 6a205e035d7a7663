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
internal static class LaneRows
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
        var row = new LaneParameters
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
        row.Levels.Of(LaneLevel.SlewMicrostepping) = drive.SlewCurrentAmperes;
        row.Levels.Of(LaneLevel.SlewFullStepping) = drive.SlewCurrentAmperes * drive.FullStepCurrentFraction;
        row.Levels.Of(LaneLevel.LaterMicrostepping) = later;
        row.Levels.Of(LaneLevel.LaterFullStepping) = later * drive.FullStepCurrentFraction;
        row.Levels.Of(LaneLevel.Unity) = 1.0;
        Gears(ref row, p, kick, h);
        Supply(ref row, setup, model, h);
        Payload(ref row, model, p, h);
        Error(ref row, model.Train.Worm);
        Load(ref row, setup, axis);
        return row;
    }

    /// <summary>Full steps of the rotor per rad.</summary>
    public static double StepsPerRadian(StepperMotor motor) => motor.RotorTeeth / (0.5 * Math.PI);

    private static void Gears(ref LaneParameters row, AxisParameters p, double kick, double h)
    {
        double even = 0.5 * (p.Loss.Driving + p.Loss.BackDriving);
        double odd = 0.5 * (p.Loss.Driving - p.Loss.BackDriving);
        if (p.ShaftInertia <= 0.0)
        {
            row.WormPerNode = 1.0 / (p.WormRatio * row.StepsPerRadian);
            row.NodeKick = kick / p.WormRatio;
            row.MeshFrictionKick = even * row.NodeKick;
            row.MeshFrictionOdd = odd * row.NodeKick;
            return;
        }

        double shaftKick = h * h / p.ShaftInertia;
        row.WormPerNode = 1.0 / p.WormRatio;
        row.ShaftPerRotor = 1.0 / (p.StageRatio * row.StepsPerRadian);
        row.StageStiffness = p.StageMesh.Stiffness;
        row.StageDamping = p.StageMesh.Damping / h;
        row.StageHalfBacklash = p.StageMesh.HalfBacklash;
        row.StageFree = p.StageMesh.HalfBacklash > 0.0 ? 0.0 : double.PositiveInfinity;
        row.StageKick = kick / p.StageRatio;
        row.StageFrictionKick = 0.5 * (p.StageLoss.Driving + p.StageLoss.BackDriving) * row.StageKick;
        row.StageFrictionOdd = 0.5 * (p.StageLoss.Driving - p.StageLoss.BackDriving) * row.StageKick;
        row.ShaftKick = shaftKick;
        row.ShaftFrictionKick = even * shaftKick / p.WormRatio;
        row.ShaftFrictionOdd = odd * shaftKick / p.WormRatio;
    }

    private static void Supply(ref LaneParameters row, MountSetup setup, AxisModel model, double h)
    {
        StepperMotor motor = model.Motor;
        ChopperDrive drive = model.Drive;
        row.Inductance = motor.InductanceHenries;
        row.ColdResistance = motor.ResistanceOhms;
        row.StepSeconds = h;
        row.StepsPerSecond = 1.0 / h;
        row.SupplyVolts = drive.SupplyVolts;
        row.PerSupplyVolt = 1.0 / drive.SupplyVolts;
        row.SupplyResistance = drive.SupplyResistanceOhms;
        row.BusPerStep = h / drive.BusCapacitanceFarads;
        row.StepPerBus = drive.BusCapacitanceFarads / h;
        row.BusDecay = drive.SupplyResistanceOhms > 0.0 ? LaneMath.Exp(-row.BusPerStep / drive.SupplyResistanceOhms) : 0.0;
        row.BrakeLimit = drive.BrakeLimitVolts;
        row.ThermalResistance = motor.ThermalResistanceKelvinPerWatt;
        row.ThermalDecay = LaneMath.Exp(-MoveRun.BlockSteps * h / motor.ThermalTimeConstantSeconds);
        row.Ambient = setup.Disturbances.AmbientCelsius;
        row.ResistanceGrowth = row.ThermalResistance > 0.0 ? Winding.CopperPerKelvin : 0.0;
    }

    private static void Payload(ref LaneParameters row, AxisModel model, AxisParameters p, double h)
    {
        row.PayloadKick = p.PayloadInertia > 0.0 ? h * h / p.PayloadInertia : 0.0;
        row.PayloadStiffness = p.PayloadStiffness;
        row.PayloadDamping = p.PayloadDamping / h;
        row.PayloadShare = model.Flexible?.InertiaShare ?? 0.0;
    }

    private static void Error(ref LaneParameters row, WormStage worm)
    {
        PeriodicError error = worm.PeriodicError;
        (row.ErrorFirst, row.ErrorFirstPhase) = (error.FirstAmplitudeRadians, error.FirstPhaseRadians);
        (row.ErrorSecond, row.ErrorSecondPhase) = (error.SecondAmplitudeRadians, error.SecondPhaseRadians);
        (row.ErrorRunout, row.ErrorRunoutPhase) = (error.RunoutAmplitudeRadians, error.RunoutPhaseRadians);
        row.WormTurns = worm.Ratio;
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

    /// <summary>A piece of a plan as a row.</summary>
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

    private static void Load(ref LaneParameters row, MountSetup setup, MountAxis axis)
    {
        IReadOnlyList<double> j = setup.Load.PolarInertia;
        if (axis == MountAxis.Polar)
        {
            IReadOnlyList<double> k = setup.Load.PolarGravity;
            (row.Gravity0, row.Gravity1, row.Gravity2) = (k[0], k[2], k[4]);
            (row.Gravity3, row.Gravity4, row.Gravity5) = (k[1], k[3], k[5]);
            double start = setup.Load.Inertia(axis, setup.Move.Start.DeclinationRadians);
            (row.Inertia0, row.Inertia1, row.Inertia2, row.Inertia3, row.Inertia4) = (j[0] / start, j[1] / start, j[2] / start, j[3] / start, j[4] / start);
            return;
        }

        row.Inertia0 = 1.0;
        IReadOnlyList<double> q = setup.Load.DeclinationGravity;
        (row.Gravity0, row.Gravity1, row.Gravity2) = (q[0], q[1], q[2]);
        (row.Gravity3, row.Gravity4, row.Gravity5) = (q[3], q[4], q[5]);
        (row.InertiaHalfSlope1, row.InertiaHalfSlope2, row.InertiaHalfSlope3, row.InertiaHalfSlope4) = (-0.5 * j[1], 0.5 * j[2], -j[3], j[4]);
    }
}
