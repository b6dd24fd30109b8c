using Farhold.Hub.Storage;

namespace Farhold.Hub.Verbs;

/// <summary>What the program does with records besides serving: once, and then it ends.</summary>
internal static class Verb
{
    public const string Help = """
        With records that are kept in FOLDER, in place of serving:
          backup FOLDER TARGET    adds to the backup in TARGET what has come in since; the hub may go on running
          restore TARGET FOLDER   makes records anew in FOLDER, which holds nothing but the hub key
          verify FOLDER           reads everything there is and says what does not fit; repairs nothing
        The hub key is hub.key in FOLDER, or --hub-key FILE behind the others. It is in no backup: keep a copy of it elsewhere.
        They end with 0 where all is well, 1 where it is not, 2 where they could not begin.
        """;

    /// <param name="errors">For why it could not begin.</param>
    /// <returns>What to end with; null where it is none of these.</returns>
    public static async Task<int?> RunAsync(string[] args, TextWriter output, TextWriter errors)
    {
        try
        {
            switch (args)
            {
                case ["backup", var folder, var target]:
                    return await BackupVerb.RunAsync(folder, target, TimeProvider.System, output);
                case ["restore", var target, var folder]:
                    return await RestoreVerb.RunAsync(target, folder, KeyIn(folder), output);
                case ["restore", var target, var folder, "--hub-key", var key]:
                    return await RestoreVerb.RunAsync(target, folder, key, output);
                case ["verify", var folder]:
                    return await VerifyVerb.RunAsync(folder, KeyIn(folder), output);
                case ["verify", var folder, "--hub-key", var key]:
                    return await VerifyVerb.RunAsync(folder, key, output);
                case ["backup" or "restore" or "verify", ..]:
                    await errors.WriteLineAsync(Help);
                    return 2;
                default:
                    return null;
            }
        }
        catch (Exception e) when (e is RefusedException or StoreUnusableException or UnauthorizedAccessException or IOException)
        {
            await errors.WriteLineAsync(e.Message);
            return 2;
        }
    }

    private static string KeyIn(string folder) => Path.Combine(folder, HubKey.FileName);
}

/// <summary>It can't be begun, or not gone on with; the message says why, and nothing was changed.</summary>
internal sealed class RefusedException(string reason, Exception? inner = null) : Exception(reason, inner);
