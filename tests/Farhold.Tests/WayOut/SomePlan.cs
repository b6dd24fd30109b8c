using System.Text;

namespace Farhold.Tests.WayOut;

/// <summary>Plans with short names; places and people are invented.</summary>
public static class SomePlan
{
    public static string Text(string legs, string more = "") => $$"""{"start":"2031-05-04T08:00:00Z",{{more}}"legs":[{{legs}}]}""";

    public static Read<Plan> Tried(string json) => PlanReader.Read(Encoding.UTF8.GetBytes(json), "some.plan.json");

    public static Plan Read(string json) =>
        Tried(json) switch
        {
            Read<Plan>.Usable(var plan) => plan,
            Read<Plan>.Refused(var why) => throw new InvalidOperationException(string.Join("; ", why)),
            _ => throw new System.Diagnostics.UnreachableException(),
        };

    public static Plan Of(string legs, string more = "") => Read(Text(legs, more));

    public static byte[] File(string name) => System.IO.File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, "plans", name));

    public static Plan RidgeHut => Read(Encoding.UTF8.GetString(File("ridge-hut.plan.json")));

    /// <summary>Dark from 20 to 05 each night of ten days.</summary>
    public static Darkness Nights { get; } = NightsFrom(20, 9);

    public static Darkness NightsFrom(double hour, double hours) =>
        Darkness.Of(
            Enumerable
                .Range(-1, 11)
                .Select(day => Some.At("00:00") + Duration.FromDays(day) + Duration.FromHours(hour))
                .Select(dusk => (dusk, dusk + Duration.FromHours(hours))),
            Some.At("00:00") + Duration.FromDays(10)
        );

    public static double[] Seconds(Plan plan, Darkness? darkness, int trials = 2000, ulong seed = 1) =>
        new Simulation(CompiledPlan.Of(plan, darkness), new Rng(seed), SamplingLimits.Exactly(trials)).Run().SecondsToCare.ToArray();
}
