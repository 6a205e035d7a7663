using AxisSim.Core.Outcomes;
using AxisSim.Report.Text;

namespace AxisSim.Report.Sheets;

/// <summary>Rows of a sheet, a value for each axis.</summary>
internal static class Rows
{
    /// <summary>Digits of what is entered: a controller that counts pulses wants more than a reader does.</summary>
    private const int EnteredDigits = 6;

    /// <summary>Digits of a reduction, and of what follows from it: enough to tell teeth by.</summary>
    public const int ReductionDigits = 9;

    /// <summary>A row.</summary>
    public static SheetRow Row(IReadOnlyList<SheetAxis> axes, string name, string unit, Func<SheetAxis, string> value) => new(name, unit, [.. axes.Select(value)]);

    /// <summary>How a move that does not arrive and settle ends, in the loud words of a sheet.</summary>
    public static string Failed(MoveEnd end) => end switch
    {
        MoveEnd.Broken => "unknown",
        MoveEnd.Stalls => "STALLS",
        MoveEnd.ClutchSlips => "CLUTCH SLIPS",
        _ => "DOES NOT SETTLE",
    };

    /// <summary>A number to enter.</summary>
    public static string Entered(double value) => Say.Number(value, EnteredDigits);
}
