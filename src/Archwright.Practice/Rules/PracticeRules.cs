namespace Archwright.Practice.Rules;

/// <summary>The rules of a practice. Each is checked where the thing it guards is changed, and each has a case that
/// keeps it and one that breaks it among the tests.</summary>
public static class PracticeRules
{
    /// <summary>Who may sign.</summary>
    public static readonly Rule OnlyAnOrthodontistSigns = new(
        nameof(OnlyAnOrthodontistSigns), "Only an orthodontist signs a visit.");

    /// <summary>What is signed stays.</summary>
    public static readonly Rule ASignedVisitIsAmendedNeverChanged = new(
        nameof(ASignedVisitIsAmendedNeverChanged), "A signed visit is amended, never changed.");

    /// <summary>No amendment without reason.</summary>
    public static readonly Rule AnAmendmentSaysWhy = new(
        nameof(AnAmendmentSaysWhy), "An amendment says what and why.");

    /// <summary>Tie per tooth.</summary>
    public static readonly Rule EveryBondedToothHasATie = new(
        nameof(EveryBondedToothHasATie), "Every bonded tooth under a wire has a tie noted, if only 'none'.");

    /// <summary>End per side.</summary>
    public static readonly Rule EachEndOfAWireIsNoted = new(
        nameof(EachEndOfAWireIsNoted), "Each end of a wire, right and left, is noted: free, stopped or cinched.");

    /// <summary>Override with a reason.</summary>
    public static readonly Rule AnotherWireThanAdvisedNeedsAReason = new(
        nameof(AnotherWireThanAdvisedNeedsAReason), "Whoever decides otherwise than the advice says why.");

    /// <summary>No stale positions.</summary>
    public static readonly Rule ADecisionRestsOnPositionsOfItsDay = new(
        nameof(ADecisionRestsOnPositionsOfItsDay), "A decision rests on positions seen on its day.");

    /// <summary>No advice on other positions than those seen.</summary>
    public static readonly Rule AdviceRestsOnWhatWasSeen = new(
        nameof(AdviceRestsOnWhatWasSeen), "The advice that is kept was given on what was seen.");

    /// <summary>Alerts reach the decision.</summary>
    public static readonly Rule AlertsStandBesideTheDecision = new(
        nameof(AlertsStandBesideTheDecision), "Every alert of the day is read before the visit is signed.");

    /// <summary>Next visit.</summary>
    public static readonly Rule AVisitSaysWhenTheNextOneIs = new(
        nameof(AVisitSaysWhenTheNextOneIs), "A signed visit says in how many weeks the next one is: 1 to 26.");

    /// <summary>Arch of a wire.</summary>
    public static readonly Rule AWireOfTheOtherArchIsNotFitted = new(
        nameof(AWireOfTheOtherArchIsNotFitted), "A wire that is formed for the other arch is not fitted.");

    /// <summary>Lot and decision agree.</summary>
    public static readonly Rule TheLotHoldsTheWireDecided = new(
        nameof(TheLotHoldsTheWireDecided), "The lot that is taken from holds the wire that was decided on.");

    /// <summary>Expiry.</summary>
    public static readonly Rule AnExpiredLotIsNotFitted = new(
        nameof(AnExpiredLotIsNotFitted), "Nothing is fitted from a lot after its expiry.");

    /// <summary>Quantity.</summary>
    public static readonly Rule StockDoesNotFallBelowNothing = new(
        nameof(StockDoesNotFallBelowNothing), "Nothing is taken from an empty lot.");

    /// <summary>Invented patients.</summary>
    public static readonly Rule InventedPatientsStayInADemoPractice = new(
        nameof(InventedPatientsStayInADemoPractice),
        "Invented patients live in a demo practice, and real ones do not.");

    /// <summary>Two identifiers.</summary>
    public static readonly Rule APatientHasANameAndABirthDate = new(
        nameof(APatientHasANameAndABirthDate), "A patient has a name and a birth date that is past.");

    /// <summary>Alerts are ended.</summary>
    public static readonly Rule AnAlertIsEndedNeverErased = new(
        nameof(AnAlertIsEndedNeverErased), "An alert is ended with a reason, never erased.");

    /// <summary>Teeth of an arch.</summary>
    public static readonly Rule BondedTeethBelongToTheirArch = new(
        nameof(BondedTeethBelongToTheirArch), "Bonded teeth, ties and positions belong to their arch.");

    /// <summary>Plausible positions.</summary>
    public static readonly Rule APositionIsPlausible = new(
        nameof(APositionIsPlausible), "A position is a finite number, up to 15 mm and 90°.");

    /// <summary>One appliance an arch.</summary>
    public static readonly Rule AnArchCarriesOneAppliance = new(
        nameof(AnArchCarriesOneAppliance), "An arch carries one appliance at a time.");

