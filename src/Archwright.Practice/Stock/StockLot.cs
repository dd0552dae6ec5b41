using Archwright.Dentition.Teeth;
using Archwright.Practice.Rules;

namespace Archwright.Practice.Stock;

/// <summary>Pieces of one wire from one lot.</summary>
public sealed class StockLot
{
    private StockLot()
    {
    }

    /// <summary>Identity.</summary>
    public Guid Id { get; private set; }

    /// <summary>Id of the wire in the catalogue, or the practice's own name where the catalogue has none.</summary>
    public string WireId { get; private set; } = "";

    /// <summary>Arch it is formed for; null for straight lengths and forms for either.</summary>
    public Jaw? Jaw { get; private set; }

    /// <summary>Form: "ovoid".</summary>
    public string Form { get; private set; } = "";

    /// <summary>Lot as on the label.</summary>
    public string Lot { get; private set; } = "";

    /// <summary>Number of the article on the label, GTIN-14; empty when it was not noted.</summary>
    public string Gtin { get; private set; } = "";

    /// <summary>Day on which it was recalled; null while it is not.</summary>
    public DateOnly? RecalledOn { get; private set; }

    /// <summary>Why it was recalled; empty while it is not.</summary>
    public string RecalledBecause { get; private set; } = "";

    /// <summary>Last day of use; null when the label has none.</summary>
    public DateOnly? Expires { get; private set; }

    /// <summary>Pieces there.</summary>
    public int OnHand { get; private set; }

    /// <summary>Pieces at which it is to be ordered again.</summary>
    public int ReorderAt { get; private set; }

    /// <summary>Changes with every save.</summary>
    public Guid Revision { get; private set; }

    /// <summary>True when it is time to order.</summary>
    public bool IsLow => OnHand <= ReorderAt;

    /// <summary>Puts a lot on the shelf.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A count is negative.</exception>
    public static StockLot Receive(
        string wireId, Jaw? jaw, string form, string lot, DateOnly? expires, int pieces, int reorderAt,
        string gtin = "")
    {
        ArgumentOutOfRangeException.ThrowIfNegative(pieces);
        ArgumentOutOfRangeException.ThrowIfNegative(reorderAt);
        return new StockLot
        {
            Id = Guid.CreateVersion7(),
            WireId = wireId,
            Jaw = jaw,
            Form = form,
            Lot = lot,
            Gtin = gtin,
            Expires = expires,
            OnHand = pieces,
            ReorderAt = reorderAt,
        };
    }

    /// <summary>Notes how many pieces were counted on the shelf.</summary>
    /// <returns>Pieces more than were on record; negative when fewer.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The count is negative.</exception>
    public int Count(int pieces)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(pieces);
        int more = pieces - OnHand;
        OnHand = pieces;
        return more;
    }

    /// <summary>Notes that the lot is recalled: no piece of it is fitted any more.</summary>
    /// <exception cref="RuleBrokenException">No reason.</exception>
    public void Recall(string why, DateOnly on)
    {
        PracticeRules.ARecallSaysWhy.Keep(why.Trim().Length > 0, "Say why the lot is recalled, and by whom.");
        RecalledOn ??= on;
        RecalledBecause = why.Trim();
    }

    /// <summary>True when a piece may be taken for an arch on a day.</summary>
    public bool CanServe(Jaw jaw, DateOnly day) =>
        OnHand > 0 && RecalledOn is null && (Jaw is null || Jaw == jaw) && (Expires is null || day <= Expires);

    /// <summary>Takes one piece.</summary>
    /// <param name="wireId">The wire that was decided on.</param>
    /// <param name="jaw">Where it goes in.</param>
    /// <param name="day">The day.</param>
    /// <exception cref="RuleBrokenException">Another wire, the other arch, expired, or none left.</exception>
    public void Take(string wireId, Jaw jaw, DateOnly day)
    {
        PracticeRules.TheLotHoldsTheWireDecided.Keep(
            wireId == WireId, $"Lot {Lot} holds {WireId}, and {wireId} was decided on. Choose its lot.");
        PracticeRules.AWireOfTheOtherArchIsNotFitted.Keep(
            Jaw is null || Jaw == jaw,
            $"Lot {Lot} is formed for the {Jaw?.Word()} arch. Choose a lot for the {jaw.Word()} arch.");
        PracticeRules.AnExpiredLotIsNotFitted.Keep(
            Expires is null || day <= Expires,
            $"Lot {Lot} has expired on {Expires:yyyy-MM-dd}. Take it off the shelf.");
        PracticeRules.ARecalledLotIsNotFitted.Keep(
            RecalledOn is null,
            $"Lot {Lot} is recalled ({RecalledBecause}). Take it off the shelf, and choose another.");
        PracticeRules.StockDoesNotFallBelowNothing.Keep(
            OnHand > 0, $"Nothing is left of lot {Lot}. Choose another lot, or count the shelf again.");
        OnHand--;
    }
}
