namespace Farhold.Records;

/// <summary>A part of the body that is not a limb.</summary>
public enum BodyRegion
{
    Head,
    Neck,
    Chest,
    Abdomen,
    Pelvis,
    Back,
    Axilla,
    Groin,
}

public enum Sex
{
    Female,
    Male,
}

public enum WoundNature
{
    Bleeding,
    Amputation,
    PartialAmputation,
    Burn,
    Fracture,
    Other,
}

public enum TourniquetMake
{
    Windlass,
    Elastic,
    Pneumatic,
    Improvised,
}

public enum PackingMaterial
{
    HaemostaticGauze,
    PlainGauze,
    Cloth,
}

public enum DressingKind
{
    Pressure,
    Plain,
}

/// <summary>Ordered from best to worst.</summary>
public enum Bleeding
{
    None,
    Oozing,
    Active,
}

public enum AttemptOutcome
{
    Held,
    Bled,
    Abandoned,
}

/// <summary>Level of consciousness: alert, newly confused, or answering only to voice, to pain, or to nothing. Best to worst.</summary>
public enum Mental
{
    Alert,
    Confused,
    Voice,
    Pain,
    Unresponsive,
}

/// <summary>The pulse at the wrist. Best to worst.</summary>
public enum RadialPulse
{
    Strong,
    Weak,
    Absent,
}

public enum DistalPulse
{
    Present,
    Absent,
}

public enum Fluid
{
    OralWater,
    OralRehydration,
    Crystalloid,
    WholeBlood,
    Plasma,
    RedCells,
    Other,
}

public enum CareEnd
{
    HandedOver,
    Died,
    Stopped,
}

/// <summary>Why a tourniquet was tightened again.</summary>
public enum TighteningReason
{
    Bleeding,
    Precaution,
    ReSited,
}

public enum Watcher
{
    Other,
    Casualty,
}

/// <summary>What kind of help comes: more helpers, a clinic, or care that can take the limb over.</summary>
public enum HelpCare
{
    Hands,
    Clinic,
    Surgery,
}

/// <summary>What became of a stage of the way out.</summary>
public enum StageState
{
    Begun,
    Done,

    /// <summary>Given up, or what was to come does not come.</summary>
    Failed,
}

/// <summary>What a look at one part of the body came to.</summary>
public enum LookFound
{
    Nothing,
    Wound,
    Other,
}

public enum Movement
{
    Turned,
    Lifted,
    Walked,
    Carried,
    Vehicle,
    Boat,
    Aircraft,
}

public enum MovePhase
{
    AboutTo,
    Moved,
}

public enum LimbFate
{
    Kept,
    Lost,
}

/// <summary>The steps of the first look, in the order in which they are taken: what kills soonest comes first.</summary>
/// <remarks>
/// Massive bleeding, airway, respiration, circulation, hypothermia and head: the order of published tactical care. What comes after it is
/// this project's choice.
/// </remarks>
public enum LookStep
{
    Bleeding,
    Airway,
    Breathing,
    Circulation,
    Cold,
    Head,
    Belly,
    Background,
}

/// <summary>What came of a step of the first look.</summary>
public enum StepFound
{
    Nothing,
    Something,
    NotLooked,
}

/// <summary>How a casualty came to harm.</summary>
public enum Mechanism
{
    Fall,
    Cut,
    Crush,
    Vehicle,
    Animal,
    Gunshot,
    Blast,
    Heat,
    Other,
}

/// <summary>The casualty's own left and right.</summary>
public enum BodySide
{
    Left,
    Right,
    Middle,
}

public enum BodyFace
{
    Front,
    Back,
}

/// <summary>Where on its limb a tourniquet sits: 5 to 7 cm above the wound and off the joints, high on the limb, or over a joint.</summary>
public enum TourniquetSite
{
    AboveWound,
    High,
    OverJoint,
}

public enum NerveFate
{
    Unharmed,
    Recovered,
    Lasting,
}

public enum KidneyFate
{
    Unharmed,
    Injured,
    Dialysis,
}
