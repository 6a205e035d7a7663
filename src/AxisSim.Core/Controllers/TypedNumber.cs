namespace AxisSim.Core.Controllers;

/// <summary>How a typed number stands to what is wanted.</summary>
public enum TypedFit
{
    /// <summary>It stands for what is wanted.</summary>
    Exact,

    /// <summary>It lies on the safe side.</summary>
    SafeSide,

    /// <summary>The controller takes no number on the safe side: this is the nearest on the other.</summary>
    OtherSide,
}

/// <summary>A number to type into a controller.</summary>
/// <param name="Scale">What it is for and what it counts.</param>
/// <param name="Wanted">What is wanted, SI; infinite for a changeover that is never to come.</param>
/// <param name="Number">The number to type.</param>
/// <param name="Fit">How it stands to what is wanted.</param>
public sealed record TypedNumber(ControllerScale Scale, double Wanted, double Number, TypedFit Fit)
{
    /// <summary>What it stands for, SI.</summary>
    public double Value => Scale.Value(Number);
}

/// <summary>An axis as it is once the numbers are typed.</summary>
/// <param name="Model">The axis with what the numbers stand for.</param>
/// <param name="Numbers">The numbers, in the order of the scales; a scale of which no number is usable has none.</param>
public sealed record TypedAxis(Mount.AxisModel Model, IReadOnlyList<TypedNumber> Numbers);
