namespace AxisSim.Core.Drives;

/// <summary>Steady current of a supply with a resistance that feeds a constant power.</summary>
/// <remarks>
/// <c>I (Vs - Rs I) = P</c>, so <c>I = 2 P/(Vs + sqrt(Vs^2 - 4 Rs P))</c>; I current (A), Vs open-circuit voltage (V), Rs resistance (ohm), P power (W).
/// Without a resistance <c>P/Vs</c>. A power above <c>Vs^2/(4 Rs)</c> cannot be drawn.
/// </remarks>
public static class SupplyLaw
{
    /// <summary>The greatest share of its voltage by which the drive can change the bus in a second, 1/s; 0 for an ideal supply.</summary>
    /// <remarks><c>2 I/(C Vs)</c>: both phases, at most <c>I</c> each, feed the capacitor or are fed by it. A step must resolve it; the time constant <c>Rs C</c> need not be, for that decay is solved exactly.</remarks>
    public static double GreatestRate(ChopperDrive drive)
    {
        ArgumentNullException.ThrowIfNull(drive);
        double current = Math.Max(drive.SlewCurrentAmperes, Math.Max(drive.TrackingCurrentAmperes, drive.HoldingCurrentAmperes));
        return drive.SupplyResistanceOhms > 0.0 ? 2.0 * current / (drive.BusCapacitanceFarads * drive.SupplyVolts) : 0.0;
    }

    /// <summary>The current, A; not a number when the supply cannot give the power.</summary>
    public static double Amperes(ChopperDrive drive, double watts)
    {
        double volts = drive.SupplyVolts;
        return 2.0 * watts / (volts + Math.Sqrt((volts * volts) - (4.0 * drive.SupplyResistanceOhms * watts)));
    }
}
