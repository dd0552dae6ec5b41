using System.Reflection;
using Archwright.Web.Answers;
using Archwright.Web.Bench;
using Archwright.Web.Hosting;
using Archwright.Web.Leaflets;
using Archwright.Web.Pages;
using Archwright.Web.Texts;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Components;

namespace Archwright.Web.Tests.Pages;

/// <summary>Who may see which page. Rests on the list below, which a new page must join.</summary>
[Trait("basis", "law")]
public sealed class PagesTests
{
    private static readonly Type[] Open =
        [typeof(SignInPage), typeof(FirstAccount), typeof(About), typeof(NotFound), typeof(NotAllowed), typeof(Fault)];

    private static readonly Type[] AtTheChair =
    [
        typeof(ChairPage), typeof(CoursePage), typeof(Stock), typeof(RecordPage), typeof(CeilingsPage),
        typeof(LeafletPage), typeof(AnswersPage), typeof(LotPage), typeof(PolicyPage),
    ];

    private static readonly Type[] Owners =
        [typeof(SettingsPage), typeof(StaffPage), typeof(ProgramsPage), typeof(TextsPage), typeof(KeepingPage)];

    private static readonly Type[] SignedIn =
        [typeof(Day), typeof(Find), typeof(Account), typeof(NewPatient), typeof(BookPage), typeof(BenchPage)];

    [Fact]
    public void Every_page_says_who_may_see_it()
    {
        Type[] known = [.. AtTheChair, .. SignedIn, .. Owners];
        Type[] pages =
        [
            .. typeof(Day).Assembly.GetTypes().Where(type => type.GetCustomAttributes<RouteAttribute>().Any()),
        ];

        Assert.Equal(
            pages.Select(page => page.Name).Order(StringComparer.Ordinal),
            Open.Concat(known).Select(page => page.Name).Order(StringComparer.Ordinal));
        Assert.All(Open, page => Assert.NotEmpty(page.GetCustomAttributes<AllowAnonymousAttribute>()));
        Assert.All(known, page => Assert.Empty(page.GetCustomAttributes<AllowAnonymousAttribute>()));
        Assert.All(known, page => Assert.NotEmpty(page.GetCustomAttributes<AuthorizeAttribute>()));
        Assert.All(
            AtTheChair,
            page => Assert.Contains(
                page.GetCustomAttributes<AuthorizeAttribute>(), one => one.Policy == SignIn.AtTheChair));
        Assert.All(
            Owners,
            page => Assert.Contains(
                page.GetCustomAttributes<AuthorizeAttribute>(), one => one.Policy == SignIn.OwnsThePractice));
    }
}
