using System.Collections.Immutable;

namespace Archwright.Exchange.Problems;

/// <summary>The one list of codes. Every code has an entry in <c>docs/problems.md</c> with the message it
/// gives.</summary>
public static class ProblemCodes
{
    // The file as such.
    internal static readonly ProblemCode FileMissing = new("AW-FILE-001", "The file is not there");
    internal static readonly ProblemCode FileIsFolder = new("AW-FILE-002", "A folder in place of a file");
    internal static readonly ProblemCode FileUnreadable = new("AW-FILE-003", "The file cannot be read");
    internal static readonly ProblemCode FileEmpty = new("AW-FILE-004", "The file is empty");
    internal static readonly ProblemCode FileTooLarge = new("AW-FILE-005", "The file is too large");
    internal static readonly ProblemCode FileNotText = new("AW-FILE-006", "The file is not text");
    internal static readonly ProblemCode FileNotUtf8 = new("AW-FILE-007", "The text is not in UTF-8");
    internal static readonly ProblemCode MoreProblems = new("AW-FILE-008", "More problems than are listed");

    // The grammar of JSON.
    internal static readonly ProblemCode JsonBroken = new("AW-JSON-001", "A character that does not belong there");
    internal static readonly ProblemCode JsonEndsEarly = new("AW-JSON-002", "The file ends too early");
    internal static readonly ProblemCode JsonComment = new("AW-JSON-003", "A comment");
    internal static readonly ProblemCode JsonTrailingComma = new("AW-JSON-004", "A comma too many");
    internal static readonly ProblemCode JsonBadNumber = new("AW-JSON-005", "Not a number as JSON writes it");
    internal static readonly ProblemCode JsonTooDeep = new("AW-JSON-006", "Nested too deeply");
    internal static readonly ProblemCode JsonTooMany = new("AW-JSON-007", "Too many values");
    internal static readonly ProblemCode JsonHalfCharacter = new("AW-JSON-008", "Half a character");

    // Keys and plain values.
    internal static readonly ProblemCode KeyUnknown = new("AW-KEY-001", "An unknown key");
    internal static readonly ProblemCode KeyMissing = new("AW-KEY-002", "A key is missing");
    internal static readonly ProblemCode KeyTwice = new("AW-KEY-003", "A key given twice");
    internal static readonly ProblemCode KeyOutOfPlace = new("AW-KEY-004", "A key that does not go with the others");
    internal static readonly ProblemCode FormatWrong = new("AW-KEY-005", "Another format");
    internal static readonly ProblemCode ValueKind = new("AW-VALUE-001", "A value of the wrong kind");
    internal static readonly ProblemCode ValueRange = new("AW-VALUE-002", "A figure out of range");
    internal static readonly ProblemCode ValueWord = new("AW-VALUE-003", "An unknown word");
    internal static readonly ProblemCode ValueVector = new("AW-VALUE-004", "Not three figures");
    internal static readonly ProblemCode ValueCount = new("AW-VALUE-005", "Too few or too many entries");
    internal static readonly ProblemCode ValueText = new("AW-VALUE-006",
        "A text that is blank, too long or not of one line");

    // The wire.
    internal static readonly ProblemCode WireUnsaid = new("AW-WIRE-001", "No wire is described");
    internal static readonly ProblemCode WireTwice = new("AW-WIRE-002", "The wire is described twice");
    internal static readonly ProblemCode WireUnknown = new("AW-WIRE-003", "A wire that is not in the catalogue");
    internal static readonly ProblemCode AlloyUnsaid = new("AW-ALLOY-001", "No alloy is described");
    internal static readonly ProblemCode AlloyTwice = new("AW-ALLOY-002", "The alloy is described twice");
    internal static readonly ProblemCode AlloyUnknown = new("AW-ALLOY-003", "An alloy that is not in the catalogue");
    internal static readonly ProblemCode AlloyFigures = new("AW-ALLOY-004", "Figures of an alloy that contradict");
    internal static readonly ProblemCode EdgeTooRound = new("AW-SECTION-001", "Edges rounder than the section");
    internal static readonly ProblemCode PointsCoincide = new("AW-REST-001", "Points of the rest shape coincide");
    internal static readonly ProblemCode OutwardCount = new("AW-REST-002", "Not one outward direction a point");
    internal static readonly ProblemCode OutwardAlongWire = new("AW-REST-003", "Outward runs along the wire");
    internal static readonly ProblemCode SlotsOffRest = new("AW-REST-004", "Slots that do not follow the rest shape");

