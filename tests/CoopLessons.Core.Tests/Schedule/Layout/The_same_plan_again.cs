using System.Diagnostics;
using CoopLessons.Core.Schedule;

namespace CoopLessons.Core.Tests.Schedule.Layout;

/// <summary>The same week is laid out twice.</summary>
public class The_same_plan_again
{
    private static readonly WeekProblem Week = AnyWeek.Of(WeekSize.Small, 2);
    private static readonly Lazy<string> Here = new(() => LayOutAlone.Print(Week));

    [Fact]
    public void Comes_twenty_times_of_twenty()
    {
        var prints = Enumerable.Range(0, 20).Select(_ => LayOutAlone.Print(AnyWeek.Of(WeekSize.Small, 2))).Distinct().ToList();
        Assert.Equal(Here.Value, Assert.Single(prints));
    }

    [Fact]
    public void Comes_in_two_other_processes()
    {
        Assert.Equal(Here.Value, Alone("Small", "2"));
        Assert.Equal(Here.Value, Alone("Small", "2"));
    }

    // The solver ends the process, without an exception, where a number comes to it with a comma.
    [Fact]
    public void Comes_in_a_culture_that_writes_commas() => Assert.Equal(Here.Value, Alone("Small", "2", "comma"));

    [Fact]
    public void Comes_however_the_lists_were_made()
    {
        // The free days of everybody, entered in another order.
        var other = Week with
        {
            Learners = [.. Week.Learners.Select(l => l with { Free = new FreeTime(l.Free.Days.Reverse().ToDictionary()) })],
            Adults = [.. Week.Adults.Select(a => a with { Free = new FreeTime(a.Free.Days.Reverse().ToDictionary()) })],
        };
        Assert.Equal(Here.Value, LayOutAlone.Print(other));
    }

    private static string Alone(params string[] args)
    {
        var start = new ProcessStartInfo(Environment.GetEnvironmentVariable("DOTNET_HOST_PATH") ?? "dotnet") { RedirectStandardOutput = true, RedirectStandardError = true };
        start.ArgumentList.Add("exec");
        start.ArgumentList.Add(typeof(LayOutAlone).Assembly.Location);
        foreach (var arg in args)
            start.ArgumentList.Add(arg);
        using var process = Process.Start(start)!;
        var error = process.StandardError.ReadToEndAsync();
        var text = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        Assert.True(process.ExitCode == 0, $"It ended with {process.ExitCode}: {error.Result}");
        return text.Trim();
    }
}
