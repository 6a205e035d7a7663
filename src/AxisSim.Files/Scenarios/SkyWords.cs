using AxisSim.Files.Keys;

namespace AxisSim.Files.Scenarios;

/// <summary>Places on the sky as people write them, where the keys of a move have other names.</summary>
/// <param name="Found">What was found.</param>
/// <param name="Allowed">What is allowed.</param>
/// <param name="Fix">What to write instead.</param>
/// <param name="Suggested">Keys that need not be reported as missing too.</param>
internal sealed record SkyWords(string Found, string Allowed, string Fix, IReadOnlyList<string> Suggested)
{
    private static readonly string[] Ends = ["start", "end"];

    /// <summary>What is to be said of a key that does not exist; null for one that is not of the sky.</summary>
    public static SkyWords? Of(string path)
    {
        foreach (string end in Ends)
        {
            string joined = $"move.{end}_", below = $"move.{end}.";
            string word = path.StartsWith(joined, StringComparison.Ordinal) ? path[joined.Length..] : path.StartsWith(below, StringComparison.Ordinal) ? path[below.Length..] : "";
            if (AxisAliases.Of(word) is not { } axis || ScenarioKeys.Find(path) is not null)
            {
                continue;
            }

            string sky = axis == "polar" ? "hour_angle" : "declination", value = axis == "polar" ? "\"-2 h\"" : "\"35 deg\"";
            string allowed = $"under [move.{end}] a place on the sky (hour_angle, declination, pier_side), or {end}_polar and {end}_declination, the angles of the two axes";
            string found = axis == "polar" && !word.StartsWith('h') ? "a right ascension: the axis meets it at another angle as the sky turns; the hour angle is sidereal time less right ascension" : $"a key that does not exist (did you mean {below}{sky}?)";
            return new SkyWords(found, allowed, $"{sky} = {value} under [move.{end}]", [$"{joined}polar", $"{joined}declination", $"{below}hour_angle", $"{below}declination", $"{below}pier_side"]);
        }

        return null;
    }
}
