using Spectre.Console;
using Words = Spectre.Console.Text;

namespace AxisSim.Cli.Text;

/// <summary>Plain pages of text, at most 96 columns wide; colour only on a terminal, and never as the only signal.</summary>
/// <remarks>Not sealed: a report takes what is written on it as blocks, so that screen and report say the same.</remarks>
internal class Page
{
    /// <summary>Width of a page, columns.</summary>
    public const int Width = 96;

    private const int Narrowest = 60;
    private const int NameColumns = 25;

    // Lines are broken here, at places that keep numbers and units together; the library must not break them again.
    private const int Unbroken = 10_000;
    private readonly IAnsiConsole console;
    private readonly int columns;

    public Page(TextWriter writer, bool colour, int terminalColumns = Width)
    {
        columns = Math.Clamp(terminalColumns, Narrowest, Width);
        console = Console(writer, colour);
    }

    /// <summary>An empty line.</summary>
    public virtual void Gap() => Write("");

    /// <summary>The sentence that matters most.</summary>
    public virtual void Verdict(string text, bool good) => Write(text, new Style(good ? Color.Green : Color.Red, decoration: Decoration.Bold), 0, 0);

    /// <summary>A heading after an empty line.</summary>
    public virtual void Heading(string text)
    {
        Gap();
        Write(text, new Style(decoration: Decoration.Bold), 0, 0);
    }

    /// <summary>A paragraph, indented by so many columns.</summary>
    public virtual void Text(string text, int indent = 0) => Write(text, Style.Plain, indent, indent);

    /// <summary>An item of a list: a mark, then text that hangs beside it.</summary>
    public virtual void Item(string mark, string text) => Write(mark + " " + text, Style.Plain, 2, 3 + mark.Length);

    /// <summary>A line to copy, never broken: it must work when pasted.</summary>
    public virtual void Copyable(string text, int indent)
    {
        Write(new string(' ', indent) + text);
    }

    /// <summary>Names and values in two columns.</summary>
    public virtual void Rows(IEnumerable<(string Name, string Value)> rows)
    {
        foreach ((string name, string value) in rows)
        {
            // The value is wrapped by itself, so that it hangs beside its name.
            string margin = new(' ', 2 + NameColumns);
            bool first = true;
            foreach (string line in Wrap.Lines(value, columns, margin.Length, margin.Length))
            {
                Write(first ? $"  {name.PadRight(NameColumns)}{line.TrimStart()}" : line);
                first = false;
            }
        }
    }

    /// <summary>A table of numbers, set to the right below its heads.</summary>
    public virtual void Table(IReadOnlyList<string> head, IEnumerable<IReadOnlyList<string>> rows)
    {
        string[][] all = [[.. head], .. rows.Select(row => row.ToArray())];
        int[] widths = [.. Enumerable.Range(0, head.Count).Select(column => all.Max(row => row[column].Length))];
        foreach (string[] row in all)
        {
            Write(("  " + string.Join("  ", row.Select((cell, column) => cell.PadLeft(widths[column])))).TrimEnd());
        }
    }

    private static IAnsiConsole Console(TextWriter writer, bool colour)
    {
        IAnsiConsole made = AnsiConsole.Create(new AnsiConsoleSettings
        {
            Out = new PlainOutput(writer, Unbroken),
            Ansi = colour ? AnsiSupport.Yes : AnsiSupport.No,
            ColorSystem = colour ? ColorSystemSupport.Standard : ColorSystemSupport.NoColors,
            Interactive = InteractionSupport.No,
        });
        made.Profile.Width = Unbroken;
        made.Profile.Capabilities.Unicode = false;
        return made;
    }

    private void Write(string line) => console.Profile.Out.Writer.Write(line + "\n");

    private void Write(string text, Style style, int indent, int hanging)
    {
        foreach (string line in Wrap.Lines(text, columns, indent, hanging))
        {
            console.Write(new Words(line, style));
            Write("");
        }
    }
}
