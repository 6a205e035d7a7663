using AxisSim.Core.Questions;
using AxisSim.Report.Text;

namespace AxisSim.Report.Sheets;

/// <summary>How near the edge is in slew rate, in the few words of a sheet; the same search as that of <c>axissim simulate</c>.</summary>
internal static class RateRoom
{
    private const int Digits = 4;

    /// <summary>The greatest rate around the present one that arrives, deg/s; of a move that fails, the rate up to which it arrives.</summary>
    public static string Reach(SheetAxis axis) => axis.Result.Rates switch
    {
        null => "not asked",
        { Tried: 0 } => "no other tried",
        var rates when Around(axis) is { } around => (rates.Answers[^1].RateRadiansPerSecond <= around.ToRadiansPerSecond ? "at least " : "") + Rate(around.ToRadiansPerSecond),
        var rates when double.IsNaN(rates.RateRadiansPerSecond) => "none does",
        var rates => $"{Rate(rates.RateRadiansPerSecond)} only",
    };

    /// <summary>Rates below the stretch around the present one that fail, deg/s; empty when none was found.</summary>
    public static string Bands(SheetAxis axis) => Around(axis) is not { } around ? "" : string.Join(
        "; ",
        axis.Result.Rates!.FailingBands.Where(band => band.ToRadiansPerSecond < around.FromRadiansPerSecond)
            .Select(band => band.FromRadiansPerSecond == band.ToRadiansPerSecond ? Rate(band.FromRadiansPerSecond) : $"{Rate(band.FromRadiansPerSecond)} to {Rate(band.ToRadiansPerSecond)}"));

    private static RateStretch? Around(SheetAxis axis) => axis.Result.Rates?.Around(axis.Model.Motion.SlewRateRadiansPerSecond);

    private static string Rate(double radiansPerSecond) => Say.Number(Units.Degrees(radiansPerSecond), Digits);
}
