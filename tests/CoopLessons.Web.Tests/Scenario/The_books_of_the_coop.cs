using CoopLessons.Core.Prepare;
using CoopLessons.Data.Prepare;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Scenario;

[Collection(OneCoop.Name)]
public sealed class The_books_of_the_coop(LoadedOnce once)
{
    [Fact]
    public async Task Stand_on_the_reading_list_of_every_child_of_school_age()
    {
        foreach (var (family, learner) in once.Coop.Learners.Where(l => l.Learner.IsOfSchoolAge))
        {
            var meetings = await once.Coop.In(family, db => db.BookMeetings.AsNoTracking().ToListAsync());
            Assert.Contains(meetings, m => m.Learners.Contains(learner.Id) && m.EndedOn is not null);
            Assert.All(meetings, m => Assert.True(m.BegunOn <= once.Coop.Today && (m.EndedOn is null || m.EndedOn <= once.Coop.Today)));
        }
    }

    [Fact]
    public async Task Give_the_Alders_a_book_of_23_chapters_over_eleven_evenings_two_of_them_missed()
    {
        var reading = Assert.Single(await once.Coop.In(once.Coop.Loaded["Alder"], db => ReadAloud.AllAsync(db, once.Coop.Today, default)));
        Assert.Equal((23, 11, 2), (reading.Book.Chapters.Count, reading.AtFirst.Evenings.Count, reading.Missed.Count));
        Assert.True(reading.Now.Longest > reading.AtFirst.Longest);
    }

    [Fact]
    public async Task Give_the_Alders_something_to_do_about_books_this_week()
    {
        var tasks = await once.Coop.In(once.Coop.Loaded["Alder"], async db =>
            await BookTasks.OfAsync(db, await ReadyWeek.LoadAsync(db, Core.Calendar.Week.Of(once.Coop.Today), default), once.Coop.Today, default));
        Assert.Contains(tasks, t => t.Kind == ReadyKind.ReadAloud && t.What.StartsWith("Read aloud: chapters", StringComparison.Ordinal));
        Assert.Contains(tasks, t => t.Kind == ReadyKind.Borrow && !t.Done);
    }
}
