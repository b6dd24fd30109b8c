namespace Farhold.Tests.Records;

/// <summary>Medicines and illnesses in free text: named, denied, not spoken of, not known.</summary>
public class MedicinesTests
{
    [Theory]
    [InlineData("apixaban", Truth.Met)]
    [InlineData("Blood thinner since May", Truth.Met)]
    [InlineData("no warfarin", Truth.NotMet)]
    [InlineData("ramipril", Truth.NotMet)]
    [InlineData("none", Truth.NotMet)]
    [InlineData("", Truth.Unknown)] // an empty name
    [InlineData("Xarelto", Truth.Unknown)] // a trade name: not in the lists, so not taken for harmless
    [InlineData("no aspirin, warfarin", Truth.Unknown)] // denied or not?
    public void Whether_a_medicine_is_taken(string medicine, Truth takes) =>
        Assert.Equal(takes, Medicines.Takes(new("Runa", Medicines: [medicine]), MedicineClass.Anticoagulant));

    [Fact]
    public void A_list_that_was_asked_for_and_is_empty_says_none()
    {
        Assert.Equal(Truth.NotMet, Medicines.Takes(new("Runa", Medicines: []), MedicineClass.Anticoagulant));
        Assert.Equal(Truth.Unknown, Medicines.Takes(new("Runa"), MedicineClass.Anticoagulant));
        Assert.Equal(Truth.Unknown, Medicines.Takes(null, MedicineClass.Anticoagulant));
    }

    [Theory]
    [InlineData("kidney disease", Truth.Met)]
    [InlineData("dialysis; nothing else", Truth.Met)]
    [InlineData("no kidney disease", Truth.NotMet)]
    [InlineData("no ulcer, kidney or liver disease", Truth.Unknown)]
    [InlineData("no ulcer. Kidney stones", Truth.Met)]
    [InlineData("appendix out", Truth.Unknown)]
    [InlineData("appendix out, nothing else", Truth.NotMet)]
    [InlineData("healthy", Truth.NotMet)]
    [InlineData("not healthy", Truth.Unknown)]
    [InlineData("unhealthy, senile", Truth.Unknown)]
    [InlineData("nothing known, unsure", Truth.Unknown)]
    [InlineData(null, Truth.Unknown)]
    public void Whether_there_is_an_illness(string? history, Truth has) =>
        Assert.Equal(has, Medicines.Has(new("Runa", History: history), Illness.KidneyDisease));

    [Fact]
    public void Every_class_and_every_illness_has_its_names()
    {
        Assert.All(Enum.GetValues<MedicineClass>(), c => Assert.NotEmpty(MedicineNames.All[c]));
        Assert.All(Enum.GetValues<Illness>(), i => Assert.NotEmpty(IllnessNames.All[i]));
    }

    [Fact]
    public void Every_drug_of_the_formulary_is_a_known_name() =>
        Assert.All(ShippedFormulary.Formulary.Drugs, d => Assert.True(MedicineNames.Knows(d.Id.Replace('-', ' ')), d.Id));
}
