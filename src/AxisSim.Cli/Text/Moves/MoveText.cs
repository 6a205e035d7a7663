using AxisSim.Core.Mount;

namespace AxisSim.Cli.Text.Moves;

/// <summary>Where a move goes: hour angle and declination as the sky has them, with the side of the pier.</summary>
internal static class MoveText
{
    /// <summary>The move in a sentence, for figures.</summary>
    public static string Sentence(MoveReport report) => $"{Say.Sentence(SkyText.Way(report.Setup.Move, report.LatitudeRadians))}.";

    /// <summary>Rows of names and values.</summary>
    public static IEnumerable<(string Name, string Value)> Rows(MoveReport report)
    {
        MoveSettings move = report.Setup.Move;
        yield return ("from", SkyText.Of(move.Start, report.LatitudeRadians));
        yield return ("to", SkyText.Of(move.End, report.LatitudeRadians) + (move.FollowUp == FollowUp.Sidereal ? ", as the move starts; then it is followed" : ""));
        if (SkyText.Between(move, report.LatitudeRadians) is { } between)
        {
            yield return ("on the way", between);
        }
    }
}
