using System.Text.Json;
using System.Text.Json.Nodes;
using CoopLessons.Core.Families;
using CoopLessons.Core.Units;
using static CoopLessons.Core.Tests.Units.GrainToLoaf;

namespace CoopLessons.Core.Tests.Units;

public class A_bundle_as_text
{
    private static string Write(UnitBundle bundle) => JsonSerializer.Serialize(bundle, UnitBundle.Json);

    [Fact]
    public void Reads_back_to_the_same_text()
    {
        var text = Write(Bundle);
        var read = JsonSerializer.Deserialize<UnitBundle>(text, UnitBundle.Json);

        Assert.NotNull(read);
        Assert.Equal(text, Write(read));
        Assert.Equal(Bread.Supplies, read.Activities[0].Supplies);
        Assert.Equal(Bread.Subjects, read.Activities[0].Subjects);
    }

    [Fact]
    public void Uses_words_for_enumerations_and_leaves_empty_members_out()
    {
        var text = JsonNode.Parse(Write(Bundle))!;
        var bread = text["activities"]![0]!.AsObject();
        var sorting = text["activities"]![1]!.AsObject();

        Assert.Equal("handsOn", bread["adultNeed"]!.GetValue<string>());
        Assert.Equal("wheat", bread["ingredients"]![0]!["allergens"]![0]!.GetValue<string>());
        Assert.False(sorting.ContainsKey("waitingFor"));
        Assert.False(sorting.ContainsKey("touches"));
    }

    [Fact]
    public void Refuses_a_number_where_a_word_is_meant()
    {
        var text = JsonNode.Parse(Write(Bundle))!;
        text["activities"]![0]!["adultNeed"] = 2;

        Assert.Throws<JsonException>(() => text.Deserialize<UnitBundle>(UnitBundle.Json));
    }

    [Theory]
    [InlineData("kind", typeof(ActivityKind))]
    [InlineData("adultNeed", typeof(AdultNeed))]
    [InlineData("supplies.per", typeof(Per))]
    [InlineData("books.use", typeof(BookUse))]
    [InlineData("hazards.kind", typeof(HazardKind))]
    [InlineData("ingredients.allergens", typeof(Allergen))]
    public void Has_the_same_words_in_the_schema_and_in_the_enumeration(string member, Type enumeration)
    {
        var node = Schema()["$defs"]!["activity"]!;
        foreach (var name in member.Split('.'))
            node = (node["items"] ?? node)["properties"]![name]!;
        var words = (node["items"] ?? node)["enum"]!.AsArray().Select(w => w!.GetValue<string>());

        Assert.Equal(Enum.GetNames(enumeration).Select(JsonNamingPolicy.CamelCase.ConvertName), words);
    }

    [Fact]
    public void Has_the_same_members_in_the_schema_and_in_the_records()
    {
        static IEnumerable<string> Of(JsonNode shape) => shape["properties"]!.AsObject().Select(p => p.Key).Order(StringComparer.Ordinal);
        static IEnumerable<string> Members(Type type) => type.GetConstructors().Single(c => c.GetParameters().Length > 1)
            .GetParameters().Select(p => JsonNamingPolicy.CamelCase.ConvertName(p.Name!)).Order(StringComparer.Ordinal);
        var activity = Schema()["$defs"]!["activity"]!;

        Assert.Equal(Of(Schema()), Members(typeof(UnitBundle)));
        Assert.Equal(Of(activity), Members(typeof(BundleActivity)));
        Assert.Equal(Of(activity["properties"]!["supplies"]!["items"]!), Members(typeof(Supply)));
        Assert.Equal(Of(activity["properties"]!["books"]!["items"]!), Members(typeof(Book)));
        Assert.Equal(Of(activity["properties"]!["printables"]!["items"]!), Members(typeof(Printable)));
        Assert.Equal(Of(activity["properties"]!["variants"]!["items"]!), Members(typeof(LevelVariant)));
        Assert.Equal(Of(activity["properties"]!["hazards"]!["items"]!), Members(typeof(Hazard)));
        Assert.Equal(Of(activity["properties"]!["ingredients"]!["items"]!), Members(typeof(Ingredient)));
    }

    [Fact]
    public void Carries_the_format_and_the_version_that_the_schema_asks_for()
    {
        Assert.Equal(UnitBundle.FormatName, Schema()["properties"]!["format"]!["const"]!.GetValue<string>());
        Assert.Equal(UnitBundle.CurrentVersion, Schema()["properties"]!["version"]!["const"]!.GetValue<int>());
    }

    private static JsonNode Schema()
    {
        using var stream = typeof(UnitBundle).Assembly.GetManifestResourceStream("unit-bundle.schema.json");
        return JsonNode.Parse(stream!)!;
    }
}
