using CoopLessons.Core.Credits;
using CoopLessons.Core.Hours;
using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Credits;

/// <summary>How a family marks and what it counts as a credit. A family that never said so has no row, and <see cref="Usual"/> holds.</summary>
public sealed class GradingScale : IFamilyOwned, IVersioned
{
    /// <summary>Of a scale.</summary>
    public const int MostSteps = 20;

    public GradingScale() => Describe(GradeScale.Plain, CreditCount.CarnegieUnit, CreditCount.UsualCollegeCredits);

    /// <summary>Where nobody said anything.</summary>
    public static GradingScale Usual { get; } = new();

    public Guid FamilyId { get; private set; }
    public List<GradeStep> Steps { get; private set; } = [];
    public int HonorsAdds { get; private set; }
    public int CollegeAdds { get; private set; }

    /// <summary>Minutes of one credit.</summary>
    public int PerCredit { get; private set; }

    /// <summary>College credits of one credit, hundredths.</summary>
    public int CollegePerCredit { get; private set; }
    public int Version { get; private set; }

    public GradeScale Scale => new(Steps, HonorsAdds, CollegeAdds);

    public Minutes MinutesPerCredit => new(PerCredit);

    public void Describe(GradeScale scale, Minutes perCredit, int collegePerCredit)
    {
        Steps = [.. scale.Steps];
        (HonorsAdds, CollegeAdds, PerCredit, CollegePerCredit) = (scale.HonorsAdds, scale.CollegeAdds, perCredit.Value, collegePerCredit);
    }

    internal sealed class Mapping : IEntityTypeConfiguration<GradingScale>
    {
        public void Configure(EntityTypeBuilder<GradingScale> b)
        {
            b.HasKey(s => s.FamilyId);
            b.Property(s => s.Steps).AsJson();
            b.Ignore(s => s.Scale).Ignore(s => s.MinutesPerCredit);
        }
    }
}
