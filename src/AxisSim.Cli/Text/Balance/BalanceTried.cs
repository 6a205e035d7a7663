using System.Text.Json.Serialization;

namespace AxisSim.Cli.Text.Balance;

/// <summary>The steps of a balance with the settings that were run as typed and hold.</summary>
/// <param name="Steps">The steps; a step whose settings do not hold by themselves has none.</param>
/// <param name="Drafts">The steps with all of their settings, whether they hold by themselves or not.</param>
/// <param name="Together">The settings of all steps together; null when there are none, or they do not hold.</param>
/// <param name="RemainingPolarNewtonMetres">Greatest imbalance about the polar axis with all steps taken, as far as they can be typed, N m.</param>
/// <param name="RemainingDeclinationNewtonMetres">The same about the declination axis, N m.</param>
/// <param name="Withheld">Whether settings were left out.</param>
internal sealed record BalanceTried(IReadOnlyList<ShiftStep> Steps, [property: JsonIgnore] IReadOnlyList<ShiftStep> Drafts, TypedLine? Together, double RemainingPolarNewtonMetres, double RemainingDeclinationNewtonMetres, bool Withheld);
