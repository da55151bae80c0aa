using System.Text;

namespace CoopLessons.Core.Log;

/// <summary>
/// What NFKD (Unicode Standard Annex #15) makes of small letters of the Latin, Greek and Cyrillic scripts and of signs that
/// stand for letters or digits, marks left out. The program runs without the tables of a language library, and its own
/// normalization then leaves such letters as they are. Made from the decompositions of the Unicode Character Database 14.0.0.
/// </summary>
internal static class BareLetters
{
    private const string Table =
        """
        0=⁰₀０ 1=¹₁１ 2=²₂２ 3=³₃３ 4=⁴₄４ 5=⁵₅５ 6=⁶₆６ 7=⁷₇７ 8=⁸₈８ 9=⁹₉９ a=ªàáâãäåāăąǎǟǡǻȁȃȧḁạảấầẩẫậắằẳẵặₐａ b=ḃḅḇℬｂ
        c=çćĉċčḉℂℭⅽｃ d=ďḋḍḏḑḓⅅⅆⅾｄ e=èéêëēĕėęěȅȇȩḕḗḙḛḝẹẻẽếềểễệₑℯℰⅇｅ f=ḟℱｆ g=ĝğġģǧǵḡℊｇ h=ĥȟʰḣḥḧḩḫẖₕℋℌℍℎｈ
        i=ìíîïĩīĭįǐȉȋḭḯỉịⁱℐℑℹⅈⅰｉ j=ĵǰʲⅉｊ k=ķǩḱḳḵₖｋ l=ĺļľḷḹḻḽₗℒℓⅼｌ m=ḿṁṃₘℳⅿｍ n=ñńņňǹṅṇṉṋⁿₙℕｎ
        o=ºòóôõöōŏőơǒǫǭȍȏȫȭȯȱṍṏṑṓọỏốồổỗộớờởỡợₒℴｏ p=ṕṗₚℙｐ q=ℚｑ r=ŕŗřȑȓʳṙṛṝṟℛℜℝｒ s=śŝşšſșṡṣṥṧṩẛₛｓ t=ţťțṫṭṯṱẗₜｔ
        u=ùúûüũūŭůűųưǔǖǘǚǜȕȗṳṵṷṹṻụủứừửữựｕ v=ṽṿⅴｖ w=ŵʷẁẃẅẇẉẘｗ x=ẋẍₓⅹｘ y=ýÿŷȳʸẏẙỳỵỷỹｙ z=źżžẑẓẕℤℨｚ æ=ǣǽ ø=ǿ ħ=ℏ ə=ₔ ɛ=ℇ
        ɦ=ʱ ɹ=ʴ ɻ=ʵ ʁ=ʶ ʒ=ǯ ʹ=ʹ α=άἀἁἂἃἄἅἆἇὰάᾀᾁᾂᾃᾄᾅᾆᾇᾰᾱᾲᾳᾴᾶᾷ β=ϐ γ=ℽℾ ε=έϵἐἑἒἓἔἕὲέ η=ήἠἡἢἣἤἥἦἧὴήᾐᾑᾒᾓᾔᾕᾖᾗῂῃῄῆῇ θ=ϑ
        ι=ΐίϊἰἱἲἳἴἵἶἷὶίιῐῑῒΐῖῗ κ=ϰ μ=µ ο=όὀὁὂὃὄὅὸό π=ϖℼℿ ρ=ϱῤῥ σ=ςϲ υ=ΰϋύϒϓϔὐὑὒὓὔὕὖὗὺύῠῡῢΰῦῧ φ=ϕ
        ω=ώὠὡὢὣὤὥὦὧὼώᾠᾡᾢᾣᾤᾥᾦᾧῲῳῴῶῷ а=ӑӓ г=ѓ е=ѐёӗ ж=ӂӝ з=ӟ и=йѝӣӥ к=ќ о=ӧ у=ўӯӱӳ ч=ӵ ы=ӹ э=ӭ і=ї ѵ=ѷ ә=ӛ ө=ӫ א=ℵ ב=ℶ
        ג=ℷ ד=ℸ aʾ=ẚ dz=ǆǳ ff=ﬀ fi=ﬁ fl=ﬂ ii=ⅱ ij=ĳ iv=ⅳ ix=ⅸ lj=ǉ nj=ǌ no=№ sm=℠ st=ﬅﬆ tm=™ vi=ⅵ xi=ⅺ ʼn=ŉ fax=℻
        ffi=ﬃ ffl=ﬄ iii=ⅲ tel=℡ vii=ⅶ xii=ⅻ viii=ⅷ
        """;

    private static readonly Dictionary<int, string> s_bare = Table.Split([' ', '\n'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)
        .Select(item => item.Split('=')).SelectMany(item => item[1].EnumerateRunes().Select(from => (from.Value, Bare: item[0]))).ToDictionary(p => p.Value, p => p.Bare);

    /// <summary>The letters it consists of; the rune itself where it consists of nothing else.</summary>
    public static string Of(Rune small) => s_bare.TryGetValue(small.Value, out var bare) ? bare : small.ToString();
}
