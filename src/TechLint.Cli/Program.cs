using System.Runtime.InteropServices;

namespace TechLint.Cli;

internal static class Program
{
    private static int Main(string[] arguments)
    {
        using var cancellation = new CancellationTokenSource();
        using var interrupt = PosixSignalRegistration.Create(PosixSignal.SIGINT, Stop);
        using var terminate = PosixSignalRegistration.Create(PosixSignal.SIGTERM, Stop);
        return CommandLine.Run(arguments, Terminal.OfProcess(), new HouseEngine(), cancellation.Token);

        // Asked once, it ends by itself; asked twice, it is ended.
        void Stop(PosixSignalContext context)
        {
            context.Cancel = !cancellation.IsCancellationRequested;
            cancellation.Cancel();
        }
    }
}
