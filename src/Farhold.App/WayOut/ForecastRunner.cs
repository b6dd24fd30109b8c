using System.Collections.Immutable;

namespace Farhold.App.WayOut;

/// <summary>Works a forecast out in pieces short enough that the page stays awake; how long a piece is changes no digit.</summary>
public sealed class ForecastRunner(TimeProvider time)
{
    private const int FirstTrials = 64;
    private const int MostTrials = 1024;

    private readonly Breath breath = new(time);
    private int trials = FirstTrials;
    private TimeSpan worked;

    /// <summary>The forecast as soon as it stands, then once more with the answers to what would change it.</summary>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public async IAsyncEnumerable<Forecast> RunAsync(
        Simulation simulation,
        ImmutableArray<Deadline> deadlines,
        Action<SimulationProgress> told,
        [System.Runtime.CompilerServices.EnumeratorCancellation] CancellationToken cancellation
    )
    {
        await StepAsync(simulation, told, cancellation);
        var trialsTook = worked;
        Outlook? outlook = null;
        foreach (var piece in Outlook.Pieces(simulation, deadlines))
        {
            outlook = piece;
            await breath.TakeAsync(cancellation);
        }

        // What follows is drawn at once, which takes its own time.
        await breath.TakeAsync(cancellation, early: true);
        var forecast = new Forecast(simulation, outlook!, ArrivalShape.Of(simulation), trialsTook, []);
        yield return forecast;
        foreach (var piece in DecisionTime.Pieces(simulation, deadlines))
        {
            await breath.TakeAsync(cancellation);
            if (piece is not null)
                yield return forecast = forecast with { Decision = piece };
        }

        var answers = ImmutableArray.CreateBuilder<WhatIfAnswer>();
        foreach (var whatIf in WhatIf.Usual)
        {
            await breath.TakeAsync(cancellation);
            if (whatIf.Start(simulation) is not { } changed)
                continue;
            await StepAsync(changed, null, cancellation);
            answers.Add(WhatIfAnswer.Of(whatIf, simulation, changed, deadlines));
        }

        await breath.TakeAsync(cancellation, early: true);
        yield return forecast with
        {
            Answers = answers.ToImmutable(),
        };
    }

    private async Task StepAsync(Simulation simulation, Action<SimulationProgress>? told, CancellationToken cancellation)
    {
        while (!simulation.Finished)
        {
            var begun = time.GetTimestamp();
            var progress = simulation.Step(trials);
            var took = time.GetElapsedTime(begun);
            worked += took;
            trials =
                took > Breath.Piece * 2 ? Math.Max(FirstTrials, trials / 2)
                : took < Breath.Piece / 2 ? Math.Min(MostTrials, trials * 2)
                : trials;
            if (await breath.TakeAsync(cancellation))
                told?.Invoke(progress);
        }
    }
}
