using AxisSim.Core.Drives;
using AxisSim.Core.Dynamics;
using AxisSim.Core.Gearing;
using AxisSim.Core.Motion;
using AxisSim.Core.Motors;
using AxisSim.Core.Payloads;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Lanes;

/// <summary>Turns a setup into the constants and the start state of a lane.</summary>
internal static class LaneRows
{
    public static LaneParameters Parameters(MountSetup setup, MountAxis axis, AxisParameters p, double h)
    {
        AxisModel model = setup.Axis(axis);
        StepperMotor motor = model.Motor;
        ChopperDrive drive = model.Drive;
        bool tracks = setup.Tracks(axis);
        double teeth = motor.RotorTeeth;
        double kick = h * teeth / p.RotorInertia;
        bool shaft = p.ShaftInertia > 0.0;
        MeshLoss onRotor = shaft ? p.StageLoss : p.Loss;
        double later = tracks ? drive.TrackingCurrentAmperes : drive.HoldingCurrentAmperes;
        double probe = setup.Disturbances.SyncProbe ? SyncProbe.HoldingTorqueShare * motor.HoldingTorqueNewtonMetres : 0.0;
        double heat = motor.ThermalResistanceKelvinPerWatt;
        double regulator = h / drive.RegulatorSeconds;
        double busPerStep = h / drive.BusCapacitanceFarads;
        double regulatorDecay = LaneMath.Exp(-regulator);
        PeriodicError error = model.Train.Worm.PeriodicError;
        var row = new LaneParameters
        {
            Teeth = teeth,
            EmfConstant = motor.TorqueConstantNewtonMetresPerAmpere / teeth,
            RotorKick = kick,
            TorqueKick = motor.TorqueConstantNewtonMetresPerAmpere * kick,
            DetentKick = 4.0 * motor.DetentTorqueNewtonMetres * kick,
            RotorDrag = (p.RotorViscous + p.PlanDamping) * kick / teeth,
            PlanDrag = p.PlanDamping * kick / teeth,
            ProbeKick = probe * kick,
            RotorCoulombKick = p.RotorCoulomb * kick,
            RotorDriving = onRotor.Driving,
            RotorBack = onRotor.BackDriving,
            RegulatorDecay = regulatorDecay,
            RegulatorShare = PhaseLaw.Share(regulator, regulatorDecay),
            RegulatorRate = regulator,
            StepSeconds = h,
            StepsPerSecond = 1.0 / h,
            ColdResistance = motor.ResistanceOhms,
            Inductance = motor.InductanceHenries,
            SupplyVolts = drive.SupplyVolts,
            PerSupplyVolt = 1.0 / drive.SupplyVolts,
            SupplyResistance = drive.SupplyResistanceOhms,
            BusPerStep = busPerStep,
            StepPerBus = 1.0 / busPerStep,
            BusDecay = drive.SupplyResistanceOhms > 0.0 ? LaneMath.Exp(-busPerStep / drive.SupplyResistanceOhms) : 0.0,
            BrakeLimit = drive.BrakeLimitVolts,
            ThermalResistance = heat,
            ThermalDecay = LaneMath.Exp(-MoveRun.BlockSteps * h / motor.ThermalTimeConstantSeconds),
            Ambient = setup.Disturbances.AmbientCelsius,
            ResistanceGrowth = heat > 0.0 ? Winding.CopperPerKelvin : 0.0,
            SlewMicrostepping = drive.SlewCurrentAmperes,
            SlewFullStepping = drive.SlewCurrentAmperes * drive.FullStepCurrentFraction,
            LaterMicrostepping = later,
            LaterFullStepping = later * drive.FullStepCurrentFraction,
            Unity = 1.0,
            WormPerNode = 1.0 / (shaft ? p.WormRatio : p.WormRatio * teeth),
            MeshStiffness = p.Mesh.Stiffness,
            MeshDamping = p.Mesh.Damping,
            HalfBacklash = p.Mesh.HalfBacklash,
            Clutch = p.Clutch,
            AxisKick = h / p.AxisInertia,
            AxisInertia = p.AxisInertia,
            AxisViscous = p.AxisViscous,
            AxisCoulomb = p.AxisCoulomb,
            AxisBreakaway = p.AxisBreakaway,
            ShaftPerRotor = 1.0 / (p.StageRatio * teeth),
            StageStiffness = p.StageMesh.Stiffness,
            StageDamping = p.StageMesh.Damping,
            StageHalfBacklash = p.StageMesh.HalfBacklash,
            ShaftKick = shaft ? h / p.ShaftInertia : 0.0,
            ShaftDriving = p.Loss.Driving,
            ShaftBack = p.Loss.BackDriving,
            PayloadKick = p.PayloadInertia > 0.0 ? h / p.PayloadInertia : 0.0,
            PayloadInertia = p.PayloadInertia,
            PayloadStiffness = p.PayloadStiffness,
            PayloadDamping = p.PayloadDamping,
            PayloadShare = model.Flexible?.InertiaShare ?? 0.0,
            ErrorFirst = error.FirstAmplitudeRadians,
            ErrorFirstPhase = error.FirstPhaseRadians,
            ErrorSecond = error.SecondAmplitudeRadians,
            ErrorSecondPhase = error.SecondPhaseRadians,
            ErrorRunout = error.RunoutAmplitudeRadians,
            ErrorRunoutPhase = error.RunoutPhaseRadians,
            WormTurns = model.Train.Worm.Ratio,
            Inertia0 = 1.0,
        };
        Load(ref row, setup, axis);
        return row;
    }

