namespace AxisSim.Core.Recommendations;

/// <summary>Currents as drives are set: to three digits.</summary>
internal static class RoundCurrent
{
    /// <summary>The next value up.</summary>
    public static double Up(double amperes) => Math.Round(Math.Ceiling((amperes / Grain(amperes)) - 1e-9) * Grain(amperes), 9);

    /// <summary>The next value down.</summary>
    public static double Down(double amperes) => Math.Round(Math.Floor((amperes / Grain(amperes)) + 1e-9) * Grain(amperes), 9);

    private static double Grain(double amperes) => Math.Pow(10.0, Math.Floor(Math.Log10(amperes)) - 2.0);
}
