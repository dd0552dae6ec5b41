using Archwright.Practice.Audit;
using Archwright.Practice.Clients;
using Archwright.Practice.Courses;
using Archwright.Practice.Keeping;
using Archwright.Practice.Leaflets;
using Archwright.Practice.Links;
using Archwright.Practice.People;
using Archwright.Practice.Stock;
using Archwright.Practice.Visits;
using Archwright.Storage.Documents;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Identity.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.ChangeTracking;

namespace Archwright.Storage.Model;

/// <summary>The records of a practice. One model; <see cref="SqliteContext"/> and <see cref="PostgresContext"/> carry
/// the migrations of each database.</summary>
/// <param name="options">Which database.</param>
public abstract class PracticeContext(DbContextOptions options)
    : IdentityUserContext<StaffAccount, Guid>(options)
{
    private const string Revision = "Revision";

    /// <summary>Patients.</summary>
    public DbSet<Patient> Patients => Set<Patient>();

    /// <summary>Treatments per arch.</summary>
    public DbSet<ArchTreatment> Treatments => Set<ArchTreatment>();

    /// <summary>Visits, booked to signed.</summary>
    public DbSet<Visit> Visits => Set<Visit>();

    /// <summary>Lots on the shelf.</summary>
    public DbSet<StockLot> Lots => Set<StockLot>();

    /// <summary>What came and went.</summary>
    public DbSet<StockMovement> Movements => Set<StockMovement>();

    /// <summary>The trail.</summary>
    public DbSet<AuditLine> Trail => Set<AuditLine>();

    /// <summary>Leaflets as released.</summary>
    public DbSet<ReleasedLeaflet> Leaflets => Set<ReleasedLeaflet>();

    /// <summary>Links of patients.</summary>
    public DbSet<PatientLink> Links => Set<PatientLink>();

    /// <summary>Discomfort by day, as patients note it.</summary>
    public DbSet<DiscomfortDay> Discomfort => Set<DiscomfortDay>();

    /// <summary>Programs that may ask the API.</summary>
    public DbSet<ApiClient> Clients => Set<ApiClient>();

    /// <summary>Records that were deleted by the practice's rule.</summary>
    public DbSet<Disposal> Disposals => Set<Disposal>();

    /// <summary>What the program judged by, and since when.</summary>
    public DbSet<PolicyInForce> PoliciesInForce => Set<PolicyInForce>();

    internal DbSet<LadderRow> Ladders => Set<LadderRow>();

    internal DbSet<OwnTextRow> OwnTexts => Set<OwnTextRow>();

    internal DbSet<SettingsRow> SettingsRows => Set<SettingsRow>();

    /// <inheritdoc/>
    public override Task<int> SaveChangesAsync(
        bool acceptAllChangesOnSuccess, CancellationToken cancellationToken = default)
    {
        Renew();
        return base.SaveChangesAsync(acceptAllChangesOnSuccess, cancellationToken);
    }

    /// <inheritdoc/>
    public override int SaveChanges(bool acceptAllChangesOnSuccess)
    {
        Renew();
        return base.SaveChanges(acceptAllChangesOnSuccess);
    }

    /// <inheritdoc/>
    protected override void OnModelCreating(ModelBuilder builder)
    {
        base.OnModelCreating(builder);
        People(builder);
        WireColumns.AddTo(builder.Entity<Visit>(), this is SqliteContext);
        Shelf(builder);
        Outside(builder);
        foreach (var entity in builder.Model.GetEntityTypes())
        {
            if (entity.FindPrimaryKey() is { Properties: [{ Name: "Id" } key] } && key.ClrType == typeof(Guid))
                key.ValueGenerated = Microsoft.EntityFrameworkCore.Metadata.ValueGenerated.Never;
        }
    }

    private static void People(ModelBuilder builder)
    {
        builder.Entity<StaffAccount>(account =>
        {
            account.ToTable("StaffAccounts");
            account.Property(one => one.Name).HasMaxLength(200);
            account.Property(one => one.Role).HasConversion<string>().HasMaxLength(20);
        });
        builder.Entity<Patient>(patient =>
        {
            patient.Property(one => one.Alerts).IsDocument();
            patient.Property(one => one.Revision).IsConcurrencyToken();
            patient.Ignore(one => one.FullName);
            patient.HasIndex(one => one.SearchName);
        });
        builder.Entity<ArchTreatment>(treatment =>
        {
            treatment.ToTable("Treatments");
            treatment.Property(one => one.Jaw).HasConversion<string>().HasMaxLength(5);
            treatment.Property(one => one.Appliance).IsDocument();
            treatment.Property(one => one.StartedFrom).IsDocument();
            treatment.Property(one => one.Revision).IsConcurrencyToken();
            treatment.HasOne<Patient>().WithMany().HasForeignKey(one => one.PatientId)
                .OnDelete(DeleteBehavior.Restrict);
        });
        builder.Entity<LadderRow>(row =>
        {
            row.ToTable("TreatmentLadders");
            row.HasKey(one => one.TreatmentId);
            row.Property(one => one.TreatmentId).ValueGeneratedNever();
            row.Property(one => one.Ladder).IsDocument();
            row.Property(one => one.Revision).IsConcurrencyToken();
            row.HasIndex(one => one.PatientId);
            row.HasOne<ArchTreatment>().WithOne().HasForeignKey<LadderRow>(one => one.TreatmentId)
                .OnDelete(DeleteBehavior.Cascade);
        });
        builder.Entity<Visit>(visit =>
        {
            visit.Property(one => one.Kind).HasConversion<string>().HasMaxLength(20);
            visit.Property(one => one.State).HasConversion<string>().HasMaxLength(20);
            visit.Property(one => one.Content).IsDocument();
            visit.Property(one => one.Signed).IsOptionalDocument();
            visit.Property(one => one.Amendments).IsDocument();
            visit.Property(one => one.Revision).IsConcurrencyToken();
            visit.HasIndex(one => new { one.Day, one.Starts });
            visit.HasIndex(one => new { one.PatientId, one.Day });
            visit.HasOne<Patient>().WithMany().HasForeignKey(one => one.PatientId).OnDelete(DeleteBehavior.Restrict);
        });
    }

    private static void Shelf(ModelBuilder builder)
    {
        builder.Entity<StockLot>(lot =>
        {
            lot.Property(one => one.Jaw).HasConversion<string>().HasMaxLength(5);
            lot.Property(one => one.Revision).IsConcurrencyToken();
            lot.HasIndex(one => one.WireId);
            lot.Property(one => one.Gtin).HasMaxLength(14);
            lot.HasIndex(one => one.Gtin);
        });
        builder.Entity<StockMovement>(movement =>
        {
            movement.HasIndex(one => one.LotId);
            movement.HasIndex(one => one.VisitId);
        });
        builder.Entity<AuditLine>(line =>
        {
            line.ToTable("Trail");
            line.Property(one => one.Act).HasConversion<string>().HasMaxLength(20);
            line.HasIndex(one => new { one.PatientId, one.At });
        });
        builder.Entity<PolicyInForce>(policy => policy.ToTable("PoliciesInForce"));
        builder.Entity<Disposal>(disposal =>
        {
            disposal.ToTable("Disposals");
            disposal.HasIndex(one => one.PatientId);
        });
        builder.Entity<SettingsRow>(row =>
        {
            row.ToTable("Settings");
            row.Property(one => one.Id).ValueGeneratedNever();
            row.Property(one => one.Settings).IsDocument();
            row.Property(one => one.Revision).IsConcurrencyToken();
        });
    }

    // What leaves the practice: leaflets, links, and what comes back by them.
    private static void Outside(ModelBuilder builder)
    {
        builder.Entity<ReleasedLeaflet>(leaflet =>
        {
            leaflet.ToTable("Leaflets");
            leaflet.Property(one => one.Leaflet).IsDocument();
            leaflet.Property(one => one.Pictures).IsDocument();
            leaflet.HasIndex(one => one.VisitId);
            leaflet.HasOne<Patient>().WithMany().HasForeignKey(one => one.PatientId).OnDelete(DeleteBehavior.Restrict);
        });
        builder.Entity<PatientLink>(link =>
        {
            link.ToTable("PatientLinks");
            link.Property(one => one.Digest).HasMaxLength(64);
            link.HasIndex(one => one.Digest).IsUnique();
            link.HasIndex(one => one.LeafletId);
            link.HasOne<ReleasedLeaflet>().WithMany().HasForeignKey(one => one.LeafletId)
                .OnDelete(DeleteBehavior.Restrict);
        });
        builder.Entity<OwnTextRow>(text =>
        {
            text.ToTable("OwnTexts");
            text.HasKey(one => new { one.Language, one.Key });
            text.Property(one => one.Language).HasMaxLength(8);
            text.Property(one => one.Key).HasMaxLength(60);
            text.Property(one => one.Revision).IsConcurrencyToken();
        });
        builder.Entity<DiscomfortDay>(day =>
        {
            day.ToTable("DiscomfortDays");
            day.Property(one => one.Revision).IsConcurrencyToken();
            day.HasIndex(one => new { one.PatientId, one.Day }).IsUnique();
            day.HasOne<Patient>().WithMany().HasForeignKey(one => one.PatientId).OnDelete(DeleteBehavior.Restrict);
        });
        builder.Entity<ApiClient>(client =>
        {
            client.ToTable("ApiClients");
            client.Property(one => one.Name).HasMaxLength(100);
            client.Property(one => one.Digest).HasMaxLength(64);
            client.Property(one => one.Scopes).IsDocument();
            client.HasIndex(one => one.Digest).IsUnique();
        });
    }

    // Whoever saves after somebody else finds another revision than the one that was read, and is told.
    private void Renew()
    {
        foreach (EntityEntry entry in ChangeTracker.Entries())
        {
            if (entry.State is EntityState.Added or EntityState.Modified
                && entry.Metadata.FindProperty(Revision) is not null)
            {
                entry.Property(Revision).CurrentValue = Guid.CreateVersion7();
            }
        }
    }
}
