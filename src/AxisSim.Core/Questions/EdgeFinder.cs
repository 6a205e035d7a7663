using AxisSim.Core.Batches;
using AxisSim.Core.Outcomes;

namespace AxisSim.Core.Questions;

/// <summary>One edge to be found.</summary>
/// <param name="Line">The search.</param>
/// <param name="Cases">The moves that stand for a place; it arrives where all of them do.</param>
internal sealed record EdgeQuestion(EdgeLine Line, Func<int, IEnumerable<BatchCase>> Cases);

/// <summary>Finds many edges together: each round asks what every search wants to know next, in one batch.</summary>
internal static class EdgeFinder
{
    /// <summary>Carries all searches to their end.</summary>
    public static void Find(Asker ask, IReadOnlyList<EdgeQuestion> questions)
    {
        while (true)
        {
            var cases = new List<BatchCase>();
            var owners = new List<(EdgeLine Line, int Place, int From)>();
            foreach (EdgeQuestion question in questions)
            {
                foreach (int place in question.Line.Next())
                {
                    owners.Add((question.Line, place, cases.Count));
                    cases.AddRange(question.Cases(place));
                }
            }

            if (owners.Count == 0)
            {
                return;
            }

            BatchResult[] results = ask.Ask(cases);
            for (int i = 0; i < owners.Count; i++)
            {
                int end = i + 1 < owners.Count ? owners[i + 1].From : cases.Count;
                owners[i].Line.Take(owners[i].Place, results[owners[i].From..end].Select(result => result.End).FirstOrDefault(one => one != MoveEnd.Arrives, MoveEnd.Arrives));
            }
        }
    }
}
