using System.Runtime.ExceptionServices;

namespace CoopLessons.Documents.Pdf;

/// <summary>
/// Work on files from elsewhere, whose objects may nest deeper than a usual thread's stack bears. The stack is memory only
/// as far as it is used.
/// </summary>
internal static class RoomyThread
{
    private const int Stack = 128 * 1024 * 1024;

    /// <summary>Waits for the work; its fault is thrown here.</summary>
    public static void Run(Action work)
    {
        ExceptionDispatchInfo? fault = null;
        var thread = new Thread(
            () =>
            {
                try
                {
                    work();
                }
                catch (Exception caught)
                {
                    fault = ExceptionDispatchInfo.Capture(caught);
                }
            },
            Stack)
        { IsBackground = true };
        thread.Start();
        thread.Join();
        fault?.Throw();
    }
}
