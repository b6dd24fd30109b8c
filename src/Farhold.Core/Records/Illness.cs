using System.Collections.Immutable;

namespace Farhold.Records;

/// <summary>What the history of a casualty may hold against a drug.</summary>
public enum Illness
{
    StomachUlcer,
    KidneyDisease,
    LiverDisease,

    /// <summary>Asthma, COPD, pauses of breath in sleep.</summary>
    LungDisease,
    HeartDisease,
    HighBloodPressure,
    BleedingDisorder,

    /// <summary>A clot in a vein, lung or brain, now or once.</summary>
    BloodClot,
    Epilepsy,
    Psychosis,
    LongQt,
    MuscleWeakness,
    TendonDisease,
    BowelInflammation,

    /// <summary>Bodies that break drugs down slowly: alcohol, hunger.</summary>
    PoorNutrition,
}

/// <summary>The words that illnesses are known by: parts of words, in any case of letters. From memory.</summary>
internal static class IllnessNames
{
    /// <summary>What the decision calls a clotting disease.</summary>
    public static readonly ImmutableArray<string> ClottingDisease = ["haemophil", "hemophil", "willebrand", "clotting", "thrombocytop"];

    public static readonly ImmutableDictionary<Illness, ImmutableArray<string>> All = new Dictionary<Illness, ImmutableArray<string>>
    {
        [Illness.StomachUlcer] = ["ulcer", "stomach bleed", "gut bleed", "gastrointestinal bleed", "gi bleed", "gastritis"],
        [Illness.KidneyDisease] = ["kidney", "renal", "dialysis", "nephr"],
        [Illness.LiverDisease] = ["liver", "hepat", "cirrhos", "jaundice"],
        [Illness.LungDisease] = ["asthma", "copd", "emphysema", "chronic bronchitis", "sleep apn", "lung disease"],
        [Illness.HeartDisease] = ["heart attack", "heart failure", "heart disease", "infarct", "angina", "coronary", "cardiomyop", "stent"],
        [Illness.HighBloodPressure] = ["hypertens", "high blood pressure", "aneurysm", "stroke"],
        [Illness.BleedingDisorder] = [.. ClottingDisease, "bleeding dis"],
        [Illness.BloodClot] = ["thrombos", "embol", "blood clot", "dvt", "stroke", "clot in"],
        [Illness.Epilepsy] = ["epilep", "seizure", "convuls"],
        [Illness.Psychosis] = ["schizo", "psychos", "psychot"],
        [Illness.LongQt] = ["long qt", "torsade", "arrhythm", "heart rhythm"],
        [Illness.MuscleWeakness] = ["myasthen"],
        [Illness.TendonDisease] = ["tendon", "tendin"],
        [Illness.BowelInflammation] = ["colitis", "crohn", "difficile"],
        [Illness.PoorNutrition] = ["alcohol", "malnour", "anorex", "eating dis"],
    }.ToImmutableDictionary();

    /// <summary>In a question: <c>kidney disease</c>.</summary>
    public static string Said(Illness illness) =>
        illness switch
        {
            Illness.LungDisease => RecordTexts.IllnessLung,
            Illness.BloodClot => RecordTexts.IllnessClot,
            Illness.LongQt => RecordTexts.IllnessRhythm,
            Illness.MuscleWeakness => RecordTexts.IllnessMuscle,
            Illness.BowelInflammation => RecordTexts.IllnessBowel,
            Illness.PoorNutrition => RecordTexts.IllnessNutrition,
            _ => Say.Word(illness),
        };
}
