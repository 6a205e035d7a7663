using AxisSim.Core.Motors;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;
using AxisSim.Core.Studies;

namespace AxisSim.Cli.Text.Curves;

/// <summary>The pull-out curves of one axis.</summary>
/// <param name="Axis">The axis.</param>
/// <param name="TotalReduction">Motor revolutions per axis revolution.</param>
/// <param name="Curves">Curves, bands and path.</param>
internal sealed record CurveReport(MountAxis Axis, double TotalReduction, TorqueSpeedCurves Curves)
{
    /// <summary>Where small swings about steady running grow at the speeds at which the drive microsteps; null when it never does.</summary>
    public IReadOnlyList<SwingBand>? MicrostepSwings { get; init; }

    /// <summary>The same at the speeds at which it full-steps.</summary>
    public IReadOnlyList<SwingBand>? FullStepSwings { get; init; }

    /// <summary>Angle of a full step of the motor, rad.</summary>
    public double FullStepRadians { get; init; }

    /// <summary>Stiffness of the train at the motor as a share of that of the field (<see cref="SwingStudy.TrainStiffnessShare"/>).</summary>
    public double TrainStiffnessShare { get; init; }
}
