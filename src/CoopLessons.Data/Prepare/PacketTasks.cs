using CoopLessons.Core.Prepare;
using CoopLessons.Core.Prepare.Printing;
using CoopLessons.Data.Prepare.Printing;

namespace CoopLessons.Data.Prepare;

/// <summary>What is to be done so that a week's paper lies ready on its first morning.</summary>
public static class PacketTasks
{
    /// <summary>
    /// Files to bring for printables that have none, then the packet to print, both by the Sunday before. The packet is done
    /// when it was printed and no copy in it changed since. How many sheets it takes is told on its own page, which knows how
    /// long the dividers are.
    /// </summary>
    /// <param name="isThere">Told a file's hash: whether it lies on the family's shelf. What does not is to be brought.</param>
    public static async Task<IReadOnlyList<ReadyTask>> OfAsync(AppDb db, ReadyWeek week, DateOnly today, Func<string, bool> isThere, CancellationToken ct)
    {
        var packet = (await WeekPacket.LoadAsync(db, week, ct)).WithFiles(isThere);
        var (sunday, link) = (week.Week.Monday.AddDays(-1), $"/week/packet/{week.Week.Iso}");
        var tasks = new List<ReadyTask>();
        if (packet.Missing is [var only])
            tasks.Add(new ReadyTask(ReadyKind.Print, sunday, $"Bring a file for “{only.Printable.Title}”", only.Ready.Activity.Title, $"/units/{only.Ready.Unit.Id}/activities/{only.Ready.Activity.Id}/prints", Done: false));
        else if (packet.Missing.Count > 1)
            tasks.Add(new ReadyTask(ReadyKind.Print, sunday, $"Bring files for {packet.Missing.Count} printables", string.Join(", ", packet.Missing.Select(m => m.Printable.Title)), link + "#missing", Done: false));

        if (!packet.Sections.Any(HasCopies))
            return tasks;
        var changed = packet.Changed.Where(HasCopies).ToList();
        var told = changed.Count > 0 ? changed : packet.Sections.Where(HasCopies);
        tasks.Add(new ReadyTask(
            ReadyKind.Print, sunday, packet.Printed is null || changed.Count == 0 ? "Print the packet" : "Print what changed in the packet",
            string.Join(", ", told.Select(s => packet.Parts.First(p => p.Subject.Id == s.SubjectId).Subject.Name)), link, Done: changed.Count == 0));
        return tasks;
    }

    private static bool HasCopies(PacketSection section) => section.Pieces.Any(p => p.Copies.Count > 0);
}
