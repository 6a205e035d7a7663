namespace AxisSim.Core.Payloads;

/// <summary>Shape of a payload body.</summary>
public enum BodyShape
{
    /// <summary>Solid cylinder.</summary>
    Cylinder,

    /// <summary>Thick-walled tube.</summary>
    Tube,

    /// <summary>Solid box.</summary>
    Box,

    /// <summary>Point mass.</summary>
    Point,
}

/// <summary>Direction of a body's own axis (length) in the tube frame.</summary>
public enum BodyDirection
{
    /// <summary>Along the optical axis.</summary>
    Forward,

    /// <summary>Along the declination axis.</summary>
    Out,

    /// <summary>Across both.</summary>
    Side,
}

/// <summary>One rigid body on the telescope side of the declination axis.</summary>
/// <remarks>
/// Tube frame: origin where the declination axis meets the polar axis; <c>Out</c> along the declination axis away from the
/// counterweight; <c>Forward</c> along the optical axis towards the sky; <c>Side</c> = Out x Forward (right-handed: Out, Forward, Side).
/// </remarks>
public sealed record PayloadBody
{
    /// <summary>Name used in keys and reports.</summary>
    public required string Name { get; init; }

    /// <summary>Shape.</summary>
    public required BodyShape Shape { get; init; }

    /// <summary>Mass, kg.</summary>
    public required double MassKilograms { get; init; }

    /// <summary>Centre of mass along Out, m.</summary>
    public required double OutMetres { get; init; }

    /// <summary>Centre of mass along Forward, m.</summary>
    public double ForwardMetres { get; init; }

    /// <summary>Centre of mass along Side, m.</summary>
    public double SideMetres { get; init; }

    /// <summary>Direction of the body's length.</summary>
    public BodyDirection Direction { get; init; } = BodyDirection.Forward;

    /// <summary>Length of a cylinder, tube or box, m.</summary>
    public double LengthMetres { get; init; }

    /// <summary>Outer diameter of a cylinder or tube, m.</summary>
    public double DiameterMetres { get; init; }

    /// <summary>Inner diameter of a tube, m.</summary>
    public double InnerDiameterMetres { get; init; }

    /// <summary>Width of a box across its length, m (the first of Out, Forward, Side that is not its length).</summary>
    public double WidthMetres { get; init; }

    /// <summary>Height of a box across its length, m (the second of Out, Forward, Side that is not its length).</summary>
    public double HeightMetres { get; init; }
}

/// <summary>Counterweight on its bar: a cylinder about the declination axis on the side away from the telescope.</summary>
public sealed record Counterweight
{
    /// <summary>Mass of the weights, kg.</summary>
    public required double MassKilograms { get; init; }

    /// <summary>Distance of their centre from the polar axis, m (positive, on the side away from the telescope).</summary>
    public required double DistanceMetres { get; init; }

    /// <summary>Greatest distance that the bar allows, m.</summary>
    public double? GreatestDistanceMetres { get; init; }

    /// <summary>Diameter of the weights, m.</summary>
    public double DiameterMetres { get; init; }

    /// <summary>Length of the weights along the bar, m.</summary>
    public double LengthMetres { get; init; }

    /// <summary>Mass of the bar, kg.</summary>
    public double BarMassKilograms { get; init; }

    /// <summary>Length of the bar from the polar axis, m.</summary>
    public double BarLengthMetres { get; init; }

    /// <summary>Whether bar and weights turn with the declination axis (the usual build), or are fixed to its housing.</summary>
    public bool TurnsWithDeclination { get; init; } = true;
}

/// <summary>All bodies that turn with the mount.</summary>
public sealed record PayloadModel
{
    /// <summary>Bodies on the telescope side; they turn about both axes.</summary>
    public required IReadOnlyList<PayloadBody> Bodies { get; init; }

    /// <summary>Counterweight; it turns about the polar axis, and about the declination axis when its bar does.</summary>
    public Counterweight? Counterweight { get; init; }
}

/// <summary>A lumped load of one axis instead of bodies.</summary>
/// <remarks>
/// Polar axis: gravity torque <c>T cos(latitude) sin(p + phase)</c> at any declination. Declination axis: a point mass whose first
/// moment times standard gravity is T, in the tube frame at the angle phase from Forward (towards growing declination angle); it feels gravity as the pose says.
/// </remarks>
/// <param name="InertiaKilogramSquareMetres">Inertia about the axis, kg m2.</param>
/// <param name="ImbalanceNewtonMetres">T, N m, as if the axis were horizontal; its sign counts.</param>
/// <param name="PhaseRadians">Phase, rad.</param>
public sealed record LumpedLoad(double InertiaKilogramSquareMetres, double ImbalanceNewtonMetres, double PhaseRadians);
