namespace CoopLessons.Web.Tests.Commands;

public sealed class Help_of_each_command
{
    [Theory]
    [InlineData("", "serve demo migrate hours reset-sign-in family-out family-in check-catalog --data --urls")]
    [InlineData("family-out", "--family --out --data NAME|ID FILE")]
    [InlineData("family-in", "FILE --email --name --data")]
    [InlineData("serve", "--data --urls")]
    [InlineData("demo", "--data --urls")]
    [InlineData("migrate", "--data")]
    [InlineData("reset-sign-in", "--email --data")]
    [InlineData("check-catalog", "--from DIR")]
    [InlineData("hours", "--family --learner --from --to --format --out --data NAME|ID yyyy-mm-dd pdf|csv|xlsx FILE DIR")]
    public async Task Lists_its_flags(string command, string words)
    {
        var run = await ProgramRun.OfAsync([.. command.Split(' ', StringSplitOptions.RemoveEmptyEntries), "--help"]);
        Assert.Equal(0, run.Code);
        Assert.Empty(run.Error);
        Assert.All(words.Split(' '), word => Assert.Contains(word, run.Text, StringComparison.Ordinal));
    }
}
