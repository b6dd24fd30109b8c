namespace Farhold.App.Browser;

/// <summary>Opens the phone's own dialogue for printing the page or keeping it as a file.</summary>
public interface IPrinter
{
    void Print();
}
