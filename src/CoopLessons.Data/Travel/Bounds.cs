namespace CoopLessons.Data.Travel;

/// <summary>
/// A row or a value that does not leave this installation with its family: a secret, or what means something here alone. On a
/// class none of its rows goes, on a property the value is left out and begins anew elsewhere.
/// </summary>
/// <param name="why">In the words of the file that tells the family so: “its address is a secret”.</param>
[AttributeUsage(AttributeTargets.Class | AttributeTargets.Property)]
public sealed class StaysHereAttribute(string why) : Attribute
{
    public string Why => why;
}

/// <summary>A value that names a co-op. It leaves with its family, and is empty where the family is taken in: that co-op is not there.</summary>
[AttributeUsage(AttributeTargets.Property)]
public sealed class NamesCoopAttribute : Attribute;

/// <summary>A family's file cannot be taken in, or made; the message is one sentence to show.</summary>
public sealed class FamilyUnfitException(string sentence, Exception? because = null) : Exception(sentence, because);
