using CoopLessons.Core.Prepare.Printing;
using CoopLessons.Documents.Packets;
using CoopLessons.Documents.Placing;
using SkiaSharp;
using UglyToad.PdfPig;
using Xunit;

namespace CoopLessons.Web.Tests.Documents;

public class A_packet_on_paper
{
    public static TheoryData<int> Seeds => [.. Enumerable.Range(1, 12)];

    // Reference programs: qpdf checks syntax and every stream; pdfinfo counts pages; PdfPig says what stands on them.
    [TheoryBeside("qpdf", "pdfinfo")]
    [MemberData(nameof(Seeds))]
    public async Task Has_as_many_pages_as_were_announced_and_each_section_on_an_odd_one(int seed)
    {
        using var bench = new Workbench();
        var packet = RandomPacket.Of(seed, bench);
        var plan = packet.Papers.Plan;
        var pdf = packet.Write();

        var (code, output, errors) = await ReferenceProgram.Named("qpdf").Run("--check", bench.Put("packet.pdf", pdf));
        Assert.True(code == 0 && errors.Length == 0, output + errors);
        Assert.DoesNotContain("WARNING", output, StringComparison.Ordinal);
        var (_, about, _) = await ReferenceProgram.Named("pdfinfo").Run(bench.Put("packet.pdf", pdf));
        Assert.Matches($@"Pages:\s+{plan.Sides.Count}\n", about);
        Assert.Matches(@"Tagged:\s+yes", about);

        using var read = PdfDocument.Open(pdf);
        for (var section = 0; section < plan.Starts.Count; section++)
        {
            Assert.True(!plan.BothSides || plan.Starts[section] % 2 == 1);
            Assert.Contains($"Subject {(char)('A' + section)}", string.Join(' ', PaperReader.Rows(read.GetPage(plan.Starts[section])).SelectMany(r => r)), StringComparison.Ordinal);
        }

        for (var i = 0; i < plan.Sides.Count; i++)
        {
            var words = string.Join(' ', read.GetPage(i + 1).GetWords().Select(w => w.Text));
            if (plan.Sides[i] is PacketSide.Blank)
                Assert.Empty(words);
            if (plan.Sides[i] is PacketSide.Copy copy)
            {
                Assert.Equal(copy.For.Name is not null, copy.For.Name is { } name && words.Contains(name, StringComparison.Ordinal));
                if (copy.Piece.FileHash == "numbered" && copy.Piece.Up == 1)
                    Assert.Contains($"Page{copy.Pages[0]}of", read.GetPage(i + 1).Text.Replace(" ", "", StringComparison.Ordinal), StringComparison.Ordinal);
            }
        }
    }

    [Fact]
    public void Is_the_same_to_the_byte_when_it_is_made_again()
    {
        using var bench = new Workbench();
        var packet = RandomPacket.Of(3, bench);
        Assert.Equal(packet.Write(), packet.Write());
    }

    [Fact]
    public void Holds_each_page_once_however_many_copies_there_are()
    {
        using var bench = new Workbench();
        var photo = SamplePages.Kept(bench, "photo", SamplePages.Picture(SKEncodedImageFormat.Jpeg, 1600, 1200)).Source;
        byte[] Copies(int count) => Written(photo, colour: false, count);
        var (one, many) = (Copies(1).Length, Copies(30).Length);
        Assert.True(many - one < new FileInfo(photo.Path).Length, $"{one} bytes with one copy, {many} with thirty");
    }

    // Reference program: pdftoppm paints the page; every dot of it is then looked at.
    [TheoryBeside("pdftoppm")]
    [InlineData("png", false)]
    [InlineData("photo", false)]
    [InlineData("map", false)]
    [InlineData("png", true)]
    [InlineData("map", true)]
    public async Task Is_grey_to_the_last_dot_unless_colour_was_asked_for(string file, bool colour)
    {
        using var bench = new Workbench();
        var bytes = file switch { "png" => SamplePages.Picture(SKEncodedImageFormat.Png), "photo" => SamplePages.Sideways(), _ => SamplePages.Sheet("world-outline") };
        var pdf = bench.Put("packet.pdf", Written(SamplePages.Kept(bench, file, bytes).Source, colour, 1));
        var folder = bench.Folder("dots");
        var (code, _, errors) = await ReferenceProgram.Named("pdftoppm").Run("-r", "50", pdf, Path.Combine(folder, "p"));
        Assert.True(code == 0, errors);
        var pages = Directory.GetFiles(folder).Order(StringComparer.Ordinal).Select(Dots).ToList();
        Assert.All(pages.SkipLast(1), p => Assert.Equal(0, p.Coloured));
        Assert.True(pages[^1].Dark > 100, "The page shows next to nothing.");
        Assert.Equal(colour, pages[^1].Coloured > 0);
    }

