using System.Globalization;
using AxisSim.Files.Keys;
using AxisSim.Files.Scenarios;
using AxisSim.Files.Units;

namespace AxisSim.Files.Maps;

/// <summary>Reads the range of a key, <c>KEY=FROM..TO UNIT</c> or <c>KEY=log FROM..TO UNIT</c>.</summary>
internal sealed class RangeReader(string option, string text, int count)
{
    private const string Form = "KEY=FROM..TO UNIT or KEY=log FROM..TO UNIT, FROM below TO, the unit once at the end";
    private const string Example = "polar.motion.ramp_time=0.3..3 s";
    private const string LogWord = "log";

    /// <summary>Problems found.</summary>
    public List<Problem> Problems { get; } = [];

    /// <summary>The dotted path before the equals sign; empty when there is none.</summary>
    public string Path { get; private set; } = "";

    /// <summary>What follows the equals sign.</summary>
    public string Range { get; private set; } = "";

    /// <summary>The range; null when there is a problem, or when the key is not known, which is left to the checks of settings.</summary>
    public MapRange? Read()
    {
        int equals = text.IndexOf('=', StringComparison.Ordinal);
        Path = equals < 0 ? "" : text[..equals].Trim();
        Range = equals < 0 ? "" : text[(equals + 1)..].Trim();
        if (Path.Length == 0)
        {
            return Refuse($"\"{text}\" ({(equals < 0 ? "there is no = in it" : "there is no key before the =")})", Form, Example);
        }

        if (ScenarioKeys.Find(Path) is not { } key)
        {
            return null;
        }

        if (key.Kind is not (KeyKind.Quantity or KeyKind.Number or KeyKind.WholeNumber or KeyKind.Ratio))
        {
            return Refuse($"a key that holds {(key.Kind == KeyKind.Flag ? "true or false" : key.Kind == KeyKind.Choice ? "one of a few words" : "a text")}, which has no range", "a key that holds a number", "");
        }

        (string first, string second, bool logarithmic) = Parts();
        if (second.Length == 0)
        {
            return Refuse($"\"{Range}\" (no two dots between two numbers)", Form, $"{Path}={Suggested(key)}");
        }

        string from = Plain(first), to = Plain(second);
        int fromEnd = NumberText.Length(from), toEnd = NumberText.Length(to);
        string unit = UnitSpelling.Plain(to[toEnd..]);
        bool fits = Fits(key, from, fromEnd, to, toEnd, unit);
        return fits ? Checked(key, logarithmic, double.Parse(from, CultureInfo.InvariantCulture), double.Parse(to[..toEnd], CultureInfo.InvariantCulture), unit) : null;
    }

    private static string Plain(string part) => part.Trim().Replace('\u2212', '-');

    private (string From, string To, bool Logarithmic) Parts()
    {
        bool logarithmic = Range.StartsWith(LogWord, StringComparison.Ordinal) && Range.Length > LogWord.Length && char.IsWhiteSpace(Range[LogWord.Length]);
        string range = logarithmic ? Range[LogWord.Length..].Trim() : Range;
        int dots = range.IndexOf("..", StringComparison.Ordinal);
        return dots <= 0 ? (range, "", logarithmic) : (range[..dots].Trim(), range[(dots + 2)..].Trim(), logarithmic);
    }

