namespace AxisSim.Files.Maps;

/// <summary>The message of the first cell that is not valid, in the order of cells whatever order they are done in.</summary>
internal sealed class FirstMessage
{
    /// <summary>Place of the cell.</summary>
    public int Place { get; private set; } = int.MaxValue;

    /// <summary>Its message; null when every cell is valid.</summary>
    public string? Text { get; private set; }

    /// <summary>Whether the message is of an earlier cell than the one kept; then it is kept.</summary>
    public bool Take(int place, string text)
    {
        if (place >= Place)
        {
            return false;
        }

        (Place, Text) = (place, text);
        return true;
    }
}
