using Archwright.Dentition.Teeth;
using Archwright.Mechanics.Slots;
using Archwright.Practice.Advice;
using Archwright.Practice.Clients;
using Archwright.Practice.Courses;
using Archwright.Practice.Keeping;
using Archwright.Practice.Leaflets;
using Archwright.Practice.Links;
using Archwright.Practice.People;
using Archwright.Practice.Rules;
using Archwright.Practice.Settings;
using Archwright.Practice.Values;
using Archwright.Practice.Visits;

namespace Archwright.Practice.Tests.Rules;

/// <summary>For each rule an act that keeps it and acts that break it.</summary>
internal static class RuleCases
{
    public static IReadOnlyList<(Rule Rule, Action Keeps, Action[] Breaks)> All { get; } =
    [
        (PracticeRules.OnlyAnOrthodontistSigns,
            () => Samples.Sign(Samples.Complete),
            [
                () => Samples.Sign(Samples.Complete, Samples.Assistant),
                () => Samples.Sign(
                    Samples.Complete, new Actor(Guid.NewGuid(), "Gwen Rowe", StaffRole.Reception)),
            ]),
        (PracticeRules.ASignedVisitIsAmendedNeverChanged,
            () => Signed().Amend(Samples.Assistant, Samples.Now, "Elastics given.", "Forgotten."),
            [
                () => Signed().Note(Samples.Complete with { Note = "changed" }, Samples.Assistant),
                () => Samples.Visit(Guid.NewGuid()).Amend(Samples.Assistant, Samples.Now, "More.", "Forgotten."),
                SignTwice,
            ]),
        (PracticeRules.AnAmendmentSaysWhy,
            () => Signed().Amend(Samples.Assistant, Samples.Now, "Elastics given.", "Forgotten."),
            [
                () => Signed().Amend(Samples.Assistant, Samples.Now, "Elastics given.", " "),
                () => Signed().Amend(Samples.Assistant, Samples.Now, "", "Forgotten."),
            ]),
        (PracticeRules.EveryBondedToothHasATie,
            () => Samples.Sign(Samples.With(arch => arch with
            {
                Ties = arch.Ties.With(ToothNumber.FromIso(13), TieKind.None),
            })),
            [
                () => Samples.Sign(Samples.With(arch => arch with
                {
                    Ties = arch.Ties.Without(ToothNumber.FromIso(13)),
                })),
            ]),
        (PracticeRules.EachEndOfAWireIsNoted,
            () => Samples.Sign(Samples.Complete),
            [
                () => Samples.Sign(Samples.With(arch => arch with { RightEnd = null })),
                () => Samples.Sign(Samples.With(arch => arch with { LeftEnd = null })),
            ]),
        (PracticeRules.AnotherWireThanAdvisedNeedsAReason,
            () => Samples.Sign(Decided(new Decision(WireAct.Fit, "ss-019x025", Guid.NewGuid(), "Torque is wanted."))),
            [
                () => Samples.Sign(Decided(new Decision(WireAct.Fit, "ss-019x025", Guid.NewGuid(), "  "))),
                () => Samples.Sign(Samples.With(arch => arch with { Decided = null })),
                () => Samples.Sign(LookFirst(new Decision(WireAct.Fit, "ss-019x025", Guid.NewGuid(), ""))),
            ]),
        (PracticeRules.ADecisionRestsOnPositionsOfItsDay,
            () => Samples.Sign(Seen(Samples.Today)),
            [
                () => Samples.Sign(Seen(Samples.Today.AddDays(-1))),
                () => Samples.Sign(Samples.With(arch => arch with { Seen = null })),
            ]),
        (PracticeRules.AdviceRestsOnWhatWasSeen,
            () => Samples.Sign(Samples.With(arch => arch with { Advised = null })),
            [
                () => Samples.Sign(Samples.With(arch => arch with
                {
                    Seen = arch.Seen! with { Positions = ToothMap<ToothOffset>.Empty },
                })),
            ]),
        (PracticeRules.AlertsStandBesideTheDecision,
            () => SignWithAlert(read: true),
            [() => SignWithAlert(read: false)]),
        (PracticeRules.AVisitSaysWhenTheNextOneIs,
            () => Samples.Sign(Samples.Complete with { NextInWeeks = 26 }),
            [
                () => Samples.Sign(Samples.Complete with { NextInWeeks = null }),
                () => Samples.Sign(Samples.Complete with { NextInWeeks = 0 }),
                () => Samples.Sign(Samples.Complete with { NextInWeeks = 27 }),
            ]),
        (PracticeRules.AWireOfTheOtherArchIsNotFitted,
            () => Samples.Lot(jaw: null).Take("niti-014", Jaw.Lower, Samples.Today),
            [() => Samples.Lot().Take("niti-014", Jaw.Lower, Samples.Today)]),
        (PracticeRules.TheLotHoldsTheWireDecided,
            () => Samples.Lot().Take("niti-014", Jaw.Upper, Samples.Today),
            [() => Samples.Lot().Take("niti-016", Jaw.Upper, Samples.Today)]),
        (PracticeRules.AnExpiredLotIsNotFitted,
            () => Samples.Lot(expires: Samples.Today).Take("niti-014", Jaw.Upper, Samples.Today),
            [() => Samples.Lot(expires: Samples.Today.AddDays(-1)).Take("niti-014", Jaw.Upper, Samples.Today)]),
        (PracticeRules.StockDoesNotFallBelowNothing,
            () => Samples.Lot(pieces: 1).Take("niti-014", Jaw.Upper, Samples.Today),
            [() => Samples.Lot(pieces: 0).Take("niti-014", Jaw.Upper, Samples.Today)]),
        (PracticeRules.InventedPatientsStayInADemoPractice,
            () => Patient.Create(Samples.Details with { IsInvented = false }, practiceIsDemo: false, Samples.Today),
            [
                () => Patient.Create(Samples.Details, practiceIsDemo: false, Samples.Today),
                () => Patient.Create(Samples.Details with { IsInvented = false }, practiceIsDemo: true, Samples.Today),
            ]),
        (PracticeRules.APatientHasANameAndABirthDate,
            () => Samples.Patient(),
            [
                () => Patient.Create(Samples.Details with { FamilyName = " " }, true, Samples.Today),
                () => Patient.Create(Samples.Details with { GivenNames = "" }, true, Samples.Today),
                () => Patient.Create(Samples.Details with { BornOn = Samples.Today }, true, Samples.Today),
                () => Patient.Create(Samples.Details with { BornOn = default }, true, Samples.Today),
            ]),
        (PracticeRules.AnAlertIsEndedNeverErased,
            () => EndAlert("Patch test negative."),
            [() => EndAlert(" ")]),
        (PracticeRules.BondedTeethBelongToTheirArch,
            () => Samples.Upper(Guid.NewGuid()).Rebond(Samples.UpperTeeth.Without(ToothNumber.FromIso(17))),
            [
                () => Samples.Upper(Guid.NewGuid()).Rebond(Samples.UpperTeeth.With(ToothNumber.FromIso(33))),
                () => Samples.Upper(Guid.NewGuid()).Rebond(Samples.UpperTeeth.With(ToothNumber.FromIso(18))),
                () => ArchTreatment.Begin(
                    Guid.NewGuid(),
                    Jaw.Upper,
                    new Appliance
                    {
                        SlotCode = "022",
                        Prescription = "roth",
                        Bonded = Listing<ToothNumber>.Of([ToothNumber.FromIso(11)]),
                    },
                    Samples.Today,
                    ToothMap<ToothOffset>.Empty),
                () => Samples.Visit(Guid.NewGuid(), Samples.With(arch => arch with
                {
                    Ties = arch.Ties.With(ToothNumber.FromIso(43), TieKind.Steel),
                })),
            ]),
        (PracticeRules.APositionIsPlausible,
            () => Samples.Visit(Guid.NewGuid(), At(new ToothOffset(LabialMm: 15, TipDegrees: -90))),
            [
                () => Samples.Visit(Guid.NewGuid(), At(new ToothOffset(LabialMm: 15.1))),
                () => Samples.Visit(Guid.NewGuid(), At(new ToothOffset(TorqueDegrees: double.NaN))),
                () => Samples.Visit(Guid.NewGuid(), At(new ToothOffset(MesialMm: double.PositiveInfinity))),
                () => Samples.Visit(Guid.NewGuid(), At(new ToothOffset(RotationDegrees: -91))),
            ]),
        (PracticeRules.AnArchCarriesOneAppliance,
            () => ArchTreatment.CheckFree(Jaw.Lower, [Samples.Upper(Guid.NewGuid())]),
            [() => ArchTreatment.CheckFree(Jaw.Upper, [Samples.Upper(Guid.NewGuid())])]),
        (PracticeRules.APhotographIsAPicture,
            () => Photograph.Check(Png, Photograph.LargestBytes),
            [
                () => Photograph.Check(Png, Photograph.LargestBytes + 1L),
                () => Photograph.Check([], 0),
                () => Photograph.Check("<svg xmlns=\"htt"u8, 500),
                () => Photograph.Check("RIFF    WAVE"u8, 500),
            ]),
        (PracticeRules.AnAlertSaysWhat,
            () => Samples.Patient().Raise(AlertKind.Other, "Plays the trumpet.", Samples.Today),
            [() => Samples.Patient().Raise(AlertKind.Nickel, " ", Samples.Today)]),
        (PracticeRules.OnlyAnOrthodontistReleasesALeaflet,
            () => Release(Signed(), Samples.Orthodontist),
            [() => Release(Signed(), Samples.Assistant)]),
        (PracticeRules.ALeafletTellsOfASignedVisit,
            () => Release(Signed(), Samples.Orthodontist),
            [() => Release(Samples.Visit(Guid.NewGuid()), Samples.Orthodontist)]),
        (PracticeRules.ALinkEnds, () => Link(180), [() => Link(0), () => Link(181)]),
        (PracticeRules.DiscomfortIsZeroToTen,
            () => DiscomfortDay.Note(Guid.NewGuid(), Samples.Today, 10, Samples.Now),
            [
                () => DiscomfortDay.Note(Guid.NewGuid(), Samples.Today, 11, Samples.Now),
                () => DiscomfortDay.Note(Guid.NewGuid(), Samples.Today, -1, Samples.Now),
                () => DiscomfortDay.Note(Guid.NewGuid(), Samples.Today.AddDays(-15), 3, Samples.Now),
                () => DiscomfortDay.Note(Guid.NewGuid(), Samples.Today.AddDays(2), 3, Samples.Now),
            ]),
        (PracticeRules.OnlyAnOrthodontistLetsAProgramIn,
            () => Token(by: Samples.Orthodontist),
            [() => Token(by: Samples.Assistant)]),
        (PracticeRules.ATokenSaysForWhomWhatAndHowLong,
            () => Token(days: 366),
            [
                () => Token(days: 0), () => Token(days: 367), () => Token(name: " "),
                () => ApiClient.Make("Lab", [], 30, Samples.Orthodontist, Samples.Now),
            ]),
        (PracticeRules.OnlyAnOrthodontistDeletesByTheRule,
            () => Dispose(Samples.Orthodontist, years: 10),
            [() => Dispose(Samples.Assistant, years: 10)]),
        (PracticeRules.ARecordStaysAsLongAsTheRuleSays,
            () => Dispose(Samples.Orthodontist, years: 10),
            [
                () => Dispose(Samples.Orthodontist, years: 12), () => Dispose(Samples.Orthodontist, years: null),
                () => Dispose(Samples.Orthodontist, years: 10, untilAge: 14),
            ]),
        (PracticeRules.ARecalledLotIsNotFitted,
            () => Samples.Lot().Take("niti-014", Jaw.Upper, Samples.Today),
            [TakeRecalled]),
        (PracticeRules.ARecallSaysWhy,
            () => Samples.Lot().Recall("The maker's letter of today.", Samples.Today),
            [() => Samples.Lot().Recall(" ", Samples.Today)]),
        (PracticeRules.LeafletsHaveALanguage,
            () => new PracticeSettings().Speaking(["de"], "de"),
            [
                () => new PracticeSettings().Speaking([], "en"),
                () => new PracticeSettings().Speaking(["de"], "en"),
            ]),
    ];

