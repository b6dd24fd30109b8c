using Farhold.Bom;

// Writes the bill of materials anew from the lock files: dotnet run --project tools/bom, in any folder of the repository.
var root = new DirectoryInfo(Environment.CurrentDirectory);
while (root is not null && !File.Exists(Path.Combine(root.FullName, "Farhold.slnx")))
    root = root.Parent;
if (root is null)
{
    Console.Error.WriteLine("Farhold.slnx is in no folder above this one.");
    return 2;
}

File.WriteAllText(Path.Combine(root.FullName, BillOfMaterials.FileName), BillOfMaterials.Of(root.FullName));
return 0;
