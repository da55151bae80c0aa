using CoopLessons.Core.Evidence;
using Xunit;

namespace CoopLessons.Core.Tests.Evidence;

public class Names_of_other_children
{
    private static readonly OtherNames Names = new("Linnet", ["Wren", "Heron", "Robin", "Linnet", "", " ", "Žofie", "Ann"]);

    [Theory]
    [InlineData("Baked with Wren and Heron", "Baked with [another child] and [another child]")]
    [InlineData("WREN’s loaf", "[another child]’s loaf")]
    [InlineData("Robin saw a robin", "[another child] saw a robin")]
    [InlineData("Linnet and Žofie", "Linnet and [another child]")]
    [InlineData("Wrens nest; Annabel; Heron2", "Wrens nest; Annabel; Heron2")]
    [InlineData("(Wren) Wren-like, “Ann”", "([another child]) [another child]-like, “[another child]”")]
    [InlineData("", "")]
    public void Are_taken_out_as_whole_words(string text, string told) => Assert.Equal(told, Names.TakenOut(text));

    [Theory]
    [InlineData("wren", "Baked with Wren; a wren sang; WREN", "Baked with [another child]; a wren sang; [another child]")]
    [InlineData("WREN", "Baked with Wren and WREN", "Baked with [another child] and [another child]")]
    [InlineData("mary wren", "Mary Wren baked", "[another child] baked")]
    [InlineData("van Wren", "With van Wren and Van Wren", "With [another child] and [another child]")]
    public void Are_found_however_they_were_typed(string name, string text, string told) => Assert.Equal(told, new OtherNames("Linnet", [name]).TakenOut(text));

    [Fact]
    public void Leave_a_text_alone_where_there_are_none() => Assert.Equal("Wren", new OtherNames("Linnet", []).TakenOut("Wren"));

    [Fact]
    public void May_hold_signs_that_mean_something_in_a_pattern() => Assert.Equal("a [another child] b", new OtherNames("Linnet", ["A.(B)*"]).TakenOut("a A.(B)* b"));
}
