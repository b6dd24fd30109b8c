namespace Farhold.Signs;

/// <summary>Class of haemorrhage, best to worst. <c>default</c> is no class.</summary>
public enum HaemorrhageClass
{
    I = 1,
    II = 2,
    III = 3,
    IV = 4,
}
