using System.Globalization;

namespace CoopLessons.Web.Planning;

/// <summary>What a page says of a long computation.</summary>
public static class JobWords
{
    /// <summary>The line is full; answered with <see cref="StatusCodes.Status503ServiceUnavailable"/>.</summary>
    public const string Busy = "The server is busy laying out weeks of others. Ask again in a minute.";

    public const string Failed = "This could not be laid out. What happened is in the server’s log; your plan is as it was.";

    /// <summary>A restart ends what was in line, and what is over is kept for an hour.</summary>
    public const string Forgotten = "The server no longer knows this layout: it was started anew, or an hour has gone by. Your plan is as it was; ask once more.";

    /// <summary>How the making of a file stands, in one sentence.</summary>
    /// <param name="what">The beginning of the sentence: “The file”.</param>
    public static string OfMaking(JobStanding? job, string what) => job switch
    {
        { State: JobState.Waiting } => "The server is busy with something else; this is begun next.",
        { State: JobState.Running, Step.Length: > 0 } => job.Step + ".",
        { State: JobState.Done } => $"{what} is made.",
        { State: JobState.Failed } => $"{what} could not be made. What happened is in the server’s log; nothing of yours was changed.",
        { State: JobState.Dropped } => "This was called off.",
        _ => $"{what} is being made.",
    };

    /// <summary>How the taking in of a family stands, in one sentence.</summary>
    public static string OfTaking(JobStanding? job) => job switch
    {
        { State: JobState.Failed } => "The family could not be taken in. What happened is in the server’s log; nothing of it was taken in.",
        { State: JobState.Dropped } => "This was called off. Nothing was taken in.",
        { State: JobState.Running, Step.Length: 0 } => "The file is read.",
        // Whether it came or was refused stands on the page that is loaded then.
        { State: JobState.Done } => "The file is read to its end.",
        _ => OfMaking(job, "The family"),
    };

    /// <summary>How a job stands, in one sentence.</summary>
    /// <param name="job">Null for one that the server does not know.</param>
    public static string Of(JobStanding? job) => job switch
    {
        null => Forgotten,
        { State: JobState.Waiting, Place: 1 } => "This is the next to be laid out.",
        { State: JobState.Waiting } => string.Create(CultureInfo.InvariantCulture, $"There {(job.Place == 2 ? "is one" : $"are {job.Place - 1}")} before this one."),
        { State: JobState.Running } => job.Step.Length == 0 ? "This is being laid out." : job.Step + ".",
        { State: JobState.Done } => "This is laid out.",
        { State: JobState.Failed } => job.Fault!,
        { ReplacedBy: not null } => "You asked for this once more, and the newer layout took its place.",
        _ => "This was called off.",
    };
}
