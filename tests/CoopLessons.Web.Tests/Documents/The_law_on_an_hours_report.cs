using System.Globalization;
using System.Text.RegularExpressions;
using CoopLessons.Core.Hours;
using CoopLessons.Core.Requirements;
using CoopLessons.Core.Requirements.Papers;
using CoopLessons.Documents.Reports;
using UglyToad.PdfPig;
using Xunit;

namespace CoopLessons.Web.Tests.Documents;

public partial class The_law_on_an_hours_report
{
    private const double Margin = 48;
    private static readonly HoursReport Report = SampleReports.Year();

    public static TheoryData<string, string, int?> Pathways => new()
    {
        { "US-MO", "home-school", 4 },
        { "US-PA", "home-education", null },
        { "US-NY", "home-instruction", null },
        { "US-NY", "home-instruction", 8 },
        { "US-FL", "private-school", 4 },
        { "US-TX", "home-as-private-school", 4 },
        { "US-CO", "home-based", 4 },
    };

    // Source: RSMo § 167.012.2(2): 1,000 hours, 600 of them in five subjects, 400 of those at the regular home. The logged
    // hours are added up here from the report's own table: the year runs from 1 July to 30 June, so its last July is left out.
    [Fact]
    public void Each_figure_stands_with_what_was_logged_how_it_stands_and_its_source()
    {
        var rows = Text(SampleLaw.Of("US-MO", "home-school"));
        var logged = Report.Months.Where(m => m.Month.Iso != "2027-07").Sum(m => m.Total.Value);
        Assert.Contains("Missouri: Home school", rows, StringComparison.Ordinal);
        Assert.Contains("Counted over 1 July 2026 to 30 June 2027, the whole year.", rows, StringComparison.Ordinal);
        Assert.Matches($@"hours of instruction {logged / 60}:{logged % 60:00} hours 1,000 hours not met RSMo § 167\.012", rows);
        Assert.Matches(@"hours in core subjects \d+(:\d\d)? hours 600 hours ", rows);
        Assert.Matches(@"hours in core subjects at the regular home \d+(:\d\d)? hours 400 hours ", rows);
        Assert.Contains("summary by others", rows, StringComparison.Ordinal);
        Assert.Contains("checked 25 November 2026", rows, StringComparison.Ordinal);
        Assert.Contains("It is no legal advice and no finding that a duty is met.", rows, StringComparison.Ordinal);
    }

    [Theory, MemberData(nameof(Pathways))]
    public void A_source_that_needs_confirming_says_so_and_no_other_does(string code, string pathway, int? grade)
    {
        var law = SampleLaw.Of(code, pathway, grade);
        var sheet = Assert.Single(law.Pathways);
        var subjects = sheet.Subjects.Select(s => s.Source).Distinct().Count() > 1 ? sheet.Subjects.Select(s => s.Source) : sheet.Subjects.Select(s => s.Source).Take(1);
        var expected = sheet.Sources.Select(s => s.Source).Concat(sheet.Figures.Select(f => f.Source)).Concat(subjects).Count(s => s.NeedsConfirming);
        Assert.Equal(expected, Regex.Count(Joined(law), "confirm ?this"));
    }

    // Source: 24 P.S. § 13-1327.1(c): 180 days or, through grade 6, 900 hours. The cut is made here: days asked of 365, rounded up.
    [Fact]
    public void After_a_move_each_place_has_its_days_and_its_figures_cut_down_to_them()
    {
        var law = SampleLaw.Move();
        var text = Text(law);
        var asked = new DateOnly(2027, 6, 30).DayNumber - SampleLaw.Moves.DayNumber + 1;
        var (days, minutes) = ((180 * asked + 364) / 365, (900 * 60 * asked + 364) / 365);
        Assert.Equal(["Missouri", "Pennsylvania"], law.Pathways.Select(p => p.Place));
        Assert.Contains("1 July 2026 to 2 November 2026, a part of 1 July 2026 to 30 June 2027: this pathway ended on 2 November 2026.", text, StringComparison.Ordinal);
        Assert.Contains("10 November 2026 to 30 June 2027, a part of 1 July 2026 to 30 June 2027: the family moved to Pennsylvania on 3 November 2026 and nothing counts before 10 November 2026.", text, StringComparison.Ordinal);
        Assert.Contains("Asked of 3 November 2026 to 30 June 2027.", text, StringComparison.Ordinal);
        var pennsylvania = law.Pathways[1].Figures;
        Assert.Equal([null, days, minutes, null], pennsylvania.Select(f => f.CutDown?.Value));
        Assert.Equal(["for you to judge"], Regex.Matches(text, "for you to judge").Select(m => m.Value).Distinct());
        Assert.Contains($"{days} days cut down to those days: arithmetic, not law", Joined(law), StringComparison.Ordinal);
        Assert.Equal(5, Regex.Count(Joined(law), "cut down to those days: arithmetic, not law"));
    }

