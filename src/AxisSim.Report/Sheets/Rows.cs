using AxisSim.Report.Text;

namespace AxisSim.Report.Sheets;

/// <summary>Rows of a sheet, a value for each axis.</summary>
internal static class Rows
{
    /// <summary>Digits of what is entered: a controller that counts pulses wants more than a reader does.</summary>
    private const int EnteredDigits = 6;

    /// <summary>A row.</summary>
    public static SheetRow Row(IReadOnlyList<SheetAxis> axes, string name, string unit, Func<SheetAxis, string> value) => new(name, unit, [.. axes.Select(value)]);

    /// <summary>A number to enter.</summary>
    public static string Entered(double value) => Say.Number(value, EnteredDigits);
}
