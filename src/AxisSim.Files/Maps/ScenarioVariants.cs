using System.Collections.Concurrent;
using AxisSim.Core.Mount;
using AxisSim.Core.Payloads;
using AxisSim.Files.Keys;
using AxisSim.Files.Scenarios;

namespace AxisSim.Files.Maps;

/// <summary>Makes the setup of a scenario with other values of two keys, exactly as the settings of a command line would, without reading the file again.</summary>
/// <remarks>Safe to use from several threads: each borrows a copy of the values to change.</remarks>
internal sealed class ScenarioVariants
{
    private readonly string text;
    private readonly string file;
    private readonly LaidOver laid;
    private readonly MapRange first;
    private readonly MapRange second;
    private readonly ConcurrentBag<Copy> copies = [];

    public ScenarioVariants(string text, string file, LaidOver laid, MapRange first, MapRange second)
    {
        (this.text, this.file, this.first, this.second) = (text, file, first, second);
        this.laid = laid.With([first.Setting(first.Shown.Values[0]), second.Setting(second.Shown.Values[0])]);
    }

    /// <summary>Problems that no value of the two keys can cure: unknown keys, values that were refused, keys that are missing.</summary>
    public IReadOnlyList<Problem> Problems()
    {
        var copy = new Copy(this);
        copies.Add(copy);
        return [.. copy.EachProblems.Where(problem => problem.Severity == ProblemSeverity.Error)];
    }

    /// <summary>The setup with the values at two indices; null with the first problem where they are not valid together with the rest.</summary>
    public MountSetup? Setup(int firstIndex, int secondIndex, out Problem? problem)
    {
        if (!copies.TryTake(out Copy? copy))
        {
            copy = new Copy(this);
        }

        MountSetup? setup = copy.Setup(firstIndex, secondIndex, out problem);
        copies.Add(copy);
        return setup;
    }

    /// <summary>The values of one document, changed in place.</summary>
    private sealed class Copy
    {
        private readonly ScenarioVariants owner;
        private readonly ScenarioDocument document;
        private readonly ValueSet values;
        private readonly HashSet<string>? suggested;
        private readonly Entry[] firstPlaces;
        private readonly Entry[] secondPlaces;
        private readonly bool polarChanges;
        private readonly bool declinationChanges;
        private readonly bool loadChanges;
        private AxisModel? polar;
        private AxisModel? declination;
        private MountLoad? load;

        public Copy(ScenarioVariants owner)
        {
            this.owner = owner;
            document = ScenarioReader.Lay(owner.text, owner.file, owner.laid);
            values = new ValueSet(document);
            suggested = ScenarioReader.CheckEach(document, values);
            EachProblems = document.Problems.Sorted();
            firstPlaces = Places(owner.laid.Settings.Count - 1);
            secondPlaces = Places(owner.laid.Settings.Count);
            string[] changed = [.. firstPlaces.Concat(secondPlaces).Select(entry => entry.Path)];
            polarChanges = Array.Exists(changed, path => path.StartsWith("polar.", StringComparison.Ordinal));
            declinationChanges = Array.Exists(changed, path => path.StartsWith("declination.", StringComparison.Ordinal));
            loadChanges = Array.Exists(changed, path => path == "site.latitude" || path.StartsWith("payload.", StringComparison.Ordinal)
                || path.StartsWith("counterweight.", StringComparison.Ordinal) || path.Contains(".load.", StringComparison.Ordinal));
        }

        public IReadOnlyList<Problem> EachProblems { get; }

        public MountSetup? Setup(int firstIndex, int secondIndex, out Problem? problem)
        {
            Put(firstPlaces, owner.first, firstIndex);
            Put(secondPlaces, owner.second, secondIndex);
            document.Problems.Clear();
            CrossChecks.Report(values, suggested!);
            if (document.Problems.HasErrors)
            {
                problem = document.Problems.Sorted().First(found => found.Severity == ProblemSeverity.Error);
                return null;
            }

            polar = polarChanges || polar is null ? ScenarioBinding.Axis(values, "polar", notes: null) : polar;
            declination = declinationChanges || declination is null ? ScenarioBinding.Axis(values, "declination", notes: null) : declination;
            load = loadChanges || load is null ? ScenarioBinding.Load(values) : load;
            MountSetup setup = ScenarioBinding.Setup(values, polar, declination, load);
            PlanChecks.Report(setup, values);
            if (!document.Problems.HasErrors)
            {
                SetupNet.Report(setup, document);
            }

            problem = document.Problems.HasErrors ? document.Problems.Sorted().First(found => found.Severity == ProblemSeverity.Error) : null;
            return problem is null ? setup : null;
        }

        // A setting may go on to the declination axis, so look for all that came of it.
        private Entry[] Places(int line) => [.. document.Entries.Values.Where(entry => entry.File == SettingsReader.Source && entry.Line == line)];

        private void Put(Entry[] places, MapRange range, int index)
        {
            foreach (Entry place in places)
            {
                values.Replace(place with { Text = range.Text(range.Shown.Values[index]) }, range.ValueAt(index));
            }
        }
    }
}
