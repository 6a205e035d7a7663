namespace AxisSim.Core.Numerics;

/// <summary>Positive numbers with few digits, as people type and drives take them.</summary>
public static class RoundDigits
{
    // A number that has the digits already must not go a step further by its last bit.
    private const double Slack = 1e-9;

    // What the powers of ten leave behind in the last bits is cut off.
    private const int Clean = 12;

    /// <summary>The greatest number of so many digits that is not above a value.</summary>
    /// <param name="value">The value, above 0.</param>
    /// <param name="digits">Significant digits.</param>
    public static double Down(double value, int digits) => At(value, digits, steps => Math.Floor(steps + Slack));

    /// <summary>The least number of so many digits that is not below a value.</summary>
    /// <param name="value">The value, above 0.</param>
    /// <param name="digits">Significant digits.</param>
    public static double Up(double value, int digits) => At(value, digits, steps => Math.Ceiling(steps - Slack));

    /// <summary>The nearest number of so many digits.</summary>
    /// <param name="value">The value, above 0.</param>
    /// <param name="digits">Significant digits.</param>
    public static double Nearest(double value, int digits) => At(value, digits, Math.Round);

    /// <summary>The greatest of 1, 2 and 5 times a power of ten that is not above a value.</summary>
    /// <param name="value">The value, above 0.</param>
    public static double OneTwoFive(double value)
    {
        double power = Math.Pow(10.0, Math.Floor(Math.Log10(value)));
        return new[] { 5.0, 2.0, 1.0 }.First(digit => digit * power <= value * (1.0 + Slack)) * power;
    }

    /// <summary>One of the last of so many digits of a value.</summary>
    /// <param name="value">The value, above 0.</param>
    /// <param name="digits">Significant digits.</param>
    public static double Grain(double value, int digits) => Math.Pow(10.0, Math.Floor(Math.Log10(value)) + 1.0 - digits);

    private static double At(double value, int digits, Func<double, double> whole)
    {
        double grain = Grain(value, digits);
        return Math.Round(whole(value / grain) * grain, Clean);
    }
}
