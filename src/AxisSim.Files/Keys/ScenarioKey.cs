using System.Globalization;
using AxisSim.Core.Bounds;
using AxisSim.Files.Units;

namespace AxisSim.Files.Keys;

/// <summary>One key of a scenario: what it holds, in which units, within which bounds, and what it means.</summary>
public sealed record ScenarioKey
{
    /// <summary>Dotted path; an item of a list is written <c>&lt;name&gt;</c>, as in <c>payload.&lt;name&gt;.mass</c>.</summary>
    public required string Path { get; init; }

    /// <summary>Form of the value.</summary>
    public required KeyKind Kind { get; init; }

    /// <summary>Whether it must be given where its section is in use.</summary>
    public bool Required { get; init; }

    /// <summary>What holds when it is left out, as it would be written; null when it is required or means "none".</summary>
    public string? Default { get; init; }

    /// <summary>What holds when it is left out, in words; used where no fixed value can be written.</summary>
    public string? DefaultInWords { get; init; }

    /// <summary>An example of its value as it is written in a file, quotes included.</summary>
    public required string Example { get; init; }

    /// <summary>One line on what it means.</summary>
    public required string Doc { get; init; }

    /// <summary>The words allowed for a choice.</summary>
    public IReadOnlyList<string> Choices { get; init; } = [];

    /// <summary>What is allowed, in words, with bounds and units.</summary>
    public string Allowed => Kind switch
    {
        KeyKind.Quantity when Dimension == Dimension.Share => $"a share {Bounds("")}, as a number or per cent",
        KeyKind.Quantity when Dimension == Dimension.AxisOrMotorRate => "an axis rate in deg/s, arcmin/s, arcsec/s or x sidereal, or a motor speed in rpm, rev/s, rad/s or steps/s" + (AlsoAllowed is null ? "" : $", or \"{AlsoAllowed}\""),
        KeyKind.Quantity => $"{Article(DimensionNames.Of(Dimension))} {Bounds(" " + Unit)} (units: {UnitTable.Accepted(Dimension)})",
        KeyKind.Number => $"a number {Bounds("")}",
        KeyKind.AnyQuantity => "a value with a unit that fits what it sets",
        KeyKind.WholeNumber when Minimum == Maximum => string.Create(CultureInfo.InvariantCulture, $"{Minimum}, the only one so far"),
        KeyKind.WholeNumber => $"a whole number {Bounds("")}{(MultipleOf > 1 ? string.Create(CultureInfo.InvariantCulture, $", a multiple of {MultipleOf}") : "")}",
        KeyKind.Ratio => $"a ratio {Bounds("")}, as a number or as teeth, \"60/12\"",
        KeyKind.Choice => string.Join(" or ", Choices.Select(choice => $"\"{choice}\"")),
        KeyKind.Flag => "true or false",
        _ => $"a text of 1 to 4000 characters in quotes, {(Lines ? "which may have several lines, without other" : "without")} control characters",
    };

    /// <summary>What kind of unit it takes, in a word or two.</summary>
    public string UnitKind => Kind switch
    {
        KeyKind.Quantity => DimensionNames.Of(Dimension),
        KeyKind.Number => "number",
        KeyKind.AnyQuantity => "value with its unit",
        KeyKind.WholeNumber => "whole number",
        KeyKind.Ratio => "ratio",
        KeyKind.Choice => "one word of a list",
        KeyKind.Flag => "true or false",
        _ => "text",
    };

    /// <summary>Section of the key: its path without its last part.</summary>
    public string Section => Path.LastIndexOf('.') is int dot and >= 0 ? Path[..dot] : "";

    /// <summary>Last part of the path.</summary>
    public string Name => Path[(Path.LastIndexOf('.') + 1)..];

    internal Dimension Dimension { get; init; }

    /// <summary>Unit of <see cref="Minimum"/> and <see cref="Maximum"/> and of messages.</summary>
    internal string Unit { get; init; } = "";

    /// <summary>What Core allows, SI.</summary>
    internal Bound Bound { get; init; }

    internal double Minimum => FromSi(Bound.Least);

    internal double Maximum => FromSi(Bound.Greatest);

    internal int MultipleOf => Math.Max(1, Bound.MultipleOf);

    /// <summary>Whether a text may have several lines.</summary>
    internal bool Lines { get; init; }

    /// <summary>A word that is allowed besides a quantity.</summary>
    internal string? AlsoAllowed { get; init; }

    /// <summary>Whether an SI value is within the bounds.</summary>
    internal bool Holds(double si) => Bound.Holds(si);

    internal string Bounds(string unit)
    {
        string from = Minimum.ToString("0.######", CultureInfo.InvariantCulture), to = Maximum.ToString("0.######", CultureInfo.InvariantCulture);
        return Bound.AboveLeast ? $"above {from}{unit} and up to {to}{unit}" : $"from {from}{unit} to {to}{unit}";
    }

    private static string Article(string noun) => (noun[0] is 'a' or 'e' or 'i' or 'o' or 'u' || noun.StartsWith("hour", StringComparison.Ordinal) ? "an " : "a ") + noun;

    private double FromSi(double si) =>
        Unit.Length == 0 || !double.IsFinite(si) ? si : UnitTable.Find(Dimension, Unit)!.FromSi(si);
}
