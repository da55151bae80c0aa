using System.Text.Json;
using CoopLessons.Data.Families;
using CoopLessons.Data.Files;
using CoopLessons.Data.People;
using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata;

namespace CoopLessons.Data.Travel;

/// <summary>A family that was taken in.</summary>
public sealed record BroughtFamily(Guid Id, string Name, int Rows, int Files);

/// <summary>Takes in a family's file: whole, or nothing of it.</summary>
/// <param name="look">Looks at a file of a family as if somebody had brought it by itself; null where it may lie here, else a sentence.</param>
public sealed class FamilyIn(AppDb db, FileShelf shelf, Func<StoredKind, Stream, CancellationToken, Task<string?>> look)
{
    private const int RowsAtOnce = 500;
    private static readonly JsonSerializerOptions Strict = new() { MaxDepth = 48, AllowDuplicateProperties = false };
    private int _rows;

    /// <summary>The unit of work acts for the new family afterwards, and for nobody where it was refused.</summary>
    /// <param name="file">Can be searched; left open.</param>
    /// <param name="bringer">Saved already; becomes a guardian.</param>
    /// <param name="now">UTC.</param>
    /// <exception cref="FamilyUnfitException">Nothing was taken in; the message says why.</exception>
    public async Task<BroughtFamily> TakeAsync(Stream file, Person bringer, DateTime now, Action<TravelProgress> tell, CancellationToken ct)
    {
        await using var zip = await BroughtZip.OpenAsync(file, tell, ct);
        var tables = TravelTable.Of(db.Model);
        if (zip.Manifest.Rows.Keys.FirstOrDefault(t => !tables.Any(k => k.Name == t)) is { } strange)
            throw new FamilyUnfitException($"This file holds a table “{strange}” that this program does not know: it was made by a newer one. Bring this server to that version first.");
        if (zip.Manifest.Files.Keys.FirstOrDefault(p => p.StartsWith("data/", StringComparison.Ordinal) && !tables.Any(t => p == FamilyFile.DataPath(t.Name))) is { } stray)
            throw new FamilyUnfitException($"“{stray}” is in this file and does not belong into a family’s file, so nothing was taken in.");
        var family = zip.Manifest.FamilyId;
        await RefuseKnownAsync(family, ct);
        db.Current.Act(family, bringer.Id, Role.Guardian);
        var placed = new List<string>();
        try
        {
            var files = await PlaceAsync(zip, tables, placed, tell, ct);
            tell(new TravelProgress("Writing the rows", 0.8));
            await using var transaction = await db.Database.BeginTransactionAsync(ct);
            await WriteAsync(zip, tables, bringer, now, ct);
            var name = (await db.Families.AsNoTracking().SingleAsync(ct)).Name;
            ct.ThrowIfCancellationRequested();
            // From here on it is here, whoever calls it off: its files stay.
            await transaction.CommitAsync(CancellationToken.None);
            return new BroughtFamily(family, name, _rows, files);
        }
        catch (Exception fault)
        {
            db.ChangeTracker.Clear();
            foreach (var hash in placed)
                await shelf.RemoveAsync(family, hash, CancellationToken.None);
            db.Current.Know(bringer.Id);
            db.Current.Leave();
            if (fault is DbUpdateException or InvalidOperationException or JsonException or FormatException or KeyNotFoundException)
                throw new FamilyUnfitException("The rows in this file do not hold together: one names what is not there, stands twice, or says what cannot be. Nothing was taken in.", fault);
            throw;
        }
    }

    private async Task RefuseKnownAsync(Guid family, CancellationToken ct)
    {
        db.Current.ActForProgram(family);
        // A co-op's files lie under its id: no family may come under the same.
        db.Current.BelongTo([family]);
        var (known, coop) = (await db.Families.AnyAsync(f => f.Id == family, ct), await db.Coops.AnyAsync(c => c.Id == family, ct));
        db.Current.Leave();
        if (known)
            throw new FamilyUnfitException("This family is on this server already. A family that is here is never written over: ask one of its guardians for an invitation.");
        if (coop)
            throw new FamilyUnfitException("The id of this family belongs to something else on this server, so nothing was taken in.");
    }

