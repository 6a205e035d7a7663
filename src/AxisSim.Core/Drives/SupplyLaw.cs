namespace AxisSim.Core.Drives;

/// <summary>Steady current of a supply with a resistance that feeds a constant power.</summary>
/// <remarks>
/// <c>I (Vs - Rs I) = P</c>, so <c>I = 2 P/(Vs + sqrt(Vs^2 - 4 Rs P))</c>; I current (A), Vs open-circuit voltage (V), Rs resistance (ohm), P power (W).
/// Without a resistance <c>P/Vs</c>. A power above <c>Vs^2/(4 Rs)</c> cannot be drawn.
/// </remarks>
public static class SupplyLaw
{
    /// <summary>The current, A; not a number when the supply cannot give the power.</summary>
    public static double Amperes(ChopperDrive drive, double watts)
    {
        double volts = drive.SupplyVolts;
        return 2.0 * watts / (volts + Math.Sqrt((volts * volts) - (4.0 * drive.SupplyResistanceOhms * watts)));
    }
}
