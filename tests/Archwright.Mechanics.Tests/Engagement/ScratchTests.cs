using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Slots;

namespace Archwright.Mechanics.Tests.Engagement;

public sealed class ScratchTests(ITestOutputHelper output)
{
    [Fact]
    public void Three_slots()
    {
        foreach (string id in BenchmarkFile.Ids("three_slots"))
        {
            var c = BenchmarkFile.Case("three_slots", id);
            foreach (var r in c["reference"]!.AsArray())
            {
                double d = r.Number("offset_mm");
                var e = new Engager(BenchmarkFile.ThreeSlots(c["inputs"]!.AsObject(), d, Hold.EdgesOnly));
                var x = e.Engage();
                string f = x.Converged ? $"{x.Slots[1].OnTooth.Force.Y:0.0000} ref {r.Number("middle_force_y_N"):0.0000} rel {x.Slots[1].OnTooth.Force.Y / r.Number("middle_force_y_N") - 1:0.00000} strain {x.LargestStrain:0.0000000} ref {r.Number("largest_strain"):0.000000}" : x.Obstacle!.Reason;
                output.WriteLine($"{id} {d} it {x.Iterations} res {x.Residual:e1} nodes {e.Rod.Mesh.Nodes} {f}");
            }
        }
    }

    [Fact]
    public void Arches()
    {
        foreach (string id in BenchmarkFile.Ids("arch"))
        {
            var c = BenchmarkFile.Case("arch", id);
            var e = new Engager(BenchmarkFile.Arch(c));
            var x = e.Engage();
            output.WriteLine($"{id} conv {x.Converged} it {x.Iterations} res {x.Residual:e1} nodes {e.Rod.Mesh.Nodes} {x.Obstacle?.Reason}");
            if (!x.Converged)
                continue;
            var refs = c["reference"]!.AsArray();
            double big = refs.Max(r => BenchmarkFile.Vector(r!["force_N"]).Length);
            double err = 0, merr = 0, mbig = refs.Max(r => BenchmarkFile.Vector(r!["moment_N_mm"]).Length);
            for (int i = 0; i < x.Slots.Length; i++)
            {
                err = Math.Max(err, (x.Slots[i].OnTooth.Force - BenchmarkFile.Vector(refs[i]!["force_N"])).Length);
                merr = Math.Max(merr, (x.Slots[i].OnTooth.Moment - BenchmarkFile.Vector(refs[i]!["moment_N_mm"])).Length);
            }
            output.WriteLine($"   force err/largest {err / big:0.00000} moment {merr:0.000} of {mbig:0.0}; energy {x.StoredEnergy:0.0000} ref {c.Number("stored_energy_N_mm"):0.0000} drawn {x.Slots.Select(s=>s.Drawn).MaxBy(Math.Abs):0.0000} ref {c.Number("drawn_at_displaced_tooth_mm")}");
        }
    }
}

public sealed class Scratch3Tests(ITestOutputHelper output)
{
    [Fact]
    public void Orders()
    {
        foreach (string id in BenchmarkFile.Ids("arch"))
        foreach ((int gap, int slot) in new[] { (2, 3), (3, 2), (3, 3), (4,3), (4,4), (8, 4) })
        {
            var c = BenchmarkFile.Case("arch", id);
            var e = new Engager(BenchmarkFile.Arch(c), new EngagementOptions { ElementsPerGap = gap, ElementsPerSlot = slot });
            var x = e.Engage();
            var t = System.Diagnostics.Stopwatch.StartNew();
            for (int k = 0; k < 5; k++) x = e.Engage();
            double ms = t.Elapsed.TotalMilliseconds / 5;
            var refs = c["reference"]!.AsArray();
            double big = refs.Max(r => BenchmarkFile.Vector(r!["force_N"]).Length);
            double err = 0, merr = 0, mbig = refs.Max(r => BenchmarkFile.Vector(r!["moment_N_mm"]).Length);
            for (int i = 0; i < x.Slots.Length; i++)
            {
                err = Math.Max(err, (x.Slots[i].OnTooth.Force - BenchmarkFile.Vector(refs[i]!["force_N"])).Length);
                merr = Math.Max(merr, (x.Slots[i].OnTooth.Moment - BenchmarkFile.Vector(refs[i]!["moment_N_mm"])).Length);
            }
            int d = e.Arrangement.Slots.ToList().FindIndex(s => s.Label == (string)c["inputs"]!["tooth"]!);
            output.WriteLine($"{id} {gap}/{slot} it {x.Iterations} {ms:0.00} ms nodes {e.Rod.Mesh.Nodes} force err {err / big:0.00000} moment err {merr/Math.Max(mbig,1):0.00000} energy {x.StoredEnergy / c.Number("stored_energy_N_mm") - 1:0.00000} drawn {x.Slots[d].Drawn:0.0000} ref {c.Number("drawn_at_displaced_tooth_mm")}");
        }
    }
}

