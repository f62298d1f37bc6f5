using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging.Abstractions;

namespace PartsSignal.Reports.Components;

/// <summary>Renders a page that is a component of what it shows and of nothing else: the same data, the same text.</summary>
public static class PageRenderer
{
    private const string View = "View";

    /// <summary>The document's text, with line feeds only.</summary>
    /// <typeparam name="TPage">A page with one parameter, <c>View</c>.</typeparam>
    /// <param name="view">What it shows.</param>
    public static string Render<TPage>(object view)
        where TPage : IComponent
    {
        using ServiceProvider none = new ServiceCollection().BuildServiceProvider();
        using var renderer = new HtmlRenderer(none, NullLoggerFactory.Instance);
        Task<string> text = renderer.Dispatcher.InvokeAsync(async () =>
            (await renderer.RenderComponentAsync<TPage>(ParameterView.FromDictionary(new Dictionary<string, object?> { [View] = view })).ConfigureAwait(true)).ToHtmlString());
        return text.GetAwaiter().GetResult().ReplaceLineEndings("\n");
    }
}
