using System.Collections.Immutable;
using NodaTime;

namespace Farhold.Evaluation;

/// <summary>Whether somebody can observe the wound closely from now on.</summary>
internal static class Observation
{
    /// <summary>How long "about to move" keeps an attempt from being begun before it has to be asked about (design).</summary>
    internal static readonly Duration MoveAhead = Duration.FromHours(1);

    /// <summary>
    /// As last stated. Nobody can while a move is ahead or on. The casualty alone counts only where nobody can be reached: else
    /// it is open.
    /// </summary>
    public static ImmutableArray<Reading> Able(Scene scene)
    {
        var moves = Current.Of<Move>(
            scene.State.Of(Kind.CasualtyMoved),
            scene.Now,
            d => new Move(d.As<Payload.CasualtyMoved>().Phase == MovePhase.AboutTo, d.When)
        );
        var ahead = moves.Where(m => m.Ahead).ToArray();
        if (ahead.Length > 0)
            return ahead.All(m => m.When.Until(scene.Now).Max > MoveAhead)
                ? []
                : [.. ahead.Select(m => Reading.Of(false, m.When, lasting: true))];
        return Stated(scene) switch
        {
            var stated when stated.Any(s => s.Alone) && !scene.Casualty.Advice.Unreached =>
            [
                .. stated.Where(s => !s.Able).Select(s => s.Reading),
            ],
            var stated => [.. stated.Select(s => s.Reading)],
        };
    }

    /// <summary>Nobody else than the casualty was said to be able.</summary>
    public static bool IsAlone(Scene scene) => Stated(scene) is { IsEmpty: false } stated && stated.All(s => s.Alone);

    private static ImmutableArray<Statement> Stated(Scene scene) =>
        Current.Of<Statement>(
            scene.State.Of(Kind.WatchStated),
            scene.Now,
            d => d.As<Payload.WatchStated>() is var p ? new Statement(p.Able, p is { Able: true, Who: Watcher.Casualty }, d.When) : null
        );

    private readonly record struct Move(bool Ahead, Happened When);

    private readonly record struct Statement(bool Able, bool Alone, Happened When)
    {
        public Reading Reading => Farhold.Signs.Reading.Of(Able, When);
    }
}