    private static Visit Signed()
    {
        Patient patient = Samples.Patient();
        Visit visit = Samples.Visit(patient.Id);
        visit.Sign(Samples.Orthodontist, Samples.Now, patient, [Samples.Upper(patient.Id)]);
        return visit;
    }

    private static void SignTwice()
    {
        Patient patient = Samples.Patient();
        Visit visit = Samples.Visit(patient.Id);
        visit.Sign(Samples.Orthodontist, Samples.Now, patient, [Samples.Upper(patient.Id)]);
        visit.Sign(Samples.Orthodontist, Samples.Now, patient, [Samples.Upper(patient.Id)]);
    }

    private static VisitContent Decided(Decision decision) =>
        Samples.With(arch => arch with { Decided = decision });

    private static VisitContent LookFirst(Decision decision) => Samples.With(arch => arch with
    {
        Advised = arch.Advised! with { Kind = AdviceKind.LookFirst }, Decided = decision,
    });

    private static ReadOnlySpan<byte> Png => [0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A, 0, 0, 0, 13];

    private static VisitContent Seen(DateOnly on) =>
        Samples.With(arch => arch with { Seen = arch.Seen! with { On = on } });

    private static VisitContent At(ToothOffset offset) => Samples.With(arch => arch with
    {
        Seen = arch.Seen! with { Positions = ToothMap<ToothOffset>.Empty.With(ToothNumber.FromIso(11), offset) },
    });

