using System.Text.Json.Nodes;
using System.Text.RegularExpressions;

namespace Archwright.Exchange.Tests.Schemas;

/// <summary>A small validator of JSON Schema (draft 2020-12): the keywords that our schemas use, and an exception on
/// any other, so that nothing passes unchecked.</summary>
internal sealed class Schema
{
    private readonly JsonObject _root;

    private Schema(JsonObject root) => _root = root;

    /// <summary>A schema of <c>docs/schema</c>.</summary>
    public static Schema Load(string name) => new(Parse(name));

    public static JsonObject Parse(string name) => JsonNode.Parse(File.ReadAllText(
        Path.Combine(AppContext.BaseDirectory, "docs", "schema", name + ".schema.json")))!.AsObject();

    /// <summary>A number of an instance and the limits that the schema has for it.</summary>
    public sealed record Bounded(string Path, double Low, double High);

    /// <summary>What is wrong with an instance; empty when nothing is.</summary>
    public List<string> Errors(JsonNode? instance) => Check(_root, instance, "", []);

    /// <summary>Every number of a valid instance that has limits.</summary>
    public List<Bounded> Bounds(JsonNode? instance)
    {
        var bounds = new List<Bounded>();
        Assert.Empty(Check(_root, instance, "", bounds));
        return [.. bounds.Distinct()];
    }

    private List<string> Check(JsonObject schema, JsonNode? value, string path, List<Bounded> bounds)
    {
        var errors = new List<string>();
        foreach ((string keyword, JsonNode? argument) in schema)
        {
            if (!Holds(keyword, argument!, schema, value, path, bounds, errors))
                errors.Add($"{path}: {keyword} {argument!.ToJsonString()} does not hold for {Shown(value)}");
        }

        return errors;
    }

    private bool Holds(
        string keyword,
        JsonNode argument,
        JsonObject schema,
        JsonNode? value,
        string path,
        List<Bounded> bounds,
        List<string> errors)
    {
        switch (keyword)
        {
            case "$schema" or "$defs" or "title" or "description" or "then" or "else":
                return true;
            case "$ref":
                errors.AddRange(Check(Resolve(argument), value, path, bounds));
                return true;
            case "type":
                return argument is JsonArray types
                    ? types.Any(one => IsOf(one!.GetValue<string>(), value))
                    : IsOf(argument.GetValue<string>(), value);
            case "const":
                return JsonNode.DeepEquals(argument, value);
            case "enum":
                return argument.AsArray().Any(one => JsonNode.DeepEquals(one, value));
            case "minimum":
                if (schema["maximum"] is { } most && Number(value) is not null)
                    bounds.Add(new Bounded(path, argument.GetValue<double>(), most.GetValue<double>()));
                return Number(value) is not { } n || n >= argument.GetValue<double>();
            case "maximum":
                return Number(value) is not { } m || m <= argument.GetValue<double>();
            case "minLength":
                return value is not JsonValue || TypeOf(value) != "string"
                    || value.GetValue<string>().Length >= argument.GetValue<int>();
            case "maxLength":
                return value is not JsonValue || TypeOf(value) != "string"
                    || value.GetValue<string>().Length <= argument.GetValue<int>();
            case "pattern":
                return TypeOf(value) != "string"
                    || Regex.IsMatch(value!.GetValue<string>(), argument.GetValue<string>(), RegexOptions.None,
                        TimeSpan.FromSeconds(1));
            case "minItems":
                return value is not JsonArray fewest || fewest.Count >= argument.GetValue<int>();
            case "maxItems":
                return value is not JsonArray largest || largest.Count <= argument.GetValue<int>();
            case "items":
                foreach ((int i, JsonNode? item) in (value as JsonArray ?? []).Index())
                    errors.AddRange(Check(argument.AsObject(), item, $"{path}[{i}]", bounds));
                return true;
            case "required":
                return value is not JsonObject o
                    || argument.AsArray().All(key => o.ContainsKey(key!.GetValue<string>()));
            case "properties":
                Properties(argument.AsObject(), value, path, bounds, errors);
                return true;
            case "additionalProperties":
                Assert.False(argument.GetValue<bool>());
                return value is not JsonObject all || all.All(p => schema["properties"]!.AsObject().ContainsKey(p.Key));
            default:
                return Combined(keyword, argument, schema, value, path, bounds, errors);
        }
    }

    private static string Shown(JsonNode? value) => value?.ToJsonString() ?? "null";

    private bool Combined(
        string keyword,
        JsonNode argument,
        JsonObject schema,
        JsonNode? value,
        string path,
        List<Bounded> bounds,
        List<string> errors)
    {
        switch (keyword)
        {
            case "not":
                return Check(argument.AsObject(), value, path, []).Count > 0;
            case "allOf":
                foreach (JsonNode? part in argument.AsArray())
                    errors.AddRange(Check(part!.AsObject(), value, path, bounds));
                return true;
            case "anyOf":
                return argument.AsArray().Any(part => Good(part!, value, path, bounds));
            case "oneOf":
                return argument.AsArray().Count(part => Good(part!, value, path, bounds)) == 1;
            case "if":
                JsonNode? next = Good(argument, value, path, []) ? schema["then"] : schema["else"];
                if (next is not null)
                    errors.AddRange(Check(next.AsObject(), value, path, bounds));
                return true;
            default:
                throw new NotSupportedException($"The validator does not know “{keyword}”.");
        }
    }

    private bool Good(JsonNode schema, JsonNode? value, string path, List<Bounded> bounds)
    {
        var found = new List<Bounded>();
        bool good = Check(schema.AsObject(), value, path, found).Count == 0;
        if (good)
            bounds.AddRange(found);
        return good;
    }

    private void Properties(
        JsonObject properties, JsonNode? value, string path, List<Bounded> bounds, List<string> errors)
    {
        foreach ((string key, JsonNode? member) in value as JsonObject ?? [])
        {
            if (properties[key] is { } schema)
                errors.AddRange(Check(schema.AsObject(), member, path.Length == 0 ? key : $"{path}.{key}", bounds));
        }
    }

    private JsonObject Resolve(JsonNode reference)
    {
        string name = reference.GetValue<string>()["#/$defs/".Length..];
        return _root["$defs"]![name]?.AsObject()
            ?? throw new InvalidOperationException($"There is no definition {name}.");
    }

    private static double? Number(JsonNode? value) => TypeOf(value) == "number" ? value!.GetValue<double>() : null;

    // JSON Schema, draft 2020-12, section 6.1.1 of its validation part: an integer is a number without a fraction.
    private static bool IsOf(string type, JsonNode? value) => type == "integer"
        ? Number(value) is { } number && Math.Floor(number) == number
        : TypeOf(value) == type;

    private static string TypeOf(JsonNode? value) => value?.GetValueKind() switch
    {
        null or System.Text.Json.JsonValueKind.Null => "null",
        System.Text.Json.JsonValueKind.Object => "object",
        System.Text.Json.JsonValueKind.Array => "array",
        System.Text.Json.JsonValueKind.String => "string",
        System.Text.Json.JsonValueKind.Number => "number",
        _ => "boolean",
    };
}
