using CoopLessons.Core.Coop;
using CsCheck;
using static CoopLessons.Core.Tests.Coop.Millrace;

namespace CoopLessons.Core.Tests.Coop;

/// <summary>Children are signed up for a class that has fewer places.</summary>
public class A_class_with_a_waiting_list
{
    private static SignedUp Up(string family, params string[] children) => new(Id("sign-up of " + children[0]), Id(family), [.. children.Select(Id)]);

    private static Withdrew Off(string child) => new(Id(child));

    private static Guid[] In(ClassList list) => [.. list.Places.Select(p => p.Child)];

    private static (int, Guid)[] Line(ClassList list) => [.. list.Waiting.Select(w => (w.Number, w.Children[0]))];

    [Fact]
    public void Gives_places_in_order_and_numbers_to_those_who_wait()
    {
        var list = ClassList.Of(2, [Up("Alder", "Wren"), Up("Birch", "Lark"), Up("Cedar", "Robin"), Up("Dogwood", "Finch")]);
        Assert.Equal([Id("Wren"), Id("Lark")], In(list));
        Assert.Equal([(1, Id("Robin")), (2, Id("Finch"))], Line(list));
        Assert.Equal(0, list.Free);
    }

    [Fact]
    public void Gives_a_place_that_falls_free_to_the_first_who_still_wants_it()
    {
        var list = ClassList.Of(1, [Up("Alder", "Wren"), Up("Birch", "Lark"), Up("Cedar", "Robin"), Off("Lark"), Off("Wren")]);
        Assert.Equal(new ClassPlace(Id("Robin"), Id("Cedar"), Id("sign-up of Robin"), CameUp: true), Assert.Single(list.Places));
        Assert.Empty(list.Waiting);
    }

    [Fact]
    public void Lets_a_pair_wait_for_two_places_and_keep_its_number()
    {
        ClassEvent[] events = [Up("Alder", "Wren"), Up("Birch", "Lark"), Up("Cedar", "Robin", "Heron"), Up("Dogwood", "Finch"), Off("Wren")];
        var list = ClassList.Of(2, events);
        Assert.Equal([Id("Lark"), Id("Finch")], In(list));
        Assert.Equal([(1, Id("Robin"))], Line(list));
        // One free place is not enough for it, two are.
        Assert.Equal((1, 1), (ClassList.Of(2, [.. events, Off("Lark")]).Free, ClassList.Of(2, [.. events, Off("Lark")]).Waiting.Count));
        Assert.Equal([Id("Robin"), Id("Heron")], In(ClassList.Of(2, [.. events, Off("Lark"), Off("Finch")])));
        // Without its sister Robin needs one.
        Assert.Equal([Id("Lark"), Id("Robin")], In(ClassList.Of(2, [.. events, Off("Finch"), Off("Heron")])));
    }

    [Fact]
    public void Takes_a_place_from_nobody_when_it_becomes_smaller()
    {
        var list = ClassList.Of(2, [Up("Alder", "Wren"), Up("Birch", "Lark"), Up("Cedar", "Robin"), new Resized(1), Off("Wren")]);
        Assert.Equal([Id("Lark")], In(list));
        Assert.Equal(1, ClassList.Of(2, [Up("Alder", "Wren"), Up("Birch", "Lark"), new Resized(1)]).Over);
        Assert.Equal(2, ClassList.Of(1, [Up("Alder", "Wren"), Up("Birch", "Lark"), new Resized(2)]).Places.Count);
    }

    [Theory]
    [InlineData("Event 2: A child has a place or waits already.", "Wren", "")]
    [InlineData("Event 2: The child neither has a place nor waits.", "", "Lark")]
    [InlineData("Event 2: A child is signed up twice.", "Robin Robin", "")]
    [InlineData("Event 2: One child is signed up, or two of one family.", "Robin Lark Heron", "")]
    public void Refuses_in_words_what_cannot_be(string fault, string up, string off)
    {
        ClassEvent second = off.Length > 0 ? Off(off) : new SignedUp(Id("another"), Id("Alder"), [.. up.Split(' ').Select(Id)]);
        Assert.StartsWith(fault, Assert.Throws<ArgumentException>(() => ClassList.Of(3, [Up("Alder", "Wren"), second])).Message, StringComparison.Ordinal);
    }

    private static readonly Gen<(int Size, ClassEvent[] Events)> Any =
        from size in Gen.Int[0, 5]
        from draws in Gen.Select(Gen.Int[0, 5], Gen.Int[0, 1000]).Array[0, 25]
        select (size, Happened(draws));

    private static ClassEvent[] Happened((int Kind, int Number)[] draws)
    {
        var (events, known) = (new List<ClassEvent>(), new List<Guid>());
        foreach (var ((kind, number), i) in draws.Select((d, i) => (d, i)))
            if (kind == 5)
                events.Add(new Resized(number % 6));
            else if (kind >= 3 && known.Count > 0)
            {
                events.Add(new Withdrew(known[number % known.Count]));
                known.RemoveAt(number % known.Count);
            }
            else
            {
                Guid[] children = kind == 0 ? [Id(2, 2 * i), Id(2, 2 * i + 1)] : [Id(2, 2 * i)];
                known.AddRange(children);
                events.Add(new SignedUp(Id(3, i), Id(1, number % 4), children));
            }

        return [.. events];
    }

    [Fact]
    public void Loses_no_child_and_takes_no_place_away() => Any.Sample(c =>
    {
        HashSet<Guid> before = [];
        for (var n = 1; n <= c.Events.Length; n++)
        {
            var list = ClassList.Of(c.Size, c.Events[..n]);
            var wanted = c.Events[..n].OfType<SignedUp>().SelectMany(s => s.Children).Except(c.Events[..n].OfType<Withdrew>().Select(w => w.Child));
            Assert.Equal(wanted.Order(), In(list).Concat(list.Waiting.SelectMany(w => w.Children)).Order());
            Assert.Equal(Enumerable.Range(1, list.Waiting.Count), list.Waiting.Select(w => w.Number));
            // Nobody waits for whom there is room, and only who withdrew has no place any longer.
            Assert.All(list.Waiting, w => Assert.True(w.Children.Count > list.Free));
            Assert.Subset(In(list).ToHashSet(), before.Where(child => c.Events[n - 1] is not Withdrew w || w.Child != child).ToHashSet());
            before = [.. In(list)];
        }
    }, iter: 300);
}
