using System.Buffers.Binary;
using System.Security.Cryptography;

namespace CoopLessons.Web.Evidence;

/// <summary>Ids of pieces that come several in one form: they follow from the form's own, so that a second sending is known by them.</summary>
public static class PieceIds
{
    /// <param name="number">The file's place in the form, from 0.</param>
    public static Guid Of(Guid form, int number)
    {
        Span<byte> told = stackalloc byte[20];
        form.TryWriteBytes(told);
        BinaryPrimitives.WriteInt32BigEndian(told[16..], number);
        Span<byte> hash = stackalloc byte[32];
        SHA256.HashData(told, hash);
        return new Guid(hash[..16]);
    }
}
