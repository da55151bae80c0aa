using System.Buffers.Binary;
using System.Text;

namespace CoopLessons.Documents.Uploads;

/// <summary>
/// Sound and video in boxes (ISO/IEC 14496-12, from memory): whole or not, with a picture or without, and without the place
/// where it was recorded, which is overwritten where it stands so that nothing else moves.
/// </summary>
internal sealed class Mp4Look
{
    private const int Deepest = 8;
    private readonly byte[] _file;
    private bool _changed;
    private bool _hasPicture;
    private bool _hasSound;
    private bool _isLocated;

    private Mp4Look(byte[] file) => _file = file;

    /// <exception cref="InvalidDataException">Boxes lead out of the file.</exception>
    public static RecordingLook Of(byte[] file)
    {
        var look = new Mp4Look(file);
        var top = look.Boxes(0, file.Length, isTop: true).ToList();
        if (top.All(b => b.Type != "moov") || top.All(b => b.Type is not ("mdat" or "moof")))
            return new RecordingLook(FileFault.Broken);
        foreach (var box in top)
            look.Visit(box, 0);
        if (look._isLocated)
            return new RecordingLook(FileFault.Located);
        return look._hasPicture || look._hasSound ? new RecordingLook(null, look._hasPicture, look._changed) : new RecordingLook(FileFault.NotKnown);
    }

    private void Visit(Box box, int depth)
    {
        if (depth > Deepest)
            throw new InvalidDataException("Boxes are nested too deep.");
        switch (box.Type)
        {
            case "moov" or "trak" or "mdia" or "minf" or "stbl" or "udta":
                foreach (var inner in Boxes(box.Body, box.End))
                    Visit(inner, depth + 1);
                break;
            case "meta":
                VisitMeta(box, depth);
                break;
            case "hdlr" when box.End - box.Body >= 12:
                var handler = _file.AsSpan(box.Body + 8, 4);
                _hasPicture |= handler.SequenceEqual("vide"u8);
                _hasSound |= handler.SequenceEqual("soun"u8);
                break;
            case "stsd" when box.End - box.Body >= 16:
                _isLocated |= HoldsPlaces(box);
                break;
            // Of the 3GPP's files (TS 26.244, 8.4) and of QuickTime's user data: where it was recorded. Both from memory.
            case "loci" or "\u00A9xyz":
                Free(box);
                break;
            case "uuid" or "XMP_" or "xml " when _file.AsSpan(box.Body..box.End).IndexOf("GPS"u8) >= 0:
                Free(box);
                break;
        }
    }

    /// <summary>Lists of keys and values, as QuickTime has them; a box of its own (ISO) or not (QuickTime).</summary>
    private void VisitMeta(Box box, int depth)
    {
        var isPlain = box.End - box.Body >= 8 && _file.AsSpan(box.Body + 4, 4).SequenceEqual("hdlr"u8);
        var inside = Boxes(isPlain ? box.Body : box.Body + 4, box.End).ToList();
        var keys = inside.Where(b => b.Type == "keys").SelectMany(Keys).ToList();
        foreach (var inner in inside)
        {
            if (inner.Type == "ilst")
                VisitValues(inner, keys);
            // What handles a list of keys is no track.
            else if (inner.Type != "hdlr")
                Visit(inner, depth + 1);
        }
    }

    private IEnumerable<string> Keys(Box box)
    {
        var count = Number(box.Body + 4);
        for (int i = 0, at = box.Body + 8; i < count && at + 8 <= box.End; i++)
        {
            var size = Number(at);
            if (size < 8 || at + size > box.End)
                throw new InvalidDataException("A key leads out of its list.");
            yield return Encoding.Latin1.GetString(_file, at + 8, size - 8);
            at += size;
        }
    }

    private void VisitValues(Box list, List<string> keys)
    {
        foreach (var item in Boxes(list.Body, list.End))
        {
            var number = Number(item.Start + 4);
            var key = number >= 1 && number <= keys.Count ? keys[number - 1] : item.Type;
            if (key != "\u00A9xyz" && !key.Contains("location", StringComparison.OrdinalIgnoreCase) && !key.Contains("gps", StringComparison.OrdinalIgnoreCase))
                continue;
            // Behind the value's kind and language, eight bytes.
            foreach (var value in Boxes(item.Body, item.End).Where(b => b.Type == "data" && b.End - b.Body > 8))
                Blank(value.Body + 8, value.End);
        }
    }

    /// <summary>Whether a track is itself a list of places, moment by moment, which cannot be taken out of the video.</summary>
    private bool HoldsPlaces(Box box)
    {
        var format = _file.AsSpan(box.Body + 12, 4);
        return format.SequenceEqual("gpmd"u8) || format.SequenceEqual("camm"u8) || format.SequenceEqual("rtmd"u8)
            || (format.SequenceEqual("mebx"u8) && _file.AsSpan(box.Body..box.End).IndexOf("location"u8) >= 0);
    }

    private void Free(Box box)
    {
        "free"u8.CopyTo(_file.AsSpan(box.Start + 4));
        Blank(box.Body, box.End);
    }

    private void Blank(int from, int to)
    {
        _file.AsSpan(from..to).Clear();
        _changed = true;
    }

    private IEnumerable<Box> Boxes(int from, int to, bool isTop = false)
    {
        for (var at = from; at + 8 <= to;)
        {
            long size = (uint)Number(at);
            var body = at + 8;
            if (size == 1 && at + 16 <= to)
            {
                size = BinaryPrimitives.ReadInt64BigEndian(_file.AsSpan(at + 8));
                body = at + 16;
            }
            else if (size == 0)
            {
                // The last box of a file may run to its end; user data may end in a zero.
                size = isTop ? to - at : throw new InvalidDataException("A box has no length.");
            }

            if (size < body - at || size > to - at)
                throw new InvalidDataException("A box leads out of what holds it.");
            yield return new Box(at, body, at + (int)size, Encoding.Latin1.GetString(_file, at + 4, 4));
            at += (int)size;
        }
    }

    private int Number(int at) => unchecked((int)BinaryPrimitives.ReadUInt32BigEndian(_file.AsSpan(at)));

    private readonly record struct Box(int Start, int Body, int End, string Type);
}
