namespace AxisSim.Core.Controllers;

/// <summary>One number that a controller takes for one axis, and what it stands for: <c>value = zero + number x unit</c>, SI.</summary>
/// <param name="Name">What the controller calls it.</param>
/// <param name="Quantity">What it sets; it says which SI unit the values are in.</param>
/// <param name="Unit">What one counts; negative where greater numbers mean less.</param>
/// <param name="UnitNumber">The number of the unit as it was written: 0.25 of "0.25 s".</param>
/// <param name="UnitName">The name of the unit as it was written: "s" of "0.25 s"; empty for a plain share.</param>
/// <param name="Zero">What the number 0 stands for.</param>
/// <param name="Least">Least number that it takes.</param>
/// <param name="Greatest">Greatest number that it takes; infinite for no limit.</param>
/// <param name="Step">Distance of the numbers, counted from the least: 1 for whole numbers, 0.1 for one decimal.</param>
/// <param name="ZeroText">What the number 0 stands for as it was written; empty for nothing.</param>
public sealed record ControllerScale(
    string Name, ControllerQuantity Quantity, double Unit, double UnitNumber, string UnitName, double Zero = 0.0, double Least = 0.0, double Greatest = double.PositiveInfinity, double Step = 1.0, string ZeroText = "")
{
    // A decimal such as 0.3 is no exact multiple of 0.1: numbers count as met within this share of a step.
    private const double Slack = 1e-6;

    /// <summary>What a number stands for, SI.</summary>
    public double Value(double number) => Zero + (number * Unit);

    /// <summary>An SI value in the unit in which the user wrote what one counts.</summary>
    public double InUnit(double value) => value / Unit * UnitNumber;

    /// <summary>The numbers on either side of a value; equal when one stands for it exactly, null where the controller takes none.</summary>
    /// <param name="wanted">Value, SI, finite.</param>
    /// <returns>The number of the greatest value at or below, and that of the least value at or above.</returns>
    public (double? Below, double? Above) Around(double wanted)
    {
        double steps = (((wanted - Zero) / Unit) - Least) / Step, near = Math.Round(steps);
        (double down, double up) = Math.Abs(steps - near) <= Slack ? (near, near) : (Math.Floor(steps), Math.Ceiling(steps));
        double last = Math.Floor(((Greatest - Least) / Step) + Slack);

        // Out of range the nearest end is on one side only.
        double? lower = down < 0.0 ? null : Math.Min(down, last), upper = up > last ? null : Math.Max(up, 0.0);
        (double? below, double? above) = Unit > 0.0 ? (lower, upper) : (upper, lower);
        return (Number(below), Number(above));
    }

    private double? Number(double? steps) => steps is { } count ? Math.Round(Least + (count * Step), 9) : null;
}
