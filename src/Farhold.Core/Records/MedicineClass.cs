using System.Collections.Immutable;

namespace Farhold.Records;

/// <summary>What kind of medicine a name stands for, as far as it matters to a decision or a drug.</summary>
public enum MedicineClass
{
    Anticoagulant,
    Antiplatelet,
    SlowsTheHeart,

    /// <summary>Anti-inflammatory pain relief, aspirin too.</summary>
    Nsaid,
    Paracetamol,
    Opioid,
    Ketamine,

    /// <summary>Makes drowsy by itself.</summary>
    Sedative,
    MaoInhibitor,
    Serotonergic,

    /// <summary>Slows the breakdown of fentanyl (CYP3A4).</summary>
    StrengthensFentanyl,
    ProlongsQt,

    /// <summary>Loads the kidneys together with an anti-inflammatory: for blood pressure, water tablets, lithium, methotrexate.</summary>
    LoadsKidneys,
    Steroid,
    Valproate,

    /// <summary>Makes blood clot more readily: hormones, clotting factors.</summary>
    ClotPromoting,
    Antibiotic,
    TranexamicAcid,
    Antisickness,

    /// <summary>Known, and none of the others.</summary>
    Other,
}

/// <summary>The names that medicines are known by: parts of words, in any case of letters.</summary>
/// <remarks>
/// From memory: common drug classes by their generic names and the classes' own words; trade names are not in it. A name that is in
/// no list is not taken for harmless.
/// </remarks>
internal static class MedicineNames
{
    /// <summary>A part of a name that means a medicine, and none of the names that are allowed; null where there is none.</summary>
    public static string? In(string text, IEnumerable<string> allowed) =>
        All
            .Values.SelectMany(parts => parts)
            .FirstOrDefault(part =>
                text.Contains(part, StringComparison.OrdinalIgnoreCase)
                && !allowed.Any(name => name.Contains(part, StringComparison.OrdinalIgnoreCase))
            );

    public static readonly ImmutableDictionary<MedicineClass, ImmutableArray<string>> All = new Dictionary<
        MedicineClass,
        ImmutableArray<string>
    >
    {
        [MedicineClass.Anticoagulant] = Split(
            "warfarin apixaban rivaroxaban edoxaban dabigatran heparin enoxaparin dalteparin tinzaparin fondaparinux acenocoumarol "
                + "phenprocoumon fluindione argatroban bivalirudin anticoag blood_thin"
        ),
        [MedicineClass.Antiplatelet] = Split("aspirin acetylsalicyl clopidogrel prasugrel ticagrelor dipyridamole cilostazol ticlopidine"),
        [MedicineClass.SlowsTheHeart] = Split("olol carvedilol labetalol beta_block beta-block pacemaker"),
        [MedicineClass.Nsaid] = Split(
            "nsaid anti-inflam antiinflam ibuprofen naproxen diclofenac ketoprofen flurbiprofen indomet meloxicam piroxicam tenoxicam "
                + "celecoxib etoricoxib parecoxib ketorolac mefenamic aceclofenac etodolac nabumetone sulindac nimesulide aspirin acetylsalicyl"
        ),
        [MedicineClass.Paracetamol] = Split("paracetamol acetaminophen co-codamol cocodamol co-dydramol"),
        [MedicineClass.Opioid] = Split(
            "opioid opiate morphin fentanyl oxycodone codeine co-codamol cocodamol co-dydramol tramadol tapentadol buprenorphine "
                + "methadone hydromorphone hydrocodone oxymorphone pethidine meperidine tilidine nalbuphine butorphanol diamorphine heroin"
        ),
        [MedicineClass.Ketamine] = Split("ketamine"),
        [MedicineClass.Sedative] = Split(
            "sedativ sleeping benzodiaz azepam azolam zolpidem zopiclone pregabalin gabapentin barbit promethazine diphenhydramine "
                + "hydroxyzine quetiapine olanzapine haloperidol propofol baclofen tizanidine methoxyflurane alcohol"
        ),
        [MedicineClass.MaoInhibitor] = Split(
            "maoi mao_inhib moclobemide selegiline rasagiline safinamide phenelzine tranylcypromine linezolid"
        ),
        [MedicineClass.Serotonergic] = Split(
            "ssri snri antidepress sertraline fluoxetine citalopram paroxetine fluvoxamine venlafaxine duloxetine mirtazapine trazodone "
                + "amitriptyline clomipramine tramadol triptan"
        ),
        [MedicineClass.StrengthensFentanyl] = Split(
            "ketoconazole itraconazole fluconazole voriconazole posaconazole clarithromycin erythromycin ritonavir cobicistat diltiazem "
                + "verapamil grapefruit"
        ),
        [MedicineClass.ProlongsQt] = Split(
            "amiodarone sotalol dronedarone quinidine disopyramide flecainide haloperidol droperidol chlorpromazine pimozide ziprasidone "
                + "quetiapine citalopram methadone erythromycin clarithromycin azithromycin fluconazole domperidone ondansetron floxacin "
                + "chloroquine"
        ),
        [MedicineClass.LoadsKidneys] = Split(
            "ace_inhib pril sartan diuretic water_tablet furosemide frusemide bumetanide torasemide thiazide indapamide spironolactone "
                + "eplerenone lithium methotrexate ciclosporin cyclosporin tacrolimus"
        ),
        [MedicineClass.Steroid] = Split("steroid prednis dexameth cortisone cortisol"),
        [MedicineClass.Valproate] = Split("valpro"),
        [MedicineClass.ClotPromoting] = Split(
            "contracep the_pill estrogen oestrogen estradiol oestradiol tamoxifen factor_ix prothrombin_complex"
        ),
        [MedicineClass.Antibiotic] = Split(
            "antibiotic cillin co-amoxiclav clavulan cef ceph penem floxacin mycin cycline trimethoprim metronidazole nitrofurantoin linezolid"
        ),
        [MedicineClass.TranexamicAcid] = Split("tranexamic txa"),
        [MedicineClass.Antisickness] = Split("setron metoclopramide cyclizine domperidone prochlorperazine"),
        [MedicineClass.Other] = Split(
            "thyrox statin metformin insulin gliclazide glimepiride gliptin gliflozin prazole salbutamol albuterol inhaler formoterol "
                + "vitamin folic iron calcium magnesium cetirizine loratadine fexofenadine antihistamin amlodipine allopurinol tamsulosin "
                + "levodopa lamotrigine levetiracetam epinephrine adrenaline tetanus naloxone oral_rehydration"
        ),
    }.ToImmutableDictionary();

    /// <summary>Whether any of the lists has it.</summary>
    public static bool Knows(string text) => All.Values.Any(words => words.Any(w => text.Contains(w, StringComparison.OrdinalIgnoreCase)));

    private static ImmutableArray<string> Split(string words) => [.. words.Split(' ').Select(w => w.Replace('_', ' '))];
}
