using CoopLessons.Data.Families;
using CoopLessons.Data.OwnLists;
using CoopLessons.Web.Security;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Today;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace CoopLessons.Web.Tests.OwnLists;

/// <summary>The planned Thursday of three children, all with lists and PINs of their own, and the family's tablet.</summary>
internal static class ListFamily
{
    public const string WrensPin = "4071";
    public const string LinnetsPin = "90263";

    public static async Task<PlannedDay> MakeAsync(TestServer server, ReadingLevel reading = ReadingLevel.AllWords)
    {
        var day = await PlannedDay.MakeAsync(server);
        var pins = server.Services.GetRequiredService<ChildPins>();
        await day.Family.WithDbAsync(async db =>
        {
            foreach (var (learner, pin) in new[] { (day.Wren, WrensPin), (day.Linnet, LinnetsPin), (day.Heron, "") })
            {
                var list = new OwnList(learner);
                list.Describe(true, reading);
                if (pin.Length > 0)
                    list.SetPin(pins.Keep(pin));
                db.OwnLists.Add(list);
            }

            await db.SaveChangesAsync();
        });
        return day;
    }

    /// <summary>A device of the family's guardian, signed in and then turned into the family's tablet.</summary>
    public static async Task<Visitor> TabletAsync(PlannedDay day)
    {
        var server = day.Family.Server;
        var email = await server.FromDbAsync(null, db => db.Users.Where(u => u.Id == day.Family.GuardianId).Select(u => u.Email!).SingleAsync());
        var tablet = await server.SignInAsync(email);
        using var answer = await tablet.SubmitAsync(await tablet.GetAsync("/family/tablet"), within: "form[action$='handler=Make']");
        Assert.Equal("/tablet", answer.Headers.Location?.OriginalString);
        return tablet;
    }

    public static async Task<Visitor> OpenedAsync(PlannedDay day, Guid learner, string pin)
    {
        var tablet = await TabletAsync(day);
        using var answer = await OpenAsync(tablet, learner, pin);
        Assert.Equal("/mine", answer.Headers.Location?.OriginalString);
        return tablet;
    }

    public static async Task<HttpResponseMessage> OpenAsync(Visitor tablet, Guid learner, string pin) =>
        await tablet.SubmitAsync(await tablet.GetAsync($"/tablet/{learner}"), new() { ["Pin"] = pin });

    public static string Thing(Guid session) => $"#thing-{session:N}";

    public static async Task<HttpResponseMessage> SayAsync(Visitor child, Guid session, Dictionary<string, string?>? fill = null) =>
        await child.SubmitAsync(await child.GetAsync("/mine"), fill, within: Thing(session));

    public static Task<ChildSaid> SaidAsync(PlannedDay day) => day.Family.FromDbAsync(db => db.ChildrenSaid.AsNoTracking().SingleAsync());

    public static Task SetAsideAsync(PlannedDay day, Guid learner) => day.Family.WithDbAsync(async db =>
    {
        (await db.Learners.SingleAsync(l => l.Id == learner)).PutAside();
        await db.SaveChangesAsync();
    });
}
