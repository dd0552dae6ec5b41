using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace Archwright.Storage.Model;

/// <summary>Tells a context which tables accounts have: the newest, with passkeys. The library looks for it among the
/// services of the application, which a context of ours does not otherwise know.</summary>
internal static class AccountSchema
{
    private static readonly IServiceProvider Services = new ServiceCollection()
        .Configure<IdentityOptions>(options => options.Stores.SchemaVersion = IdentitySchemaVersions.Version3)
        .BuildServiceProvider();

    /// <summary>Options with the newest schema of accounts.</summary>
    public static DbContextOptionsBuilder<T> WithPasskeys<T>(this DbContextOptionsBuilder<T> builder)
        where T : DbContext
    {
        builder.UseApplicationServiceProvider(Services);
        return builder;
    }
}
