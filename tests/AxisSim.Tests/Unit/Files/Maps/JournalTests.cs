using AxisSim.Core.Maps;
using AxisSim.Files.Maps;
using AxisSim.Files.Scenarios;

namespace AxisSim.Tests.Unit.Files.Maps;

/// <summary>The journal keeps what is done, and knows what is torn.</summary>
public sealed class JournalTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("axissim-journal-").FullName;

    private string FilePath => Path.Combine(folder, MapJournal.FileName);

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public void What_was_written_is_read_again()
    {
        CellResult[] results = Write(12);
        JournalContent content = JournalContent.Read(FilePath, out _)!;
        Assert.Equal(0, content.TornBytes);
        Assert.Equal(new FileInfo(FilePath).Length, content.GoodBytes);
        Assert.Empty(Header().DifferencesFrom(content.Header, withShard: true));
        Assert.True(double.IsNaN(content.Header.Y.Own.Shown));
        Assert.Equal("of place 3", content.Invalid.Text);
        Assert.All(Enumerable.Range(0, 12), place => Assert.Equal(results[place], content.Cells[place]));
        Assert.True(double.IsNegativeInfinity(content.Cells[0].TorqueMargin));
    }

    [Fact]
    [Trait("speed", "slow")]
    public void A_journal_cut_at_any_byte_keeps_every_whole_record_before_it()
    {
        Write(8);
        byte[] whole = File.ReadAllBytes(FilePath);
        long header = Whole(whole, whole.Length).HeaderBytes;
        int before = 0;
        for (int length = (int)header; length <= whole.Length; length++)
        {
            (JournalContent content, _) = Whole(whole, length);
            int done = Enumerable.Range(0, 12).Count(content.Cells.IsComputed);
            Assert.InRange(done, before, before + 1);
            Assert.Equal(length, content.GoodBytes + content.TornBytes);
            before = done;
        }

        Assert.Equal(8, before);
    }

    [Fact]
    [Trait("speed", "slow")]
    public void A_wrong_bit_anywhere_is_noticed()
    {
        Write(8);
        byte[] whole = File.ReadAllBytes(FilePath);
        int header = (int)Whole(whole, whole.Length).HeaderBytes;
        for (int at = header; at < whole.Length; at++)
        {
            byte[] spoilt = [.. whole];
            spoilt[at] ^= 0x10;
            File.WriteAllBytes(FilePath, spoilt);
            JournalContent content = JournalContent.Read(FilePath, out _)!;
            Assert.True(content.TornBytes > 0);
            Assert.True(content.GoodBytes <= at);
        }
    }

    [Fact]
    public void A_torn_end_is_cut_off_and_the_journal_goes_on()
    {
        Write(8);
        File.WriteAllBytes(FilePath, File.ReadAllBytes(FilePath)[..^5]);
        JournalContent torn = JournalContent.Read(FilePath, out _)!;
        Assert.False(torn.Cells.IsComputed(7));
        using (MapJournal journal = MapJournal.Open(FilePath, torn.GoodBytes, () => { }, out _)!)
        {
            journal.Add(9, CellResult.Bare(MapEnd.Stalls));
        }

        JournalContent content = JournalContent.Read(FilePath, out _)!;
        Assert.Equal(0, content.TornBytes);
        Assert.Equal([0, 1, 2, 3, 4, 5, 6, 9], Enumerable.Range(0, 12).Where(content.Cells.IsComputed));
    }

    [Theory]
    [InlineData("")]
    [InlineData("AXISSIM MAP")]
    [InlineData("AXISSIM MAP JOURNAL\n")]
    [InlineData("AXISSIM MAP JOURNAL\nxxxxxxxxxxxxxxxxxxxxxxxxx")]
    [InlineData("time_s,angle_rad\n0,0\n")]
    public void Another_file_is_refused(string text)
    {
        File.WriteAllText(FilePath, text);
        Assert.Null(JournalContent.Read(FilePath, out Problem? problem));
        Assert.Contains("no journal of a map", problem!.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_full_disk_stops_the_run_once_and_what_was_whole_stays()
    {
        byte[] lead = [.. JournalFrame.Magic, .. JournalFrame.Header(Header())];
        using var disk = new SmallDisk(lead.Length + 1000);
        disk.Write(lead);
        int failures = 0;
        using var journal = new MapJournal("map.journal", disk) { Failed = () => failures++ };
        for (int round = 0; round < 500; round++)
        {
            journal.Add(round % 12, CellResult.Bare(MapEnd.Stalls));
        }

        Assert.False(journal.Flush());
        Assert.Equal(1, failures);
        Assert.Contains("no space left on the disk", journal.Problem!.ToString(), StringComparison.Ordinal);
        Assert.Contains("--resume", journal.Problem.ToString(), StringComparison.Ordinal);
        File.WriteAllBytes(FilePath, disk.Content());
        JournalContent content = JournalContent.Read(FilePath, out _)!;
        Assert.Equal(12, content.Cells.ComputedCount());
        Assert.True(content.TornBytes > 0);
    }

    [Fact]
    public void Two_runs_cannot_write_one_journal()
    {
        Write(2);
        long length = new FileInfo(FilePath).Length;
        using MapJournal first = MapJournal.Open(FilePath, length, () => { }, out _)!;
        using MapJournal? second = MapJournal.Open(FilePath, length, () => { }, out Problem? problem);
        Assert.Null(second);
        Assert.Contains("another run is writing", problem!.ToString(), StringComparison.Ordinal);
    }

    private static MapHeader Header() => new()
    {
        Program = "1.2.3",
        Scenario = "a name, \"quoted\"",
        File = "m.toml",
        Settings = ["polar.worm.teeth=150"],
        Notes = ["µ"],
        Sha256 = new string('a', 64),
        Axes = ["polar"],
        X = new MapKey("polar.motion.ramp_time", "s", "s", false, [1, 2, 3], [1, 2, 3], new OwnValue(2, 2, false)),
        Y = new MapKey("polar.motion.slew_rate", "deg/s", "rad_per_s", true, [1, 2, 4, 8], [0.017, 0.034, 0.068, 0.136], OwnValue.None),
        Metric = MapMetric.Margin,
        Full = true,
        StepSeconds = 50e-6,
        HasOwnPoint = false,
    };

    private CellResult[] Write(int count)
    {
        CellResult[] results = [.. Enumerable.Range(0, count).Select(place => new CellResult(
            place % 2 == 0 ? MapEnd.Stalls : MapEnd.Arrives, place % 2 == 0 ? 0.1 * place : double.NaN, 10.0 + place, double.NaN, double.NaN, place == 0 ? double.NegativeInfinity : 1.0 / place))];
        using MapJournal journal = MapJournal.Create(FilePath, Header(), () => { }, out _)!;
        journal.Add(5, "of place 5");
        journal.Add(3, "of place 3");
        journal.Add(7, "of place 7");
        for (int place = 0; place < count; place++)
        {
            journal.Add(place, results[place]);
        }

        return results;
    }

    private (JournalContent Content, long HeaderBytes) Whole(byte[] bytes, int length)
    {
        File.WriteAllBytes(FilePath, bytes[..length]);
        JournalContent? content = JournalContent.Read(FilePath, out Problem? problem);
        Assert.True(content is not null, problem?.ToString());
        return (content, JournalFrame.Magic.Length + JournalFrame.Header(Header()).Length);
    }

    /// <summary>A stream that is full after some bytes; the last write goes in half, as on a real disk.</summary>
    private sealed class SmallDisk(int bytes) : MemoryStream
    {
        private const int NoSpace = 28; // ENOSPC

        public byte[] Content() => ToArray();

        public override void Write(byte[] buffer, int offset, int count) => Write(buffer.AsSpan(offset, count));

        public override void Write(ReadOnlySpan<byte> buffer)
        {
            int fits = (int)Math.Min(buffer.Length, bytes - Length);
            base.Write(buffer[..fits].ToArray(), 0, fits);
            if (fits < buffer.Length)
            {
                throw new IOException("No space left on device", NoSpace);
            }
        }
    }
}
