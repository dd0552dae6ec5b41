using Microsoft.EntityFrameworkCore.Migrations;

namespace Archwright.Storage.Model;

/// <summary>What the database itself refuses, whatever program asks: to change or delete a signed visit or its
/// amendments, and to touch the trail. Migrations call this; what they have called once stays as it is.</summary>
internal static class Guards
{
    private const string SignedStays = "A signed visit is amended, never changed.";
    private const string TrailStays = "The trail is only ever added to.";
    private const string DisposalsStay = "That a record was deleted stays: it is only ever added to.";

    // The text of the amendments is a JSON list: the new one begins with the old one, less its last bracket.
    private const string KeepsAmendments =
        "substr(NEW.\"Amendments\", 1, length(OLD.\"Amendments\") - 1)"
        + " = substr(OLD.\"Amendments\", 1, length(OLD.\"Amendments\") - 1)";

    /// <summary>Puts the guards up in SQLite.</summary>
    public static void UpInSqlite(MigrationBuilder migration)
    {
        migration.Sql(
            $"""
            CREATE TRIGGER signed_visit_stays BEFORE UPDATE ON "Visits"
            WHEN OLD."Signed" IS NOT NULL AND (
                NEW."Content" IS NOT OLD."Content" OR NEW."Signed" IS NOT OLD."Signed"
                OR NEW."PatientId" IS NOT OLD."PatientId" OR NEW."Day" IS NOT OLD."Day"
                OR NEW."State" IS NOT OLD."State" OR NOT ({KeepsAmendments}))
            BEGIN SELECT RAISE(ABORT, '{SignedStays}'); END;
            """);
        migration.Sql(
            $"""
            CREATE TRIGGER signed_visit_is_kept BEFORE DELETE ON "Visits" WHEN OLD."Signed" IS NOT NULL
            BEGIN SELECT RAISE(ABORT, '{SignedStays}'); END;
            """);
        foreach (string act in new[] { "UPDATE", "DELETE" })
        {
            migration.Sql(
                $"""
                CREATE TRIGGER trail_stays_{act} BEFORE {act} ON "Trail"
                BEGIN SELECT RAISE(ABORT, '{TrailStays}'); END;
                """);
        }
    }

    /// <summary>Puts the guards up in PostgreSQL.</summary>
    public static void UpInPostgres(MigrationBuilder migration)
    {
        migration.Sql(
            $"""
            CREATE FUNCTION signed_visit_stays() RETURNS trigger LANGUAGE plpgsql AS $body$
            BEGIN
                IF OLD."Signed" IS NULL THEN
                    IF TG_OP = 'DELETE' THEN RETURN OLD; END IF;
                    RETURN NEW;
                END IF;
                IF TG_OP = 'DELETE' OR NEW."Content" IS DISTINCT FROM OLD."Content"
                    OR NEW."Signed" IS DISTINCT FROM OLD."Signed"
                    OR NEW."PatientId" IS DISTINCT FROM OLD."PatientId" OR NEW."Day" IS DISTINCT FROM OLD."Day"
                    OR NEW."State" IS DISTINCT FROM OLD."State" OR NOT ({KeepsAmendments}) THEN
                    RAISE EXCEPTION '{SignedStays}';
                END IF;
                RETURN NEW;
            END $body$;
            CREATE TRIGGER signed_visit_stays BEFORE UPDATE OR DELETE ON "Visits"
                FOR EACH ROW EXECUTE FUNCTION signed_visit_stays();
            CREATE FUNCTION trail_stays() RETURNS trigger LANGUAGE plpgsql AS $body$
            BEGIN RAISE EXCEPTION '{TrailStays}'; END $body$;
            CREATE TRIGGER trail_stays BEFORE UPDATE OR DELETE OR TRUNCATE ON "Trail"
                FOR EACH STATEMENT EXECUTE FUNCTION trail_stays();
            """);
    }

