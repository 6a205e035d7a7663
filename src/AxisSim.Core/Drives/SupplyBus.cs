using System.Runtime.CompilerServices;

namespace AxisSim.Core.Drives;

/// <summary>Supply with a resistance feeding the drive's capacitor: the bus voltage is a state.</summary>
/// <remarks>
/// Law: <c>C dV/dt = max(0, (Vs - V)/Rs) - P/V</c>; Vs open-circuit voltage (V), Rs resistance (ohm), C capacitance (F), P power
/// taken by the drive (W, negative when braking feeds back). The supply takes no current back, so the voltage rises in braking until
/// the brake limit, above which the surplus is dumped. The diodes of the bridge keep V from falling below zero, where a supply that is too weak for the
/// drive ends. Rs = 0 is an ideal supply with V = Vs throughout.
/// </remarks>
internal struct SupplyBus
{
    private readonly double _open;
    private readonly double _perOpen;
    private readonly double _resistance;
    private readonly double _capacitance;
    private readonly double _limit;
    private readonly double _decay;
    private double _before;

    public SupplyBus(ChopperDrive drive, double stepSeconds)
    {
        _open = drive.SupplyVolts;
        _perOpen = 1.0 / _open;
        _resistance = drive.SupplyResistanceOhms;
        _capacitance = drive.BusCapacitanceFarads;
        _limit = drive.BrakeLimitVolts;
        _decay = _resistance > 0.0 ? Math.Exp(-stepSeconds / (_resistance * _capacitance)) : 0.0;
        Volts = _open;
        _before = _open;
        SupplyAmperes = 0.0;
    }

    /// <summary>Voltage at the end of the last step, V.</summary>
    public double Volts { get; private set; }

    /// <summary>Current drawn from the supply in the last step, A.</summary>
    public double SupplyAmperes { get; private set; }

    /// <summary>Voltage extrapolated to the middle of the coming step, V.</summary>
    public readonly double MidVolts => (1.5 * Volts) - (0.5 * _before);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void Take(double watts, double stepSeconds)
    {
        if (_resistance <= 0.0)
        {
            SupplyAmperes = watts * _perOpen;
            return;
        }

        double load = watts / Math.Max(MidVolts, 0.05 * _open);
        double unsupplied = Volts - (load * stepSeconds / _capacitance);
        double rest = _open - (_resistance * load);
        double end = rest + ((Volts - rest) * _decay);
        bool blocks = Volts > _open || end > _open;
        if (blocks)
        {
            end = Math.Max(_open, unsupplied);
        }

        SupplyAmperes = blocks ? 0.0 : load + (_capacitance * (end - Volts) / stepSeconds);
        double before = Volts;
        Volts = Math.Min(Math.Max(end, 0.0), _limit);

        // One of more than three times the new voltage would extrapolate below zero.
        _before = Math.Min(before, 3.0 * Volts);
    }
}
