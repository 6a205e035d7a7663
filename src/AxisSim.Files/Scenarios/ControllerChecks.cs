using AxisSim.Core.Controllers;
using AxisSim.Files.Keys;
using AxisSim.Files.Units;
using static System.FormattableString;

namespace AxisSim.Files.Scenarios;

/// <summary>Checks across the keys of a user's own controller.</summary>
internal static class ControllerChecks
{
    private static readonly ControllerQuantity[][] s_alternatives =
    [
        [ControllerQuantity.RampTime, ControllerQuantity.Acceleration, ControllerQuantity.RampDistance],
        [ControllerQuantity.TrackingCurrent, ControllerQuantity.TrackingShare],
        [ControllerQuantity.HoldingCurrent, ControllerQuantity.HoldingShare],
    ];

    /// <summary>Reports all of them.</summary>
    public static void Report(ValueSet values, IReadOnlyList<string> axes)
    {
        foreach (string item in values.Document.ItemsOf(ControllerKeys.List))
        {
            Numbers(values, item);
            Units(values, item);
            Axis(values, item, axes);
        }

        Twice(values, axes);
        if (values.Written("controller.name") && values.Document.ItemsOf(ControllerKeys.List).Count == 0)
        {
            values.Problems.Note(values.EntryOf("controller.name"), "a controller without [[controller.settings]]: there is nothing to tell what to type");
        }
    }

    private static void Numbers(ValueSet values, string item)
    {
        string greatest = $"{ControllerKeys.List}.{item}.greatest";
        double least = values.Number($"{ControllerKeys.List}.{item}.least");
        if (values.Maybe(greatest) < least)
        {
            Entry entry = values.EntryOf(greatest);
            values.Problems.Error(entry, Invariant($"{entry.Shown} (below the least number of {least:G6})"), Invariant($"at least {least:G6}"), ValueSet.Fix(entry, ScenarioKeys.Find(greatest)!, Invariant($"{least + 9.0:G6}")));
        }
    }

    private static void Units(ValueSet values, string item)
    {
        if (ControllerBinding.Sets(values, item) is not { } sets)
        {
            return;
        }

        bool good = Read(values, $"{ControllerKeys.List}.{item}.unit", sets, zero: false) && Read(values, $"{ControllerKeys.List}.{item}.zero", sets, zero: true);
        if (good && values.Given($"{ControllerKeys.List}.{item}.unit") is { } unit)
        {
            Usable(values, item, sets, unit.Text);
        }
    }

    private static bool Read(ValueSet values, string path, (string Word, ControllerQuantity Quantity, Dimension Dimension) sets, bool zero)
    {
        if (values.Given(path) is not { } given)
        {
            return !values.Written(path);
        }

        Entry entry = values.EntryOf(path);
        QuantityReading reading = QuantityText.Read(given.Text, sets.Dimension);
        string? reason = reading.Failure ?? (!zero && reading.Si == 0.0 ? "one counts nothing" : null);
        if (reason is null)
        {
            return true;
        }

        string example = Example(sets.Quantity, zero);
        string fix = reading.Fix is { } better ? $"\"{better}\"" : $"\"{example}\"";
        values.Problems.Error(
            entry,
            $"{entry.Shown} ({reason})",
            $"what {(zero ? "the number 0 stands for" : "one counts")} of {sets.Word}: a value of {DimensionNames.Of(sets.Dimension)} with its unit{(zero ? "" : ", not zero")} (units: {UnitTable.Accepted(sets.Dimension)})",
            (reading.Fix is null ? "for example " : "") + ValueSet.Fix(entry, ScenarioKeys.Find(path)!, fix));
        return false;
    }

    // Of a range that has an end, the greatest value at least must be one that the quantity can have.
    private static void Usable(ValueSet values, string item, (string Word, ControllerQuantity Quantity, Dimension Dimension) sets, string unitText)
    {
        string path = $"{ControllerKeys.List}.{item}";
        double unit = QuantityText.Read(unitText, sets.Dimension).Si, zero = values.Given($"{path}.zero") is { } given ? QuantityText.Read(given.Text, sets.Dimension).Si : 0.0;
        double least = values.Number($"{path}.least"), greatest = values.Maybe($"{path}.greatest") ?? double.PositiveInfinity;
        double top = unit > 0.0 ? greatest : least;
        if (double.IsFinite(unit + zero + least) && zero + (unit * top) <= 0.0)
        {
            Entry entry = values.EntryOf($"{path}.unit");
            values.Problems.Error(entry, $"{entry.Shown} (every number that it takes stands for nothing or less)", $"a unit, zero, least and greatest that give a {sets.Word} above zero", $"for example unit = \"{Example(sets.Quantity, zero: false)}\", least = 1, greatest = 9");
        }
    }

    private static void Axis(ValueSet values, string item, IReadOnlyList<string> axes)
    {
        string path = $"{ControllerKeys.List}.{item}.axis";
        if (values.Given(path) is { Text: "polar" or "declination" } axis && !axes.Contains(axis.Text))
        {
            Entry entry = values.EntryOf(path);
            values.Problems.Error(entry, $"{entry.Shown}, but this scenario has no [{axis.Text}] section", "an axis that the scenario has", ValueSet.Fix(entry, ScenarioKeys.Find(path)!, "\"both\""));
        }
    }

    private static void Twice(ValueSet values, IReadOnlyList<string> axes)
    {
        foreach (string axis in axes)
        {
            var taken = new Dictionary<ControllerQuantity, string>();
            foreach (string item in values.Document.ItemsOf(ControllerKeys.List).Where(item => ControllerBinding.IsFor(values, item, axis)))
            {
                if (ControllerBinding.Sets(values, item) is not { } sets)
                {
                    continue;
                }

                ControllerQuantity[] rivals = Array.Find(s_alternatives, group => group.Contains(sets.Quantity)) ?? [sets.Quantity];
                if (rivals.Where(taken.ContainsKey).Select(rival => taken[rival]).FirstOrDefault() is { } first)
                {
                    Entry entry = values.EntryOf($"{ControllerKeys.List}.{item}.sets");
                    string what = rivals.Length == 1 ? sets.Word : string.Join(" or ", ControllerKeys.Quantities.Where(one => rivals.Contains(one.Quantity)).Select(one => one.Word));
                    values.Problems.Error(entry, $"{entry.Shown} besides the setting \"{first}\"", $"{what} once for each axis", $"one of the two, or axis = \"polar\" for one and axis = \"declination\" for the other");
                }

                taken[sets.Quantity] = item;
            }
        }
    }

    private static string Example(ControllerQuantity quantity, bool zero) => quantity switch
    {
        ControllerQuantity.SlewRate or ControllerQuantity.StartRate => zero ? "0 deg/s" : "0.25 deg/s",
        ControllerQuantity.Changeover => zero ? "0 rpm" : "10 rpm",
        ControllerQuantity.RampTime or ControllerQuantity.CurrentFallDelay => zero ? "0 s" : "0.25 s",
        ControllerQuantity.Acceleration => zero ? "0 deg/s^2" : "0.1 deg/s^2",
        ControllerQuantity.RampDistance => zero ? "0 deg" : "0.5 deg",
        ControllerQuantity.TrackingShare or ControllerQuantity.HoldingShare => zero ? "0 %" : "5 %",
        _ => zero ? "0 A" : "0.1 A",
    };
}
