using System.Data.Common;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace Archwright.Storage.Signer;

/// <summary>Stops the program at one place of the transaction, and says that it is there.</summary>
internal sealed class PauseAt(string place) : DbCommandInterceptor
{
    public IInterceptor Transactions { get; } = new AtCommit(place);

    public override async ValueTask<DbDataReader> ReaderExecutedAsync(
        DbCommand command, CommandExecutedEventData eventData, DbDataReader result,
        CancellationToken cancellationToken = default)
    {
        if (place == "after-a-write" && IsWrite(command))
            await Here();
        return result;
    }

    public override async ValueTask<int> NonQueryExecutedAsync(
        DbCommand command, CommandExecutedEventData eventData, int result,
        CancellationToken cancellationToken = default)
    {
        if (place == "after-a-write" && IsWrite(command))
            await Here();
        return result;
    }

    internal static async Task Here()
    {
        Console.WriteLine("here");
        await Console.Out.FlushAsync();
        await Task.Delay(Timeout.Infinite);
    }

    private static bool IsWrite(DbCommand command) =>
        command.CommandText.Contains("INSERT", StringComparison.Ordinal)
        || command.CommandText.Contains("UPDATE", StringComparison.Ordinal);

    private sealed class AtCommit(string place) : DbTransactionInterceptor
    {
        public override async ValueTask<InterceptionResult> TransactionCommittingAsync(
            DbTransaction transaction, TransactionEventData eventData, InterceptionResult result,
            CancellationToken cancellationToken = default)
        {
            if (place == "before-commit")
                await Here();
            return result;
        }

        public override async Task TransactionCommittedAsync(
            DbTransaction transaction, TransactionEndEventData eventData,
            CancellationToken cancellationToken = default)
        {
            if (place == "after-commit")
                await Here();
        }
    }
}
