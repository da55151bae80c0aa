using CoopLessons.Data.Databases;
using CoopLessons.Web.Hosting;
using CoopLessons.Web.Tests.App;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Options;

namespace CoopLessons.Web.Tests.Account;

public sealed class A_stored_password
{
    /// <summary>Source: OWASP Password Storage Cheat Sheet, PBKDF2 with HMAC-SHA-512: 210,000 rounds or more (from memory).</summary>
    [Fact]
    public async Task Is_hashed_as_slowly_as_the_usual_advice_asks()
    {
        using var database = new TestDatabase();
        using var folder = DataFolder.Hold(database.Folder);
        var builder = WebApplication.CreateBuilder(new WebApplicationOptions { ApplicationName = "CoopLessons.Web" });
        builder.Configuration["CoopLessons:Data"] = database.Folder;
        await using var app = Server.Build(builder, folder);

        Assert.True(app.Services.GetRequiredService<IOptions<PasswordHasherOptions>>().Value.IterationCount >= 210_000);
    }
}
