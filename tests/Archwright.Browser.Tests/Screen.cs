using System.Collections.Concurrent;
using Archwright.Practice.Demo;
using Microsoft.Playwright;

namespace Archwright.Browser.Tests;

/// <summary>One screen of somebody, that remembers what went wrong on it.</summary>
public sealed class Screen : IAsyncDisposable
{
    /// <summary>How long anything may take before it counts as not coming [ms]: no test is about time.</summary>
    public const float Patience = 300_000;

    private readonly ConcurrentQueue<string> troubles = new();

    public Screen(IPage page, Uri home)
    {
        Page = page;
        page.SetDefaultTimeout(Patience);
        page.Console += (_, message) =>
        {
            if (message.Type == "error")
                troubles.Enqueue("console: " + message.Text);
        };
        page.PageError += (_, fault) => troubles.Enqueue("page: " + fault);
        page.Request += (_, request) =>
        {
            if (new Uri(request.Url) is { IsFile: false } asked && asked.Scheme != "data" && asked.Host != home.Host)
                troubles.Enqueue("outside: " + request.Url);
        };
    }

    public IPage Page { get; }

    /// <summary>Nothing went wrong and nothing was asked of another machine.</summary>
    public void IsClean() => Assert.Empty(troubles);

    public async Task SignInAsync(string user)
    {
        await Page.GotoAsync("/sign-in");
        await Page.GetByLabel("Name of your account").FillAsync(user);
        await Page.GetByLabel("Password").FillAsync(DemoPractice.Password);
        await Page.GetByRole(AriaRole.Button, new() { Name = "Sign in", Exact = true }).ClickAsync();
        await Page.Locator("ol.day").WaitForAsync();
    }

    /// <summary>Opens the chair of a patient of the day.</summary>
    public async Task OpenChairAsync(string patient)
    {
        // Another test may have booked the same patient once more.
        await Page.GetByRole(AriaRole.Link, new() { Name = $"Chair of {patient}" }).First.ClickAsync();
        await Page.Locator("svg.arch").WaitForAsync();
    }

    public ILocator Button(string name, bool exact = true) =>
        Page.GetByRole(AriaRole.Button, new() { Name = name, Exact = exact });

    public async Task ArrivedAsync(string text) => await Page.GetByText(text).First.WaitForAsync();

    public async ValueTask DisposeAsync() => await Page.Context.CloseAsync();
}
