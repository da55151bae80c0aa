using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using CoopLessons.Core.Calendar;
using CoopLessons.Core.Hours;
using CoopLessons.Data;
using CoopLessons.Data.Databases;
using CoopLessons.Data.Hours;
using CoopLessons.Data.Sealing;
using CoopLessons.Web.Pages.Records;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Commands;

/// <summary>
/// <c>hours</c>: writes one learner's hours report, the same that the records page offers. It reads beside a running
/// server and changes nothing.
/// </summary>
public sealed class HoursCommand
{
    private const int LongestYears = 10;

    private readonly Option<string> _family = new("--family") { Required = true, Description = "The family, by name or id. By name it is found through the people who belong to it.", HelpName = "NAME|ID" };
    private readonly Option<string> _learner = new("--learner") { Required = true, Description = "The learner, by name or id.", HelpName = "NAME|ID" };
    private readonly Option<DateOnly> _from = Date("--from", "First day of the period.");
    private readonly Option<DateOnly> _to = Date("--to", "Last day of the period, included.");
    private readonly Option<string> _format = new("--format") { Required = true, Description = "Form of the report.", HelpName = string.Join('|', HoursFile.Endings) };
    private readonly Option<string?> _out = new("--out") { Description = "File to write. Without it CSV goes to standard output.", HelpName = "FILE" };
    private readonly HostOptions _host;

    private HoursCommand(Command command, string[] settings)
    {
        foreach (var option in new Option[] { _family, _learner, _from, _to, _format, _out })
            command.Add(option);
        _host = HostOptions.AddTo(command, settings, listens: false);
        _format.Validators.Add(result =>
        {
            if (result.GetValueOrDefault<string>() is { } said && !HoursFile.Endings.Contains(said))
                result.AddError($"--format is one of {string.Join(", ", HoursFile.Endings)}, not “{said}”.");
        });
        command.SetAction(RunAsync);
    }

    public static Command Create(string[] settings)
    {
        var command = new Command("hours", "Writes a learner's hours report over a period.");
        _ = new HoursCommand(command, settings);
        return command;
    }

    private async Task<int> RunAsync(ParseResult parsed, CancellationToken ct)
    {
        var format = parsed.GetRequiredValue(_format);
        var path = parsed.GetValue(_out);
        if (path is null && format != "csv")
            throw new WrongUseException($"A {format} goes to a file: name it with --out.");
        var period = Period(parsed.GetRequiredValue(_from), parsed.GetRequiredValue(_to));

        await using var services = _host.Services(parsed);
        await using var scope = services.CreateAsyncScope();
        var db = scope.ServiceProvider.GetRequiredService<AppDb>();
        if (!await Upkeep.IsReadyAsync(db, ct))
            throw new DatabaseUnfitException("The database cannot be reached, or is at another version of this program: start the server or run migrate first.");
        var family = await Lookup.FamilyAsync(db, parsed.GetRequiredValue(_family), ct);
        db.Current.ActForProgram(family);
        var learner = await Lookup.LearnerAsync(db, parsed.GetRequiredValue(_learner), ct);

        var log = (await LearnerYear.LoadAsync(db, learner, period, ct))!;
        var year = await db.SchoolYears.AsNoTracking().Include(y => y.Breaks).SingleOrDefaultAsync(y => y.First == period.First && y.Last == period.Last, ct);
        // The school year's name where the period is just that, else its days.
        var name = year?.Name ?? period.ToString();
        var today = log.Family.Today(scope.ServiceProvider.GetRequiredService<TimeProvider>());
        var file = await HoursFile.WriteAsync(db, log, year, name, today, format, ct, year is null ? null : await db.SealMarkAsync(year.Id, learner, ct));
        await WriteAsync(file.Bytes, path, ct);
        Console.Error.WriteLine(CommandTable.OneLine(Summary(log.Report(name, today))));
        return CommandTable.Done;
    }

    private static string Summary(HoursReport report) => string.Create(CultureInfo.InvariantCulture,
        $"{report.Heading.Learner}: {report.Total.Value / 60:N0}:{report.Total.Value % 60:00} hours on {RecordWords.SchoolDays(report.SchoolDays)}, fingerprint {report.Fingerprint}");

    private static DayRange Period(DateOnly from, DateOnly to)
    {
        if (to < from)
            throw new WrongUseException("--to is before --from.");
        if (to >= from.AddYears(LongestYears))
            throw new WrongUseException($"A report covers at most {LongestYears} years.");
        return new DayRange(from, to);
    }

    private static async Task WriteAsync(byte[] bytes, string? path, CancellationToken ct)
    {
        if (path is null)
        {
            await using var output = Console.OpenStandardOutput();
            await output.WriteAsync(bytes, ct);
            return;
        }

        try
        {
            var options = new FileStreamOptions { Mode = FileMode.Create, Access = FileAccess.Write };
            if (!OperatingSystem.IsWindows())
                options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite; // A child's record is nobody else's to read.
            await using var file = new FileStream(path, options);
            await file.WriteAsync(bytes, ct);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or ArgumentException)
        {
            throw new WrongUseException($"“{path}” cannot be written: {fault.Message}");
        }
    }

    private static Option<DateOnly> Date(string name, string what) => new(name)
    {
        Required = true,
        Description = what,
        HelpName = "yyyy-mm-dd",
        CustomParser = result =>
        {
            var said = result.Tokens.Count == 1 ? result.Tokens[0].Value : "";
            if (DateOnly.TryParseExact(said, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date) && date.Year is >= 1900 and <= 2200)
                return date;
            result.AddError($"{name} is a date between 1900 and 2200 such as 2026-03-12, not “{said}”.");
            return default;
        },
    };
}
