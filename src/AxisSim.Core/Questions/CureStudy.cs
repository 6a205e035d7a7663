using AxisSim.Core.Batches;
using AxisSim.Core.Mount;
using AxisSim.Core.Outcomes;
using AxisSim.Core.Sky;

namespace AxisSim.Core.Questions;

/// <summary>Searches each kind of change for the smallest that lets a move arrive with a load factor asked for, and pairs of changes where no single one does.</summary>
/// <remarks>
/// What is suggested has two digits, as it would be typed, and was run as such at the load factor. Whether the whole move then settles, and what the other axis does, is for the caller to run.
/// </remarks>
internal static class CureStudy
{
    /// <summary>Finer places between two marks: a quarter of their distance, for the suggestion is rounded to two digits.</summary>
    private const int Fineness = 4;

    // Pairs are looked for at few values of each change, for their number grows with the square.
    private static readonly int[] PairMarks = [1, 3, 5];
    private const int MostPairs = 3;

    /// <summary>The cures of one failing axis.</summary>
    /// <param name="ask">Where to ask.</param>
    /// <param name="setup">The failing mount.</param>
    /// <param name="axis">The axis that fails.</param>
    /// <param name="clutch">Whether a firmer clutch is worth a try.</param>
    /// <param name="loadFactor">Load factor asked for.</param>
    /// <param name="pairs">Whether pairs of changes are looked for where no single one does.</param>
    public static Cures Find(Asker ask, MountSetup setup, MountAxis axis, bool clutch, double loadFactor, bool pairs)
    {
        IReadOnlyList<CureLine> lines = CureLine.For(setup, axis, clutch);
        IReadOnlyList<double> changeovers = CureLine.Changeovers(setup, axis);
        EdgeRow[] rows = [.. lines.Select(line => new EdgeRow(line.Marks, Fineness))];
        EdgeLine[] searches = [.. rows.Select(row => new EdgeLine(EdgeKind.FirstLasting, 1, row.Last, row.Marks(1), inner: Fineness - 1))];
        var other = new EdgeLine(EdgeKind.FirstLasting, 0, changeovers.Count - 1, Enumerable.Range(0, changeovers.Count));
        BatchCase Loaded(CureKind kind, double value) => new(CureLine.Apply(kind, setup, axis, value).Loaded(axis, loadFactor), axis);
        EdgeFinder.Find(ask,
        [
            .. lines.Select((line, i) => new EdgeQuestion(searches[i], place => [Loaded(line.Kind, rows[i].Value(place))])),
            new EdgeQuestion(other, place => [Loaded(CureKind.Changeover, changeovers[place])]),
        ]);

        double rated = setup.Axis(axis).Motor.RatedCurrentAmperes, changeover = setup.Axis(axis).Drive.ChangeoverRadiansPerSecond;
        (CureKind Kind, double From, double Furthest, double[] Values)[] found =
        [
            .. lines.Select((line, i) => (line.Kind, line.From, line.Furthest, searches[i].Good is { } good ? CureLine.Typed(line.Kind, line.From, rows[i].Value(good), rated).ToArray() : [])),
            (CureKind.Changeover, changeover, changeovers[^1], [.. other.Answers.Where(answer => answer.Value == MoveEnd.Arrives).Select(answer => changeovers[answer.Key])]),
        ];
        double?[] proved = Proved(ask, setup, axis, found, loadFactor);
        bool[] scant = Scant(ask, setup, axis, [.. found.Select((one, i) => (one.Kind, Value: proved[i] is null ? one.Furthest : double.NaN))]);
        Cure[] single = [.. found.Select((one, i) => new Cure(one.Kind, one.From, proved[i], one.Furthest, scant[i])).OrderBy(cure => cure.Size)];
        return new Cures(single, !pairs || single.Any(cure => cure.To is not null) ? [] : Pairs(ask, setup, axis, lines, loadFactor));
    }

    /// <summary>The first of each row of values that arrives at the load factor.</summary>
    private static double?[] Proved(Asker ask, MountSetup setup, MountAxis axis, (CureKind Kind, double From, double Furthest, double[] Values)[] found, double loadFactor)
    {
        (int Line, double Value)[] asked = [.. found.SelectMany((one, i) => one.Values.Select(value => (i, value)))];
        bool[] holds = Hold(ask, axis, [.. asked.Select(one => CureLine.Apply(found[one.Line].Kind, setup, axis, one.Value))], loadFactor);
        return [.. found.Select((_, i) => asked.Zip(holds).Where(one => one.First.Line == i && one.Second).Select(one => (double?)one.First.Value).FirstOrDefault())];
    }

    private static bool[] Hold(Asker ask, MountAxis axis, IEnumerable<MountSetup> changed, double loadFactor) =>
        [.. ask.Ask([.. changed.Select(one => new BatchCase(one.Loaded(axis, loadFactor), axis))]).Select(result => result.End == MoveEnd.Arrives)];

    private static bool[] Scant(Asker ask, MountSetup setup, MountAxis axis, (CureKind Kind, double Value)[] furthest)
    {
        BatchResult[] ends = ask.Ask([.. furthest.Where(one => !double.IsNaN(one.Value)).Select(one => new BatchCase(CureLine.Apply(one.Kind, setup, axis, one.Value), axis))]);
        int at = 0;
        return [.. furthest.Select(one => !double.IsNaN(one.Value) && ends[at++].End == MoveEnd.Arrives)];
    }

    private static CurePair[] Pairs(Asker ask, MountSetup setup, MountAxis axis, IReadOnlyList<CureLine> lines, double loadFactor)
    {
        double rated = setup.Axis(axis).Motor.RatedCurrentAmperes;
        Cure[][] tried = [.. lines.Select(line => PairMarks.Where(mark => mark < line.Marks.Count)
            .Select(mark => CureLine.Typed(line.Kind, line.From, line.Marks[mark], rated).FirstOrDefault(line.Marks[mark]))
            .Select(value => new Cure(line.Kind, line.From, value, line.Furthest)).ToArray())];
        CurePair[] pairs =
        [
            .. from i in Enumerable.Range(0, tried.Length)
               from k in Enumerable.Range(i + 1, tried.Length - i - 1)
               from first in tried[i]
               from second in tried[k]
               select new CurePair(first, second),
        ];
        MountSetup[] changed = [.. pairs.Select(pair => CureLine.Apply(pair.Second.Kind, CureLine.Apply(pair.First.Kind, setup, axis, pair.First.To!.Value), axis, pair.Second.To!.Value))];
        bool[] holds = Hold(ask, axis, changed, loadFactor);
        return
        [
            .. pairs.Where((_, i) => holds[i])
                .GroupBy(pair => (pair.First.Kind, pair.Second.Kind))
                .Select(group => group.MinBy(pair => pair.Size)!)
                .OrderBy(pair => pair.Size)
                .Take(MostPairs),
        ];
    }
}
