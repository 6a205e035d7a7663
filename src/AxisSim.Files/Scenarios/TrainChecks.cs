using System.Globalization;
using AxisSim.Core.Gearing;
using AxisSim.Files.Keys;

namespace AxisSim.Files.Scenarios;

/// <summary>Checks across the keys of worm, stages and bearings of one axis.</summary>
internal static class TrainChecks
{
    /// <summary>Reports all of them.</summary>
    public static void Report(ValueSet values, string axis, HashSet<string> suggested)
    {
        CheckWorm(values, axis, suggested);
        CheckDriving(values, axis);
        CheckBreakaway(values, axis);
        CheckWhole(values, axis);
        var names = new HashSet<string>(StringComparer.Ordinal);
        foreach (string item in values.Document.ItemsOf($"{axis}.stages"))
        {
            LoadChecks.CheckName(values, $"{axis}.stages.{item}.name", names);
            CheckElastic(values, axis, $"{axis}.stages.{item}");
            CheckStepUp(values, $"{axis}.stages.{item}.ratio");
        }
    }

    /// <summary>An elastic stage swings between two inertias, and play needs something to meet: neither has an honest default.</summary>
    private static void CheckElastic(ValueSet values, string axis, string stage)
    {
        if (values.Written($"{stage}.backlash") && values.Maybe($"{stage}.backlash") is > 0.0 && !values.Written($"{stage}.stiffness"))
        {
            Entry entry = values.EntryOf($"{stage}.backlash");
            values.Problems.Error(entry, $"{entry.Shown} without a stiffness", "backlash together with stiffness at the stage's output", "stiffness = \"150 N*m/rad\" (from the belt's or wheel's data)");
        }

        string last = $"{axis}.stages.{values.Document.ItemsOf($"{axis}.stages")[^1]}";
        bool inertia = values.Maybe($"{last}.inertia") is > 0.0 || values.Maybe($"{axis}.worm.inertia") is > 0.0;
        if (values.Written($"{stage}.stiffness") && !inertia)
        {
            Entry entry = values.EntryOf($"{stage}.stiffness");
            values.Problems.Error(entry, $"{entry.Shown} without an inertia behind it", "stiffness together with the inertia of the last stage's wheel or of the worm", "inertia = \"30 g*cm^2\" under the worm");
        }
    }

    private static void CheckStepUp(ValueSet values, string path)
    {
        // Worth a word only in a train that is one.
        if (values.Problems.HasErrors || values.Given(path) is not { } ratio || !(ratio.Number / ratio.Second < 1.0) || values.EntryOf(path) is not { Copied: false } entry)
        {
            return;
        }

        string number = (ratio.Number / ratio.Second).ToString("0.####", CultureInfo.InvariantCulture), other = ratio.Second == 1.0 ? (1.0 / ratio.Number).ToString("0.####", CultureInfo.InvariantCulture) : string.Create(CultureInfo.InvariantCulture, $"{ratio.Second:0.####}/{ratio.Number:0.####}");
        values.Problems.Note(entry, $"{entry.Shown} is a step up of {number}: its output turns faster than its input and takes from the reduction of the worm. The ratio is the teeth of the driven wheel over those of the driving one; if it is to reduce, write {other}");
    }

    private static void CheckWorm(ValueSet values, string axis, HashSet<string> suggested)
    {
        string lead = $"{axis}.worm.lead_angle", friction = $"{axis}.worm.friction", efficiency = $"{axis}.worm.efficiency", back = $"{axis}.worm.back_efficiency";
        bool geometry = values.Written(lead) || values.Written(friction);
        if (values.Written(efficiency) && geometry)
        {
            Entry entry = values.EntryOf(efficiency);
            values.Problems.Error(entry, $"{entry.Shown} besides lead_angle or friction", "lead_angle with friction, or efficiency", "one of the two");
        }
        else if (geometry)
        {
            CrossChecks.Need(values, lead, "friction needs the lead angle too", suggested);
            CrossChecks.Need(values, friction, "lead_angle needs the friction coefficient too", suggested);
        }
        else if (!values.Written(efficiency) && values.Document.Mentions($"{axis}.worm"))
        {
            CrossChecks.Need(values, efficiency, "the worm needs lead_angle with friction, or a plain efficiency", suggested);
        }

        if (values.Written(back) && !values.Written(efficiency) && geometry)
        {
            Entry entry = values.EntryOf(back);
            values.Problems.Error(entry, $"{entry.Shown} without efficiency", "back_efficiency together with efficiency", "no back_efficiency: it follows from lead_angle and friction");
        }

        if (values.Maybe(back) is { } backward && values.Maybe(efficiency) is { } forward && backward > forward)
        {
            Entry entry = values.EntryOf(back);
            values.Problems.Note(entry, "the worm is driven back more easily than it drives; that is unusual");
        }
    }

