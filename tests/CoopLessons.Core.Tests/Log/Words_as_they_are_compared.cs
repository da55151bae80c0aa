using CoopLessons.Core.Log;

namespace CoopLessons.Core.Tests.Log;

public class Words_as_they_are_compared
{
    // Unicode Standard Annex #15, figures 3 to 6: NFKD of each example; marks are then left out and capitals made small.
    [Theory]
    [InlineData("\u212B", "a")] // Å as the unit, figure 3: 0041 030A
    [InlineData("\u2126", "ω")] // the ohm, figure 3: 03A9
    [InlineData("\u00C5", "a")] // figure 4: 0041 030A
    [InlineData("\u00F4", "o")] // figure 4: 006F 0302
    [InlineData("\u1E69", "s")] // figure 5: 0073 0323 0307
    [InlineData("\u1E0B\u0323", "d")] // figure 5: 0064 0323 0307
    [InlineData("q\u0307\u0323", "q")] // figure 5: 0071 0323 0307
    [InlineData("\uFB01", "fi")] // figure 6: 0066 0069
    [InlineData("2\u2075", "25")] // figure 6: 0032 0035
    [InlineData("\u1E9B\u0323", "s")] // figure 6: 0073 0323 0307
    public void Are_taken_apart_as_the_annex_shows(string text, string word) => Assert.Equal([word], FoldedWords.Of(text));

    [Theory]
    [InlineData("Kneading – with Héron’s hands", "kneading with herons hands")]
    [InlineData("  READ aloud:chapter 7 ", "read aloud chapter 7")]
    [InlineData("whole-wheat/rye", "whole wheat rye")]
    [InlineData("ΟΔΟΣ οδος", "οδοσ οδοσ")]
    [InlineData("…!? —", "")]
    [InlineData("", "")]
    public void Are_small_and_bare(string text, string words) => Assert.Equal(words, FoldedWords.Key(text));

    [Fact]
    public void Come_out_of_any_text_even_half_a_pair() => Assert.Equal(["a", "b"], FoldedWords.Of("a\uD83Db"));
}
