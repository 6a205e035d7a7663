using AxisSim.Files.Scenarios;
using AxisSim.Files.Units;

namespace AxisSim.Files.Maps;

/// <summary>The value that a file gives to a key of a map.</summary>
/// <param name="Shown">Its number in the unit of the range; NaN when the file does not give the key.</param>
/// <param name="Si">The same in SI.</param>
/// <param name="ByDefault">Whether it is the default of the key.</param>
public sealed record OwnValue(double Shown, double Si, bool ByDefault)
{
    /// <summary>The value of a key that a file does not give.</summary>
    public static OwnValue None { get; } = new(double.NaN, double.NaN, ByDefault: false);

    internal static OwnValue Of(ValueSet values, MapRange range)
    {
        Value value = values[range.Path];
        double si = value.Place == range.ValueAt(0).Place ? value.Number / value.Second : AtPlace(values, range.Path, range.ValueAt(0).Place);
        return double.IsFinite(si) ? new OwnValue(range.FromSi(si), si, !values.Written(range.Path)) : None;
    }

    // A rate that the file gives at the motor and the range at the axis, or the other way round.
    private static double AtPlace(ValueSet values, string path, RatePlace place)
    {
        string axis = path.Split('.')[0];
        return place switch
        {
            RatePlace.Axis => Rates.AtAxis(values, axis, path),
            RatePlace.Motor => Rates.AtMotor(values, axis, path),
            _ => Rates.AtMotor(values, axis, path) * values.Number($"{axis}.motor.steps_per_revolution") / (2.0 * Math.PI),
        };
    }
}
