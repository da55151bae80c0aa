using CoopLessons.Core.Prepare.Books;
using CsCheck;

namespace CoopLessons.Core.Tests.Prepare.Books;

public class The_number_of_a_book
{
    private static Isbn Read(string text)
    {
        Assert.True(Isbn.TryRead(text, out var isbn, out var fault), fault);
        Assert.Equal("", fault);
        return isbn;
    }

    private static string Fault(string? text)
    {
        Assert.False(Isbn.TryRead(text, out var isbn, out var fault));
        Assert.Null(isbn);
        return fault;
    }

    // International ISBN Agency, ISBN Users' Manual, the worked example beside the rule for the check digit of thirteen, in the
    // editions since 2005: weighed products 9, 21, 8, 0, 1, 3, 0, 0, 0, 6, 2, 6 make 56, and the check digit is 4.
    [Fact]
    public void Of_thirteen_digits_is_the_manual_s_worked_example()
    {
        Assert.Equal("9780110002224", Read("978 0 11 000222 4").Digits);
        Assert.Equal("9780110002224", Read("ISBN 978-0-11-000222-4").Digits);
        foreach (var other in "012356789")
            Assert.Contains("one digit is wrong, or two are swapped", Fault("978 0 11 000222 " + other), StringComparison.Ordinal);
    }

    // The same agency's manual for numbers of ten, as used until 2006: weighed products 0, 72, 32, 21, 36, 5, 0, 21, 4 and the
    // check digit 7 make 198, a multiple of 11.
    [Fact]
    public void Of_ten_signs_is_the_older_manual_s_worked_example()
    {
        Assert.Equal("0843610727", Read("0-8436-1072-7").Ten);
        foreach (var other in "012345689X")
            Assert.Contains("does not add up", Fault("0-8436-1072-" + other), StringComparison.Ordinal);
    }

    [Fact]
    public void Is_kept_in_thirteen_digits_and_told_in_ten()
    {
        // The manual's rule for turning one into the other: 978 before the nine digits, and the check digit reckoned anew.
        var isbn = Read("0-8436-1072-7");
        Assert.Equal("9780843610727"[..12], isbn.Digits[..12]);
        Assert.Equal(isbn, Read(isbn.Digits));
        Assert.Equal("0110002224"[..9], Read("9780110002224").Ten![..9]);
    }

    [Fact]
    public void That_begins_with_979_has_no_form_of_ten()
    {
        // Reckoned by hand: 9 + 21 + 9 + 3 + 0 + 27 + 0 + 18 + 3 + 18 + 0 + 21 = 129, and 1 is missing to a multiple of 10.
        Assert.Null(Read("979-10-90636-07-1").Ten);
    }

    [Theory]
    [InlineData("", "10 or 13 digits; here are 0")]
    [InlineData(null, "10 or 13 digits; here are 0")]
    [InlineData("97801100022", "10 or 13 digits; here are 11")]
    [InlineData("978-0-11-OO0222-4", "“O” is none")]
    [InlineData("97X0110002224", "An X stands only as the last sign")]
    [InlineData("08436X0727", "An X stands only as the last sign")]
    [InlineData("977-0-11-000222-4", "begins with 978 or 979")]
    [InlineData("978-0-11-000222-𝟜", "is none")]
    public void That_is_amiss_says_why(string? text, string why) => Assert.Contains(why, Fault(text), StringComparison.Ordinal);

    [Theory]
    [InlineData("ISBN-13: 978-0-11-000222-4")]
    [InlineData("isbn 978–0–11–000222–4")]
    [InlineData(" 978\u00a00\u00a011 000222 4 ")]
    [InlineData("ISBN9780110002224")]
    [InlineData("978\u20110\u201111\u2011000222\u20114")]
    public void Is_read_as_it_is_printed(string text) => Assert.Equal("9780110002224", Read(text).Digits);

    [Fact]
    public void Has_one_right_check_sign_of_eleven_and_goes_to_thirteen_and_back() =>
        Gen.Char['0', '9'].Array[9].Select(d => new string(d)).Sample(nine =>
        {
            var right = "0123456789X".Where(c => Isbn.TryRead(nine + c, out _, out _)).ToList();
            var isbn = Read(nine + Assert.Single(right));
            Assert.Equal(nine + right[0], isbn.Ten);
            Assert.Equal(isbn, Read(isbn.Digits));
        }, iter: 300);

    [Fact]
    public void Of_ten_betrays_every_wrong_digit_and_every_two_that_are_swapped() =>
        Gen.Select(Gen.Char['0', '9'].Array[9].Select(d => new string(d)), Gen.Int[0, 8], Gen.Int[0, 8], Gen.Char['0', '9']).Sample((nine, at, with, digit) =>
        {
            var ten = nine + "0123456789X".Single(c => Isbn.TryRead(nine + c, out _, out _));
            var signs = ten.ToCharArray();
            (signs[at], signs[with]) = (signs[with], signs[at]);
            Assert.Equal(ten[at] == ten[with], Isbn.TryRead(new string(signs), out _, out _));
            signs = ten.ToCharArray();
            signs[at] = digit;
            Assert.Equal(ten[at] == digit, Isbn.TryRead(new string(signs), out _, out _));
        }, iter: 300);
}
