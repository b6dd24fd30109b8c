namespace Farhold.WayOut.Ground;

/// <summary>What a grid reference names: not a point but a square.</summary>
/// <param name="SizeMetres">Length of a side: 1, 10, 100, 1,000 or 10,000.</param>
public readonly record struct MgrsSquare(GeoPoint Centre, int SizeMetres);
