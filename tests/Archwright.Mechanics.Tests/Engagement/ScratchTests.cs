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

public sealed class Scratch2Tests(ITestOutputHelper output)
{
    [Fact]
    public void One()
    {
        var c = BenchmarkFile.Case("three_slots", "three-slots-016-in-022-uneven");
        Archwright.Mechanics.Engagement.Equilibrium<Archwright.Mechanics.Sections.ElasticSection>.Log = output.WriteLine;
        var e = new Engager(BenchmarkFile.ThreeSlots(c["inputs"]!.AsObject(), 1, Hold.EdgesOnly));
        e.Engage();
        Archwright.Mechanics.Engagement.Equilibrium<Archwright.Mechanics.Sections.ElasticSection>.Log = null;
    }
    [Fact]
    public void Two()
    {
        Archwright.Mechanics.Engagement.Equilibrium<Archwright.Mechanics.Sections.ElasticSection>.Log = output.WriteLine;
        var e = new Engager(BenchmarkFile.Arch(BenchmarkFile.Case("arch", "arch-edges-13-labial")));
        e.Engage();
        Archwright.Mechanics.Engagement.Equilibrium<Archwright.Mechanics.Sections.ElasticSection>.Log = null;
    }
}
