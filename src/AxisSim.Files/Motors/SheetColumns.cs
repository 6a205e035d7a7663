using System.Globalization;
using AxisSim.Files.Keys;
using AxisSim.Files.Scenarios;
using AxisSim.Files.Tables;
using AxisSim.Files.Units;

namespace AxisSim.Files.Motors;

/// <summary>Matches the columns of a table to what may stand in it, with the unit at the end of a column's name, and reads its cells.</summary>
/// <remarks>A quantity <c>holding_torque</c> is found as <c>holding_torque_n_m</c>, <c>holding_torque_mn_m</c> and so on: any unit that scenarios know, in lower case, <c>_per_</c> for a slash.</remarks>
internal sealed class SheetColumns
{
    private readonly CsvSheet sheet;
    private readonly List<Problem> problems;
    private readonly Dictionary<string, (int Index, ScenarioKey Key, UnitDefinition? Unit)> found = new(StringComparer.Ordinal);

    public SheetColumns(CsvSheet sheet, IReadOnlyList<ScenarioKey> keys, List<Problem> problems)
    {
        (this.sheet, this.problems) = (sheet, problems);
        for (int i = 0; i < sheet.Header.Fields.Length; i++)
        {
            Match(i, sheet.Header.Fields[i], keys);
        }

        foreach (ScenarioKey key in keys.Where(key => key.Required && !found.ContainsKey(key.Path) && !problems.Any(problem => problem.Fix.StartsWith(key.Path, StringComparison.Ordinal))))
        {
            problems.Add(new Problem(sheet.File, sheet.Header.Line, 0, Shown(key), "no such column", key.Doc, Shown(key)));
        }
    }

    /// <summary>Name of a column as it is shown: with its usual unit.</summary>
    public static string Shown(ScenarioKey key) => key.Kind == KeyKind.Quantity ? $"{key.Path}_{Suffix(UsualUnit(key))}" : key.Path;

