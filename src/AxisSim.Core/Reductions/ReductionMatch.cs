using AxisSim.Core.Gearing;
using AxisSim.Core.Motors;
using AxisSim.Core.Mount;
using AxisSim.Core.Questions;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Reductions;

/// <summary>What the inertia-matched reduction of an axis follows from, and the acceleration at any reduction, in closed form.</summary>
/// <remarks>
/// With n total reduction, e driving efficiency from motor to axis, Tm motor torque (N m), TL steady torque at the axis (N m), Jm inertia that turns with the
/// motor (kg m2), Jw inertia of worm shaft and last wheel (kg m2), N reduction of the worm and J inertia of the axis (kg m2):
/// <c>Tm = Jm n a + Jw N2 a/n + (J a + TL)/(e n)</c>, so
/// <c>a = (n e Tm - TL)/(n2 e Jm + J + e Jw N2)</c>. That is the law of <see cref="InertiaMatch"/> with e Tm, e Jm and <c>J + e Jw N2</c> for its motor
/// torque, motor inertia and load inertia. Valid while the torque does not fall with speed, and for a stiff train: a twist of the train adds a swing.
/// </remarks>
public sealed record ReductionMatch
{
    /// <summary>Inertia of the axis, kg m2.</summary>
    public required double AxisInertiaKilogramSquareMetres { get; init; }

    /// <summary>Inertia of worm shaft and last wheel seen at the axis without loss, kg m2; it does not depend on the stage before the worm.</summary>
    public required double WormShaftInertiaAtAxisKilogramSquareMetres { get; init; }

    /// <summary>Inertia of the rotor and of what turns with it at fixed ratios, at the motor shaft, kg m2.</summary>
    public required double MotorInertiaKilogramSquareMetres { get; init; }

    /// <summary>Driving efficiency from motor shaft to axis.</summary>
    public required double DrivingEfficiency { get; init; }

    /// <summary>Motor torque that is counted on, N m: the pull-out torque at low speed by the closed form, less the margin asked for.</summary>
    public required double MotorTorqueNewtonMetres { get; init; }

    /// <summary>Greatest steady torque at the axis during the move, N m: friction, imbalance and wind.</summary>
    public required double LoadTorqueNewtonMetres { get; init; }

    /// <summary>The textbook's match without load torque and loss, <c>sqrt(JL/Jm)</c>.</summary>
    public double TextbookRatio => InertiaMatch.OptimumRatio(AxisInertiaKilogramSquareMetres + WormShaftInertiaAtAxisKilogramSquareMetres, MotorInertiaKilogramSquareMetres);

    /// <summary>The reduction of greatest acceleration with load torque and loss counted in; infinite when the motor has no torque.</summary>
    public double OptimumRatio => MotorTorqueNewtonMetres > 0.0
        ? InertiaMatch.OptimumRatio(LoadInertia, DrivingEfficiency * MotorInertiaKilogramSquareMetres, LoadTorqueNewtonMetres, DrivingEfficiency * MotorTorqueNewtonMetres)
        : double.PositiveInfinity;

    /// <summary>Least reduction at which the motor carries the steady torque at all.</summary>
    public double LeastRatio => MotorTorqueNewtonMetres > 0.0 ? LoadTorqueNewtonMetres / (DrivingEfficiency * MotorTorqueNewtonMetres) : double.PositiveInfinity;

    private double LoadInertia => AxisInertiaKilogramSquareMetres + (DrivingEfficiency * WormShaftInertiaAtAxisKilogramSquareMetres);

    /// <summary>Greatest acceleration of the axis at a reduction, rad/s2; below zero where the motor does not carry the steady torque.</summary>
    public double Acceleration(double totalRatio) =>
        InertiaMatch.LoadAcceleration(totalRatio, LoadInertia, DrivingEfficiency * MotorInertiaKilogramSquareMetres, LoadTorqueNewtonMetres, DrivingEfficiency * MotorTorqueNewtonMetres);

    /// <summary>Inertia of axis and worm shaft seen at the motor over that of the motor, at a reduction; 1 at the textbook's match.</summary>
    public double InertiaRatio(double totalRatio) =>
        (AxisInertiaKilogramSquareMetres + WormShaftInertiaAtAxisKilogramSquareMetres) / (totalRatio * totalRatio) / MotorInertiaKilogramSquareMetres;

    /// <summary>The figures of an axis.</summary>
    /// <param name="setup">The mount and its move.</param>
    /// <param name="axis">Which axis.</param>
    /// <param name="marginShare">Margin, 0 or more: 0.3 asks for 1.3 times the torque (a load factor of 1.3).</param>
    public static ReductionMatch Of(MountSetup setup, MountAxis axis, double marginShare)
    {
        ArgumentNullException.ThrowIfNull(setup);
        AxisModel model = setup.Axis(axis);
        GearTrain train = model.Train;
        double before = 1.0, fixedInertia = model.Motor.RotorInertiaKilogramSquareMetres;
        foreach (GearStage stage in train.Stages.SkipLast(1))
        {
            before *= stage.Ratio;
            fixedInertia += stage.InertiaKilogramSquareMetres / (before * before);
        }

        double shaft = train.Worm.InertiaKilogramSquareMetres + (train.Stages.Count > 0 ? train.Stages[^1].InertiaKilogramSquareMetres : 0.0);
        double torque = PullOutLaw.OnDrive(model.Motor, model.Drive, false, model.Drive.SupplyVolts, 0.0);
        return new ReductionMatch
        {
            AxisInertiaKilogramSquareMetres = setup.Load.Inertia(axis, setup.Move.Start.DeclinationRadians),
            WormShaftInertiaAtAxisKilogramSquareMetres = shaft * train.Worm.Ratio * train.Worm.Ratio,
            MotorInertiaKilogramSquareMetres = fixedInertia,
            DrivingEfficiency = train.StageEfficiency * train.Worm.DrivingEfficiencyWith(setup.Disturbances.ColdGreaseFactor),
            MotorTorqueNewtonMetres = torque / LoadFactors.OfMargin(marginShare),
            LoadTorqueNewtonMetres = new SteadyLoad(setup, axis).Torque(0.0),
        };
    }
}
