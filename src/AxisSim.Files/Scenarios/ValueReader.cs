using System.Globalization;
using AxisSim.Files.Keys;
using AxisSim.Files.Units;

namespace AxisSim.Files.Scenarios;

/// <summary>Why a value was refused and what to write instead.</summary>
internal readonly record struct Refusal(string Reason, string? Fix = null);

/// <summary>Reads one value as its key wants it.</summary>
internal static class ValueReader
{
    private const int LongestText = 4000;
    private const int LongestFix = 60;

    /// <summary>The value, or null with the reason.</summary>
    public static Value? Read(ScenarioKey key, EntryKind kind, string text, out Refusal refusal)
    {
        refusal = default;
        Value? value = key.Kind switch
        {
            KeyKind.Quantity => Quantity(key, kind, text, out refusal),
            KeyKind.Number or KeyKind.WholeNumber => Plain(key, kind, text, out refusal),
            KeyKind.Ratio => Ratio(kind, text, out refusal),
            KeyKind.AnyQuantity => AnyQuantity(kind, text, out refusal),
            KeyKind.Flag => Flag(kind, text, out refusal),
            _ => Words(key, kind, text, out refusal),
        };
        bool bounded = key.Kind is KeyKind.Quantity or KeyKind.Number or KeyKind.WholeNumber or KeyKind.Ratio;
        if (value is { } v && bounded && text != key.AlsoAllowed && !key.Holds(v.Number / v.Second))
        {
            refusal = new Refusal("out of bounds");
            return null;
        }

        return value;
    }

    private static Value? Quantity(ScenarioKey key, EntryKind kind, string text, out Refusal refusal)
    {
        refusal = default;
        if (key.AlsoAllowed is not null && text == key.AlsoAllowed)
        {
            return new Value(double.PositiveInfinity, text, RatePlace.Motor);
        }

        bool written = kind is EntryKind.Text or EntryKind.Setting || (kind == EntryKind.Number && key.Dimension == Dimension.Share);
        if (!written)
        {
            // The bare number with the unit of the key is the likeliest meaning, and shows the right form.
            bool number = kind == EntryKind.Number && NumberText.Length(text) == text.Length;
            refusal = new Refusal(kind == EntryKind.Number ? "a number without its unit" : "not a value with a unit", number && key.Unit.Length > 0 ? $"\"{text} {key.Unit}\"" : null);
            return null;
        }

        QuantityReading reading = QuantityText.Read(text, key.Dimension);
        if (reading.Failure is not null)
        {
            string? fix = reading.Fix;
            if (fix is not null && NumberText.Length(fix) == fix.Length && key.Unit.Length > 0)
            {
                fix = $"{fix} {key.Unit}";
            }
            else if (reading.Failure.StartsWith("a number without", StringComparison.Ordinal) && key.Unit.Length > 0)
            {
                fix = $"{text.Trim()} {key.Unit}";
            }

            refusal = new Refusal(reading.Failure, fix is null ? null : $"\"{fix}\"");
            return null;
        }

        return new Value(reading.Si, "", reading.Place, 1.0, reading.Rms);
    }

    // What it measures is not known here: its text is kept for a check across keys.
    private static Value? AnyQuantity(EntryKind kind, string text, out Refusal refusal)
    {
        refusal = default;
        if (kind is not (EntryKind.Text or EntryKind.Setting or EntryKind.Number))
        {
            refusal = new Refusal("not a value with a unit");
            return null;
        }

        if (PlainText.FirstStrange(text) is { } strange)
        {
            refusal = new Refusal(strange);
            return null;
        }

        return new Value(double.NaN, text);
    }