    [Fact]
    public void Keeps_a_divider_on_one_side_in_smaller_type_before_it_takes_another()
    {
        Assert.Equal(1, DividerPaper.Sides(RandomPacket.Divider("Science", 3), PaperSize.Letter));
        Assert.Equal(1, DividerPaper.Sides(RandomPacket.Divider("Science", 16), PaperSize.Letter));
        Assert.True(DividerPaper.Sides(RandomPacket.Divider("Science", 90), PaperSize.Letter) > 1);
    }

    [Fact]
    public void Says_its_cautions_on_the_divider()
    {
        using var bench = new Workbench();
        var text = PaperReader.AllText(Written(SamplePages.Kept(bench, "a", SamplePages.Sheet("gluten-test")).Source, false, 1));
        Assert.Contains("Take care", text, StringComparison.Ordinal);
        Assert.Contains("Caution 2: raw flour is not eaten", text, StringComparison.Ordinal);
        Assert.Contains("do not replace your own judgement", text, StringComparison.Ordinal);
    }

    // Reference program: pdfinfo of poppler-utils reads the structure as assistive software would.
    [FactBeside("pdfinfo")]
    public async Task Tells_who_cannot_see_which_page_of_what_it_is()
    {
        using var bench = new Workbench();
        var (_, structure, _) = await ReferenceProgram.Named("pdfinfo").Run("-struct-text", bench.Put("p.pdf", Written(SamplePages.Kept(bench, "a", SamplePages.Sheet("mill-visit")).Source, false, 1)));
        Assert.Contains("Figure", structure, StringComparison.Ordinal);
        Assert.Contains("H1", structure, StringComparison.Ordinal);
        Assert.Contains("Our visit to a mill", structure, StringComparison.Ordinal);
    }

    [Fact]
    public void Is_refused_where_a_file_is_not_what_it_was()
    {
        using var bench = new Workbench();
        var source = SamplePages.Kept(bench, "a", SamplePages.Picture(SKEncodedImageFormat.Png)).Source;
        File.WriteAllBytes(source.Path, File.ReadAllBytes(source.Path)[..40]);
        Assert.Equal("it", Assert.Throws<SourceUnreadableException>(() => Written(source, false, 1)).Hash);
    }

    /// <summary>A divider and copies of a file's first page.</summary>
    private static byte[] Written(PageSource source, bool colour, int copies)
    {
        var piece = new PacketPiece(Guid.NewGuid(), "Sheet", "it", [1], colour, 1, [.. Enumerable.Repeat(new PacketCopy(null, "Wren"), copies)]);
        var plan = PacketPlan.Of([new PacketSection(Guid.NewGuid(), [piece])], bothSides: true);
        return new RandomPacket(new PacketPapers(
            "Packet", "Alder", new DateOnly(2026, 11, 29), PaperSize.Letter, plan, [RandomPacket.Divider("Science", 3)], new Dictionary<string, PageSource> { ["it"] = source })).Write();
    }

    /// <summary>Reads a portable pixmap: how many dots have a hue, how many are darker than half.</summary>
    private static (int Coloured, int Dark) Dots(string path)
    {
        var bytes = File.ReadAllBytes(path);
        var from = 0;
        for (var lines = 0; lines < 3; from++)
            lines += bytes[from] == '\n' ? 1 : 0;
        var (coloured, dark) = (0, 0);
        for (var i = from; i + 2 < bytes.Length; i += 3)
        {
            coloured += bytes[i] == bytes[i + 1] && bytes[i + 1] == bytes[i + 2] ? 0 : 1;
            dark += bytes[i + 1] < 128 ? 1 : 0;
        }

        return (coloured, dark);
    }
}
