namespace AxisSim.Core.Batches;

/// <summary>Cases that run as one team.</summary>
/// <param name="Cases">Alike in features, terms and step.</param>
/// <param name="Shared">Whether they have the same commands too.</param>
internal sealed record TeamPlan(IReadOnlyList<LaneCase> Cases, bool Shared)
{
    /// <summary>Lanes of the largest team: many share the cost of one command, and all their states stay in the nearest cache.</summary>
    public const int MostLanes = 128;

    // Every step of the settling is kept: some 10 MB for eight lanes.
    private const int MostSettling = 32;

    // A vector alone waits for itself in every step; with this many in flight the waits are filled, and one thread is as soon done with them as two with half of them each.
    private const int FewestVectors = 3;

    // One command for all is worked out as a number: that pays where it saves as many commands of whole vectors.
    private const int FewestSharingVectors = 2;

    /// <summary>Puts cases, each of which has a step, together: those with the same commands first, what is left over with others of their kind.</summary>
    public static List<TeamPlan> Of(IEnumerable<LaneCase> cases, int width, int threads)
    {
        var teams = new List<TeamPlan>();
        foreach (var alike in cases.GroupBy(c => (c.Features, c.Terms, c.Choice.StepSeconds, c.Settles)))
        {
            int most = Most(alike.Count(), alike.First().Settles ? MostSettling : MostLanes, width, threads);
            var left = new List<LaneCase>();
            foreach (var same in alike.GroupBy(c => c.Key))
            {
                LaneCase[] group = [.. same];
                if (group.Length < FewestSharingVectors * width)
                {
                    left.AddRange(group);
                    continue;
                }

                teams.AddRange(group.Chunk(most).Select(chunk => new TeamPlan(chunk, Shared: true)));
            }

            teams.AddRange(left.OrderBy(c => c.UntilSeconds).Chunk(most).Select(chunk => new TeamPlan(chunk, Shared: false)));
        }

        return teams;
    }

    /// <summary>Lanes of a team: as many as may be, but not so many that a thread has nothing to do while another works.</summary>
    private static int Most(int cases, int most, int width, int threads)
    {
        if (threads == 1)
        {
            return most;
        }

        const int TeamsOfAThread = 4;
        int even = (cases / (TeamsOfAThread * threads) / width) * width;
        return Math.Clamp(even, Math.Min(most, FewestVectors * width), most);
    }
}
