using System.Globalization;
using CoopLessons.Core.Prepare;
using CoopLessons.Core.Prepare.Printing;
using CoopLessons.Data.Prepare.Printing;

namespace CoopLessons.Data.Prepare;

/// <summary>What is to be done so that a week's paper lies ready on its first morning.</summary>
public static class PacketTasks
{
    /// <summary>
    /// A file to find for each printable without one, then the packet to print, both by the Sunday before. The packet is done
    /// when it was printed and nothing in it changed since. A divider is reckoned as one sheet.
    /// </summary>
    public static async Task<IReadOnlyList<ReadyTask>> OfAsync(AppDb db, ReadyWeek week, DateOnly today, CancellationToken ct)
    {
        var packet = await WeekPacket.LoadAsync(db, week, ct);
        var sunday = week.Week.Monday.AddDays(-1);
        var tasks = packet.Missing.Select(m => new ReadyTask(
            ReadyKind.Print, sunday, $"Find a file for “{m.Printable.Title}”", m.Ready.Activity.Title,
            $"/units/{m.Ready.Unit.Id}/activities/{m.Ready.Activity.Id}/prints", Done: false)).ToList();

        var whole = PacketPlan.Of(packet.Sections, packet.Habits.BothSides);
        if (whole.Sides.Count == 0)
            return tasks;
        var changed = PacketPlan.Of(packet.Changed, packet.Habits.BothSides);
        var (what, sheets) = packet.Printed is null ? ("Print the packet", whole.Sheets)
            : changed.Sheets == 0 ? ("Print the packet", whole.Sheets)
            : ("Print what changed in the packet", changed.Sheets);
        tasks.Add(new ReadyTask(
            ReadyKind.Print, sunday, string.Create(CultureInfo.InvariantCulture, $"{what}: {sheets} {(sheets == 1 ? "sheet" : "sheets")}"),
            "", $"/week/packet/{week.Week.Iso}", Done: changed.Sheets == 0));
        return tasks;
    }
}