    /// <summary>Lets the signed visits of a patient go where the deletion of the record by the practice's rule is on
    /// record, and guards that record itself.</summary>
    public static void LetGoInSqlite(MigrationBuilder migration)
    {
        migration.Sql("DROP TRIGGER signed_visit_is_kept;");
        migration.Sql(
            $"""
            CREATE TRIGGER signed_visit_is_kept BEFORE DELETE ON "Visits" WHEN OLD."Signed" IS NOT NULL
                AND NOT EXISTS (SELECT 1 FROM "Disposals" WHERE "PatientId" = OLD."PatientId")
            BEGIN SELECT RAISE(ABORT, '{SignedStays}'); END;
            """);
        foreach (string act in new[] { "UPDATE", "DELETE" })
        {
            migration.Sql(
                $"""
                CREATE TRIGGER disposals_stay_{act} BEFORE {act} ON "Disposals"
                BEGIN SELECT RAISE(ABORT, '{DisposalsStay}'); END;
                """);
        }
    }

    /// <summary>The same in PostgreSQL.</summary>
    public static void LetGoInPostgres(MigrationBuilder migration) => migration.Sql(
        $"""
        CREATE FUNCTION signed_visit_is_let_go() RETURNS trigger LANGUAGE plpgsql AS $body$
        BEGIN
            IF OLD."Signed" IS NOT NULL
                AND NOT EXISTS (SELECT 1 FROM "Disposals" WHERE "PatientId" = OLD."PatientId") THEN
                RAISE EXCEPTION '{SignedStays}';
            END IF;
            RETURN OLD;
        END $body$;
        DROP TRIGGER signed_visit_stays ON "Visits";
        CREATE TRIGGER signed_visit_stays BEFORE UPDATE ON "Visits"
            FOR EACH ROW EXECUTE FUNCTION signed_visit_stays();
        CREATE TRIGGER signed_visit_is_kept BEFORE DELETE ON "Visits"
            FOR EACH ROW EXECUTE FUNCTION signed_visit_is_let_go();
        CREATE FUNCTION disposals_stay() RETURNS trigger LANGUAGE plpgsql AS $body$
        BEGIN RAISE EXCEPTION '{DisposalsStay}'; END $body$;
        CREATE TRIGGER disposals_stay BEFORE UPDATE OR DELETE OR TRUNCATE ON "Disposals"
            FOR EACH STATEMENT EXECUTE FUNCTION disposals_stay();
        """);

    /// <summary>Keeps every signed visit again, in SQLite.</summary>
    public static void KeepAllInSqlite(MigrationBuilder migration)
    {
        migration.Sql("DROP TRIGGER disposals_stay_UPDATE;");
        migration.Sql("DROP TRIGGER disposals_stay_DELETE;");
        migration.Sql("DROP TRIGGER signed_visit_is_kept;");
        migration.Sql(
            $"""
            CREATE TRIGGER signed_visit_is_kept BEFORE DELETE ON "Visits" WHEN OLD."Signed" IS NOT NULL
            BEGIN SELECT RAISE(ABORT, '{SignedStays}'); END;
            """);
    }

    /// <summary>The same in PostgreSQL.</summary>
    public static void KeepAllInPostgres(MigrationBuilder migration) => migration.Sql(
        """
        DROP TRIGGER disposals_stay ON "Disposals"; DROP FUNCTION disposals_stay();
        DROP TRIGGER signed_visit_is_kept ON "Visits"; DROP FUNCTION signed_visit_is_let_go();
        DROP TRIGGER signed_visit_stays ON "Visits";
        CREATE TRIGGER signed_visit_stays BEFORE UPDATE OR DELETE ON "Visits"
            FOR EACH ROW EXECUTE FUNCTION signed_visit_stays();
        """);

    /// <summary>Takes the guards down in SQLite.</summary>
    public static void DownInSqlite(MigrationBuilder migration)
    {
        foreach (string name in new[]
                 {
                     "signed_visit_stays", "signed_visit_is_kept", "trail_stays_UPDATE", "trail_stays_DELETE",
                 })
        {
            migration.Sql($"DROP TRIGGER {name};");
        }
    }

    /// <summary>Takes the guards down in PostgreSQL.</summary>
    public static void DownInPostgres(MigrationBuilder migration) => migration.Sql(
        """
        DROP TRIGGER signed_visit_stays ON "Visits"; DROP FUNCTION signed_visit_stays();
        DROP TRIGGER trail_stays ON "Trail"; DROP FUNCTION trail_stays();
        """);
}
