using System.Buffers.Binary;
using AxisSim.Core.Maps;
using AxisSim.Files.Scenarios;

namespace AxisSim.Files.Maps;

/// <summary>What a journal holds.</summary>
internal sealed class JournalContent
{
    private JournalContent(MapHeader header, MapCells cells) => (Header, Cells) = (header, cells);

    /// <summary>What the map is of.</summary>
    public MapHeader Header { get; }

    /// <summary>The cells that were done.</summary>
    public MapCells Cells { get; }

    /// <summary>The first cell that is not valid, in the order of cells, with its message.</summary>
    public FirstMessage Invalid { get; } = new();

    /// <summary>Length of the file up to the end of the last whole record, bytes.</summary>
    public long GoodBytes { get; private set; }

    /// <summary>Bytes after it: a record that was being written when the run was killed.</summary>
    public long TornBytes { get; private set; }

    /// <summary>Reads a journal; null with a problem. A record that is torn or whose sum is wrong ends it.</summary>
    public static JournalContent? Read(string path, CancellationToken stop, out Problem? problem)
    {
        (JournalContent? content, problem) = Stoppable.Wait(path, () => (Read(path, out Problem? found), found), stop);
        return content;
    }

    /// <summary>The same, however long it takes.</summary>
    public static JournalContent? Read(string path, out Problem? problem)
    {
        problem = null;
        try
        {
            using FileStream file = new(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite, 1 << 16);
            return Read(file, path, out problem);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException or NotSupportedException)
        {
            problem = About(path, "a journal that cannot be read: " + error.Message.TrimEnd('.'), "a folder that an earlier map wrote");
            return null;
        }
    }

    private static JournalContent? Read(Stream stream, string path, out Problem? problem)
    {
        problem = null;
        byte[] magic = new byte[JournalFrame.Magic.Length];
        byte[]? first = stream.ReadAtLeast(magic, magic.Length, throwOnEndOfStream: false) == magic.Length && JournalFrame.Magic.SequenceEqual(magic) ? Next(stream) : null;
        if (first is null || JournalFrame.Header(first) is not { } header)
        {
            problem = About(path, "a file that is no journal of a map", "the journal that axissim map writes");
            return null;
        }

        string[] texts = [header.Scenario, header.File, .. header.Settings, .. header.Notes];
        if (texts.Any(text => PlainText.FirstStrange(text) is not null))
        {
            problem = About(path, "a journal whose texts hold control characters", "the journal that axissim map writes");
            return null;
        }

        if (header.Format != MapHeader.CurrentFormat)
        {
            problem = About(path, $"a journal of format {MapRange.Number(header.Format)}", $"format {MapRange.Number(MapHeader.CurrentFormat)}, which this version of the program writes");
            return null;
        }

        var content = new JournalContent(header, header.NewCells()) { GoodBytes = stream.Position };
        while (Next(stream) is { } record && content.Take(record))
        {
            content.GoodBytes = stream.Position;
        }

        content.TornBytes = stream.Length - content.GoodBytes;
        return content;
    }

    // A whole record with the right sum, or null.
    private static byte[]? Next(Stream stream)
    {
        Span<byte> lead = stackalloc byte[JournalFrame.Lead];
        if (stream.ReadAtLeast(lead, lead.Length, throwOnEndOfStream: false) < lead.Length)
        {
            return null;
        }

        int length = BinaryPrimitives.ReadInt32LittleEndian(lead);
        if (length is <= 0 or > JournalFrame.LongestContent)
        {
            return null;
        }

        byte[] content = new byte[length];
        bool whole = stream.ReadAtLeast(content, length, throwOnEndOfStream: false) == length;
        return whole && JournalFrame.Sum(content) == BinaryPrimitives.ReadUInt32LittleEndian(lead[4..]) ? content : null;
    }

    private bool Take(byte[] record)
    {
        if (JournalFrame.TryCell(record, out int place, out CellResult result) && place >= 0 && place <= Cells.OwnPlace)
        {
            Cells.Set(place, result);
            return true;
        }

        if (JournalFrame.TryMessage(record, out place, out string text))
        {
            Invalid.Take(place, text);
            return true;
        }

        return false;
    }

    private static Problem About(string path, string found, string allowed) => new(path, 0, 0, "", found, allowed, "another folder");
}
