using Microsoft.AspNetCore.Mvc.Rendering;

namespace CoopLessons.Web.Pages.Families;

/// <summary>The states and the District of Columbia by their two-letter codes: ANSI INCITS 38, as USPS Publication 28, appendix B has them (from memory).</summary>
public static class States
{
    private const string Table =
        "AL Alabama;AK Alaska;AZ Arizona;AR Arkansas;CA California;CO Colorado;CT Connecticut;DE Delaware;DC District of Columbia;FL Florida;" +
        "GA Georgia;HI Hawaii;ID Idaho;IL Illinois;IN Indiana;IA Iowa;KS Kansas;KY Kentucky;LA Louisiana;ME Maine;MD Maryland;MA Massachusetts;" +
        "MI Michigan;MN Minnesota;MS Mississippi;MO Missouri;MT Montana;NE Nebraska;NV Nevada;NH New Hampshire;NJ New Jersey;NM New Mexico;" +
        "NY New York;NC North Carolina;ND North Dakota;OH Ohio;OK Oklahoma;OR Oregon;PA Pennsylvania;RI Rhode Island;SC South Carolina;" +
        "SD South Dakota;TN Tennessee;TX Texas;UT Utah;VT Vermont;VA Virginia;WA Washington;WV West Virginia;WI Wisconsin;WY Wyoming";

    private static readonly IReadOnlyList<(string Code, string Name)> All = [.. Table.Split(';').Select(s => (s[..2], s[3..]))];

    public static bool Knows(string code) => code.Length == 0 || All.Any(s => s.Code == code);

    public static string NameOf(string code) => All.FirstOrDefault(s => s.Code == code).Name ?? "none";

    public static IEnumerable<SelectListItem> List() =>
        [new SelectListItem("None of these, or rather not say", ""), .. All.Select(s => new SelectListItem(s.Name, s.Code))];
}
