using Archwright.Practice.Demo;
using Archwright.Storage.Model;
using Archwright.Storage.Opening;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;

namespace Archwright.Web.Hosting;

/// <summary>Puts the invented practice into a new database.</summary>
public static class DemoLoading
{
    /// <summary>Makes the demo practice, unless it is there already.</summary>
    /// <exception cref="InvalidOperationException">The database holds a real practice.</exception>
    public static async Task MakeAsync(
        PracticeDatabase database, TimeProvider clock, CancellationToken cancellation = default)
    {
        await using PracticeContext db = database.CreateDbContext();
        if (await db.Users.AnyAsync(cancellation))
        {
            if (!(await database.SettingsAsync(cancellation)).IsDemo)
            {
                throw new InvalidOperationException(
                    "This database holds a real practice: the demo does not go in there. Give it a folder of its own.");
            }

            return;
        }

        DateOnly today = DateOnly.FromDateTime(clock.GetLocalNow().DateTime);
        DemoPractice demo = DemoPractice.Make(today);
        db.AddRange(demo.Patients);
        db.AddRange(demo.Treatments);
        db.AddRange(demo.Visits);
        db.AddRange(demo.Lots);
        var hasher = new PasswordHasher<StaffAccount>();
        foreach (DemoSignIn one in demo.Staff)
        {
            var account = new StaffAccount
            {
                Id = Guid.CreateVersion7(),
                UserName = one.UserName,
                NormalizedUserName = one.UserName.ToUpperInvariant(),
                Name = one.Name,
                Role = one.Role,
                SecurityStamp = Guid.NewGuid().ToString("N"),
                LockoutEnabled = true,
            };
            account.PasswordHash = hasher.HashPassword(account, DemoPractice.Password);
            db.Users.Add(account);
        }

        await db.SaveChangesAsync(cancellation);
        await database.SettleAsync(demo.Settings, cancellation);
    }
}