    /// <summary>Photographs are pictures.</summary>
    public static readonly Rule APhotographIsAPicture = new(
        nameof(APhotographIsAPicture), "A photograph is a JPEG, PNG or WebP file of 15 MB at most.");

    /// <summary>Text of an alert.</summary>
    public static readonly Rule AnAlertSaysWhat = new(
        nameof(AnAlertSaysWhat), "An alert says in words what there is to know.");

    /// <summary>Who may release.</summary>
    public static readonly Rule OnlyAnOrthodontistReleasesALeaflet = new(
        nameof(OnlyAnOrthodontistReleasesALeaflet), "Only an orthodontist releases a leaflet.");

    /// <summary>No leaflet of an open visit.</summary>
    public static readonly Rule ALeafletTellsOfASignedVisit = new(
        nameof(ALeafletTellsOfASignedVisit), "A leaflet tells of what was signed.");

    /// <summary>Life of a link.</summary>
    public static readonly Rule ALinkEnds = new(
        nameof(ALinkEnds), "A patient's link ends by itself, after 180 days at the latest.");

    /// <summary>The diary's scale.</summary>
    public static readonly Rule DiscomfortIsZeroToTen = new(
        nameof(DiscomfortIsZeroToTen), "Discomfort is noted from 0 to 10, for the last days only.");

    /// <summary>Who may let a program in.</summary>
    public static readonly Rule OnlyAnOrthodontistLetsAProgramIn = new(
        nameof(OnlyAnOrthodontistLetsAProgramIn), "Only an orthodontist makes a token for another program.");

    /// <summary>Bounds of a token.</summary>
    public static readonly Rule ATokenSaysForWhomWhatAndHowLong = new(
        nameof(ATokenSaysForWhomWhatAndHowLong), "A token has a name, a scope at least, and an end within a year.");

    /// <summary>Who may delete.</summary>
    public static readonly Rule OnlyAnOrthodontistDeletesByTheRule = new(
        nameof(OnlyAnOrthodontistDeletesByTheRule), "Only an orthodontist deletes a record by the practice's rule.");

    /// <summary>How long records stay.</summary>
    public static readonly Rule ARecordStaysAsLongAsTheRuleSays = new(
        nameof(ARecordStaysAsLongAsTheRuleSays), "A record stays as long as the practice's rule says.");

    /// <summary>Recalled lots.</summary>
    public static readonly Rule ARecalledLotIsNotFitted = new(
        nameof(ARecalledLotIsNotFitted), "Nothing is fitted from a lot that is recalled.");

    /// <summary>Reason of a recall.</summary>
    public static readonly Rule ARecallSaysWhy = new(nameof(ARecallSaysWhy), "A recall says why.");

    /// <summary>Languages of leaflets.</summary>
    public static readonly Rule LeafletsHaveALanguage = new(
        nameof(LeafletsHaveALanguage), "Leaflets are offered in one language at least, the usual one among them.");

    /// <summary>All rules.</summary>
    public static IReadOnlyList<Rule> All { get; } =
    [
        OnlyAnOrthodontistSigns, ASignedVisitIsAmendedNeverChanged, AnAmendmentSaysWhy, EveryBondedToothHasATie,
        EachEndOfAWireIsNoted, AnotherWireThanAdvisedNeedsAReason, ADecisionRestsOnPositionsOfItsDay,
        AdviceRestsOnWhatWasSeen, AlertsStandBesideTheDecision, AVisitSaysWhenTheNextOneIs,
        AWireOfTheOtherArchIsNotFitted, TheLotHoldsTheWireDecided, AnExpiredLotIsNotFitted,
        StockDoesNotFallBelowNothing, InventedPatientsStayInADemoPractice, APatientHasANameAndABirthDate,
        AnAlertIsEndedNeverErased, BondedTeethBelongToTheirArch, APositionIsPlausible, AnArchCarriesOneAppliance,
        APhotographIsAPicture, AnAlertSaysWhat,
        OnlyAnOrthodontistReleasesALeaflet, ALeafletTellsOfASignedVisit, ALinkEnds, DiscomfortIsZeroToTen,
        OnlyAnOrthodontistLetsAProgramIn, ATokenSaysForWhomWhatAndHowLong,
        OnlyAnOrthodontistDeletesByTheRule, ARecordStaysAsLongAsTheRuleSays, ARecalledLotIsNotFitted, ARecallSaysWhy,
        LeafletsHaveALanguage,
    ];

    /// <summary>Stops what would break a rule.</summary>
    internal static void Keep(this Rule rule, bool kept, string otherwise)
    {
        if (!kept)
            throw new RuleBrokenException(rule, otherwise);
    }
}