    private bool Fits(ScenarioKey key, string from, int fromEnd, string to, int toEnd, string unit)
    {
        string log = Range.StartsWith(LogWord, StringComparison.Ordinal) ? LogWord + " " : "";
        string without = unit.Length == 0 ? "" : " " + unit;
        foreach ((string part, int end) in new[] { (from, fromEnd), (to, toEnd) })
        {
            if (end > 0 && NumberText.HasDecimalComma(part, end))
            {
                Refuse($"\"{Range}\" (a comma is not a decimal point)", Form, $"{Path}={log}{NumberText.WithoutComma(from)}..{NumberText.WithoutComma(to)}");
                return false;
            }

            if (end == 0)
            {
                Refuse($"\"{Range}\" ({(NumberText.LooksNotFinite(part) ? "that is not a finite number" : "there is no number")} {(part == from ? "before" : "after")} the two dots)", Form, $"{Path}={Suggested(key)}");
                return false;
            }
        }

        if (fromEnd < from.Length)
        {
            string own = UnitSpelling.Plain(from[fromEnd..]);
            Refuse($"\"{Range}\" (a unit at the start of the range)", "the unit once, at the end", $"{Path}={log}{from[..fromEnd]}..{to[..toEnd]} {(unit.Length > 0 ? unit : own)}");
            return false;
        }

        foreach (string number in new[] { from, to[..toEnd] })
        {
            string value = number + without;
            if (ValueReader.Read(key, EntryKind.Setting, value, out Refusal refusal) is null && !(unit.Length == 0 && IsNotWhole(key, number)))
            {
                string fix = refusal.Reason.StartsWith("a number without", StringComparison.Ordinal) && key.Unit.Length > 0 ? $"{Path}={log}{from}..{to} {key.Unit}"
                    : unit.Length > 0 && key.Kind != KeyKind.Quantity ? $"{Path}={log}{from}..{to[..toEnd]}" : "";
                Refuse($"\"{value}\" ({refusal.Reason})", key.Allowed, fix);
                return false;
            }
        }

        return true;
    }

    // Ends between whole numbers are rounded like every other value.
    private static bool IsNotWhole(ScenarioKey key, string number) => key.Kind == KeyKind.WholeNumber
        && ValueReader.Read(key, EntryKind.Setting, MapRange.Number(RangeValues.Whole(key, double.Parse(number, CultureInfo.InvariantCulture))), out _) is not null;

    private MapRange? Checked(ScenarioKey key, bool logarithmic, double from, double to, string unit)
    {
        string shown = unit.Length == 0 ? "" : " " + unit;
        if (!(from < to))
        {
            return Refuse($"\"{Range}\" (the range does not rise)", "FROM below TO", from > to ? $"{Path}={(logarithmic ? LogWord + " " : "")}{MapRange.Number(to)}..{MapRange.Number(from)}{shown}" : "");
        }

        if (logarithmic && !(from > 0.0))
        {
            return Refuse($"\"{Range}\" (logarithmic spacing from a number that is not above zero)", "FROM above zero, or even spacing", $"{Path}={MapRange.Number(from)}..{MapRange.Number(to)}{shown}");
        }

        if (count < 2)
        {
            return null; // the grid has been told of
        }

        double[] numbers = RangeValues.Between(key, from, to, count, logarithmic);
        if (numbers.Length < 2 || numbers[0] > numbers[^1])
        {
            return Refuse($"\"{Range}\" (no two values that the key can take)", key.Allowed, "");
        }

        Value[] values = [.. numbers.Select(number => ValueReader.Read(key, EntryKind.Setting, MapRange.Number(number) + shown, out _) ?? new Value(double.NaN))];
        bool rising = values.Zip(values.Skip(1)).All(pair => pair.First.Number / pair.First.Second < pair.Second.Number / pair.Second.Second);
        return rising ? new MapRange(key, Path, unit, logarithmic, numbers, values) : Refuse($"\"{Range}\" (its ends are too near to each other for {count.ToString(CultureInfo.InvariantCulture)} values)", "a wider range", "");
    }

    private static string Suggested(ScenarioKey key)
    {
        string example = key.Example.Trim('"');
        int end = NumberText.Length(example);
        double number = end == 0 ? 1.0 : double.Parse(example[..end], CultureInfo.InvariantCulture);
        double twice = number == 0.0 ? 1.0 : 2.0 * number;
        string unit = end == 0 || key.Kind == KeyKind.Ratio ? "" : example[end..].Trim();
        return $"{MapRange.Number(number)}..{MapRange.Number(twice)}{(unit.Length == 0 ? "" : " " + unit)}";
    }

    private MapRange? Refuse(string found, string allowed, string fix)
    {
        Problems.Add(new Problem(option, 0, 0, Path, found, allowed, fix.Length == 0 ? "" : $"{option} \"{fix}\""));
        return null;
    }
}
