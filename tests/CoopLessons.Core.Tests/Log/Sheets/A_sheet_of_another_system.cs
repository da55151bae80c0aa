using System.Text;
using CoopLessons.Core.Hours;
using CoopLessons.Core.Log.Sheets;

namespace CoopLessons.Core.Tests.Log.Sheets;

public sealed class A_sheet_of_another_system
{
    private static readonly DateOnly Today = new(2026, 3, 12);
    private static readonly Guid Wren = Guid.Parse("00000000-0000-0000-0000-000000000001");
    private static readonly Guid Linnet = Guid.Parse("00000000-0000-0000-0000-000000000002");
    private static readonly Guid Science = Guid.Parse("00000000-0000-0000-0000-000000000003");
    private static readonly Guid Art = Guid.Parse("00000000-0000-0000-0000-000000000004");
    private static readonly SheetNames Names = new(new Dictionary<string, Guid> { ["wren"] = Wren, ["linnet"] = Linnet }, new Dictionary<string, Guid> { ["science"] = Science, ["art"] = Art });

    [Theory]
    [InlineData("UTF-8", "Zoë baked", new byte[] { })]
    [InlineData("UTF-8", "Zoë baked", new byte[] { 0xEF, 0xBB, 0xBF })]
    public void Is_read_as_utf8(string encoding, string text, byte[] mark) =>
        Assert.Equal(new SheetText(text, encoding), SheetText.Of([.. mark, .. Encoding.UTF8.GetBytes(text)]));

    [Fact]
    public void Is_read_as_utf16_with_a_mark_or_without()
    {
        foreach (var encoding in new Encoding[] { Encoding.Unicode, Encoding.BigEndianUnicode })
        {
            Assert.Equal(new SheetText("date,what\r\n", "UTF-16"), SheetText.Of([.. encoding.GetPreamble(), .. encoding.GetBytes("date,what\r\n")]));
            Assert.Equal(new SheetText("date,what\r\n", "UTF-16"), SheetText.Of(encoding.GetBytes("date,what\r\n")));
        }
    }

    // The published table of the encoding (Unicode Consortium, MAPPINGS/VENDORS/MICSFT/WINDOWS/CP1252.TXT, from memory):
    // 0x80 U+20AC, 0x92 U+2019, 0x97 U+2014, 0xEB U+00EB.
    [Fact]
    public void Is_read_as_windows_1252_where_it_is_no_utf8() =>
        Assert.Equal(new SheetText("Zo\u00EB\u2019s \u20AC\u2014", "Windows-1252"), SheetText.Of([0x5A, 0x6F, 0xEB, 0x92, 0x73, 0x20, 0x80, 0x97]));

    // RFC 4180, section 2: the examples of rules 1 to 7.
    [Theory]
    [InlineData("aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n", "aaa|bbb|ccc / zzz|yyy|xxx")]
    [InlineData("aaa,bbb,ccc\r\nzzz,yyy,xxx", "aaa|bbb|ccc / zzz|yyy|xxx")]
    [InlineData("\"aaa\",\"bbb\",\"ccc\"\r\nzzz,yyy,xxx", "aaa|bbb|ccc / zzz|yyy|xxx")]
    [InlineData("\"aaa\",\"b\r\nbb\",\"ccc\"\r\nzzz,yyy,xxx", "aaa|b\r\nbb|ccc / zzz|yyy|xxx")]
    [InlineData("\"aaa\",\"b\"\"bb\",\"ccc\"", "aaa|b\"bb|ccc")]
    public void Is_taken_apart_as_the_rfc_has_it(string text, string records) =>
        Assert.Equal(records, string.Join(" / ", SheetRecords.Of(text).Records.Select(r => string.Join('|', r.Cells))));

    [Theory]
    [InlineData("date;what;minutes\n2026-03-01;Baked, and ate;40\n", ';')]
    [InlineData("date\twhat\tminutes\n2026-03-01\tBaked, and ate; all\t40\n", '\t')]
    [InlineData("date,what,minutes\n2026-03-01,\"a;b;c;d\",40\n", ',')]
    [InlineData("one cell alone", ',')]
    public void Says_what_stands_between_its_cells(string text, char separator) => Assert.Equal(separator, SheetRecords.Of(text).Separator);

    [Fact]
    public void Counts_lines_as_an_editor_does()
    {
        var sheet = SheetRecords.Of("a,b\r\n\"1\r\n2\n3\",x\r\n\r\nc,d\n");
        Assert.Equal([1, 2, 6], sheet.Records.Select(r => r.Line));
        Assert.Null(sheet.OpenQuote);
        Assert.Equal(2, SheetRecords.Of("a,b\n\"c,d\ne,f\n").OpenQuote);
    }

