using System.Buffers.Binary;
using System.Numerics;
using System.Text.Json.Serialization;
using System.Text.Json;
using System.Text;
using AxisSim.Core.Maps;
using AxisSim.Core.Outcomes;

namespace AxisSim.Files.Maps;

/// <summary>The records of a journal as bytes.</summary>
/// <remarks>
/// The file begins with <see cref="Magic"/>. Each record follows as its length and the CRC-32C of its content (both 32 bits, low byte
/// first) and the content: a letter, then H: the header as JSON; C: place, end, a mask of the figures that exist, the figures as 64-bit
/// numbers; M: place and the message of a cell that is not valid. The first record is the header.
/// </remarks>
internal static class JournalFrame
{
    public const int Lead = 8;
    public const int LongestContent = 1 << 24;

    private static readonly JsonSerializerOptions Json = new() { NumberHandling = JsonNumberHandling.AllowNamedFloatingPointLiterals };

    public static ReadOnlySpan<byte> Magic => "AXISSIM MAP JOURNAL\n"u8;

    /// <summary>The CRC-32C of a content.</summary>
    public static uint Sum(ReadOnlySpan<byte> content)
    {
        uint sum = uint.MaxValue;
        foreach (byte b in content)
        {
            sum = BitOperations.Crc32C(sum, b);
        }

        return ~sum;
    }

    /// <summary>A content with its length and sum before it.</summary>
    public static byte[] Whole(ReadOnlySpan<byte> content)
    {
        byte[] frame = new byte[Lead + content.Length];
        BinaryPrimitives.WriteInt32LittleEndian(frame, content.Length);
        BinaryPrimitives.WriteUInt32LittleEndian(frame.AsSpan(4), Sum(content));
        content.CopyTo(frame.AsSpan(Lead));
        return frame;
    }

    public static byte[] Header(MapHeader header) => Whole([(byte)'H', .. JsonSerializer.SerializeToUtf8Bytes(header, Json)]);

    public static MapHeader? Header(ReadOnlySpan<byte> content)
    {
        try
        {
            return content.Length > 1 && content[0] == 'H' ? JsonSerializer.Deserialize<MapHeader>(content[1..], Json) : null;
        }
        catch (JsonException)
        {
            return null;
        }
    }

    public static byte[] Cell(int place, in CellResult result)
    {
        Span<double> figures = [result.FailureSeconds, result.SlewSeconds, result.SettleSeconds, result.ContinuousCelsius, result.TorqueMargin];
        Span<byte> content = stackalloc byte[7 + (8 * figures.Length)];
        content[0] = (byte)'C';
        BinaryPrimitives.WriteInt32LittleEndian(content[1..], place);
        content[5] = (byte)result.End;
        int at = 7;
        for (int i = 0; i < figures.Length; i++)
        {
            if (!double.IsNaN(figures[i]))
            {
                content[6] |= (byte)(1 << i);
                BinaryPrimitives.WriteDoubleLittleEndian(content[at..], figures[i]);
                at += 8;
            }
        }

        return Whole(content[..at]);
    }

    public static bool TryCell(ReadOnlySpan<byte> content, out int place, out CellResult result)
    {
        (place, result) = (-1, default);
        if (content.Length < 7 || content[0] != 'C' || content.Length != 7 + (8 * BitOperations.PopCount(content[6])))
        {
            return false;
        }

        place = BinaryPrimitives.ReadInt32LittleEndian(content[1..]);
        Span<double> figures = stackalloc double[8];
        int at = 7;
        for (int i = 0; i < figures.Length; i++)
        {
            bool there = (content[6] & (1 << i)) != 0;
            figures[i] = there ? BinaryPrimitives.ReadDoubleLittleEndian(content[at..]) : double.NaN;
            at += there ? 8 : 0;
        }

        result = new CellResult((MoveEnd)content[5], figures[0], figures[1], figures[2], figures[3], figures[4]);
        return Enum.IsDefined(result.End) && result.End != MoveEnd.Unknown;
    }

    public static byte[] Message(int place, string text)
    {
        byte[] content = [(byte)'M', 0, 0, 0, 0, .. Encoding.UTF8.GetBytes(text)];
        BinaryPrimitives.WriteInt32LittleEndian(content.AsSpan(1), place);
        return Whole(content);
    }

    public static bool TryMessage(ReadOnlySpan<byte> content, out int place, out string text)
    {
        bool fits = content.Length >= 5 && content[0] == 'M';
        (place, text) = fits ? (BinaryPrimitives.ReadInt32LittleEndian(content[1..]), Encoding.UTF8.GetString(content[5..])) : (-1, "");
        return fits;
    }
}
