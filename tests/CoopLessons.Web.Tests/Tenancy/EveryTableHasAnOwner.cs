using CoopLessons.Data;
using CoopLessons.Data.People;
using CoopLessons.Data.Tenancy;
using CoopLessons.Web.Tests.App;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata;

namespace CoopLessons.Web.Tests.Tenancy;

[Collection(SharedServer.Name)]
public sealed class EveryTableHasAnOwner(TestServer server)
{
    // The framework's tables of what a person can sign in with.
    private static readonly Type[] OfThePerson = [typeof(Person), typeof(IdentityUserClaim<Guid>), typeof(IdentityUserLogin<Guid>), typeof(IdentityUserToken<Guid>)];

    [Fact]
    public async Task Each_row_belongs_to_a_family_to_a_coop_or_to_a_person()
    {
        var types = await TypesAsync();
        var without = types.Select(t => t.ClrType).Where(t => !t.IsAssignableTo(typeof(IFamilyOwned)) && !t.IsAssignableTo(typeof(ICoopOwned)) && !t.IsAssignableTo(typeof(IPersonOwned)) && !t.IsAssignableTo(typeof(IOwnedByNobody)) && !OfThePerson.Contains(t));
        Assert.Empty(without);
        Assert.True(types.Count > 25);
    }

    [Fact]
    public async Task Nobodys_row_names_nobody_by_a_key_or_a_word() =>
        Assert.All((await TypesAsync()).Where(t => t.ClrType.IsAssignableTo(typeof(IOwnedByNobody))), t =>
        {
            Assert.Empty(t.GetForeignKeys());
            Assert.Equal(["SecretHash"], t.GetProperties().Where(p => p.ClrType == typeof(string)).Select(p => p.Name));
        });

    [Fact]
    public async Task A_familys_row_has_the_family_first_in_its_key_and_is_filtered_by_it()
    {
        foreach (var type in (await TypesAsync()).Where(t => t.ClrType.IsAssignableTo(typeof(IFamilyOwned)) && t.ClrType != typeof(Data.Families.Family)))
        {
            Assert.Equal("FamilyId", type.FindPrimaryKey()!.Properties[0].Name);
            Assert.NotNull(type.FindDeclaredQueryFilter(AppDb.FamilyFilter));
        }
    }

    [Fact]
    public async Task A_coops_row_has_the_coop_first_in_its_key_and_is_filtered_by_it()
    {
        var types = (await TypesAsync()).Where(t => t.ClrType.IsAssignableTo(typeof(ICoopOwned))).ToList();
        Assert.All(types, t => Assert.NotNull(t.FindDeclaredQueryFilter(AppDb.CoopFilter)));
        Assert.All(types.Where(t => t.ClrType != typeof(Data.Coops.Coop)), t => Assert.Equal("CoopId", t.FindPrimaryKey()!.Properties[0].Name));
        Assert.True(types.Count > 4);
    }

    [Fact]
    public async Task Only_types_that_both_databases_hold_alike_are_stored()
    {
        Type[] portable = [typeof(string), typeof(int), typeof(long), typeof(bool), typeof(Guid), typeof(DateOnly), typeof(DateTime), typeof(byte[])];
        var odd = (await TypesAsync()).Where(t => !OfThePerson.Contains(t.ClrType)).SelectMany(t => t.GetProperties())
            .Where(p => !portable.Contains(Nullable.GetUnderlyingType(Stored(p)) ?? Stored(p)) && !p.ClrType.IsEnum)
            .Select(p => $"{p.DeclaringType.DisplayName()}.{p.Name}: {Stored(p).Name}");
        Assert.Empty(odd);
    }

    private static Type Stored(IProperty property) => property.GetTypeMapping().Converter?.ProviderClrType ?? property.ClrType;

    private Task<List<IEntityType>> TypesAsync() => server.FromDbAsync(null, db => Task.FromResult(db.Model.GetEntityTypes().ToList()));
}