    private static void SignWithAlert(bool read)
    {
        Patient patient = Samples.Patient();
        Alert alert = patient.Raise(AlertKind.Nickel, "Rash from a watch strap.", Samples.Today.AddDays(-9));
        VisitContent content = read
            ? Samples.Complete with { AlertsRead = Listing<Guid>.Of([alert.Id]) }
            : Samples.Complete;
        Samples.Visit(patient.Id, content)
            .Sign(Samples.Orthodontist, Samples.Now, patient, [Samples.Upper(patient.Id)]);
    }

    private static void EndAlert(string because)
    {
        Patient patient = Samples.Patient();
        Alert alert = patient.Raise(AlertKind.Nickel, "Rash.", Samples.Today.AddDays(-9));
        patient.End(alert.Id, Samples.Today, because, Samples.Orthodontist);
    }

    private static void Release(Visit visit, Actor by) => ReleasedLeaflet.Release(
        visit, LeafletWriter.Write(visit, LeafletTexts.In("en"), "F")!, LeafletPictures.None, by, Samples.Now);

    private static void Link(int days) =>
        PatientLink.Make(Guid.NewGuid(), Guid.NewGuid(), days, Samples.Assistant, Samples.Now);

    // The last entry is eleven years ago, the patient thirteen.
    private static void Dispose(Actor by, int? years, int? untilAge = null) => Disposal.Confirm(
        Samples.Patient(), Samples.Today.AddYears(-11), new Retention(years, untilAge), by, Samples.Now);

    private static void TakeRecalled()
    {
        Archwright.Practice.Stock.StockLot lot = Samples.Lot();
        lot.Recall("The maker's letter of today.", Samples.Today);
        lot.Take("niti-014", Jaw.Upper, Samples.Today);
    }

    private static void Token(string name = "Lab", int days = 30, Actor? by = null) =>
        ApiClient.Make(name, [ApiScope.Compute], days, by ?? Samples.Orthodontist, Samples.Now);
}