public sealed class Scratch4Tests(ITestOutputHelper output)
{
    [Fact]
    public void Profile()
    {
        var c = BenchmarkFile.Case("arch", "arch-edges-13-rotated");
        var e = new Engager(BenchmarkFile.Arch(c), new EngagementOptions { ElementsPerGap = 3, ElementsPerSlot = 3 });
        for (int k = 0; k < 300; k++) e.Engage();
        var rod = e.Rod;
        double[] q = rod.State.ToArray();
        double[] g = new double[q.Length];
        var A = new Archwright.Mechanics.Numerics.BlockTridiagonal(rod.Mesh.Nodes);
        double Time(Action a) { for (int k = 0; k < 3000; k++) a(); double best = 1e9; for (int r = 0; r < 30; r++) { var t = System.Diagnostics.Stopwatch.GetTimestamp(); for (int k = 0; k < 30; k++) a(); best = Math.Min(best, System.Diagnostics.Stopwatch.GetElapsedTime(t).TotalMicroseconds / 30); } return best; }
        output.WriteLine($"nodes {rod.Mesh.Nodes}");
        output.WriteLine($"clear {Time(() => A.Clear(rod.Mesh.Nodes)):0.0}");
        output.WriteLine($"energy {Time(() => Archwright.Mechanics.Rods.RodAssembly.Energy(rod.Mesh, rod.Law, rod.Stretch, q)):0.0}");
        output.WriteLine($"add {Time(() => { Archwright.Mechanics.Rods.RodAssembly.Add(rod.Mesh, rod.Law, rod.Stretch, q, g, A); }):0.0}");
        output.WriteLine($"locate {Time(() => rod.Contacts.Locate(rod.Mesh, q, rod.Frames)):0.0}");
        output.WriteLine($"apply {Time(() => rod.Contacts.Apply(q, rod.Frames, g, A, rod.Mesh)):0.0}");
        output.WriteLine($"evaluate {Time(() => rod.Evaluate(q, out _)):0.0}");
        output.WriteLine($"copy {Time(() => rod.Factor.CopyFrom(rod.Tangent)):0.0}");
        output.WriteLine($"copy+factor {Time(() => { rod.Factor.CopyFrom(rod.Tangent); rod.Factor.Factor(); }):0.0}");
        output.WriteLine($"solve {Time(() => { g.AsSpan().Fill(1e-3); rod.Factor.Solve(g); }):0.0}");
        double[] s = rod.Mesh.S.ToArray();
        var m = new Archwright.Mechanics.Rods.RodMesh(400);
        output.WriteLine($"mesh build {Time(() => m.Build(s, e.Layout.Rest)):0.0}");
        output.WriteLine($"engage {Time(() => e.Engage()):0.0}");
        var moved = e.Arrangement.Slots[4].Actual;
        int n = 0;
        output.WriteLine($"warm {Time(() => { n++; e.Apply(new Step(null, [(4, moved.Moved(new Archwright.Mechanics.Numerics.Vector3(0, 0, n % 2 == 0 ? 0.05 : 0), default))])); }):0.0}");
        output.WriteLine($"new engager {Time(() => { _ = new Engager(e.Arrangement); }):0.0}");
    }
}

public sealed class Scratch5Tests(ITestOutputHelper output)
{
    [Fact]
    public void Warm()
    {
        var c = BenchmarkFile.Case("arch", "arch-edges-13-rotated");
        var e = new Engager(BenchmarkFile.Arch(c), new EngagementOptions { ElementsPerGap = 3, ElementsPerSlot = 3 });
        Archwright.Mechanics.Engagement.Equilibrium<Archwright.Mechanics.Sections.ElasticSection>.Log = output.WriteLine;
        e.Engage();
        output.WriteLine("WARM");
        var moved = e.Arrangement.Slots[4].Actual;
        e.Apply(new Step(null, [(4, moved.Moved(new Archwright.Mechanics.Numerics.Vector3(0, 0, -0.05), default))]));
        output.WriteLine("WARM2");
        e.Apply(new Step(null, [(4, moved.Moved(new Archwright.Mechanics.Numerics.Vector3(0, 0, -0.1), default))]));
        output.WriteLine("WARM3");
        e.Apply(new Step(null, [(4, moved.Moved(new Archwright.Mechanics.Numerics.Vector3(0, 0, -0.15), default))]));
        Archwright.Mechanics.Engagement.Equilibrium<Archwright.Mechanics.Sections.ElasticSection>.Log = null;
    }
}
