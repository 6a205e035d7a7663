namespace AxisSim.Files.Scenarios;

/// <summary>Keys that say the same thing in two ways, so that giving one overrides the other where values are laid over others.</summary>
internal static class Alternatives
{
    private static readonly (string[] One, string[] Other)[] Pairs =
    [
        (["motion.ramp_time"], ["motion.acceleration"]),
        (["drive.damping"], ["drive.damping_share"]),
        (["worm.efficiency", "worm.back_efficiency"], ["worm.lead_angle", "worm.friction"]),
    ];

    /// <summary>Paths that a value at this path makes void; empty when it stands alone.</summary>
    public static IEnumerable<string> Of(string path)
    {
        int dot = path.IndexOf('.', StringComparison.Ordinal);
        string axis = dot < 0 ? "" : path[..dot];
        string rest = dot < 0 ? "" : path[(dot + 1)..];
        foreach ((string[] one, string[] other) in Pairs)
        {
            string[] voided = one.Contains(rest) ? other : other.Contains(rest) ? one : [];
            foreach (string name in voided)
            {
                yield return $"{axis}.{name}";
            }
        }

        foreach (string end in new[] { "start", "end" })
        {
            bool sky = path == $"move.{end}.hour_angle" || path == $"move.{end}.declination" || path == $"move.{end}.pier_side";
            bool mechanical = path == $"move.{end}_polar" || path == $"move.{end}_declination";
            string[] voided = sky ? [$"move.{end}_polar", $"move.{end}_declination"] : mechanical ? [$"move.{end}.hour_angle", $"move.{end}.declination", $"move.{end}.pier_side"] : [];
            foreach (string name in voided)
            {
                yield return name;
            }
        }
    }
}
