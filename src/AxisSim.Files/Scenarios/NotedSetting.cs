namespace AxisSim.Files.Scenarios;

/// <summary>A setting and where it comes from.</summary>
/// <param name="Setting">The setting, <c>key=value</c> as <c>--set</c> takes it.</param>
/// <param name="Note">From what it was found, and with what margin; one line.</param>
public sealed record NotedSetting(string Setting, string Note)
{
    /// <summary>Its key.</summary>
    internal string Path => Setting[..Setting.IndexOf('=', StringComparison.Ordinal)].Trim();

    /// <summary>Its value, without quotes.</summary>
    internal string Value => Setting[(Setting.IndexOf('=', StringComparison.Ordinal) + 1)..].Trim();
}
