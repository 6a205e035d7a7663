using AxisSim.Core.Motors;

namespace AxisSim.Core.Comparisons;

/// <summary>A measured point of a pull-out curve with its conditions.</summary>
/// <param name="SpeedRadiansPerSecond">Motor speed, rad/s.</param>
/// <param name="TorqueNewtonMetres">Pull-out torque, N m.</param>
/// <param name="SupplyVolts">Supply voltage, V.</param>
/// <param name="PhaseAmperes">Phase current, peak of the sine, A.</param>
/// <param name="FullStepping">Full-stepping, or microstepping.</param>
public sealed record MeasuredPoint(double SpeedRadiansPerSecond, double TorqueNewtonMetres, double SupplyVolts, double PhaseAmperes, bool FullStepping);

/// <summary>What was made of a measured curve.</summary>
public enum FitKind
{
    /// <summary>Torque constant and inductance were fitted.</summary>
    TorqueAndInductance,

    /// <summary>Torque constant, inductance and a loss of voltage were fitted.</summary>
    TorqueInductanceAndLoss,

    /// <summary>Too few points for a fit: the torque constant was lowered until the model is nowhere above a measured point.</summary>
    Cap,
}

/// <summary>A motor as a measured pull-out curve has it.</summary>
/// <param name="Motor">Name of the motor.</param>
/// <param name="Kind">What was fitted.</param>
/// <param name="TorqueScale">Factor on the torque constant.</param>
/// <param name="InductanceScale">Factor on the inductance.</param>
/// <param name="VoltageLossVolts">Voltage lost between supply and winding, V.</param>
/// <param name="AtBound">Whether a factor ended at the bound of what is believed of a datasheet.</param>
/// <param name="RmsNewtonMetres">Root of the mean squared residual, N m.</param>
/// <param name="RSquared">Share of the variance that the fit explains; NaN for a cap.</param>
/// <param name="Points">The measured points.</param>
/// <param name="DatasheetNewtonMetres">Torque of the datasheet's motor at each, N m.</param>
/// <param name="FittedNewtonMetres">Torque of the fitted motor at each, N m.</param>
/// <param name="Fitted">The fitted motor.</param>
public sealed record MeasuredFit(
    string Motor, FitKind Kind, double TorqueScale, double InductanceScale, double VoltageLossVolts, bool AtBound, double RmsNewtonMetres, double RSquared,
    IReadOnlyList<MeasuredPoint> Points, IReadOnlyList<double> DatasheetNewtonMetres, IReadOnlyList<double> FittedNewtonMetres, StepperMotor Fitted);
