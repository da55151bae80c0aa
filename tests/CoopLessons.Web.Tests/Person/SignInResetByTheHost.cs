using System.Net;
using CoopLessons.Data.People;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Commands;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace CoopLessons.Web.Tests.People;

[Collection(SharedServer.Name)]
public sealed class SignInResetByTheHost(TestServer server)
{
    [Fact]
    public async Task Opens_with_the_new_password_alone_and_with_no_second_step()
    {
        var family = await server.FamilyAsync();
        var email = await server.FromDbAsync(null, db => db.Users.Where(p => p.Id == family.GuardianId).Select(p => p.Email!).SingleAsync());
        await using (var scope = server.Services.CreateAsyncScope())
        {
            var people = scope.ServiceProvider.GetRequiredService<UserManager<Person>>();
            var person = (await people.FindByEmailAsync(email))!;
            await people.ResetAuthenticatorKeyAsync(person);
            await people.SetTwoFactorEnabledAsync(person, true);
            await people.SetLockoutEndDateAsync(person, DateTimeOffset.MaxValue);
        }

        var run = await ProgramRun.OfAsync(server.Database, "reset-sign-in", "--email", email.ToUpperInvariant());
        Assert.True(run.Code == 0, run.Error);
        var password = Assert.Single(run.Text.Split('\n', StringSplitOptions.RemoveEmptyEntries));
        Assert.Equal(HttpStatusCode.Redirect, (await family.Guardian.OpenAsync("/family")).StatusCode);
        var visitor = await server.SignInAsync(email, password);
        await visitor.GetAsync("/family");
        var old = server.Visitor();
        var answer = await old.SubmitAsync(await old.GetAsync("/sign-in"), new() { ["Input.Email"] = email, ["Input.Password"] = TestServer.Password });
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
    }

    [Fact]
    public async Task Fails_in_one_line_for_somebody_unknown()
    {
        await server.PersonAsync("Iris");
        var run = await ProgramRun.OfAsync(server.Database, "reset-sign-in", "--email", "nobody@millrace.example");
        Assert.Equal(1, run.Code);
        Assert.Empty(run.Output);
        Assert.Contains("Nobody has signed up", Assert.Single(run.ErrorLines), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Is_asked_for_with_an_email() => (await ProgramRun.OfAsync("reset-sign-in")).AssertWrongUse("--email");
}
