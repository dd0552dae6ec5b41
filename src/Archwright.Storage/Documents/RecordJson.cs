using System.Text.Json;

namespace Archwright.Storage.Documents;

/// <summary>Parts of the record as JSON for whoever takes them out of the program: as the database keeps them.
/// </summary>
public static class RecordJson
{
    /// <summary>A part of the record.</summary>
    public static JsonElement Of<T>(T part)
    {
        using JsonDocument document = JsonDocument.Parse(DocumentJson.Write(part));
        return document.RootElement.Clone();
    }
}
