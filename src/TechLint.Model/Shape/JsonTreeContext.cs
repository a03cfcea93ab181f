using System.Text.Json.Nodes;
using System.Text.Json.Serialization;

namespace TechLint.Model.Shape;

[JsonSerializable(typeof(JsonNode))]
internal sealed partial class JsonTreeContext : JsonSerializerContext;