    private static Value? Plain(ScenarioKey key, EntryKind kind, string text, out Refusal refusal)
    {
        refusal = default;
        string digits = text.Trim();
        if (kind is EntryKind.Flag or EntryKind.Other || digits.Length == 0 || NumberText.Length(digits) != digits.Length)
        {
            int end = NumberText.Length(digits);
            refusal = end > 0 && NumberText.HasDecimalComma(digits, end) ? new Refusal("a comma is not a decimal point", NumberText.WithoutComma(digits))
                : NumberText.LooksNotFinite(digits) ? new Refusal("that is not a finite number")
                : end > 0 && kind != EntryKind.Other ? new Refusal("this key is a plain number without a unit", digits[..end])
                : new Refusal("that is not a number");
            return null;
        }

        double number = double.Parse(digits, NumberStyles.Float, CultureInfo.InvariantCulture);
        if (kind == EntryKind.Text)
        {
            refusal = new Refusal("a number in quotes", digits);
            return null;
        }

        bool whole = number == Math.Floor(number);
        if (!double.IsFinite(number) || (key.Kind == KeyKind.WholeNumber && (!whole || number % key.MultipleOf != 0)))
        {
            refusal = new Refusal(!double.IsFinite(number) ? "the number is too large" : whole ? $"not a multiple of {key.MultipleOf.ToString(CultureInfo.InvariantCulture)}" : "not a whole number");
            return null;
        }

        return new Value(number);
    }

    private static Value? Ratio(EntryKind kind, string text, out Refusal refusal)
    {
        refusal = default;
        string[] parts = text.Split('/');
        double[] numbers = [.. parts.Select(part => part.Trim()).Select(part => part.Length > 0 && NumberText.Length(part) == part.Length ? double.Parse(part, NumberStyles.Float, CultureInfo.InvariantCulture) : double.NaN)];
        bool form = kind is EntryKind.Number ? parts.Length == 1 : kind is EntryKind.Text or EntryKind.Setting && parts.Length is 1 or 2;
        if (!form || numbers.Any(number => !double.IsFinite(number)) || (numbers.Length == 2 && numbers[1] <= 0.0))
        {
            int end = NumberText.Length(text.Trim());
            bool comma = end > 0 && NumberText.HasDecimalComma(text.Trim(), end);
            refusal = comma ? new Refusal("a comma is not a decimal point", NumberText.WithoutComma(text.Trim())) : new Refusal("that is not a ratio");
            return null;
        }

        return new Value(numbers[0], "", RatePlace.Axis, numbers.Length == 2 ? numbers[1] : 1.0);
    }

    private static Value? Flag(EntryKind kind, string text, out Refusal refusal)
    {
        bool form = kind is EntryKind.Flag or EntryKind.Setting && text is "true" or "false";
        refusal = form ? default : new Refusal("neither true nor false", text is "true" or "false" ? text : null);
        return form ? new Value(text == "true" ? 1.0 : 0.0) : null;
    }

    private static Value? Words(ScenarioKey key, EntryKind kind, string text, out Refusal refusal)
    {
        refusal = default;
        if (kind is not (EntryKind.Text or EntryKind.Setting))
        {
            refusal = new Refusal("not a text", key.Kind == KeyKind.Text && kind == EntryKind.Number ? $"\"{text}\"" : null);
            return null;
        }

        if (key.Kind == KeyKind.Choice && !key.Choices.Contains(text))
        {
            string? near = key.Choices.FirstOrDefault(choice => string.Equals(choice, text.Trim(), StringComparison.OrdinalIgnoreCase)) ?? NearestName.Of(text, key.Choices);
            refusal = new Refusal("none of the words allowed", near is null ? null : $"\"{near}\"");
            return null;
        }

        if (key.Kind == KeyKind.Text && ((text.Length == 0 && key.Required) || text.Length > LongestText))
        {
            refusal = new Refusal(text.Length == 0 ? "the text is empty" : "the text is too long");
            return null;
        }

        if (PlainText.FirstStrange(text, key.Lines) is { } strange)
        {
            string plain = PlainText.Without(text, key.Lines).Replace("\"", "'", StringComparison.Ordinal);
            refusal = new Refusal(strange, string.IsNullOrWhiteSpace(plain) || plain.Length > LongestFix || plain.AsSpan().IndexOfAny('\n', '\\') >= 0 ? null : $"\"{plain}\"");
            return null;
        }

        return new Value(double.NaN, text);
    }
}
