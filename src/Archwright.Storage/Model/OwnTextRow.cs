namespace Archwright.Storage.Model;

/// <summary>Words of the practice in place of ours, one text in one language a row.</summary>
internal sealed class OwnTextRow
{
    /// <summary>Code of the language: "en".</summary>
    public required string Language { get; init; }

    /// <summary>Which text: "eat.text".</summary>
    public required string Key { get; init; }

    /// <summary>The practice's words.</summary>
    public required string Text { get; set; }

    /// <summary>Name of the account that wrote them last.</summary>
    public required string ChangedBy { get; set; }

    /// <summary>When.</summary>
    public required DateTimeOffset ChangedAt { get; set; }

    /// <summary>Changes with every save.</summary>
    public Guid Revision { get; private set; }
}
