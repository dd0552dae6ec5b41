using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;

namespace Archwright.Architecture.Tests;

/// <summary>What a compiled assembly really uses, read from its tables: a reference that no code needs does not count,
/// a use inside a method's body does.</summary>
internal sealed class CompiledAssembly : IDisposable
{
    private readonly PEReader file;
    private readonly MetadataReader tables;

    public CompiledAssembly(string path)
    {
        file = new PEReader(File.OpenRead(path));
        tables = file.GetMetadataReader();
    }

    /// <summary>Every type of another assembly that is used somewhere, with the assembly's name.</summary>
    public IEnumerable<(string Assembly, string Type)> Uses =>
        from handle in tables.TypeReferences
        let type = tables.GetTypeReference(handle)
        where type.ResolutionScope.Kind == HandleKind.AssemblyReference
        let assembly = tables.GetAssemblyReference((AssemblyReferenceHandle)type.ResolutionScope)
        select (tables.GetString(assembly.Name), $"{tables.GetString(type.Namespace)}.{tables.GetString(type.Name)}");

    public void Dispose() => file.Dispose();
}
