using System.Text;
using System.Text.Json;
using CoopLessons.Data;
using CoopLessons.Data.Families;
using CoopLessons.Data.OwnLists;
using CoopLessons.Data.Tenancy;
using CoopLessons.Data.Travel;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Tenancy;
using Json.Schema;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata;

namespace CoopLessons.Web.Tests.Travel;

[Collection(SharedServer.Name)]
public sealed class What_leaves_with_a_family(TestServer server)
{
    [Fact]
    public async Task Is_every_table_of_a_family_but_those_that_say_why_they_stay()
    {
        var model = await ModelAsync();
        var leaving = TravelTable.Of(model).Select(t => t.Name);
        var staying = TravelTable.Staying(model).Select(s => s.What).Where(w => !w.Contains('.', StringComparison.Ordinal));
        var owned = model.GetEntityTypes().Where(t => t.ClrType.IsAssignableTo(typeof(IFamilyOwned))).Select(t => t.GetTableName()!);
        Assert.Equal(owned.Order(StringComparer.Ordinal), leaving.Concat(staying).Order(StringComparer.Ordinal));
        Assert.Equal(["BroughtSheets", "CalendarAddresses", "FamilyTablets", "Invitations", "NewsSeen", "ReaderLinks", "ReaderLooks"], staying);
    }

    [Fact]
    public async Task Has_every_column_and_each_table_after_those_it_names()
    {
        var tables = TravelTable.Of(await ModelAsync());
        var known = new HashSet<IEntityType>();
        foreach (var table in tables)
        {
            Assert.DoesNotContain(table.Type.GetProperties(), p => p.IsShadowProperty());
            Assert.DoesNotContain(table.Key, k => k.ClrType.IsEnum);
            Assert.All(table.Type.GetForeignKeys().Select(k => k.PrincipalEntityType).Where(p => p != table.Type && tables.Any(t => t.Type == p)), p => Assert.Contains(p, known));
            known.Add(table.Type);
        }

        Assert.True(tables.Sum(t => t.Columns.Count) > 300);
    }

    [Fact]
    public async Task Has_no_column_that_sounds_like_a_secret()
    {
        string[] sounds = ["Secret", "KeyHash", "Pin", "Password", "Token", "Endpoint", "Ticket"];
        var columns = TravelTable.Of(await ModelAsync()).SelectMany(t => t.Columns.Select(c => (Table: t.Name, c.Name)));
        Assert.DoesNotContain(columns, c => sounds.Any(s => c.Name.StartsWith(s, StringComparison.Ordinal) || c.Name.EndsWith(s, StringComparison.Ordinal)) && c.Name != "Pinned");
        var coops = TravelTable.Of(await ModelAsync()).SelectMany(t => t.Columns).Where(c => c.Name.Contains("CoopId", StringComparison.Ordinal));
        Assert.All(coops, c => Assert.True(TravelTable.NamesCoop(c) && c.IsNullable));
    }

    [Fact]
    public async Task Are_the_rows_that_the_database_holds_and_no_secret_and_no_other_familys()
    {
        var (mine, other) = (await Furnished.MakeAsync(server, "Alder"), await Furnished.MakeAsync(server, "Birch"));
        var secrets = await mine.Family.FromDbAsync(async db =>
        {
            (await db.OwnLists.SingleAsync()).SetPin("a-sealed-pin-of-wren");
            await db.SaveChangesAsync();
            return new[] { "a-sealed-pin-of-wren", (await db.Invitations.FirstAsync()).SecretHash, (await db.CalendarAddresses.FirstAsync()).SecretHash, (await db.FamilyTablets.FirstAsync()).KeyHash };
        });
        var file = OpenedFile.Of(await OpenedFile.OutAsync(mine.Family));
        var said = file.Json("family.json");
        var counts = await mine.Family.FromDbAsync(async db =>
        {
            var found = new SortedDictionary<string, int>(StringComparer.Ordinal);
            foreach (var table in TravelTable.Of(db.Model))
                found[table.Name] = await CountAsync(db, table.Name, mine.Family.Id, table.Owner.Name);
            return found;
        });
        Assert.Equal(counts, said["rows"]!.AsObject().ToDictionary(r => r.Key, r => (int)r.Value!));
        Assert.All(counts, c => Assert.Equal(c.Value, file.Rows(c.Key).Count));
        Assert.True(counts.Values.Count(v => v > 0) > 30);
        foreach (var (path, bytes) in file.Entries.Where(e => !e.Path.StartsWith("papers/", StringComparison.Ordinal)))
        {
            var text = Encoding.UTF8.GetString(bytes);
            Assert.All(secrets.Append(other.Family.Id.ToString()), s => Assert.False(text.Contains(s, StringComparison.OrdinalIgnoreCase), $"{path} holds {s}"));
        }
    }

    [Fact]
    public async Task Keeps_the_schema_that_comes_with_it()
    {
        var family = await Furnished.MakeAsync(server, "Alder");
        var file = OpenedFile.Of(await OpenedFile.OutAsync(family.Family));
        foreach (var table in TravelTable.Of(await ModelAsync()))
        {
            var schema = file.Json("schema.json")["$defs"]![table.Name]!;
            var result = JsonSchema.FromText(schema.ToJsonString()).Evaluate(JsonSerializer.SerializeToElement(file.Json($"data/{table.Name}.json")), new EvaluationOptions { OutputFormat = OutputFormat.List });
            Assert.True(result.IsValid, $"{table.Name}: {JsonSerializer.Serialize(result)}");
        }

        var published = await family.Family.Guardian.OpenAsync("/family/out/schema.json");
        Assert.Equal("application/schema+json", published.Content.Headers.ContentType!.MediaType);
        Assert.Equal(file.Text("schema.json"), await published.Content.ReadAsStringAsync());
    }

    [Fact]
    public async Task Is_the_same_byte_for_byte_when_nothing_was_changed()
    {
        var family = await Furnished.MakeAsync(server, "Alder");
        Assert.Equal(await OpenedFile.OutAsync(family.Family), await OpenedFile.OutAsync(family.Family));
    }

    private Task<IModel> ModelAsync() => server.FromDbAsync(null, db => Task.FromResult(db.Model));

    private static async Task<int> CountAsync(AppDb db, string table, Guid family, string owner)
    {
        // Past the model, as the database itself counts.
        await db.Database.OpenConnectionAsync();
        await using var command = db.Database.GetDbConnection().CreateCommand();
        command.CommandText = $"SELECT COUNT(*) FROM \"{table}\" WHERE \"{owner}\" = @f";
        var parameter = command.CreateParameter();
        (parameter.ParameterName, parameter.Value) = ("f", db.Database.IsNpgsql() ? family : family.ToString().ToUpperInvariant());
        command.Parameters.Add(parameter);
        return Convert.ToInt32(await command.ExecuteScalarAsync(), System.Globalization.CultureInfo.InvariantCulture);
    }
}
