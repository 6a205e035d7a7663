using System.Globalization;

namespace AxisSim.Files.Units;

/// <summary>What became of a value with a unit.</summary>
/// <param name="Si">Its SI value; NaN when it was refused.</param>
/// <param name="Place">Where a rate is meant.</param>
/// <param name="Rms">Whether an rms figure was converted to a peak.</param>
/// <param name="Failure">Why it was refused; null when it was accepted.</param>
/// <param name="Fix">What to write instead, when that can be told from the text.</param>
internal readonly record struct QuantityReading(double Si, RatePlace Place = RatePlace.Axis, bool Rms = false, string? Failure = null, string? Fix = null);

/// <summary>Reads <c>number unit</c> texts: decimal point, no thousands signs, any culture's settings ignored.</summary>
internal static class QuantityText
{
    private const int LongestShown = 40;

    /// <summary>Reads a value of a dimension.</summary>
    public static QuantityReading Read(string text, Dimension dimension)
    {
        string trimmed = text.Trim().Replace('\u2212', '-');
        if (trimmed.Length == 0)
        {
            return Refused("the text is empty");
        }

        int end = NumberText.Length(trimmed);
        if (end == 0)
        {
            return Refused(NumberText.LooksNotFinite(trimmed) ? "that is not a finite number" : "there is no number at its start");
        }

        if (NumberText.HasDecimalComma(trimmed, end))
        {
            return Refused("a comma is not a decimal point", NumberText.WithoutComma(trimmed));
        }

        double number = double.Parse(trimmed.AsSpan(0, end), NumberStyles.Float, CultureInfo.InvariantCulture);
        if (!double.IsFinite(number))
        {
            return Refused("the number is too large");
        }

        string unit = UnitSpelling.Plain(trimmed[end..]);
        return unit.Length == 0 ? Bare(number, trimmed, dimension) : WithUnit(number, trimmed[..end], unit, dimension);
    }

    private static QuantityReading Bare(double number, string numberText, Dimension dimension) => dimension == Dimension.Share
        ? new QuantityReading(number)
        : Refused("a number without its unit", $"{numberText} {UnitTable.Of(dimension)[0].Spelling}");

    private static QuantityReading WithUnit(double number, string numberText, string unit, Dimension dimension)
    {
        bool rms = false;
        string plain = unit;
        if (dimension == Dimension.Current)
        {
            (plain, rms) = TakeOffKind(unit);
        }

        double kind = rms ? Math.Sqrt(2.0) : 1.0;
        UnitDefinition? known = UnitTable.Find(dimension, plain) ?? UnitTable.Find(dimension, UnitSpelling.Joined(plain));
        if (known is not null)
        {
            double si = known.ToSi(number) * kind;
            return double.IsFinite(si) ? new QuantityReading(si, known.Place, rms) : Refused("the number is too large");
        }

        if (WiderUnits.TryToSi(dimension, number, UnitSpelling.Joined(plain), out double wide))
        {
            return double.IsFinite(wide) ? new QuantityReading(wide * kind, RatePlace.Axis, rms) : Refused("the number is too large");
        }

        return Refused(WhyNot(unit, plain, dimension), Nearest(numberText, plain, dimension));
    }

    private static (string Unit, bool Rms) TakeOffKind(string unit)
    {
        foreach ((string suffix, bool rms) in new[] { (" rms", true), ("rms", true), (" peak", false), ("peak", false) })
        {
            if (unit.EndsWith(suffix, StringComparison.Ordinal))
            {
                return (unit[..^suffix.Length], rms);
            }
        }

        return (unit, false);
    }

    private static string WhyNot(string unit, string plain, Dimension dimension)
    {
        string shown = unit.Length > LongestShown ? unit[..LongestShown] + "..." : unit;
        IReadOnlyList<Dimension> elsewhere = UnitTable.Knowing(plain);
        string measured = elsewhere.Count == 0 ? "" : elsewhere[0] == Dimension.AxisOrMotorRate ? "motor speed" : DimensionNames.Of(elsewhere[0]);
        return measured.Length > 0 && measured != DimensionNames.Of(dimension) ? $"{shown} is a unit of {measured}" : $"the unit {shown} is not known here";
    }

    // A point or a dash between two units is taken for the sign of a product, and a weight in a torque for the force that it is.
    private static readonly (string Typed, string Unit)[] Forces = [("oz*in", "ozf*in"), ("ozin", "ozf*in"), ("in*oz", "ozf*in"), ("kg*cm", "kgf*cm"), ("kgcm", "kgf*cm"), ("cm*kg", "kgf*cm")];

    private static string? Nearest(string numberText, string plain, Dimension dimension)
    {
        plain = plain.Replace('.', '*').Replace('-', '*');
        if (dimension == Dimension.Torque && Array.Find(Forces, force => string.Equals(force.Typed, UnitSpelling.Joined(plain), StringComparison.OrdinalIgnoreCase)).Unit is { } force)
        {
            return $"{numberText} {force}";
        }

        foreach (UnitDefinition unit in UnitTable.Of(dimension))
        {
            if (string.Equals(unit.Spelling, UnitSpelling.Joined(plain), StringComparison.OrdinalIgnoreCase))
            {
                return $"{numberText} {unit.Spelling}";
            }
        }

        return null;
    }

    private static QuantityReading Refused(string failure, string? fix = null) => new(double.NaN, Failure: failure, Fix: fix);
}
