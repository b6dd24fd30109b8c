using System.Security.Cryptography;
using System.Text.Json;

namespace Farhold.Physiology.Constants;

/// <summary>The numbered models that ship. A number, once out, means the same constants for good.</summary>
public static class Models
{
    /// <summary>The model that a new rehearsal uses.</summary>
    public const int Newest = 1;

    private static readonly Lazy<ModelConstants> First = new(() => Parse(File(Newest)));

    public static ModelConstants Current => First.Value;

    /// <exception cref="ArgumentOutOfRangeException">No model of this number ships.</exception>
    public static ModelConstants ByNumber(int model) =>
        model == Newest ? Current : throw new ArgumentOutOfRangeException(nameof(model), model, $"1 to {Newest}.");

    /// <summary>SHA-256 of the model's file, in lower-case hexadecimal digits.</summary>
    public static string Hash(int model) => Convert.ToHexStringLower(SHA256.HashData(File(model)));

    /// <exception cref="JsonException">A constant is missing, unknown, or without unit, standing or source.</exception>
    public static ModelConstants Parse(ReadOnlySpan<byte> json) =>
        JsonSerializer.Deserialize(json, ModelJson.Default.ModelConstants) ?? throw new JsonException("A model is an object.");

    private static byte[] File(int model)
    {
        using var stream =
            typeof(Models).Assembly.GetManifestResourceStream($"model-{model}.json")
            ?? throw new ArgumentOutOfRangeException(nameof(model), model, "No model of this number ships.");
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }
}
