using System.Runtime.ExceptionServices;

namespace Archwright.Treatment.Ladders;

/// <summary>Work side by side whose outcome does not depend on the number of threads.</summary>
internal static class LadderThreads
{
    /// <summary>Does each piece of work once. A failure is passed on as it is, not wrapped.</summary>
    public static void Each(LadderSpace space, int count, Action<int> work)
    {
        try
        {
            Parallel.For(
                0, count,
                new ParallelOptions
                {
                    CancellationToken = space.Cancellation, MaxDegreeOfParallelism = space.Threads ?? -1,
                },
                work);
        }
        catch (AggregateException several)
        {
            space.Cancellation.ThrowIfCancellationRequested();
            ExceptionDispatchInfo.Throw(several.InnerExceptions[0]);
        }
    }
}
