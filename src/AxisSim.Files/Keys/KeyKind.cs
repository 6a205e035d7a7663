namespace AxisSim.Files.Keys;

/// <summary>What form the value of a key has.</summary>
public enum KeyKind
{
    /// <summary>A number with its unit, as text: <c>"14 kg"</c>.</summary>
    Quantity,

    /// <summary>A plain number: <c>1.2</c>.</summary>
    Number,

    /// <summary>A whole number: <c>144</c>.</summary>
    WholeNumber,

    /// <summary>A ratio, as a plain number or as teeth of the driven over the driving wheel: <c>5</c> or <c>"60/12"</c>.</summary>
    Ratio,

    /// <summary>A number with its unit, as text; which units are right depends on another key.</summary>
    AnyQuantity,

    /// <summary>Free text.</summary>
    Text,

    /// <summary>One of a few words.</summary>
    Choice,

    /// <summary><c>true</c> or <c>false</c>.</summary>
    Flag,
}
