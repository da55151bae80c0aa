using CoopLessons.Web.Commands;

namespace CoopLessons.Web.Tests.Commands;

public sealed class Commands_used_wrongly
{
    private const string Whole = "hours --family Alder --learner Linnet --from 2025-07-01 --to 2026-06-30 --format csv";

    [Theory]
    [InlineData("fly", "fly")]
    [InlineData("serve --fly", "--fly")]
    [InlineData("migrate now", "now")]
    [InlineData("demo --fly", "--fly")]
    [InlineData("reset-sign-in", "--email")]
    [InlineData("reset-sign-in --email iris@alder.millrace.example --data /nowhere/at/all", "There is no database in /nowhere/at/all")]
    [InlineData("check-catalog now", "now")]
    [InlineData("check-catalog --from /nowhere/at/all", "There is no folder “/nowhere/at/all”")]
    [InlineData("hours", "--family")]
    [InlineData("hours --family Alder --learner Linnet --from 2025-07-01 --to 2026-06-30", "--format")]
    [InlineData("hours --family Alder --learner Linnet --from 1.7.2025 --to 2026-06-30 --format csv", "--from is a date")]
    [InlineData("hours --family Alder --learner Linnet --from 2025-07-01 --to 2026-02-30 --format csv", "--to is a date")]
    [InlineData("hours --family Alder --learner Linnet --from 0001-01-01 --to 2026-02-03 --format csv", "--from is a date")]
    [InlineData("hours --family Alder --learner Linnet --from 2026-06-30 --to 2025-07-01 --format csv", "--to is before --from")]
    [InlineData("hours --family Alder --learner Linnet --from 1925-07-01 --to 2025-07-01 --format csv", "at most 10 years")]
    [InlineData("hours --family Alder --learner Linnet --from 2025-07-01 --to 2026-06-30 --format doc", "pdf, csv, xlsx, not “doc”")]
    [InlineData("hours --family Alder --learner Linnet --from 2025-07-01 --to 2026-06-30 --format pdf", "--out")]
    [InlineData("hours --family Alder --learner Linnet --from 2025-07-01 --to 2026-06-30 --format xlsx", "--out")]
    [InlineData(Whole + " --data /nowhere/at/all", "There is no database in /nowhere/at/all")]
    [InlineData(Whole + " extra", "extra")]
    public async Task Say_so_in_one_line(string command, string part) =>
        (await ProgramRun.OfAsync(command.Split(' '))).AssertWrongUse(part);

    [Fact]
    public async Task Keep_to_one_line_whatever_was_typed() =>
        (await ProgramRun.OfAsync("hours", "--format", "a\nb\u001B[31m\u202Ec")).AssertWrongUse("See --help.");

    [Theory]
    [InlineData("a\r\nb\t\u001B[2Jc\u2028d", "a b [2Jc d")]
    [InlineData("  Ada 🌾  ", "Ada 🌾")]
    public void Put_words_of_others_on_one_plain_line(string text, string line) => Assert.Equal(line, CommandTable.OneLine(text));
}
