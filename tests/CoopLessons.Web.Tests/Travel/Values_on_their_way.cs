using System.Text.Json;
using CoopLessons.Data.Evidence;
using CoopLessons.Data.Log;
using CoopLessons.Data.Travel;
using CoopLessons.Web.Tests.App;

namespace CoopLessons.Web.Tests.Travel;

[Collection(SharedServer.Name)]
public sealed class Values_on_their_way(TestServer server)
{
    // RFC 8259, section 7: the reverse solidus stands for itself when it is doubled, and \u0000 for the sign of number zero.
    [Theory]
    [InlineData(typeof(LogRevision), nameof(LogRevision.Note), """ "writes \\u0000 in a program" """, true)]
    [InlineData(typeof(LogRevision), nameof(LogRevision.Note), """ "writes \u0000 into a text" """, false)]
    [InlineData(typeof(TermReport), nameof(TermReport.Totals), """ {"Minutes":1,"SchoolDays":1,"Entries":1,"Fingerprint":"\\u0000"} """, true)]
    [InlineData(typeof(TermReport), nameof(TermReport.Totals), """ {"Minutes":1,"SchoolDays":1,"Entries":1,"Fingerprint":"\u0000"} """, false)]
    public async Task May_hold_six_signs_that_were_typed_and_not_the_sign_that_they_write(Type row, string column, string json, bool taken)
    {
        var property = await server.FromDbAsync(null, db => Task.FromResult(db.Model.FindEntityType(row)!.FindProperty(column)!));
        using var document = JsonDocument.Parse(json);
        if (taken)
            Assert.NotNull(TravelValue.Read(property, document.RootElement));
        else
            Assert.Equal("is text with a sign that no text has", Assert.Throws<FormatException>(() => TravelValue.Read(property, document.RootElement)).Message);
    }
}
