namespace PartsSignal.Pipeline.Bench;

/// <summary>
/// Where the bench that runs for a home folder can be reached, so that a second start opens its page instead of failing.
/// The file holds the start address with its secret; only this user may read it.
/// </summary>
/// <param name="home">Home folder of the shops.</param>
internal sealed class OpenBench(string home)
{
    private static readonly TimeSpan LongestWait = TimeSpan.FromSeconds(3);
    private readonly string _file = Path.Combine(home, "running.txt");

    /// <summary>The start address of a bench that answers, or null when none does.</summary>
    public async Task<string?> FindAsync(CancellationToken cancellation)
    {
        if (!File.Exists(_file) || !Uri.TryCreate((await File.ReadAllTextAsync(_file, cancellation).ConfigureAwait(false)).Trim(), UriKind.Absolute, out Uri? address) || !address.IsLoopback)
        {
            return null;
        }

        // Another program may have the port by now: only the bench with this secret leads on to its pages.
        using var handler = new SocketsHttpHandler { AllowAutoRedirect = false, UseProxy = false, UseCookies = false };
        using var client = new HttpClient(handler) { Timeout = LongestWait };
        try
        {
            using HttpResponseMessage answer = await client.GetAsync(address, HttpCompletionOption.ResponseHeadersRead, cancellation).ConfigureAwait(false);
            return (int)answer.StatusCode is >= 300 and < 400 ? address.ToString() : null;
        }
        catch (Exception none) when (none is HttpRequestException or TaskCanceledException && !cancellation.IsCancellationRequested)
        {
            return null;
        }
    }

    /// <summary>Keeps the address while the bench runs.</summary>
    public void Keep(string address)
    {
        Directory.CreateDirectory(home);
        File.Delete(_file);
        var options = new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.Write };
        if (!OperatingSystem.IsWindows())
        {
            options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        }

        using var writer = new StreamWriter(_file, options);
        writer.WriteLine(address);
    }

    /// <summary>Takes it away when the bench ends.</summary>
    public void Remove() => File.Delete(_file);
}
