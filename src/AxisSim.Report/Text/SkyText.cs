using AxisSim.Core.Mount;
using AxisSim.Core.Sky;

namespace AxisSim.Report.Text;

/// <summary>Poses as the sky has them: hour angle, declination and the side of the pier. Mechanical angles never go under these names.</summary>
internal static class SkyText
{
    private const double MinutesPerRadian = 720.0 / Math.PI;

    /// <summary>Hour angle, declination and side of a pose.</summary>
    public static string Of(MountPose pose, double latitudeRadians)
    {
        SkyPoint sky = SkyPose.ToSky(pose, latitudeRadians);
        return $"{HourAngle(sky.HourAngleRadians)}, declination {Say.With(Math.Round(Units.Degrees(sky.DeclinationRadians), 2), "deg", 4)}, telescope {Side(sky.Side)} of the pier";
    }

    /// <summary>An hour angle in hours, and in words.</summary>
    public static string HourAngle(double radians)
    {
        double minutes = Math.Round(radians * MinutesPerRadian, 1);
        string hours = Say.With(Math.Round(radians * 12.0 / Math.PI, 2), "h");
        return minutes == 0.0 ? "hour angle 0 h (on the meridian)" : $"hour angle {hours} ({Clock(Math.Abs(minutes))} {(minutes > 0.0 ? "west" : "east")} of the meridian)";
    }

    /// <summary>The name of a side.</summary>
    public static string Side(PierSide side) => side == PierSide.West ? "west" : "east";

    /// <summary>What the telescope does between the ends of a move besides turning: it changes sides, passes the meridian, or neither.</summary>
    public static string? Between(MoveSettings move, double latitudeRadians)
    {
        SkyPoint from = SkyPose.ToSky(move.Start, latitudeRadians), to = SkyPose.ToSky(move.End, latitudeRadians);
        bool across = from.HourAngleRadians * to.HourAngleRadians < 0.0 && Math.Abs(from.HourAngleRadians - to.HourAngleRadians) < Math.PI;
        return from.Side != to.Side ? $"{(across ? "across the meridian: " : "")}the telescope changes sides, from {Side(from.Side)} to {Side(to.Side)} of the pier"
            : across ? $"across the meridian, the telescope {Side(from.Side)} of the pier throughout"
            : null;
    }

    /// <summary>Both ends of a move, and what the telescope does between them, in a clause: "from ..., to ...; ...".</summary>
    public static string Way(MoveSettings move, double latitudeRadians) =>
        $"from {Of(move.Start, latitudeRadians)}, to {Of(move.End, latitudeRadians)}{(Between(move, latitudeRadians) is { } between ? "; " + between : "")}";

    private static string Clock(double minutes)
    {
        double whole = Math.Round(minutes);
        return whole < 60.0 ? Say.With(minutes < 10.0 ? minutes : whole, "min") : whole % 60.0 == 0.0 ? Say.With(whole / 60.0, "h") : $"{Say.With(Math.Floor(whole / 60.0), "h")} {Say.With(whole % 60.0, "min")}";
    }
}
