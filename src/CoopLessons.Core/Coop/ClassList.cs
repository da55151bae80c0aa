namespace CoopLessons.Core.Coop;

/// <summary>A child with a place.</summary>
/// <param name="CameUp">Whether it waited before.</param>
public sealed record ClassPlace(Guid Child, Guid Family, Guid SignUp, bool CameUp);

/// <summary>A sign-up that waits.</summary>
/// <param name="Number">From 1, without gaps; a pair has one number.</param>
public sealed record ClassWait(int Number, Guid SignUp, Guid Family, IReadOnlyList<Guid> Children);

/// <summary>Who has a place in a class and who waits at which number, after all that happened.</summary>
/// <remarks>
/// Common practice, no source: whoever signs up first comes first. A place that falls free goes to the first who waits and
/// for whom it is enough: a pair that needs two is passed over while one is free, and keeps its number. Nobody who has a
/// place loses it to another.
/// </remarks>
/// <param name="Places">In the order in which they were given.</param>
/// <param name="Waiting">In the order of the numbers.</param>
/// <param name="Free">Places that nobody has; above 0 beside a line only where pairs alone wait for two.</param>
/// <param name="Over">How many have a place beyond a size that was made smaller.</param>
public sealed record ClassList(IReadOnlyList<ClassPlace> Places, IReadOnlyList<ClassWait> Waiting, int Free, int Over)
{
    /// <param name="size">How many children the class takes at first, 0 and more.</param>
    /// <param name="events">In the order in which they happened.</param>
    /// <exception cref="ArgumentException">An event that cannot be; the message is a sentence and says the number of the event, from 1.</exception>
    public static ClassList Of(int size, IReadOnlyList<ClassEvent> events)
    {
        if (size < 0)
            throw new ArgumentException("A class takes 0 children or more.", nameof(size));
        var places = new List<ClassPlace>();
        var line = new List<SignedUp>();
        for (var i = 0; i < events.Count; i++)
        {
            if (Fault(events[i], places, line) is { } fault)
                throw new ArgumentException($"Event {i + 1}: {fault}", nameof(events));
            switch (events[i])
            {
                case SignedUp signUp:
                    line.Add(signUp);
                    break;
                case Withdrew gone:
                    places.RemoveAll(p => p.Child == gone.Child);
                    line = [.. line.Select(s => s with { Children = [.. s.Children.Where(c => c != gone.Child)] }).Where(s => s.Children.Count > 0)];
                    break;
                case Resized other:
                    size = other.Size;
                    break;
            }

            GivePlaces(size, places, line, events[i]);
        }

        return new ClassList(places, [.. line.Select((s, n) => new ClassWait(n + 1, s.Id, s.Family, s.Children))],
            Math.Max(0, size - places.Count), Math.Max(0, places.Count - size));
    }

    private static void GivePlaces(int size, List<ClassPlace> places, List<SignedUp> line, ClassEvent now)
    {
        while (line.Find(s => s.Children.Count <= size - places.Count) is { } next)
        {
            line.Remove(next);
            places.AddRange(next.Children.Select(c => new ClassPlace(c, next.Family, next.Id, CameUp: !ReferenceEquals(next, now))));
        }
    }

    private static string? Fault(ClassEvent happened, List<ClassPlace> places, List<SignedUp> line) => happened switch
    {
        SignedUp { Children.Count: < 1 or > 2 } => "One child is signed up, or two of one family.",
        SignedUp s when s.Children.Distinct().Count() < s.Children.Count => "A child is signed up twice.",
        SignedUp s when s.Children.Any(c => Has(c, places, line)) => "A child has a place or waits already.",
        SignedUp s when places.Any(p => p.SignUp == s.Id) || line.Any(l => l.Id == s.Id) => "Two sign-ups have the same id.",
        Withdrew w when !Has(w.Child, places, line) => "The child neither has a place nor waits.",
        Resized { Size: < 0 } => "A class takes 0 children or more.",
        SignedUp or Withdrew or Resized => null,
        _ => "Nothing is known of what happened.",
    };

    private static bool Has(Guid child, List<ClassPlace> places, List<SignedUp> line) =>
        places.Any(p => p.Child == child) || line.Any(s => s.Children.Contains(child));
}
