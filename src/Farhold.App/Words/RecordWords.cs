using System.Diagnostics;

namespace Farhold.App.Words;

/// <summary>Words of the record in the language of the screen. The record itself holds the same words in every language.</summary>
public static class RecordWords
{
    extension(Texts t)
    {
        /// <summary>As it stands on a button or at the head of a group: <c>Left leg</c>.</summary>
        public string Word<T>(T value)
            where T : struct, Enum => Labels.Sentence(t.Within(value));

        /// <summary>As it stands within a line: <c>left leg</c>.</summary>
        public string Within<T>(T value)
            where T : struct, Enum =>
            value switch
            {
                Limb limb => t.LimbWithin(limb),
                BodyRegion region => t.RegionWithin(region),
                Sex sex => sex == Sex.Female ? t.WordFemale : t.WordMale,
                WoundNature nature => t.NatureWithin(nature),
                TourniquetMake make => t.MakeWithin(make),
                PackingMaterial material => t.MaterialWithin(material),
                DressingKind dressing => dressing == DressingKind.Pressure ? t.WordPressureDressing : t.WordPlainDressing,
                Bleeding bleeding => t.BleedingWithin(bleeding),
                AttemptOutcome outcome => t.OutcomeWithin(outcome),
                Mental mental => t.MentalWithin(mental),
                RadialPulse pulse => t.RadialWithin(pulse),
                DistalPulse pulse => pulse == DistalPulse.Present ? t.WordDistalPulse : t.WordNoDistalPulse,
                Fluid fluid => t.FluidWithin(fluid),
                CareEnd end => t.EndWithin(end),
                LimbFate fate => fate == LimbFate.Kept ? t.WordLimbKept : t.WordLimbLost,
                _ => throw new ArgumentOutOfRangeException(nameof(value), value, "There is no text for this word of the record."),
            };

        /// <summary><c>LEFT leg</c>: the casualty's own side, in capitals so that it is not passed over.</summary>
        public string Sided(Limb limb) =>
            limb switch
            {
                Limb.LeftArm => t.SidedLeftArm,
                Limb.RightArm => t.SidedRightArm,
                Limb.LeftLeg => t.SidedLeftLeg,
                Limb.RightLeg => t.SidedRightLeg,
                _ => throw new UnreachableException(),
            };

        /// <summary>The same where there is room for eight letters on a line: in the head of every screen.</summary>
        public string SidedInHead(Limb limb) =>
            limb switch
            {
                Limb.LeftArm => t.HeadLeftArm,
                Limb.RightArm => t.HeadRightArm,
                Limb.LeftLeg => t.HeadLeftLeg,
                Limb.RightLeg => t.HeadRightLeg,
                _ => throw new UnreachableException(),
            };

        /// <summary><c>w1, left leg</c>.</summary>
        public string Wound(string wound, State state)
        {
            var found = state.Of(Kind.WoundFound).LastOrDefault(w => w.As<Payload.WoundFound>().Wound == wound)?.As<Payload.WoundFound>();
            var where =
                found?.Limb is { } limb ? t.Within(limb)
                : found?.Region is { } region ? t.Within(region)
                : null;
            return Plain.Line(where is null ? wound : $"{wound}, {where}");
        }

        private string LimbWithin(Limb limb) =>
            limb switch
            {
                Limb.LeftArm => t.WordLeftArm,
                Limb.RightArm => t.WordRightArm,
                Limb.LeftLeg => t.WordLeftLeg,
                Limb.RightLeg => t.WordRightLeg,
                _ => throw new UnreachableException(),
            };

        private string RegionWithin(BodyRegion region) =>
            region switch
            {
                BodyRegion.Head => t.WordHead,
                BodyRegion.Neck => t.WordNeck,
                BodyRegion.Chest => t.WordChest,
                BodyRegion.Abdomen => t.WordAbdomen,
                BodyRegion.Pelvis => t.WordPelvis,
                BodyRegion.Back => t.WordBack,
                BodyRegion.Axilla => t.WordAxilla,
                BodyRegion.Groin => t.WordGroin,
                _ => throw new UnreachableException(),
            };

        private string NatureWithin(WoundNature nature) =>
            nature switch
            {
                WoundNature.Bleeding => t.WordBleedingWound,
                WoundNature.Amputation => t.WordAmputation,
                WoundNature.PartialAmputation => t.WordPartialAmputation,
                WoundNature.Burn => t.WordBurn,
                WoundNature.Fracture => t.WordFracture,
                WoundNature.Other => t.WordOtherWound,
                _ => throw new UnreachableException(),
            };

        private string MakeWithin(TourniquetMake make) =>
            make switch
            {
                TourniquetMake.Windlass => t.WordWindlass,
                TourniquetMake.Elastic => t.WordElastic,
                TourniquetMake.Pneumatic => t.WordPneumatic,
                TourniquetMake.Improvised => t.WordImprovised,
                _ => throw new UnreachableException(),
            };

        private string MaterialWithin(PackingMaterial material) =>
            material switch
            {
                PackingMaterial.HaemostaticGauze => t.WordHaemostaticGauze,
                PackingMaterial.PlainGauze => t.WordPlainGauze,
                PackingMaterial.Cloth => t.WordCloth,
                _ => throw new UnreachableException(),
            };

        private string BleedingWithin(Bleeding bleeding) =>
            bleeding switch
            {
                Bleeding.None => t.WordNoBleeding,
                Bleeding.Oozing => t.WordOozing,
                Bleeding.Active => t.WordActiveBleeding,
                _ => throw new UnreachableException(),
            };

        private string OutcomeWithin(AttemptOutcome outcome) =>
            outcome switch
            {
                AttemptOutcome.Held => t.WordHeld,
                AttemptOutcome.Bled => t.WordBled,
                AttemptOutcome.Abandoned => t.WordAbandoned,
                _ => throw new UnreachableException(),
            };

        private string MentalWithin(Mental mental) =>
            mental switch
            {
                Mental.Alert => t.WordAlert,
                Mental.Confused => t.WordConfused,
                Mental.Voice => t.WordVoice,
                Mental.Pain => t.WordPain,
                Mental.Unresponsive => t.WordUnresponsive,
                _ => throw new UnreachableException(),
            };

        private string RadialWithin(RadialPulse pulse) =>
            pulse switch
            {
                RadialPulse.Strong => t.WordStrong,
                RadialPulse.Weak => t.WordWeak,
                RadialPulse.Absent => t.WordNoRadialPulse,
                _ => throw new UnreachableException(),
            };

        private string FluidWithin(Fluid fluid) =>
            fluid switch
            {
                Fluid.OralWater => t.WordOralWater,
                Fluid.OralRehydration => t.WordOralRehydration,
                Fluid.Crystalloid => t.WordCrystalloid,
                Fluid.WholeBlood => t.WordWholeBlood,
                Fluid.Plasma => t.WordPlasma,
                Fluid.RedCells => t.WordRedCells,
                Fluid.Other => t.WordOtherFluid,
                _ => throw new UnreachableException(),
            };

        private string EndWithin(CareEnd end) =>
            end switch
            {
                CareEnd.HandedOver => t.WordHandedOver,
                CareEnd.Died => t.WordDied,
                CareEnd.Stopped => t.WordStopped,
                _ => throw new UnreachableException(),
            };
    }
}
