using System.Text;
using System.Text.Json;

namespace Farhold.Physiology.Tests.Constants;

public class ModelsTests
{
    private static readonly string Text = File.ReadAllText(
        Path.Combine(Farhold.Tests.Architecture.Repository.Root, "src", "Farhold.Physiology", "models", "1.json")
    );

    [Fact]
    public void Every_number_up_to_the_newest_ships_and_says_which_it_is()
    {
        for (var model = 1; model <= Models.Newest; model++)
            Assert.Equal(model, Models.ByNumber(model).Model);
        Assert.Throws<ArgumentOutOfRangeException>(() => Models.ByNumber(Models.Newest + 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => Models.ByNumber(0));
    }

    [Fact]
    public void The_file_is_what_is_compiled_in() =>
        Assert.Equal(Models.Hash(1), Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(Encoding.UTF8.GetBytes(Text))));

    [Theory]
    [InlineData("\"venousCompliance\": [173, ", "\"venousCompliance\": [", "no value")]
    [InlineData("\"venousCompliance\":", "\"venousComplianse\":", "another name")]
    [InlineData("[173, \"mL/mmHg\", \"fitted\", ", "[173, \"mL/mmHg\", \"guessed\", ", "another standing")]
    [InlineData("[173, \"mL/mmHg\", ", "[173, \"\", ", "no unit")]
    [InlineData("[173, \"mL/mmHg\", \"fitted\", \"Ursino 1998: systemic veins and lungs about 140\"]", "173", "a bare number")]
    [InlineData("[173, \"mL/mmHg\", \"fitted\", ", "[173, \"mL/mmHg\", ", "no standing")]
    [InlineData("\"venousCompliance\": [173", "\"venousCompliance\": [1, \"1\", \"read\", \"x\"], \"venousCompliance\": [173", "twice")]
    public void A_constant_without_unit_standing_or_source_is_refused(string from, string to, string what)
    {
        Assert.Contains(from, Text, StringComparison.Ordinal);
        var changed = Text.Replace(from, to, StringComparison.Ordinal);
        Assert.True(Assert.ThrowsAny<JsonException>(() => Models.Parse(Encoding.UTF8.GetBytes(changed))) is not null, what);
    }

    /// <summary>Constants that nothing reads would be a promise that nothing keeps.</summary>
    [Fact]
    public void Every_constant_is_read_by_the_model()
    {
        using var module = Mono.Cecil.ModuleDefinition.ReadModule(typeof(Models).Assembly.Location);
        var read = module
            .GetTypes()
            .Where(t => t.Namespace != "Farhold.Physiology.Constants" || t.Name == "Q10Rates")
            .SelectMany(t => t.Methods)
            .Where(m => m.HasBody)
            .SelectMany(m => m.Body.Instructions)
            .Select(i => i.Operand)
            .OfType<Mono.Cecil.MethodReference>()
            .Select(m => $"{m.DeclaringType.Name}.{m.Name}")
            .ToHashSet();
        var groups = typeof(ModelConstants)
            .GetProperties()
            .Select(p => p.PropertyType)
            .Where(t => t.Name.EndsWith("Constants", StringComparison.Ordinal));
        Assert.All(groups.SelectMany(g => g.GetProperties().Select(p => $"{g.Name}.get_{p.Name}")), p => Assert.Contains(p, read));
    }
}
