using System.Globalization;
using System.Text.Json.Nodes;
using CoopLessons.Core.Sharing;

namespace CoopLessons.Core.Tests.Sharing;

/// <summary>Held against the examples of RFC 8785, JSON Canonicalization Scheme (June 2020).</summary>
public class The_canonical_text
{
    // RFC 8785, section 3.2.2 (the input) and section 3.2.4 (the bytes of the output).
    [Fact]
    public void Is_that_of_the_first_example()
    {
        const string Input = """
            {
              "numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],
              "string": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/",
              "literals": [null, true, false]
            }
            """;
        const string Output = """{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],"string":"€$\u000f\nA'B\"\\\\\"/"}""";

        Assert.Equal(Output, CanonicalJson.Of(JsonNode.Parse(Input)));
    }

    // RFC 8785, section 3.2.3: the order of the values that sorting gives.
    [Fact]
    public void Has_its_members_in_the_order_of_the_sorting_example()
    {
        const string Input = """
            {"\u20ac": "Euro Sign", "\r": "Carriage Return", "\ufb33": "Hebrew Letter Dalet With Dagesh", "1": "One",
             "\ud83d\ude00": "Emoji: Grinning Face", "\u0080": "Control", "\u00f6": "Latin Small Letter O With Diaeresis"}
            """;

        Assert.Equal(
            ["Carriage Return", "One", "Control", "Latin Small Letter O With Diaeresis", "Euro Sign", "Emoji: Grinning Face", "Hebrew Letter Dalet With Dagesh"],
            JsonNode.Parse(CanonicalJson.Of(JsonNode.Parse(Input)))!.AsObject().Select(m => m.Value!.GetValue<string>()));
    }

    // RFC 8785, appendix B: number serialization samples, the bits of a double and its text.
    [Theory]
    [InlineData("0000000000000000", "0")]
    [InlineData("8000000000000000", "0")]
    [InlineData("0000000000000001", "5e-324")]
    [InlineData("8000000000000001", "-5e-324")]
    [InlineData("7fefffffffffffff", "1.7976931348623157e+308")]
    [InlineData("ffefffffffffffff", "-1.7976931348623157e+308")]
    [InlineData("4340000000000000", "9007199254740992")]
    [InlineData("c340000000000000", "-9007199254740992")]
    [InlineData("4430000000000000", "295147905179352830000")]
    [InlineData("44b52d02c7e14af5", "9.999999999999997e+22")]
    [InlineData("44b52d02c7e14af6", "1e+23")]
    [InlineData("44b52d02c7e14af7", "1.0000000000000001e+23")]
    [InlineData("444b1ae4d6e2ef4e", "999999999999999700000")]
    [InlineData("444b1ae4d6e2ef4f", "999999999999999900000")]
    [InlineData("444b1ae4d6e2ef50", "1e+21")]
    [InlineData("3eb0c6f7a0b5ed8c", "9.999999999999997e-7")]
    [InlineData("3eb0c6f7a0b5ed8d", "0.000001")]
    [InlineData("41b3de4355555553", "333333333.3333332")]
    [InlineData("41b3de4355555554", "333333333.33333325")]
    [InlineData("41b3de4355555555", "333333333.3333333")]
    [InlineData("41b3de4355555556", "333333333.3333334")]
    [InlineData("41b3de4355555557", "333333333.33333343")]
    [InlineData("becbf647612f3696", "-0.0000033333333333333333")]
    [InlineData("43143ff3c1cb0959", "1424953923781206.2")]
    public void Has_the_numbers_of_appendix_B(string bits, string text) =>
        Assert.Equal(text, CanonicalJson.Of(BitConverter.Int64BitsToDouble(long.Parse(bits, NumberStyles.HexNumber, CultureInfo.InvariantCulture))));

    // RFC 8785, appendix B: NaN and Infinity are errors.
    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void Has_no_word_for_what_is_no_finite_number(double number) => Assert.Throws<ArgumentException>(() => CanonicalJson.Of(number));

    // RFC 8785, section 3.2.2.2: a lone surrogate ends with an error. Written as numbers, since an attribute cannot hold one.
    [Theory]
    [InlineData(0xd83d)]
    [InlineData(0xde00)]
    public void Refuses_half_a_character(int half)
    {
        foreach (var text in new[] { $"{(char)half}", $"a{(char)half}", $"{(char)half}a" })
            Assert.Throws<ArgumentException>(() => CanonicalJson.Of(JsonValue.Create(text)));
    }
}
