using System.Text.Json;
using System.Text.Json.Nodes;
using CoopLessons.Core.Sharing;
using CoopLessons.Core.Units;
using CsCheck;
using static CoopLessons.Core.Tests.Sharing.WhereWaterGoes;

namespace CoopLessons.Core.Tests.Sharing;

public class The_hash_of_a_unit
{
    private static readonly UnitBundle Small = new(
        UnitBundle.FormatName, UnitBundle.CurrentVersion, "Where Water Goes", "Down.", 1, [new("science", "Science")],
        [new BundleActivity("weir", 1, 1, "The weir’s “lip”", ActivityKind.Observing, "Look.\nDraw.", [new("science", 1)], 20, 0, AdultNeed.Alone, Supplies: [new("string", 2.50m, "m", Per.Pair)])]);

    // Computed by sha256sum (GNU coreutils 9.1) over a text written by hand:
    // printf '%s' '{"activities":[{"adultNeed":"alone","code":"weir","does":"Look.\nDraw.","handsOnMinutes":20,"kind":"observing","order":1,"subjects":[{"code":"science","weight":1}],"supplies":[{"name":"string","per":"pair","quantity":2.5,"unit":"m"}],"title":"The weir’s “lip”","waitingMinutes":0,"week":1}],"format":"cooplessons-unit","subjects":[{"code":"science","name":"Science"}],"summary":"Down.","title":"Where Water Goes","version":1,"weeks":1}' | sha256sum
    [Fact]
    public void Is_what_a_general_program_computes_from_the_text() =>
        Assert.Equal("c15741312112ae2f84c2a56d3cd2f51555cefb14768c40ebfb064bb3ab6a315d", UnitHash.Of(Small));

    [Fact]
    public void Does_not_depend_on_the_order_of_members_nor_on_indentation() => AnyUnit.Units.Sample(unit =>
    {
        static JsonNode? Turned(JsonNode? node) => node switch
        {
            JsonObject o => new JsonObject(o.Reverse().Select(m => KeyValuePair.Create(m.Key, Turned(m.Value)))),
            JsonArray a => new JsonArray([.. a.Select(Turned)]),
            _ => node?.DeepClone(),
        };
        var text = Turned(JsonSerializer.SerializeToNode(unit, UnitBundle.Json))!.ToJsonString();
        Assert.Equal(UnitHash.Of(unit), UnitHash.Of(JsonSerializer.Deserialize<UnitBundle>(text, UnitBundle.Json)!));
    }, iter: 200);

    [Fact]
    public void Does_not_depend_on_the_order_of_what_is_known_by_its_code() =>
        Assert.Equal(UnitHash.Of(First), UnitHash.Of(First with
        {
            Subjects = [.. First.Subjects.Reverse()],
            Activities = [.. First.Activities.Reverse().Select(a => a with { Subjects = [.. a.Subjects.Reverse()] })],
        }));

    [Fact]
    public void Takes_an_empty_list_or_text_for_none() =>
        Assert.Equal(UnitHash.Of(First), UnitHash.Of(First.With("creek-walk", a => a with { WaitingFor = "", Touches = [], Books = [] })));

    [Fact]
    public void Changes_with_the_order_of_steps_ages_and_supplies() =>
        Assert.Equal(4, new[]
        {
            First,
            First.With("measure-weir", a => a with { Does = "Write the height down. Read the gauge." }),
            First.With("measure-weir", a => a with { Variants = [.. a.Variants!.Reverse()] }),
            First.With("measure-weir", a => a with { Supplies = [.. a.Supplies!.Reverse()] }),
        }.Select(UnitHash.Of).Distinct().Count());

    [Fact]
    public void Is_that_of_the_bundle_that_its_text_reads_back_to() => AnyUnit.Units.Sample(unit =>
        Assert.Equal(UnitHash.Text(unit), UnitHash.Text(JsonSerializer.Deserialize<UnitBundle>(UnitHash.Text(unit), UnitBundle.Json)!)), iter: 200);

    [Fact]
    public void Is_one_just_where_nothing_differs() => AnyUnit.Versions.Sample(v =>
        Assert.Equal(UnitHash.Of(v.Mine) == UnitHash.Of(v.Theirs), UnitDifferences.Between(v.Mine, v.Theirs).Count == 0), iter: 500);
}
