using System.Globalization;
using Archwright.Cli.Running;
using Archwright.Dentition.Catalogue;
using Spectre.Console;

namespace Archwright.Cli.Tables;

/// <summary>The alloys under the list of wires: what sets them apart beyond their stiffness.</summary>
internal static class AlloysTable
{
    private const int FullWidth = 115;

    private const string None = "–";

    /// <summary>One line an alloy.</summary>
    public static void Write(Terminal terminal, IEnumerable<CatalogueAlloy> alloys)
    {
        // A narrow screen does with the short names of the wires' ids, and without the modulus.
        bool isWide = terminal.Width >= FullWidth;
        (string Heading, bool IsFigure)[] figures =
        [
            ("yield\nMPa", true), ("loading\nMPa", true), ("unloading\nMPa", true), ("finish\n°C", true),
            ("friction\ndry", true), ("in\nsaliva", true),
        ];
        Table table = Layout.Table(
            isWide ? [("alloy", false), ("modulus\nGPa", true), .. figures] : [("alloy", false), .. figures]);
        foreach (CatalogueAlloy alloy in alloys)
        {
            Text[] row = [.. Row(alloy)];
            Text[] first = isWide
                ? [new(alloy.Title), new(Whole(alloy.Young.Value / 1000))]
                : [new(alloy.Id)];
            table.AddRow([.. first, .. row]);
        }

        Layout.Write(terminal, table);
        Layout.Gap(terminal);
        Layout.Paragraph(terminal, "loading, unloading: the stress, at the temperature of the mouth, at which the "
            + "alloy transforms and at which it goes back, from start to end; the force of a wire that works on for "
            + "weeks goes with the unloading one. finish: the temperature above which it is austenite without stress. "
            + "Makes of one kind differ by a factor of two, lots of one make by up to half. Friction is that on a "
            + "steel slot; half more or less is possible.");
    }

    private static IEnumerable<Text> Row(CatalogueAlloy alloy)
    {
        TransformationFigures? loop = alloy.Transformation;
        yield return new Text(alloy.Yield is { } yield ? Whole(yield.Value) : None);
        yield return new Text(loop is null ? None : Range(loop.ForwardStart.Value, loop.ForwardFinish.Value));
        yield return new Text(loop is null ? None : Range(loop.ReverseStart.Value, loop.ReverseFinish.Value));
        yield return new Text(
            loop is null ? None : loop.AusteniteFinish.Value.ToString("0.#", CultureInfo.InvariantCulture));
        yield return new Text(Two(alloy.FrictionDry.Value));
        yield return new Text(Two(alloy.FrictionWet.Value));
    }

    private static string Range(double from, double to) => $"{Whole(from)} to {Whole(to)}";

    private static string Whole(double value) =>
        value.ToString("0", CultureInfo.InvariantCulture).Replace('-', '−');

    private static string Two(double value) => value.ToString("0.00", CultureInfo.InvariantCulture);
}
