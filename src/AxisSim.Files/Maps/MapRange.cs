using System.Globalization;
using AxisSim.Core.Maps;
using AxisSim.Files.Keys;
using AxisSim.Files.Scenarios;

namespace AxisSim.Files.Maps;

/// <summary>The values of one key along a map, as they are written and in SI.</summary>
public sealed class MapRange
{
    private readonly Value[] values;

    internal MapRange(ScenarioKey key, string path, string unit, bool logarithmic, double[] shown, Value[] values)
    {
        (Key, Path, Unit, this.values) = (key, path, unit, values);
        Shown = new GridAxis(shown, logarithmic);
        Si = [.. values.Select(value => value.Number / value.Second)];
    }

    /// <summary>Dotted path of the key.</summary>
    public string Path { get; }

    /// <summary>The unit as it was written; empty for plain numbers.</summary>
    public string Unit { get; }

    /// <summary>The numbers as they are written before the unit.</summary>
    public GridAxis Shown { get; }

    /// <summary>The same in SI.</summary>
    public IReadOnlyList<double> Si { get; }

    /// <summary>The unit in SI as part of a column's name.</summary>
    public string SiUnit => ColumnUnits.Si(Key, values[0]);

    internal ScenarioKey Key { get; }

    /// <summary>The value of a number as it would be written in a file.</summary>
    public string Text(double shown) => Number(shown) + (Unit.Length == 0 ? "" : " " + Unit);

    /// <summary>The setting that gives the same value on a command line.</summary>
    public string Setting(double shown) => $"{Path}={Text(shown)}";

    /// <summary>The number, before the unit, of an SI value: units are straight lines through two points.</summary>
    public double FromSi(double si)
    {
        double low = Si[0], high = Si[^1], from = Shown.Values[0], to = Shown.Values[^1];
        return Rounded(from + ((si - low) / (high - low) * (to - from)));
    }

    internal Value ValueAt(int index) => values[index];

    /// <summary>A number without the digits that only come from computing in binary: twelve are left.</summary>
    internal static double Rounded(double number) => double.Parse(number.ToString("G12", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);

    /// <summary>A number in the form of scenario files.</summary>
    internal static string Number(double number) => number.ToString("R", CultureInfo.InvariantCulture);
}
