using AxisSim.Core.Dynamics;
using AxisSim.Core.Gearing;
using AxisSim.Core.Motors;
using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Studies;

/// <summary>At which motor speeds small swings of an axis' rotor about steady running grow, as the linearised machine has it (<see cref="SmallSwings"/>).</summary>
/// <remarks>
/// <para>A second opinion beside the simulated pull-out. What swings is rotor and train, with the damping of the scenario, under the steady load of the move at its hardest and
/// at its easiest place; a speed counts when swings grow under one of them. The load behind the mesh is left out, for a mount's mesh is far softer than the motor's field:
/// see <see cref="TrainStiffnessShare"/>. Dry friction is constant while the rotor keeps
/// running forward, and damps nothing.</para>
/// </remarks>
public static class SwingStudy
{
    /// <summary>Above this <see cref="TrainStiffnessShare"/> the load swings with the rotor, and the bands are not to be relied on: it shifts frequencies by 5 %.</summary>
    public const double SoftShare = 0.1;

    /// <summary>The bands of motor speed at which small swings grow, in ascending order.</summary>
    /// <param name="setup">The mount and its move.</param>
    /// <param name="axis">The axis.</param>
    /// <param name="fullStepping">Full-stepping, or microstepping.</param>
    /// <param name="speedsRadiansPerSecond">Motor speeds looked at, rad/s, ascending; between neighbours the edges are searched. <see cref="Speeds"/> are close enough for most.</param>
    public static IReadOnlyList<SwingBand> Bands(MountSetup setup, MountAxis axis, bool fullStepping, IReadOnlyList<double> speedsRadiansPerSecond)
    {
        ArgumentNullException.ThrowIfNull(setup);
        AxisModel model = setup.Axis(axis);
        var load = new SteadyLoad(setup, axis);
        MeshLoss loss = AxisAssembly.TotalLoss(model.Train, setup.Disturbances.ColdGreaseFactor);
        double ratio = model.Train.TotalRatio;
        double Shaft(double torque) => loss.InputTorque(torque / ratio, 1.0);
        return SmallSwings.Bands(
            model.Motor,
            model.Drive,
            fullStepping,
            model.RotorSideInertiaKilogramSquareMetres,
            model.DampingNewtonMetreSecondsPerRadian,
            speedsRadiansPerSecond,
            speed => Shaft(load.Torque(speed / ratio)),
            speed => Shaft(load.LeastTorque(speed / ratio)));
    }

    /// <summary>The bands among the speeds at which the drive uses a mode, up to a greatest one; null when it never does.</summary>
    /// <param name="setup">The mount and its move.</param>
    /// <param name="axis">The axis.</param>
    /// <param name="fullStepping">Full-stepping, which the drive does above its changeover, or microstepping.</param>
    /// <param name="topRadiansPerSecond">The greatest motor speed, rad/s.</param>
    public static IReadOnlyList<SwingBand>? BandsMet(MountSetup setup, MountAxis axis, bool fullStepping, double topRadiansPerSecond)
    {
        IReadOnlyList<double> all = Speeds(setup, axis, topRadiansPerSecond);
        double changeover = setup.Axis(axis).Drive.ChangeoverRadiansPerSecond;
        double[] met = [.. all.Where(speed => fullStepping ? speed > changeover : speed < changeover)];

        // A band may reach up to the changeover, or from there on.
        bool between = all.Count > 0 && all[0] < changeover && changeover < all[^1];
        return met.Length == 0 ? null : Bands(setup, axis, fullStepping, between ? [.. met.Append(changeover).Order()] : met);
    }

    /// <summary>Speeds close enough together to look at, up to a greatest one; see <see cref="SmallSwings.Speeds"/>.</summary>
    /// <param name="setup">The mount.</param>
    /// <param name="axis">The axis.</param>
    /// <param name="topRadiansPerSecond">The greatest motor speed, rad/s.</param>
    public static IReadOnlyList<double> Speeds(MountSetup setup, MountAxis axis, double topRadiansPerSecond)
    {
        ArgumentNullException.ThrowIfNull(setup);
        AxisModel model = setup.Axis(axis);
        return SmallSwings.Speeds(model.Motor, model.Drive, model.RotorSideInertiaKilogramSquareMetres, topRadiansPerSecond);
    }

    /// <summary>Stiffness of the train, seen at the motor, as a share of that of the field at the slew current: how much the load takes part in the rotor's swings.</summary>
    /// <remarks><c>(k/n^2)/(Nr Km I)</c>, k stiffness of the mesh at the axis (N m/rad), n total reduction, Nr rotor teeth, Km torque constant (N m/A), I slew current (A).</remarks>
    /// <param name="setup">The mount.</param>
    /// <param name="axis">The axis.</param>
    public static double TrainStiffnessShare(MountSetup setup, MountAxis axis)
    {
        ArgumentNullException.ThrowIfNull(setup);
        AxisModel model = setup.Axis(axis);
        double atMotor = model.Train.StiffnessNewtonMetresPerRadian / (model.Train.TotalRatio * model.Train.TotalRatio);
        return atMotor / (model.Motor.RotorTeeth * StaticTorque.Peak(model.Motor, model.Drive.SlewCurrentAmperes, 0.0));
    }
}
