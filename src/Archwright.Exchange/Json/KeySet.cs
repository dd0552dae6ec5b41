using System.Collections.Immutable;

namespace Archwright.Exchange.Json;

/// <summary>The keys that one kind of object may have. The schemas list the same; a test compares them.</summary>
/// <param name="What">What the object is, as in "… is no key of <i>a slot</i>".</param>
/// <param name="Definition">Name of its definition in the schema; empty for the root.</param>
/// <param name="Keys">In the order in which they are written.</param>
internal sealed record KeySet(string What, string Definition, ImmutableArray<string> Keys);
