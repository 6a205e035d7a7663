using AxisSim.Core.Mount;
using AxisSim.Core.Sky;
using AxisSim.Files.Keys;
using static System.FormattableString;

namespace AxisSim.Files.Scenarios;

/// <summary>Whether the telescope looks at the sky at both ends of the move.</summary>
/// <remarks>
/// <para>sin a = sin(latitude) sin(d) + cos(latitude) cos(d) cos(H) for altitude a, declination d and hour angle H; a declination is up while
/// cos H is above -tan(latitude) tan(d) (spherical astronomy). Refraction is left out.</para>
/// <para>A note only: the mount does not know where the ground is, and a bench test may well point there.</para>
/// </remarks>
internal static class HorizonChecks
{
    // A place on the horizon itself, written in round figures, is not worth a word, rad.
    private const double Slack = 0.01;
    private const double DegreesPerRadian = 180.0 / Math.PI;

    /// <summary>A note for each end that points at the ground. Only a mount with bodies on two axes has a telescope to speak of.</summary>
    public static void Report(Scenario scenario, ValueSet values)
    {
        if (scenario.Payload is null || scenario.Setup.Polar is null || scenario.Setup.Declination is null)
        {
            return;
        }

        Report(values, "start", scenario.Setup.Move.Start, scenario.LatitudeRadians);
        Report(values, "end", scenario.Setup.Move.End, scenario.LatitudeRadians);
    }

    private static void Report(ValueSet values, string end, MountPose pose, double latitude)
    {
        SkyPoint sky = SkyPose.ToSky(pose, latitude);
        double altitude = Math.Asin(Math.Clamp(SkyPose.SineOfAltitude(pose, latitude), -1.0, 1.0));
        string path = MoveChecks.IsSky(values, end) ? $"move.{end}.hour_angle" : $"move.{end}_polar";
        if (altitude >= -Slack || !values.Written(path))
        {
            return;
        }

        double cosine = -Math.Tan(latitude) * Math.Tan(sky.DeclinationRadians);
        string up = cosine >= 1.0
            ? Invariant($"a declination of {sky.DeclinationRadians * DegreesPerRadian:F1} deg never rises here")
            : Invariant($"at a declination of {sky.DeclinationRadians * DegreesPerRadian:F1} deg the sky is up to {Math.Acos(cosine) * 12.0 / Math.PI:F1} h either side of the meridian, and this is {Math.Abs(sky.HourAngleRadians) * 12.0 / Math.PI:F1} h {(sky.HourAngleRadians > 0.0 ? "west" : "east")} of it");
        values.Problems.Note(values.EntryOf(path), Invariant($"the telescope points {-altitude * DegreesPerRadian:F1} deg below the horizon at the {end} of the move; {up}"));
    }
}
