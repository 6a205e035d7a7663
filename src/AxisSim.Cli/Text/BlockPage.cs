using AxisSim.Report.Pages;

namespace AxisSim.Cli.Text;

/// <summary>A page that keeps what is written on it as blocks under their headings, for a report to lay out.</summary>
internal sealed class BlockPage() : Page(TextWriter.Null, colour: false)
{
    private readonly List<(string Heading, List<Block> Blocks)> parts = [("", [])];

    /// <summary>What was written before the first heading, without the verdict.</summary>
    public IReadOnlyList<Block> Lead => parts[0].Blocks;

    /// <summary>The parts under their headings.</summary>
    public IReadOnlyList<Section> Sections => [.. parts.Skip(1).Select(part => new Section(part.Heading, part.Blocks))];

    /// <inheritdoc/>
    public override void Gap()
    {
        // Layout sees to the space.
    }

    /// <inheritdoc/>
    public override void Verdict(string text, bool good)
    {
        // The sheet carries it.
    }

    /// <inheritdoc/>
    public override void Heading(string text) => parts.Add((text, []));

    /// <inheritdoc/>
    public override void Text(string text, int indent = 0) => Add(new Paragraph(text));

    /// <inheritdoc/>
    public override void Item(string mark, string text) => Add(new ListItem(char.IsAsciiDigit(mark[0]), text));

    /// <inheritdoc/>
    public override void Copyable(string text, int indent) => Add(new CopyLine(text));

    /// <inheritdoc/>
    public override void Rows(IEnumerable<(string Name, string Value)> rows) => Add(new NamedValues([.. rows]));

    /// <inheritdoc/>
    public override void Table(IReadOnlyList<string> head, IEnumerable<IReadOnlyList<string>> rows) => Add(new NumberTable(head, [.. rows]));

    private void Add(Block block) => parts[^1].Blocks.Add(block);
}
