using AxisSim.Core.Maps;
using AxisSim.Core.Mount;
using AxisSim.Files.Keys;
using AxisSim.Files.Scenarios;

namespace AxisSim.Files.Maps;

/// <summary>A scenario made ready for a map over two of its keys.</summary>
internal sealed class MapPreparation
{
    private readonly ScenarioVariants variants;

    private MapPreparation(ScenarioVariants variants, MapRange first, MapRange second) => (this.variants, First, Second) = (variants, first, second);

    /// <summary>The first key.</summary>
    public MapRange First { get; }

    /// <summary>The second key.</summary>
    public MapRange Second { get; }

    /// <summary>Name of the scenario.</summary>
    public required string Name { get; init; }

    /// <summary>SHA-256 of the file's text and the settings.</summary>
    public required string Sha256 { get; init; }

    /// <summary>What the reader made of the figures; empty where the file is whole only with the two keys.</summary>
    public required IReadOnlyList<string> Notes { get; init; }

    /// <summary>What is worth knowing about values of the file.</summary>
    public required IReadOnlyList<Problem> Remarks { get; init; }

    /// <summary>The scenario as it stands; null where it is whole only with the two keys.</summary>
    public required Scenario? Own { get; init; }

    /// <summary>Its mount and move.</summary>
    public MountSetup? OwnSetup => Own?.Setup;

    /// <summary>A setup to see which axes there are.</summary>
    public required MountSetup AnySetup { get; init; }

    /// <summary>The file's values of the two keys.</summary>
    public required OwnValue OwnFirst { get; init; }

    /// <inheritdoc cref="OwnFirst"/>
    public required OwnValue OwnSecond { get; init; }

    /// <summary>Whether the file gives both keys and is whole, so that its own point can be run.</summary>
    public bool HasOwnPoint => OwnSetup is not null && !double.IsNaN(OwnFirst.Shown) && !double.IsNaN(OwnSecond.Shown);

    /// <summary>The setup of a cell, or of the own point; null with the problem where the values are not valid together.</summary>
    public MountSetup? Setup(MapCells cells, int place, out Problem? problem)
    {
        problem = null;
        return place == cells.OwnPlace ? OwnSetup : variants.Setup(place / cells.Rows, place % cells.Rows, out problem);
    }

    /// <summary>Reads a file and two ranges; null when a problem was found, and all problems are added.</summary>
    public static MapPreparation? Read(string file, LaidOver laid, (string Text, int Count) x, (string Text, int Count) y, List<Problem> problems, CancellationToken stop)
    {
        RangeReader readX = new("--x", x.Text, x.Count), readY = new("--y", y.Text, y.Count);
        MapRange? first = readX.Read(), second = readY.Read();
        problems.AddRange(readX.Problems);
        problems.AddRange(readY.Problems);
        RangeChecks.Together(readX, readY, problems);
        if (ScenarioFile.Load(file, stop, out Problem? unreadable) is not { } text)
        {
            problems.Add(unreadable!);
            return null;
        }

        ScenarioResult own = ScenarioReader.ReadText(text, file, laid);
        problems.AddRange(RangeChecks.OfKeys(text, file, laid, readX, readY));
        Problem[] errors = [.. own.Problems.Where(problem => problem.Severity == ProblemSeverity.Error)];
        if (first is null || second is null || problems.Count > 0)
        {
            problems.AddRange(errors);
            return null;
        }

        var variants = new ScenarioVariants(text, file, laid, first, second);
        MountSetup? any = own.Scenario?.Setup ?? (variants.Problems().Count == 0 ? Some(variants, first, second) : null);
        if (any is null)
        {
            problems.AddRange(errors);
            return null;
        }

        ScenarioDocument document = ScenarioReader.Lay(text, file, laid);
        var values = new ValueSet(document);
        values.ReadAll();
        return new MapPreparation(variants, first, second)
        {
            Name = values.Text("name"),
            Sha256 = ScenarioReader.Hash(text, laid),
            Notes = own.Scenario?.Notes ?? [],
            Remarks = [.. own.Problems.Where(problem => problem.Severity == ProblemSeverity.Note)],
            Own = own.Scenario,
            AnySetup = any,
            OwnFirst = OwnValue.Of(values, first),
            OwnSecond = OwnValue.Of(values, second),
        };
    }

    // The corners and the middle: a file that is whole with none of them is not meant to be.
    private static MountSetup? Some(ScenarioVariants variants, MapRange first, MapRange second)
    {
        int right = first.Shown.Count - 1, top = second.Shown.Count - 1;
        return new[] { (right / 2, top / 2), (0, 0), (right, 0), (0, top), (right, top) }
            .Select(place => variants.Setup(place.Item1, place.Item2, out _))
            .FirstOrDefault(setup => setup is not null);
    }
}
