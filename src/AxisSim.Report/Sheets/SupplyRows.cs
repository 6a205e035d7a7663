using AxisSim.Core.Drives;
using AxisSim.Report.Text;
using static AxisSim.Report.Sheets.Rows;

namespace AxisSim.Report.Sheets;

/// <summary>What the supply must give: the motors as simulated, the drives by a rule, and the fuse before them.</summary>
internal static class SupplyRows
{
    /// <summary>The group.</summary>
    public static SheetGroup Of(IReadOnlyList<SheetAxis> axes) => new("Supply", [
        Row(axes, "Voltage", "V", axis => Entered(axis.Model.Drive.SupplyVolts)),
        Row(axes, "Motors at their peak, through an ideal drive", "A", axis => Say.Number(Peak(axis))),
        Row(axes, "With what the drive itself takes", "A", axis => Say.Number(SupplySizing.DriveAmperes(Peak(axis), drives: 1))),
        Row(axes, Together(axes) ? "One supply for both, rated at least" : "Supply, rated at least", "A", axis => Up(SupplySizing.SupplyAmperes(Drives(axes, axis)))),
        Row(axes, Together(axes) ? "Its fuse, slow" : "Fuse, slow", "A", axis => Fuse(SupplySizing.FuseAmperes(Drives(axes, axis)))),
    ]);

    /// <summary>What the figures cover, and the rules with their reasons.</summary>
    public static IEnumerable<string> Notes(IReadOnlyList<SheetAxis> axes)
    {
        bool several = axes.Count > 1;
        yield return $"Supply: what is simulated is the motors through an ideal drive{(several ? ", each axis by itself" : "")}, the greatest mean over 10 ms. A real drive takes more: its bridge loses some {Units.Percent(SupplySizing.BridgeLossShare)} of what it takes, "
            + $"its electronics draw some {Say.With(SupplySizing.OwnAmperes, "A")}. A supply at no more than {Units.Percent(SupplySizing.SupplyUse)} of its rating stays cool and does not sink{(several ? " when both axes start at once" : "")}. "
            + "Controller, cameras and heaters come on top.";
        yield return $"Fuse: the next rating with that current at no more than {Units.Percent(SupplySizing.FuseUse)} of it, so that it lasts; slow, for empty capacitors draw a surge at power-on. It protects the cable, which must carry more than the fuse does. "
            + "These rules are common practice, no source: the manuals of drive and supply come first.";
    }

    // One supply where the voltages are the same: then both axes may start at once on it.
    private static bool Together(IReadOnlyList<SheetAxis> axes) => axes.Count > 1 && axes.All(axis => axis.Model.Drive.SupplyVolts == axes[0].Model.Drive.SupplyVolts);

    private static double Drives(IReadOnlyList<SheetAxis> axes, SheetAxis axis) => Together(axes) ? SupplySizing.DriveAmperes(axes.Sum(Peak), axes.Count) : SupplySizing.DriveAmperes(Peak(axis), drives: 1);

    private static double Peak(SheetAxis axis) => axis.Result.Outcome.Power.PeakSupplyAmperes;

    // "At least": never rounded down.
    private static string Up(double amperes) => Say.Number(Math.Ceiling(amperes * 10.0) / 10.0);

    private static string Fuse(double amperes) => double.IsFinite(amperes) ? Say.Number(amperes) : "more than 100: ask an electrician";
}