    // A grain of slack for the sum of logarithms.
    private const double Slack = 1e-9;
    private static readonly double LeastDecades = Math.Log10(TrainBounds.TotalReduction.Least) - Slack;
    private static readonly double GreatestDecades = Math.Log10(TrainBounds.TotalReduction.Greatest) + Slack;
    private static readonly double LeastEfficiencyDecades = Math.Log10(TrainBounds.StagesEfficiency.Least) - Slack;

    private static void CheckDriving(ValueSet values, string axis)
    {
        string lead = $"{axis}.worm.lead_angle", friction = $"{axis}.worm.friction";
        double cold = values.Number("disturbances.cold_grease");
        if (values.Maybe(lead) is not { } angle || values.Maybe(friction) is not { } coefficient || !double.IsFinite(cold))
        {
            return;
        }

        double efficiency = WormLaw.DrivingEfficiency(angle, coefficient * cold, values.Number($"{axis}.worm.pressure_angle"));
        if (!(efficiency >= TrainBounds.LeastDrivingEfficiency) && !double.IsNaN(values.Number($"{axis}.worm.pressure_angle")))
        {
            Entry entry = values.EntryOf(friction);
            string percent = (100.0 * efficiency).ToString("0.##", CultureInfo.InvariantCulture);
            values.Problems.Error(entry, $"{entry.Shown}, with which the worm drives with {percent} % only (cold grease and lead angle {values.EntryOf(lead).Shown} included)", string.Create(CultureInfo.InvariantCulture, $"friction, lead angle and cold_grease with a driving efficiency of {100.0 * TrainBounds.LeastDrivingEfficiency:0.##} % or more"), "a lower friction or cold_grease, or a greater lead_angle");
        }
    }

    // Each stage may be well within its bounds and all of them together beyond any train, and beyond the numbers of a computer.
    private static void CheckWhole(ValueSet values, string axis)
    {
        string[] stages = [.. values.Document.ItemsOf($"{axis}.stages").Select(stage => $"{axis}.stages.{stage}")];
        double Decades(string stage) => Math.Log10(values[$"{stage}.ratio"].Number / values[$"{stage}.ratio"].Second);
        double worm = Math.Log10(values.Number($"{axis}.worm.teeth") / values.Number($"{axis}.worm.starts")), all = worm + stages.Sum(Decades);
        if (stages.Length > 0 && (all < LeastDecades || all > GreatestDecades))
        {
            Entry entry = values.EntryOf($"{stages.MaxBy(stage => Math.Sign(all) * Decades(stage))}.ratio");
            values.Problems.Error(entry, $"{entry.Shown}, with which {Stages(stages.Length)} and the worm make a total reduction of {Power(all)}", string.Create(CultureInfo.InvariantCulture, $"a total reduction from {TrainBounds.TotalReduction.Least} to {TrainBounds.TotalReduction.Greatest}"), "ratios whose product with the worm's is one of a real mount");
        }

        double efficiency = stages.Sum(stage => Math.Log10(values.Number($"{stage}.efficiency")));
        if (efficiency < LeastEfficiencyDecades)
        {
            Entry entry = values.EntryOf($"{stages.MinBy(stage => values.Number($"{stage}.efficiency"))}.efficiency");
            values.Problems.Error(entry, $"{entry.Shown}, with which {Stages(stages.Length)} pass on {Power(efficiency)} of the power together", string.Create(CultureInfo.InvariantCulture, $"stages that pass on {TrainBounds.StagesEfficiency.Least} of the power or more together"), "higher efficiencies, or fewer stages");
        }
    }

    private static string Stages(int count) => count == 1 ? "the stage" : string.Create(CultureInfo.InvariantCulture, $"the {count} stages");

    private static string Power(double decades) => Math.Abs(decades) < 15.0
        ? Math.Pow(10.0, decades).ToString("G4", CultureInfo.InvariantCulture)
        : string.Create(CultureInfo.InvariantCulture, $"10^{decades:F0}");

    private static void CheckBreakaway(ValueSet values, string axis)
    {
        string path = $"{axis}.axis.breakaway";
        double running = values.Number($"{axis}.axis.friction");
        if (values.Maybe(path) < running)
        {
            Entry entry = values.EntryOf(path);
            string text = running.ToString("G6", CultureInfo.InvariantCulture);
            values.Problems.Error(entry, $"{entry.Shown} (below the running friction)", $"at least the running friction of {text} N*m", ValueSet.Fix(entry, ScenarioKeys.Find(path)!, $"\"{text} N*m\""));
        }
    }
}
