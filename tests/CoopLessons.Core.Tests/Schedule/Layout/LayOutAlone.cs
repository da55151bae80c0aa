using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using CoopLessons.Core.Schedule;

namespace CoopLessons.Core.Tests.Schedule.Layout;

/// <summary>
/// The entry of the test assembly: lays an invented week out in a process of its own and prints what came out of it, so
/// that two processes can be held against each other.
/// </summary>
public static class LayOutAlone
{
    /// <param name="args">Size, seed, and “comma” for a culture that writes a comma for a point.</param>
    public static int Main(string[] args)
    {
        if (args.Length < 2)
            return 2;
        if (args is [_, _, "comma"])
            WriteCommas();
        Console.WriteLine(Print(AnyWeek.Of(Enum.Parse<WeekSize>(args[0]), int.Parse(args[1], CultureInfo.InvariantCulture))));
        return 0;
    }

    /// <summary>As German has it; made by hand, since the program carries no cultures.</summary>
    private static void WriteCommas()
    {
        var culture = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        culture.NumberFormat.NumberDecimalSeparator = ",";
        culture.NumberFormat.NumberGroupSeparator = ".";
        CultureInfo.CurrentCulture = culture;
        if (0.5.ToString(CultureInfo.CurrentCulture) != "0,5")
            throw new InvalidOperationException("The culture writes no comma.");
    }

    public static string Print(WeekProblem week)
    {
        var plan = WeekLayout.Solve(week, Effort.Usual);
        var text = string.Join('\n', plan.Places) + plan.Cost + plan.Bound + plan.Proof + string.Join('\n', plan.Misfits.Select(m => m.Reason));
        return Convert.ToHexString(SHA256.HashData(Encoding.UTF8.GetBytes(text)));
    }
}
