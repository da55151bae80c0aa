using CoopLessons.Core.Coop;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Coops.Money;

/// <summary>A line of a family's account.</summary>
/// <param name="Cents">Above 0 for what it laid out or paid, below 0 for what it bears or received.</param>
/// <param name="ExpenseId">Where more is told; null for fees and payments.</param>
public sealed record FamilyLine(DateOnly On, string Says, int Cents, Guid? ExpenseId = null);

/// <summary>
/// The accounts of a co-op's families, reckoned from what was written and never stored. A family that left stands in them
/// as long as it is uneven, under the name that it had.
/// </summary>
public sealed class CoopAccount
{
    private readonly Dictionary<Guid, (long Paid, long Owed)> _sums = [];
    private readonly Dictionary<Guid, List<FamilyLine>> _lines = [];
    private readonly Dictionary<Guid, string> _names = [];

    private CoopAccount() { }

    public IReadOnlyList<CoopExpense> Expenses { get; private init; } = [];
    public IReadOnlyList<CoopPayment> Payments { get; private init; } = [];
    public IReadOnlyList<CoopFee> Fees { get; private init; } = [];

    /// <summary>Who pays whom.</summary>
    public Settled Settled { get; private set; } = new([], 0);

    /// <summary>In cents: above 0 where others owe the family, below 0 where it owes.</summary>
    public long Net(Guid family) => _sums.TryGetValue(family, out var sum) ? sum.Paid - sum.Owed : 0;

    /// <summary>Newest first.</summary>
    public IReadOnlyList<FamilyLine> LinesOf(Guid family) => [.. _lines.GetValueOrDefault(family, []).AsEnumerable().Reverse().OrderByDescending(l => l.On)];

    public string NameOf(Guid family) => _names.GetValueOrDefault(family, "");

    /// <summary>All that ever stood in an account.</summary>
    public IReadOnlyCollection<Guid> Families => _names.Keys;

    public static async Task<CoopAccount> LoadAsync(AppDb db, Guid coopId, CancellationToken ct)
    {
        var account = new CoopAccount
        {
            Expenses = await db.CoopExpenses.AsNoTracking().Where(e => e.CoopId == coopId).OrderBy(e => e.On).ThenBy(e => e.Id).ToListAsync(ct),
            Payments = await db.CoopPayments.AsNoTracking().Where(p => p.CoopId == coopId).OrderBy(p => p.On).ThenBy(p => p.Id).ToListAsync(ct),
            Fees = await db.CoopFees.AsNoTracking().Where(f => f.CoopId == coopId).OrderBy(f => f.First).ThenBy(f => f.Id).ToListAsync(ct),
        };
        foreach (var expense in account.Expenses.Where(e => e.Counts))
            account.Write(expense);
        foreach (var fee in account.Fees.Where(f => f.Counts))
            account.Write(fee);
        foreach (var payment in account.Payments.Where(p => p.Counts))
            account.Write(payment);
        // The name that a family has now goes before the one that it had.
        foreach (var family in await db.CoopFamilies.AsNoTracking().Where(f => f.CoopId == coopId).ToListAsync(ct))
            account._names[family.FamilyId] = family.Name;
        account.Settled = Settlement.Of([.. account._sums.Select(s => Even(s.Key, s.Value.Paid - s.Value.Owed))]);
        return account;
    }

    // Only the difference is settled, so that years of purchases stay within the range of a payment.
    private static AccountLine Even(Guid family, long net) => new(family, checked((int)Math.Max(0, net)), checked((int)Math.Max(0, -net)));

    private void Write(CoopExpense expense)
    {
        Add(expense.PaidById, expense.PaidBy, expense.Cents, 0, new FamilyLine(expense.On, $"paid for {expense.What}", expense.Cents, expense.Id));
        foreach (var share in expense.Shares)
            Add(share.FamilyId, share.Family, 0, share.Cents, new FamilyLine(expense.On, $"share of {expense.What}", -share.Cents, expense.Id));
    }

    private void Write(CoopFee fee)
    {
        foreach (var family in fee.Families.Where(f => f.FamilyId != fee.KeeperId))
        {
            Add(family.FamilyId, family.Family, 0, family.Cents, new FamilyLine(fee.First, fee.Name, -family.Cents));
            Add(fee.KeeperId, fee.Keeper, family.Cents, 0, new FamilyLine(fee.First, $"{fee.Name}, {family.Family}", family.Cents));
            if (family.BackCents == 0)
                continue;
            Add(family.FamilyId, family.Family, family.BackCents, 0, new FamilyLine(family.SaidOn!.Value, $"{fee.Name}, given back", family.BackCents));
            Add(fee.KeeperId, fee.Keeper, 0, family.BackCents, new FamilyLine(family.SaidOn.Value, $"{fee.Name}, given back to {family.Family}", -family.BackCents));
        }
    }

    private void Write(CoopPayment payment)
    {
        Add(payment.FromId, payment.From, payment.Cents, 0, new FamilyLine(payment.On, $"paid to {payment.To}", payment.Cents));
        Add(payment.ToId, payment.To, 0, payment.Cents, new FamilyLine(payment.On, $"received from {payment.From}", -payment.Cents));
    }

    private void Add(Guid family, string name, long paid, long owed, FamilyLine line)
    {
        var sum = _sums.GetValueOrDefault(family);
        _sums[family] = (sum.Paid + paid, sum.Owed + owed);
        _names[family] = name;
        if (!_lines.TryGetValue(family, out var lines))
            _lines[family] = lines = [];
        // What would say nothing is left out: a share of nothing.
        if (line.Cents != 0)
            lines.Add(line);
    }
}