    /// <summary>The files first: a crash leaves files that no row names, and never a row without its file.</summary>
    private async Task<int> PlaceAsync(BroughtZip zip, IReadOnlyList<TravelTable> tables, List<string> placed, Action<TravelProgress> tell, CancellationToken ct)
    {
        var stored = tables.Single(t => t.Type.ClrType == typeof(StoredFile));
        var kinds = new Dictionary<string, StoredKind>(StringComparer.Ordinal);
        await foreach (var row in RowsAsync(zip, stored, ct))
        {
            var file = (StoredFile)Entity(stored, row, null).Row!;
            if (!FamilyFile.IsHash(file.Hash))
                throw new FormatException("No hash.");
            if (zip.Manifest.Files.ContainsKey(FamilyFile.FilePath(file.Hash)))
                kinds[file.Hash] = file.Kind;
            else if (!zip.Manifest.Missing.Contains(file.Hash))
                throw new FamilyUnfitException($"A file that the family brought is missing from this one (files/{file.Hash[..12]}…), so nothing was taken in.");
        }

        if (zip.Manifest.Files.Keys.FirstOrDefault(p => p.StartsWith("files/", StringComparison.Ordinal) && !kinds.ContainsKey(p[6..])) is { } odd)
            throw new FamilyUnfitException($"“{odd[..18]}…” is in this file and no row of the family names it, so nothing was taken in.");
        foreach (var (i, (hash, kind)) in kinds.Index())
        {
            tell(new TravelProgress($"Looking at photos and files: {i + 1} of {kinds.Count}", 0.3 + 0.5 * i / kinds.Count));
            await using var copy = shelf.Scratch();
            await using (var from = await zip.ReadAsync(FamilyFile.FilePath(hash), ct))
                await from.CopyToAsync(copy, ct);
            copy.Position = 0;
            if (await look(kind, copy, ct) is { } fault)
                throw new FamilyUnfitException($"files/{hash[..12]}…: {fault} Nothing was taken in.");
            copy.Position = 0;
            // Others bring and take away files between these.
            using var turn = await shelf.TurnAsync(ct);
            if (await shelf.HasAsync(db.Current.FamilyId!.Value, hash, ct))
                continue;
            placed.Add(hash);
            await shelf.PutAsync(db.Current.FamilyId!.Value, copy, ct);
        }

        return kinds.Count;
    }

    private async Task WriteAsync(BroughtZip zip, IReadOnlyList<TravelTable> tables, Person bringer, DateTime now, CancellationToken ct)
    {
        (db.ChangeTracker.AutoDetectChangesEnabled, db.TakesFamilyIn) = (false, true);
        try
        {
            var members = tables.Single(t => t.Type.ClrType == typeof(Membership));
            var rows = new List<JsonElement>();
            await foreach (var row in RowsAsync(zip, members, ct))
                rows.Add(row);
            var people = await BroughtPeople.OfAsync(db, bringer, rows, ct);
            await db.SaveChangesAsync(ct);
            foreach (var table in tables)
                await WriteAsync(zip, table, people, bringer, now, ct);
        }
        finally
        {
            (db.ChangeTracker.AutoDetectChangesEnabled, db.TakesFamilyIn) = (true, false);
        }
    }

