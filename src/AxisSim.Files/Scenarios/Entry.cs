namespace AxisSim.Files.Scenarios;

/// <summary>How a value was written.</summary>
internal enum EntryKind
{
    /// <summary>A text in quotes.</summary>
    Text,

    /// <summary>A bare number.</summary>
    Number,

    /// <summary><c>true</c> or <c>false</c>.</summary>
    Flag,

    /// <summary>A list, a table or a date: never right in a scenario.</summary>
    Other,

    /// <summary>A setting of the command line: bare text whose form the key decides.</summary>
    Setting,
}

/// <summary>A value as it was written, and where.</summary>
/// <param name="Path">Dotted path; items of lists by name.</param>
/// <param name="Kind">How it was written.</param>
/// <param name="Text">Its text, without quotes.</param>
/// <param name="File">File, or <c>--set</c>.</param>
/// <param name="Line">Line from 1.</param>
/// <param name="Column">Column from 1.</param>
/// <param name="Copied">Whether it was taken over from the polar axis.</param>
internal sealed record Entry(string Path, EntryKind Kind, string Text, string File, int Line, int Column, bool Copied = false)
{
    private const int LongestShown = 60;

    /// <summary>The value as it looks in the file, shortened when it is long.</summary>
    public string Shown
    {
        get
        {
            string visible = PlainText.Visible(Text);
            string shortened = visible.Length > LongestShown ? visible[..LongestShown] + "..." : visible;
            return Kind is EntryKind.Text or EntryKind.Setting ? $"\"{shortened}\"" : shortened;
        }
    }
}

/// <summary>Where something stands in the file.</summary>
internal readonly record struct Spot(int Line, int Column);
