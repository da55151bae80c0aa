using System.Text;
using Microsoft.EntityFrameworkCore.Metadata;

namespace CoopLessons.Data.Travel;

/// <summary>What a family's file says of itself in plain words.</summary>
internal static class TravelReadme
{
    public static string Of(IModel model, string family)
    {
        var text = new StringBuilder();
        text.Append(
            $"""
            Everything of the {family} family, from CoopLessons.

            What is in here
              data/       every row, a file a table, JSON in UTF-8. schema.json says what each column
                          takes (JSON Schema). Another CoopLessons takes these in.
              csv/        the same rows for a spreadsheet: RFC 4180, UTF-8. An apostrophe stands before
                          text that a spreadsheet would take for a formula. An empty cell is an empty
                          text or no value. For reading; not taken in.
              files/      photos, papers, sounds, videos and pages to print, each named by the SHA-256
                          of its bytes. csv/StoredFiles.csv says what each is.
              papers/     hours report and reading list of each child and school year, as PDF.
              family.json when and with which version this was made, how many rows there are, and the
                          length and SHA-256 of every file in here.

            How to bring it to another CoopLessons
              On a new server choose “Bring a family” on the first page, or sign in there without a
              family and open “Bring a family”. Whoever runs the server can also use the command
              family-in. Ids stay the same. Whoever brings it becomes a guardian; the other grown-ups
              come as names without a sign-in, and as helpers, until they are invited there. Entries of
              the log keep the names of who wrote them.

            What is different afterwards
              PersonId            of whoever brings the family: their id on that server.
              Memberships.Role    Helper for everybody else.
              Memberships.ChosenAt  when the family was brought, for whoever brings it.
              Grown-ups who already sign in on that server are not put into the family: invite them.
              Columns that name a co-op (marked in schema.json) are empty: that co-op is not there.

            What is not in here

            """.ReplaceLineEndings("\n"));
        text.Append("  What belongs to a co-op stays with the co-op: its families, classes, attendance, turns, money,\n  notices and shared units, and what the family has shown there. Units that the family took up\n  are its own, and are in here.\n");
        text.Append("  What is left out of the family's own rows:\n");
        foreach (var (what, why) in TravelTable.Staying(model))
            text.Append($"    {what}: {why}\n");
        text.Append("  Sign-ins, passwords, devices that take notices and mail choices belong to persons and stay.\n");
        text.Append("\nKeep this file as carefully as the records in it: whoever holds it reads everything.\n");
        return text.ToString();
    }
}