    /// <summary>A number in SI units; null when the column is missing, the cell empty, or wrong (which is told).</summary>
    public double? Number(CsvRow row, string name)
    {
        if (!found.TryGetValue(name, out (int Index, ScenarioKey Key, UnitDefinition? Unit) column))
        {
            return null;
        }

        string text = row.Fields[column.Index].Replace('\u2212', '-');
        if (text.Length == 0)
        {
            return column.Key.Required ? Refuse(row, column.Index, "nothing", Bounds(column), "") : null;
        }

        int end = NumberText.Length(text);
        if (end != text.Length)
        {
            bool comma = end > 0 && NumberText.HasDecimalComma(text, end);
            string why = comma ? "a comma is not a decimal point" : NumberText.LooksNotFinite(text) ? "that is not a finite number"
                : end > 0 ? "more than a number; the unit stands in the column's name" : "that is not a number";
            return Refuse(row, column.Index, $"\"{text}\" ({why})", Bounds(column), comma ? NumberText.WithoutComma(text) : end > 0 ? text[..end] : "");
        }

        double number = double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture), si = column.Unit?.ToSi(number) ?? number;
        bool whole = column.Key.Kind != KeyKind.WholeNumber || number % column.Key.MultipleOf == 0;
        return double.IsFinite(si) && whole && column.Key.Holds(si) ? si : Refuse(row, column.Index, text, Bounds(column), "");
    }

    /// <summary>A word or text; null when the column is missing, the cell empty, or wrong (which is told).</summary>
    public string? Text(CsvRow row, string name)
    {
        if (!found.TryGetValue(name, out (int Index, ScenarioKey Key, UnitDefinition? Unit) column))
        {
            return null;
        }

        string text = FormulaGuard.Take(row.Fields[column.Index]);
        string? word = column.Key.Choices.FirstOrDefault(choice => string.Equals(choice, text, StringComparison.OrdinalIgnoreCase));
        if ((text.Length == 0 && column.Key.Required) || (text.Length > 0 && column.Key.Choices.Count > 0 && word is null))
        {
            string allowed = column.Key.Choices.Count > 0 ? string.Join(" or ", column.Key.Choices) : column.Key.Doc;
            Refuse(row, column.Index, text.Length == 0 ? "nothing" : $"\"{text}\"", allowed, NearestName.Of(text, column.Key.Choices) ?? "");
            return null;
        }

        if (PlainText.FirstStrange(text) is { } strange)
        {
            Refuse(row, column.Index, $"\"{text}\" ({strange})", $"{column.Key.Doc}, without control characters", PlainText.Without(text));
            return null;
        }

        return text.Length == 0 ? null : word ?? text;
    }

    /// <summary>The unit of a rate column, to tell steps per second from the rest; null where it is missing.</summary>
    public RatePlace? Place(string name) => found.TryGetValue(name, out (int Index, ScenarioKey Key, UnitDefinition? Unit) column) ? column.Unit?.Place : null;

    private static UnitDefinition UsualUnit(ScenarioKey key)
    {
        string example = key.Example.Trim('"');
        return UnitTable.Find(key.Dimension, UnitSpelling.Plain(example[NumberText.Length(example)..]))!;
    }

    // Column names are in lower case by custom; what people type is not.
    private static string Lower(string text) => string.Concat(text.Select(char.ToLowerInvariant));

    private static string Suffix(UnitDefinition unit) =>
        Lower(unit.Spelling).Replace("*", "_", StringComparison.Ordinal).Replace("^", "", StringComparison.Ordinal).Replace("/", "_per_", StringComparison.Ordinal).Replace(' ', '_');

    // A motor's table never means a rate of the axis.
    private static IEnumerable<UnitDefinition> Units(ScenarioKey key) =>
        UnitTable.Of(key.Dimension).Where(unit => key.Dimension != Dimension.AxisOrMotorRate || unit.Place != RatePlace.Axis);

    private static string Bounds((int Index, ScenarioKey Key, UnitDefinition? Unit) column) => column.Key.Kind == KeyKind.WholeNumber
        ? column.Key.Allowed
        : "a number " + column.Key.Bounds(column.Key.Unit.Length > 0 ? " " + column.Key.Unit : "");

    private void Match(int index, string name, IReadOnlyList<ScenarioKey> keys)
    {
        string plain = Lower(name);
        ScenarioKey? exact = keys.FirstOrDefault(key => key.Kind != KeyKind.Quantity && key.Path == plain);
        ScenarioKey? quantity = exact ?? keys.Where(key => key.Kind == KeyKind.Quantity && (plain == key.Path || plain.StartsWith(key.Path + "_", StringComparison.Ordinal))).MaxBy(key => key.Path.Length);
        if (quantity is null)
        {
            string? near = NearestName.Of(plain, keys.Select(Shown));
            Header(index, name.Length == 0 ? "a column without a name" : "a column that is not known", string.Join(", ", keys.Select(Shown)), near ?? "");
            return;
        }

        UnitDefinition? unit = exact is not null ? null : Units(quantity).FirstOrDefault(one => plain == $"{quantity.Path}_{Suffix(one)}");
        if (exact is null && unit is null)
        {
            Header(index, plain == quantity.Path ? "a quantity without its unit in the column's name" : "a unit that is not known here", string.Join(", ", Units(quantity).Select(one => $"{quantity.Path}_{Suffix(one)}").Distinct()), Shown(quantity));
        }
        else if (!found.TryAdd(quantity.Path, (index, quantity, unit)))
        {
            Header(index, $"the same figure in two columns, {sheet.Header.Fields[found[quantity.Path].Index]} and {name}", "one column for each figure", "");
        }
    }

    private void Header(int index, string found, string allowed, string fix) =>
        problems.Add(new Problem(sheet.File, sheet.Header.Line, index + 1, sheet.Header.Fields[index], found, allowed, fix));

    private double? Refuse(CsvRow row, int index, string found, string allowed, string fix)
    {
        problems.Add(new Problem(sheet.File, row.Line, index + 1, sheet.Header.Fields[index], found, allowed, fix));
        return null;
    }
}
