using Archwright.Practice.Settings;

namespace Archwright.Storage.Model;

/// <summary>The one row of settings.</summary>
internal sealed class SettingsRow
{
    /// <summary>The only identity there is.</summary>
    public const int Only = 1;

    /// <summary>Always <see cref="Only"/>.</summary>
    public int Id { get; init; } = Only;

    /// <summary>What the practice has settled.</summary>
    public PracticeSettings Settings { get; set; } = new();

    /// <summary>Changes with every save.</summary>
    public Guid Revision { get; private set; }
}
