using System.Collections.Immutable;

namespace Archwright.Treatment.Policies;

/// <summary>Something wrong with a policy file.</summary>
/// <param name="Path">Where in the file, such as <c>figures[3].value</c>.</param>
/// <param name="Message">What is wrong.</param>
/// <param name="Remedy">How to mend it.</param>
public sealed record PolicyProblem(string Path, string Message, string Remedy);

/// <summary>What came of reading a policy: the policy, or everything that is wrong with the file.</summary>
/// <param name="Policy">Null exactly when there are problems.</param>
/// <param name="Problems">All of them, in the order of the file.</param>
public sealed record PolicyReading(VisitPolicy? Policy, ImmutableArray<PolicyProblem> Problems);