    [Theory]
    [InlineData("2026-03-12", "yyyy-M-d", "2026-03-12")]
    [InlineData("3/4/2026", "M/d/yyyy", "2026-03-04")]
    [InlineData("3/4/2026", "d/M/yyyy", "2026-04-03")]
    [InlineData("4.3.26", "d.M.yy", "2026-03-04")]
    [InlineData("Mar 4, 2026", "MMM d, yyyy", "2026-03-04")]
    [InlineData("2026-03-12 00:00:00", "yyyy-M-d", "2026-03-12")]
    [InlineData("2/30/2026", "M/d/yyyy", null)]
    [InlineData("yesterday", "M/d/yyyy", null)]
    public void Has_days_in_the_chosen_form(string text, string form, string? day) =>
        Assert.Equal(day, SheetForms.Day(text, form)?.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture));

    [Fact]
    public void Has_the_forms_in_which_all_of_its_days_are_days()
    {
        Assert.Equal(["M/d/yyyy", "d/M/yyyy"], SheetForms.DaysOf(["3/4/2026", "1/2/2026"]));
        Assert.Equal(["M/d/yyyy"], SheetForms.DaysOf(["3/4/2026", "1/22/2026"]));
        Assert.Empty(SheetForms.DaysOf(["3/4/2026", "nothing"]));
        Assert.Empty(SheetForms.DaysOf([]));
    }

    [Theory]
    [InlineData("45", LengthForm.Minutes, 45)]
    [InlineData("45 min", LengthForm.Minutes, 45)]
    [InlineData("0.5", LengthForm.Minutes, null)]
    [InlineData("1:30", LengthForm.Clock, 90)]
    [InlineData("0:05:00", LengthForm.Clock, 5)]
    [InlineData("1:60", LengthForm.Clock, null)]
    [InlineData("1:5", LengthForm.Clock, null)]
    [InlineData("0.75", LengthForm.Hours, 45)]
    [InlineData("1,5 h", LengthForm.Hours, 90)]
    [InlineData("0.33", LengthForm.Hours, 20)]
    [InlineData(".25", LengthForm.Hours, 15)]
    [InlineData("-1", LengthForm.Hours, null)]
    [InlineData("1e3", LengthForm.Hours, null)]
    public void Has_lengths_in_the_chosen_form(string text, LengthForm form, int? minutes) => Assert.Equal(minutes, SheetForms.Length(text, form));

    [Theory]
    [InlineData("9:30", 570)]
    [InlineData("14:05", 845)]
    [InlineData("2:05 pm", 845)]
    [InlineData("2pm", 840)]
    [InlineData("noon", null)]
    public void Has_times_of_day(string text, int? minutes) => Assert.Equal(minutes, SheetForms.Clock(text) is { } t ? t.Hour * 60 + t.Minute : null);

    [Fact]
    public void Has_several_subjects_in_a_cell_with_weights_or_without()
    {
        Assert.Equal([("Science", 25), ("Art", 15)], NamesInCells.Weighted("Science: 25, Art: 15"));
        Assert.Equal([("Science", 2), ("Art", 1)], NamesInCells.Weighted("Science (2) / Art"));
        Assert.Equal([("Nature study", 1), ("Home arts", 1)], NamesInCells.Weighted("Nature study and Home arts"));
        Assert.Equal([("Algebra 1", 1)], NamesInCells.Weighted("Algebra 1"));
        Assert.Equal([("Sandra", 1)], NamesInCells.Weighted("Sandra"));
    }

    [Fact]
    public void Is_guessed_by_the_names_of_its_columns()
    {
        var guess = SheetColumns.Guess(SheetRecords.Of("Child,Date,Subject,Activity,Hours,Notes\nWren,1/22/2026,Science,Kites,0.5,\n"));
        Assert.Equal((true, 1, 3, 0, 2, 4, 5), (guess.Headed, guess.Day, guess.What, guess.Who, guess.Subject, guess.Length, guess.Note));
        Assert.Equal(("M/d/yyyy", LengthForm.Hours), (guess.DayForm, guess.LengthForm));
        var timed = SheetColumns.Guess(SheetRecords.Of("Date,Activity,Time\n2026-01-22,Kites,0:40\n"));
        Assert.Equal((2, (int?)null, LengthForm.Clock), (timed.Length, timed.Start, timed.LengthForm));
        var bare = SheetColumns.Guess(SheetRecords.Of("Wren,2026-01-22,Kites\nWren,2026-01-23,Boats\n"));
        Assert.Equal((false, 1, (int?)null), (bare.Headed, bare.Day, bare.What));
    }

    [Fact]
    public void Is_guessed_by_most_rows_where_some_cannot_be_read()
    {
        var guess = SheetColumns.Guess(SheetRecords.Of("Date,Activity,Duration\n2/30/2026,Weir,0:30\n3/2/2026,Flour,0:40\n3/13/2026,Seeds,a while\n3/14/2026,Sieve,0:35\n"));
        Assert.Equal(("M/d/yyyy", LengthForm.Clock), (guess.DayForm, guess.LengthForm));
        var hours = SheetColumns.Guess(SheetRecords.Of("Date,Activity,Hours\n2026-03-02,Flour,1\n2026-03-03,Weir,2\n2026-03-04,Seeds,a while\n"));
        Assert.Equal(LengthForm.Hours, hours.LengthForm);
        var neither = SheetColumns.Guess(SheetRecords.Of("Date,Activity,Duration\n2026-03-02,Flour,0:40\n2026-03-03,Weir,a while\n"));
        Assert.Equal(LengthForm.Minutes, neither.LengthForm);
    }

    [Fact]
    public void Gives_its_rows_as_they_are_read()
    {
        var sheet = SheetRecords.Of("date,what,who,subject,min,start,place,note\n2026-03-02,\"'=Bread\",Wren & Linnet,\"Science: 25, Art: 15\",40,9:30,co-op,It rose\n2026-03-03,,wren,Art,15,,,\n");
        var reading = SheetReading.Of(sheet, Columns, Names, Today);
        Assert.Empty(reading.Faults);
        var bread = reading.Rows[0];
        Assert.Equal((2, new DateOnly(2026, 3, 2), new TimeOnly(9, 30), "=Bread", Place.Coop, "It rose"), (bread.Line, bread.Date, bread.Start!.Value, bread.What, bread.Place, bread.Note));
        Assert.Equal([new LearnerTime(Wren, new Minutes(40)), new LearnerTime(Linnet, new Minutes(40))], bread.Times);
        Assert.Equal([new SubjectWeight(Science, 25), new SubjectWeight(Art, 15)], bread.Split);
        Assert.Equal(("Art", Place.Home, null), (reading.Rows[1].What, reading.Rows[1].Place, reading.Rows[1].Start));
    }

    [Theory]
    [InlineData(",x,Wren,Art,5,,,", "It has no day.")]
    [InlineData("12.3.2026,x,Wren,Art,5,,,", "“12.3.2026” is no day in the form that was chosen.")]
    [InlineData("2026-03-13,x,Wren,Art,5,,,", "“2026-03-13” is still to come.")]
    [InlineData("1999-03-13,x,Wren,Art,5,,,", "“1999-03-13” is before the year 2000.")]
    [InlineData("2026-03-02,x,Kite,Art,5,,,", "“Kite” is none of your children.")]
    [InlineData("2026-03-02,x,,Art,5,,,", "It names no child.")]
    [InlineData("2026-03-02,x,Wren,Latin,5,,,", "“Latin” is none of your subjects.")]
    [InlineData("2026-03-02,x,Wren,Art,0,,,", "“0” is no time at all.")]
    [InlineData("2026-03-02,x,Wren,Art,1441,,,", "“1441” is longer than a day.")]
    [InlineData("2026-03-02,x,Wren,Art,long,,,", "“long” is no length: whole minutes such as 45 are expected.")]
    [InlineData("2026-03-02,x,Wren,Art,5,25:00,,", "“25:00” is no time of day such as 9:30.")]
    [InlineData("2026-03-02,x,Wren,Art,5,,moon,", "“moon” is none of home, another home, co-op, out.")]
    public void Names_what_is_wrong_with_a_row(string row, string sentence)
    {
        var reading = SheetReading.Of(SheetRecords.Of("date,what,who,subject,min,start,place,note\n" + row + "\n"), Columns, Names, Today);
        Assert.Empty(reading.Rows);
        var fault = Assert.Single(reading.Faults);
        Assert.Equal((2, sentence), (fault.Line, Assert.Single(fault.Sentences)));
    }

    private static SheetColumns Columns => new(true, 0, 1, 2, 3, 4, 5, 6, 7, "yyyy-M-d", LengthForm.Minutes, [], null);
}
