using PdfSharp.Pdf;

namespace CoopLessons.Documents.Pdf;

/// <summary>
/// Streams of a document that lie in a file while it is put together, so that no more than one source is held in memory
/// at a time. Each is whole as it lies there: what was deflated ends with its checksum.
/// </summary>
/// <param name="aside">Can be written, read and sought in; the caller's to close.</param>
internal sealed class CarriedStreams(Stream aside)
{
    private readonly Dictionary<PdfDictionary, (long From, int Length)> _places = new(ReferenceEqualityComparer.Instance);

    public bool Holds(PdfDictionary dictionary) => _places.ContainsKey(dictionary);

    public int LengthOf(PdfDictionary dictionary) => _places[dictionary].Length;

    /// <summary>Lays the dictionary's stream aside and empties it.</summary>
    public void Carry(PdfDictionary dictionary)
    {
        var bytes = WholeZlib.Mend(dictionary);
        Keep(dictionary, to => to.Write(bytes));
        dictionary.Stream.Value = [];
    }

    /// <summary>Lays aside what is written for a dictionary that has no stream of its own.</summary>
    public void Keep(PdfDictionary dictionary, Action<Stream> write)
    {
        aside.Position = aside.Length;
        var from = aside.Position;
        write(aside);
        _places[dictionary] = (from, checked((int)(aside.Position - from)));
    }

    public void CopyTo(PdfDictionary dictionary, Stream file)
    {
        var (from, left) = _places[dictionary];
        aside.Position = from;
        var buffer = new byte[Math.Min(left, 81_920)];
        while (left > 0)
        {
            var read = aside.Read(buffer, 0, Math.Min(left, buffer.Length));
            if (read == 0)
                throw new EndOfStreamException("What was laid aside is shorter than it was.");
            file.Write(buffer, 0, read);
            left -= read;
        }
    }
}
