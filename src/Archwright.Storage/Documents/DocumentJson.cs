using System.Text.Json;
using System.Text.Json.Serialization;
using Archwright.Dentition.Teeth;
using Archwright.Practice.Values;

namespace Archwright.Storage.Documents;

/// <summary>How parts of the record are written as JSON. Words for enumerations, ISO numbers for teeth, so that a
/// record can be read without this program in thirty years.</summary>
internal static class DocumentJson
{
    private static readonly JsonSerializerOptions Options = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower,
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
        IgnoreReadOnlyProperties = true,
        Converters =
        {
            new JsonStringEnumConverter(JsonNamingPolicy.KebabCaseLower, allowIntegerValues: false),
            new ToothConverter(),
            new ListingConverter(),
            new ToothMapConverter(),
        },
    };

    /// <summary>A value as JSON text.</summary>
    public static string Write<T>(T value) => JsonSerializer.Serialize(value, Options);

    /// <summary>A value from JSON text.</summary>
    /// <exception cref="JsonException">The text is not such a value.</exception>
    public static T Read<T>(string json) => JsonSerializer.Deserialize<T>(json, Options)
        ?? throw new JsonException("The document is empty.");

    private sealed class ToothConverter : JsonConverter<ToothNumber>
    {
        public override ToothNumber Read(ref Utf8JsonReader reader, Type type, JsonSerializerOptions options) =>
            Parse(reader.GetString());

        public override void Write(Utf8JsonWriter writer, ToothNumber value, JsonSerializerOptions options) =>
            writer.WriteStringValue(value.ToIso());
    }

    internal static ToothNumber Parse(string? iso) => ToothNumber.TryParse(iso, out ToothNumber tooth)
        ? tooth
        : throw new JsonException($"'{iso}' is no ISO 3950 number of a permanent tooth.");

    private sealed class ListingConverter : JsonConverterFactory
    {
        public override bool CanConvert(Type typeToConvert) => IsGeneric(typeToConvert, typeof(Listing<>));

        public override JsonConverter CreateConverter(Type typeToConvert, JsonSerializerOptions options) =>
            Make(typeof(Of<>), typeToConvert);

        private sealed class Of<T> : JsonConverter<Listing<T>>
            where T : notnull
        {
            public override Listing<T> Read(ref Utf8JsonReader reader, Type type, JsonSerializerOptions options) =>
                Listing<T>.Of(JsonSerializer.Deserialize<T[]>(ref reader, options) ?? []);

            public override void Write(Utf8JsonWriter writer, Listing<T> value, JsonSerializerOptions options) =>
                JsonSerializer.Serialize(writer, value.ToArray(), options);
        }
    }

    private sealed class ToothMapConverter : JsonConverterFactory
    {
        public override bool CanConvert(Type typeToConvert) => IsGeneric(typeToConvert, typeof(ToothMap<>));

        public override JsonConverter CreateConverter(Type typeToConvert, JsonSerializerOptions options) =>
            Make(typeof(Of<>), typeToConvert);

        private sealed class Of<T> : JsonConverter<ToothMap<T>>
            where T : notnull
        {
            public override ToothMap<T> Read(ref Utf8JsonReader reader, Type type, JsonSerializerOptions options) =>
                ToothMap<T>.Of((JsonSerializer.Deserialize<Dictionary<string, T>>(ref reader, options) ?? [])
                    .Select(pair => KeyValuePair.Create(Parse(pair.Key), pair.Value)));

            public override void Write(Utf8JsonWriter writer, ToothMap<T> value, JsonSerializerOptions options)
            {
                writer.WriteStartObject();
                foreach ((ToothNumber tooth, T one) in value)
                {
                    writer.WritePropertyName(tooth.ToIso());
                    JsonSerializer.Serialize(writer, one, options);
                }

                writer.WriteEndObject();
            }
        }
    }

    private static bool IsGeneric(Type type, Type open) =>
        type.IsGenericType && type.GetGenericTypeDefinition() == open;

    // Never null: the converters have constructors without parameters.
    private static JsonConverter Make(Type open, Type closed) =>
        (JsonConverter)Activator.CreateInstance(open.MakeGenericType(closed.GetGenericArguments()))!;
}
