namespace AxisSim.Cli.Text.Balance;

/// <summary>The steps of a balance with the settings that were run as typed and hold.</summary>
/// <param name="Steps">The steps; a step whose settings do not hold by themselves has none.</param>
/// <param name="Together">The settings of all steps together; null when there are not two with settings, or they do not hold.</param>
/// <param name="RemainingPolarNewtonMetres">Greatest imbalance about the polar axis with all steps taken, as far as they can be typed, N m.</param>
/// <param name="RemainingDeclinationNewtonMetres">The same about the declination axis, N m.</param>
/// <param name="Withheld">Whether settings were left out.</param>
internal sealed record BalanceTried(IReadOnlyList<ShiftStep> Steps, TypedLine? Together, double RemainingPolarNewtonMetres, double RemainingDeclinationNewtonMetres, bool Withheld);