    /// <summary>Start state.</summary>
    public static LaneState Start(MountSetup setup, MountAxis axis, MovePlan plan, MotorPlan shaftPlan, AxisParameters parameters, LaneParameters p)
    {
        WormStage worm = setup.Axis(axis).Train.Worm;
        double startRadians = axis == MountAxis.Polar ? setup.Move.Start.PolarRadians : setup.Move.Start.DeclinationRadians;
        double carried = -new MoveLoad(setup, axis, plan).Outside(startRadians, 0.0);
        AxisState start = AxisAssembly.Start(parameters, carried, shaftPlan, worm.PeriodicError, worm.Ratio);
        double startElectricalRadians = p.Teeth * start.Rotor;
        ChopperDrive drive = setup.Axis(axis).Drive;
        LaneMath.SinCos(startElectricalRadians, out double sin, out double cos);
        double a = drive.SlewCurrentAmperes * cos;
        double b = drive.SlewCurrentAmperes * sin;
        var state = new LaneState
        {
            Rotor = startElectricalRadians,
            Shaft = start.Shaft,
            Axis = start.Axis,
            Payload = start.Payload,
            CurrentA = a,
            CurrentB = b,
            Stored = 0.5 * p.Inductance * ((a * a) + (b * b)),
            Volts = p.SupplyVolts,
            VoltsBefore = p.SupplyVolts,
            Celsius = p.Ambient,
            Gear = 1.0,
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
        bool outside = moves || gravity.Any(k => k != 0.0) || !new WindTorque(setup.Disturbances).IsZero;
        return new LaneTerms(
            outside,
            moves,
            error != PeriodicError.None,
            error.SecondAmplitudeRadians != 0.0,
            error.RunoutAmplitudeRadians != 0.0,
            setup.Axis(axis).Motor.ThermalResistanceKelvinPerWatt > 0.0);
    }

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

        IReadOnlyList<double> q = setup.Load.DeclinationGravity;
        (row.Gravity0, row.Gravity1, row.Gravity2) = (q[0], q[1], q[2]);
        (row.Gravity3, row.Gravity4, row.Gravity5) = (q[3], q[4], q[5]);
        (row.Throw1, row.Throw2, row.Throw3, row.Throw4) = (-0.5 * j[1], 0.5 * j[2], -j[3], j[4]);
    }
}
