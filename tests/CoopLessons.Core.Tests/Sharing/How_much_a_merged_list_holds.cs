using System.Text.Json;
using System.Text.Json.Nodes;
using CoopLessons.Core.Families;
using CoopLessons.Core.Sharing;
using CoopLessons.Core.Units;
using static CoopLessons.Core.Tests.Sharing.WhereWaterGoes;

namespace CoopLessons.Core.Tests.Sharing;

/// <summary>Each side adds so much that both together are too many: as many stay as <c>unit-bundle.schema.json</c> has room for.</summary>
public class How_much_a_merged_list_holds
{
    private static readonly JsonNode Schema = Read();
    private static readonly BundleActivity Bare = new("bare", 1, 1, "Bare", ActivityKind.Making, "Make.", [new("science", 1)], 20, 0, AdultNeed.Alone);

    private static JsonNode Read()
    {
        using var stream = typeof(UnitBundle).Assembly.GetManifestResourceStream("unit-bundle.schema.json");
        return JsonNode.Parse(stream!)!;
    }

    private static string[] Things(int from, int count) => [.. Enumerable.Range(from, count).Select(i => $"thing-{i:000}")];

    private static int Asked(UnitMerge merge)
    {
        Assert.Empty(BundleRules.Faults(merge.Merged));
        Assert.All(merge.Collisions, c => Assert.Equal(CollisionKind.NoRoom, c.Kind));
        return merge.Collisions.Count;
    }

    [Theory]
    [InlineData("subjects", 6)]
    [InlineData("touches", 6)]
    [InlineData("after", 6)]
    [InlineData("ahead", 6)]
    [InlineData("variants", 4)]
    [InlineData("supplies", 30)]
    [InlineData("printables", 8)]
    [InlineData("books", 8)]
    [InlineData("hazards", 8)]
    [InlineData("ingredients", 30)]
    public void Of_an_activity(string list, int half)
    {
        var unit = First with
        {
            Subjects = [.. First.Subjects, .. Things(0, 26).Select(c => new BundleSubject(c, c))],
            Activities = [Bare, .. Things(0, 12).Select(c => Bare with { Code = c })],
        };
        var merge = UnitMerge.Of(unit, unit.With("bare", a => Holding(a, list, 0, half)), unit.With("bare", a => Holding(a, list, half, half)));

        var room = Schema["$defs"]!["activity"]!["properties"]![list]!["maxItems"]!.GetValue<int>();
        Assert.Equal(room, JsonSerializer.SerializeToNode(merge.Merged.In("bare"), UnitBundle.Json)![list]!.AsArray().Count);
        Assert.Equal(2 * half - room, Asked(merge));
    }

    [Fact]
    public void Of_a_unit()
    {
        var room = (Activities: Schema["properties"]!["activities"]!["maxItems"]!.GetValue<int>(), Subjects: Schema["properties"]!["subjects"]!["maxItems"]!.GetValue<int>());
        UnitBundle With(int from, int activities, int subjects) => First with
        {
            Subjects = [.. First.Subjects, .. Things(from, subjects).Select(c => new BundleSubject(c, c))],
            Activities = [.. First.Activities, .. Things(from, activities).Select(c => Bare with { Code = c })],
        };

        var merge = UnitMerge.Of(First, With(0, 390, 20), With(500, 20, 20));

        Assert.Equal(room, (merge.Merged.Activities.Count, merge.Merged.Subjects.Count));
        Assert.Equal(6 + 390 + 20 - room.Activities + 4 + 20 + 20 - room.Subjects, Asked(merge));
    }

    private static BundleActivity Holding(BundleActivity a, string list, int from, int count) => list switch
    {
        "subjects" => a with { Subjects = [.. Things(from, count).Select(c => new BundleWeight(c, 1))] },
        "touches" => a with { Touches = Things(from, count) },
        "after" => a with { After = Things(from, count) },
        "ahead" => a with { Ahead = [.. Things(from, count).Select(c => new AheadStart(c, AheadKind.Other, 1))] },
        "variants" => a with { Variants = [.. Enumerable.Range(1 + from, count).Select(age => new LevelVariant(age, 18, "Does."))] },
        "supplies" => a with { Supplies = [.. Things(from, count).Select(c => new Supply(c, 1, "piece", Per.Group))] },
        "printables" => a with { Printables = [.. Things(from, count).Select(c => new Printable(c, 1))] },
        "books" => a with { Books = [.. Things(from, count).Select(c => new Book(c, BookUse.Heard))] },
        "hazards" => a with { Hazards = [.. Enumerable.Range(from, count).Select(k => new Hazard((HazardKind)k, "Mind."))] },
        "ingredients" => a with { Ingredients = [.. Things(from, count).Select(c => new Ingredient(c, [Allergen.Milk]))] },
        _ => throw new ArgumentOutOfRangeException(nameof(list)),
    };
}
