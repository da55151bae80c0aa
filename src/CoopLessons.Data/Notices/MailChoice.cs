using CoopLessons.Data.People;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Notices;

/// <summary>
/// A person wants notices by mail. No notice goes out before the address has proven to be theirs: the person's own
/// <c>EmailConfirmed</c>, which falls with the address.
/// </summary>
public sealed class MailChoice : IPersonOwned
{
    private MailChoice() { }

    public MailChoice(Guid personId, DateTime now) => (PersonId, Since) = (personId, now);

    public Guid PersonId { get; private set; }

    /// <summary>What was told before then is not sent.</summary>
    public DateTime Since { get; private set; }

    internal sealed class Mapping : IEntityTypeConfiguration<MailChoice>
    {
        public void Configure(EntityTypeBuilder<MailChoice> b)
        {
            b.HasKey(c => c.PersonId);
            b.Property(c => c.PersonId).ValueGeneratedNever();
            b.HasOne<Person>().WithOne().HasForeignKey<MailChoice>(c => c.PersonId).OnDelete(DeleteBehavior.Cascade);
        }
    }
}
