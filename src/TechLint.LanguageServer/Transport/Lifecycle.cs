namespace TechLint.LanguageServer.Transport;

internal enum LifecycleStage { Uninitialized, Running, ShutDown }

/// <summary>
/// How far the session has come, in the order in which messages arrived: the door moves it on, before a handler ran.
/// </summary>
internal sealed class Lifecycle
{
    private readonly TaskCompletionSource exited = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private volatile LifecycleStage stage = LifecycleStage.Uninitialized;

    public LifecycleStage Stage => stage;

    /// <summary>Completes when the client asked the server to go.</summary>
    public Task Exited => exited.Task;

    public void Initialize() => stage = LifecycleStage.Running;

    /// <summary>An <c>initialize</c> that could not be served leaves the session as it was.</summary>
    public void InitializeFailed() => stage = LifecycleStage.Uninitialized;

    public void ShutDown() => stage = LifecycleStage.ShutDown;

    public void Exit() => exited.TrySetResult();
}
