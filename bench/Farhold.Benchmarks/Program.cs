using BenchmarkDotNet.Running;
using Farhold.Benchmarks;

// On a machine that does other things as well, time on the wall tells little: `cpu` counts processor time.
if (args is ["cpu"])
    CpuTime.Print();
else if (args is ["casualty"])
    CasualtyCpuTime.Print();
else
    BenchmarkSwitcher.FromAssembly(typeof(CpuTime).Assembly).Run(args);