    private async Task WriteAsync(BroughtZip zip, TravelTable table, BroughtPeople people, Person bringer, DateTime now, CancellationToken ct)
    {
        var (read, waiting) = (0, 0);
        await foreach (var json in RowsAsync(zip, table, ct))
        {
            if (++_rows > FamilyFile.MostRows)
                throw new FamilyUnfitException($"There are more than {FamilyFile.MostRows:N0} rows in this file, which is the most that is taken in.");
            read++;
            var (row, dropped) = Entity(table, json, people);
            if (dropped)
                continue;
            if (row is Membership member)
                BeHere(member, bringer, now);
            db.Entry(row!).State = EntityState.Added;
            // Rows that name others of their table are ordered as they are saved, so they are saved together.
            if (++waiting < RowsAtOnce || table.Type.GetForeignKeys().Any(k => k.PrincipalEntityType == table.Type))
                continue;
            await SaveAsync(ct);
            waiting = 0;
        }

        if (read != zip.Manifest.Rows.GetValueOrDefault(table.Name))
            throw new FamilyUnfitException($"There are {read:N0} rows in data/{table.Name}.json, and the file says that there are {zip.Manifest.Rows.GetValueOrDefault(table.Name):N0}. Nothing was taken in.");
        if (table.Type.ClrType == typeof(Membership) && people.BringerIsNew)
            db.Memberships.Add(new Membership(bringer.Id, bringer.Name, Role.Guardian, now));
        await SaveAsync(ct);
    }

    private static void BeHere(Membership member, Person bringer, DateTime now)
    {
        member.Become(member.PersonId == bringer.Id ? Role.Guardian : Role.Helper);
        if (member.PersonId == bringer.Id)
            member.Choose(now);
    }

    private async Task SaveAsync(CancellationToken ct)
    {
        await db.SaveChangesAsync(ct);
        db.ChangeTracker.Clear();
    }

    private static async IAsyncEnumerable<JsonElement> RowsAsync(BroughtZip zip, TravelTable table, [System.Runtime.CompilerServices.EnumeratorCancellation] CancellationToken ct)
    {
        if (!zip.Manifest.Files.ContainsKey(FamilyFile.DataPath(table.Name)))
            yield break;
        await using var from = await zip.ReadAsync(FamilyFile.DataPath(table.Name), ct);
        await foreach (var row in JsonSerializer.DeserializeAsyncEnumerable<JsonElement>(from, Strict, ct))
            yield return row;
    }

    /// <summary>A row as the model has it; dropped where it belongs to a person who is not here.</summary>
    /// <param name="people">Null where persons are left as they are.</param>
    private (object? Row, bool Dropped) Entity(TravelTable table, JsonElement json, BroughtPeople? people)
    {
        var row = Activator.CreateInstance(table.Type.ClrType, nonPublic: true)!;
        var entry = db.Entry(row);
        var columns = table.Columns.ToDictionary(c => c.Name, StringComparer.Ordinal);
        foreach (var member in json.EnumerateObject())
        {
            if (!columns.Remove(member.Name, out var column))
                throw Unfit(table, member.Name, "is not known here: the file was made by a newer program");
            object? value;
            try
            {
                value = TravelTable.NamesCoop(column) ? null : TravelValue.Read(column, member.Value);
            }
            catch (FormatException fault)
            {
                throw Unfit(table, column.Name, fault.Message);
            }

            if (people is not null && value is Guid person && TravelTable.NamesPerson(column))
            {
                value = people.Here(person);
                if (value is null && !column.IsNullable)
                    return (null, true);
            }

            entry.Property(column.Name).CurrentValue = value;
        }

        // What an older program did not write begins as it does in a new row; what tells rows apart must be there.
        if (columns.Values.FirstOrDefault(c => c.IsPrimaryKey()) is { } lacking)
            throw Unfit(table, lacking.Name, "is missing");
        if ((Guid)entry.Property(table.Owner.Name).CurrentValue! != db.Current.FamilyId)
            throw new FamilyUnfitException($"A row in data/{table.Name}.json belongs to another family, so nothing was taken in.");
        return (row, false);
    }

    private static FamilyUnfitException Unfit(TravelTable table, string column, string what) =>
        new($"In data/{table.Name}.json “{(column.Length > 60 ? column[..60] : column)}” {what}. Nothing was taken in.");
}
