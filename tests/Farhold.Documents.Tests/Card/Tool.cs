using System.Diagnostics;
using System.Text;

namespace Farhold.Documents.Tests.Card;

/// <summary>Programs of others that look at a PDF: poppler-utils and qpdf.</summary>
internal static class Tool
{
    /// <summary>The text of a PDF in the order in which it is drawn, without white space: where a line breaks does not matter.</summary>
    public static string Text(byte[] pdf) => Squeezed(Run("pdftotext", pdf, "-raw", "-enc", "UTF-8", "{}", "-").Output);

    public static string Squeezed(string text) => string.Concat(text.Where(c => !char.IsWhiteSpace(c) && c != '\u00AD'));

    /// <param name="arguments"><c>{}</c> stands for the file.</param>
    public static (int ExitCode, string Output) Run(string program, byte[] pdf, params string[] arguments)
    {
        var file = Path.GetTempFileName();
        try
        {
            File.WriteAllBytes(file, pdf);
            var start = new ProcessStartInfo(program, arguments.Select(a => a == "{}" ? file : a))
            {
                RedirectStandardOutput = true,
                RedirectStandardError = true,
                StandardOutputEncoding = Encoding.UTF8,
            };
            using var process = Process.Start(start)!;
            var errors = process.StandardError.ReadToEndAsync();
            var output = process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            return (process.ExitCode, output + errors.Result);
        }
        catch (System.ComponentModel.Win32Exception e)
        {
            throw new InvalidOperationException($"{program} is missing; ./test installs it (Debian: poppler-utils, qpdf).", e);
        }
        finally
        {
            File.Delete(file);
        }
    }
}
