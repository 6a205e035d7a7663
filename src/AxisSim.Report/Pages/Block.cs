namespace AxisSim.Report.Pages;

/// <summary>A piece of a page.</summary>
internal abstract record Block;

/// <summary>A paragraph.</summary>
/// <param name="Words">Its text.</param>
internal sealed record Paragraph(string Words) : Block;

/// <summary>An item of a list.</summary>
/// <param name="Numbered">Whether the items count.</param>
/// <param name="Words">Its text.</param>
internal sealed record ListItem(bool Numbered, string Words) : Block;

/// <summary>A line to copy.</summary>
/// <param name="Line">The line.</param>
internal sealed record CopyLine(string Line) : Block;

/// <summary>Names with their values.</summary>
/// <param name="Rows">The pairs.</param>
internal sealed record NamedValues(IReadOnlyList<(string Name, string Value)> Rows) : Block;

/// <summary>A table of numbers.</summary>
/// <param name="Head">Heads of the columns.</param>
/// <param name="Rows">Rows.</param>
internal sealed record NumberTable(IReadOnlyList<string> Head, IReadOnlyList<IReadOnlyList<string>> Rows) : Block;