    [Fact]
    public void Alternatives_say_either_and_or_and_those_of_other_grades_are_named_as_such()
    {
        var text = Joined(SampleLaw.Of("US-PA", "home-education"));
        Assert.Contains("One of these is enough.", text, StringComparison.Ordinal);
        Assert.Contains("Either: school days", text, StringComparison.Ordinal);
        Assert.Contains("Or: hours of instruction, elementary level", text, StringComparison.Ordinal);
        Assert.Contains("It is asked in other grades (7-12).", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_goal_is_named_with_why_it_binds_nobody_and_its_parts_have_their_days()
    {
        var law = SampleLaw.Of([SampleLaw.Span("US-NY", "home-instruction", SampleLaw.Begins, null, null, "quarter-hours-1-6")]);
        Assert.Contains(Assert.Single(law.Pathways).Figures, f => f.Status == "your goal; derived from a general phrase");
        var text = Joined(law);
        Assert.Contains("your goal; derived from a general phrase", text, StringComparison.Ordinal);
        Assert.Equal(["1 July 2026 to 30 September 2026", "1 October 2026 to 31 December 2026", "1 January 2027 to 31 March 2027", "1 April 2027 to 30 June 2027"],
            law.Pathways[0].Figures.Where(f => f.Depth == 1).Select(f => f.Name));
        Assert.DoesNotContain("your goal", Joined(SampleLaw.Of("US-NY", "home-instruction")), StringComparison.Ordinal);
    }

    [Theory, MemberData(nameof(Pathways))]
    public void Every_subject_stands_with_the_familys_or_with_none(string code, string pathway, int? grade)
    {
        var law = SampleLaw.Of(code, pathway, grade);
        var catalog = Catalog.Of50AndDc[code]!.Pathway(pathway)!;
        var pool = catalog.AllRequirements.OfType<HoursRequirement>().SelectMany(h => h.Subjects ?? []).ToHashSet();
        var expected = catalog.Subjects.Where(s => pool.Contains(s.Id) || (s.Required && (grade is not { } g || s.Grades is null || s.Grades.Hold(g)))).Select(s => s.Name);
        var subjects = Assert.Single(law.Pathways).Subjects;
        Assert.Equal(expected, subjects.Select(s => s.Name));
        var text = Squeezed(Joined(law));
        Assert.All(subjects, s => Assert.Contains(Squeezed(s.Name), text, StringComparison.Ordinal));
        // One more is the sentence on a grade that is not set.
        var none = PaperReader.Rows(HoursPdf.Write(Report, law)).Count(row => row.Contains("none") && !row.Contains("depends"));
        Assert.Equal(subjects.Count(s => s.Family.Count == 0), none);
    }

    [Fact]
    public void A_pathway_without_a_number_says_so() =>
        Assert.Contains("This program knows no number of days or hours that counts under this pathway.", Text(SampleLaw.Of("US-TX", "home-as-private-school")), StringComparison.Ordinal);

    [Theory, MemberData(nameof(Pathways))]
    public void No_heading_stands_last_on_a_sheet(string code, string pathway, int? grade)
    {
        foreach (var report in new[] { Report, SampleReports.Autumn(), SampleReports.Empty() })
            AssertNoOrphans(HoursPdf.Write(report, SampleLaw.Of(code, pathway, grade)));
    }

    [Fact]
    public void No_heading_stands_last_on_a_sheet_after_a_move()
    {
        // Questions push the section down the sheet line by line.
        for (var i = 0; i < 26; i++)
            AssertNoOrphans(HoursPdf.Write(Report with { Questions = [.. Enumerable.Range(1, i).Select(q => $"Question {q}")] }, SampleLaw.Move()));
    }

    [Fact]
    public void Texts_that_nobody_should_type_stay_inside_the_margins_and_apart()
    {
        foreach (var report in new[] { Report, SampleReports.Autumn() })
        {
            using var document = PdfDocument.Open(HoursPdf.Write(report, SampleLaw.Hostile()));
            foreach (var page in document.GetPages())
            {
                Assert.All(page.Letters, letter =>
                {
                    Assert.InRange(letter.StartBaseLine.X, Margin - 0.5, page.Width - Margin + 0.5);
                    Assert.InRange(letter.EndBaseLine.X, Margin - 0.5, page.Width - Margin + 0.5);
                    Assert.InRange(letter.StartBaseLine.Y, Margin - 0.5, page.Height - Margin);
                });
                foreach (var line in page.Letters.GroupBy(l => Math.Round(l.StartBaseLine.Y, 1)))
                {
                    var letters = line.OrderBy(l => l.StartBaseLine.X).ToList();
                    Assert.All(letters.Zip(letters.Skip(1)), pair => Assert.True(pair.First.EndBaseLine.X <= pair.Second.StartBaseLine.X + 0.5, $"{pair.First.Value} and {pair.Second.Value} on page {page.Number}"));
                }
            }
        }
    }

    [Fact]
    public void The_same_log_law_and_day_give_the_same_bytes_and_another_day_gives_others()
    {
        var span = SampleLaw.Span("US-MO", "home-school", SampleLaw.Begins, null);
        Assert.Equal(HoursPdf.Write(Report, SampleLaw.Move()), HoursPdf.Write(SampleReports.Year(), SampleLaw.Move()));
        Assert.NotEqual(HoursPdf.Write(Report, SampleLaw.Of([span])), HoursPdf.Write(Report, SampleLaw.Of([span], asOf: new DateOnly(2027, 3, 11))));
    }

    // Reference programs: qpdf checks the file's syntax; pdfinfo of poppler-utils reads the structure as assistive software would.
    [FactBeside("qpdf")]
    public async Task Qpdf_finds_nothing_to_say()
    {
        foreach (var law in new[] { SampleLaw.Move(), SampleLaw.Hostile(), SampleLaw.Of("US-TX", "home-as-private-school") })
        {
            using var bench = new Workbench();
            var (code, output, errors) = await ReferenceProgram.Named("qpdf").Run("--check", bench.Put("hours.pdf", HoursPdf.Write(Report, law)));
            Assert.True(code == 0 && errors.Length == 0 && !output.Contains("WARNING", StringComparison.Ordinal), output + errors);
        }
    }

    [FactBeside("pdfinfo")]
    public async Task The_section_is_headings_and_whole_tables_in_the_structure()
    {
        var without = await Structure(null);
        var law = SampleLaw.Move();
        var lines = await Structure(law);
        int More(string tag) => lines.Count(l => l == tag) - without.Count(l => l == tag);
        Assert.Equal(1, Count("H2"));
        Assert.Equal(2, Count("H3"));
        Assert.Equal(2, Count("H4"));
        // For each pathway its days and sources, its figures, its subjects.
        Assert.Equal(6, Count("Table"));
        Assert.Equal(law.Pathways.Sum(p => 1 + p.Sources.Count + 1 + p.Figures.Count + 1 + p.Subjects.Count), More("TR"));

        int Count(string tag) => Begin(lines, tag) - Begin(without, tag);
        static int Begin(string[] all, string tag) => all.Count(l => l == tag || l.StartsWith(tag + " ", StringComparison.Ordinal));
    }

    private static async Task<string[]> Structure(LawSection? law)
    {
        using var bench = new Workbench();
        var (code, output, errors) = await ReferenceProgram.Named("pdfinfo").Run("-struct-text", bench.Put("hours.pdf", HoursPdf.Write(Report, law)));
        Assert.True(code == 0 && errors.Length == 0, errors);
        return [.. output.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(l => l.Trim())];
    }

    private static void AssertNoOrphans(byte[] pdf)
    {
        using var document = PdfDocument.Open(pdf);
        foreach (var page in document.GetPages())
        {
            var letters = page.Letters.Where(l => l.StartBaseLine.Y > Margin + 20).ToList();
            var lowest = letters.Min(l => l.StartBaseLine.Y);
            var last = letters.Where(l => l.StartBaseLine.Y < lowest + 1).ToList();
            // Rows of sums are set in bold as well, and have figures.
            Assert.False(
                last.All(l => l.FontName!.Contains("Bold", StringComparison.Ordinal)) && !last.Any(l => l.Value.Any(char.IsAsciiDigit)),
                $"Page {page.Number} ends with “{string.Concat(last.Select(l => l.Value))}”.");
        }
    }

    private static string Text(LawSection law) => PaperReader.AllText(HoursPdf.Write(Report, law));

    // Column by column instead of line by line: the letters in the order in which they were drawn.
    private static string Joined(LawSection law)
    {
        using var document = PdfDocument.Open(HoursPdf.Write(Report, law));
        return Spaces().Replace(string.Join(' ', document.GetPages().Select(p => string.Concat(p.Letters.Select(l => l.Value)))), " ");
    }

    private static string Squeezed(string text) => Spaces().Replace(text, "");

    [GeneratedRegex(@"\s+")]
    private static partial Regex Spaces();
}