    // The slots.
    internal static readonly ProblemCode SlotsTooFew = new("AW-SLOT-001", "Fewer than two slots");
    internal static readonly ProblemCode SlotsTooMany = new("AW-SLOT-002", "More slots than an arch has");
    internal static readonly ProblemCode WireTooThick = new("AW-SLOT-003", "The wire is thicker than the slot is high");
    internal static readonly ProblemCode WireTooDeep = new("AW-SLOT-004", "The wire is deeper than the slot");
    internal static readonly ProblemCode SlotsOutOfOrder = new("AW-SLOT-005", "Slots out of order");
    internal static readonly ProblemCode SlotsOverlap = new("AW-SLOT-006", "Slots that coincide or overlap");
    internal static readonly ProblemCode ToothTwice = new("AW-SLOT-007", "A tooth given twice");
    internal static readonly ProblemCode ToothUnknown = new("AW-SLOT-008", "Not a tooth number");
    internal static readonly ProblemCode ToothOfOtherJaw = new("AW-SLOT-009", "A tooth of the other jaw");
    internal static readonly ProblemCode HoldWithClearance = new("AW-SLOT-010", "A hold together with clearances");
    internal static readonly ProblemCode PlaceTwice = new("AW-SLOT-011", "The place of a slot given twice");
    internal static readonly ProblemCode NothingHolds = new("AW-SLOT-012", "No slot holds the wire");
    internal static readonly ProblemCode UnbondedWithSlot = new(
        "AW-SLOT-013", "A crown without a bracket that has a slot");
    internal static readonly ProblemCode DirectionZero = new("AW-FRAME-001", "A direction of no length");
    internal static readonly ProblemCode NotPerpendicular = new("AW-FRAME-002", "Axes that are not at right angles");
    internal static readonly ProblemCode OutwardFlips = new("AW-FRAME-003", "A slot that is upside down");
    internal static readonly ProblemCode OutwardInward = new("AW-FRAME-004", "Slots that open inward");

    // Steps after engagement.
    internal static readonly ProblemCode StepEmpty = new("AW-STEP-001", "A step that does nothing");
    internal static readonly ProblemCode StepUnknownTooth = new("AW-STEP-002", "A step moves a slot that is not there");
    internal static readonly ProblemCode StepToothTwice = new("AW-STEP-003", "A step moves a slot twice");

    // Bends.
    internal static readonly ProblemCode BendTooFar = new("AW-BEND-001", "A deflection too large for its span");

    // What this version cannot compute.
    // Tables.
    internal static readonly ProblemCode TableEmpty = new("AW-TABLE-001", "A table without rows");
    internal static readonly ProblemCode ColumnUnknown = new("AW-TABLE-002", "An unknown column");
    internal static readonly ProblemCode ColumnMissing = new("AW-TABLE-003", "A column is missing");
    internal static readonly ProblemCode ColumnTwice = new("AW-TABLE-004", "A column given twice");
    internal static readonly ProblemCode RowWidth = new("AW-TABLE-005", "A row with too few or too many cells");
    internal static readonly ProblemCode QuoteOpen = new("AW-TABLE-006", "A quotation mark that is not closed");
    internal static readonly ProblemCode CellNumber = new("AW-TABLE-007", "A cell that is not a figure in range");
    internal static readonly ProblemCode CellEmpty = new("AW-TABLE-008", "An empty cell");
    internal static readonly ProblemCode RowsTooMany = new("AW-TABLE-009", "Too many rows");
    internal static readonly ProblemCode RowTwice = new("AW-TABLE-010", "The same row twice");
    internal static readonly ProblemCode StockUnknown = new(
        "AW-STOCK-001", "A stock wire that is not in the catalogue");
    internal static readonly ProblemCode StockCell = new(
        "AW-STOCK-002", "A cell of a list of lots that cannot be read");
    internal static readonly ProblemCode CeilingWhose = new("AW-CEILING-001", "A ceiling for no known tooth or group");
    internal static readonly ProblemCode CeilingMovement = new("AW-CEILING-002", "A ceiling for no known movement");

    /// <summary>All codes, in the order of <c>docs/problems.md</c>.</summary>
    public static ImmutableArray<ProblemCode> All { get; } =
    [
        FileMissing, FileIsFolder, FileUnreadable, FileEmpty, FileTooLarge, FileNotText, FileNotUtf8, MoreProblems,
        JsonBroken, JsonEndsEarly, JsonComment, JsonTrailingComma, JsonBadNumber, JsonTooDeep, JsonTooMany,
        JsonHalfCharacter,
        KeyUnknown, KeyMissing, KeyTwice, KeyOutOfPlace, FormatWrong,
        ValueKind, ValueRange, ValueWord, ValueVector, ValueCount, ValueText,
        WireUnsaid, WireTwice, WireUnknown, AlloyUnsaid, AlloyTwice, AlloyUnknown, AlloyFigures,
        EdgeTooRound, PointsCoincide, OutwardCount, OutwardAlongWire, SlotsOffRest,
        SlotsTooFew, SlotsTooMany, WireTooThick, WireTooDeep, SlotsOutOfOrder, SlotsOverlap,
        ToothTwice, ToothUnknown, ToothOfOtherJaw, HoldWithClearance, PlaceTwice, NothingHolds, UnbondedWithSlot,
        DirectionZero, NotPerpendicular, OutwardFlips, OutwardInward,
        StepEmpty, StepUnknownTooth, StepToothTwice,
        BendTooFar,
        TableEmpty, ColumnUnknown, ColumnMissing, ColumnTwice, RowWidth, QuoteOpen, CellNumber, CellEmpty,
        RowsTooMany, RowTwice, StockUnknown, StockCell, CeilingWhose, CeilingMovement,
    ];
}
