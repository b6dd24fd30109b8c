namespace Farhold.App.Words;

public sealed partial class Texts
{
    public string CardTitle => Get();

    public string CardHow => Get();

    public string CardPrint => Get();

    public string CardRenew => Get();

    public string CardAsOf(string time) => Fill(time);
}
