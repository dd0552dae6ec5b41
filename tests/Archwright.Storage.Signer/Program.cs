using Archwright.Practice.People;
using Archwright.Storage.Desks;
using Archwright.Storage.Opening;
using Archwright.Storage.Signer;

// signer sqlite|postgres CONNECTION VISIT REVISION after-a-write|before-commit|after-commit|nowhere
// Signs the visit; at the place named it says "here" and waits for its end.
var pause = new PauseAt(args[4]);
PracticeDatabase database = args[0] == "sqlite"
    ? PracticeDatabase.Sqlite(args[1], pause, pause.Transactions)
    : PracticeDatabase.Postgres(args[1], pause, pause.Transactions);
var by = new Actor(Guid.CreateVersion7(), "Dr Iva Lund", StaffRole.Orthodontist);
await new VisitDesk(database, TimeProvider.System).SignAsync(Guid.Parse(args[2]), Guid.Parse(args[3]), by);
Console.WriteLine("signed");
