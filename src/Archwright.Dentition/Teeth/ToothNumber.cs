using System.Globalization;

namespace Archwright.Dentition.Teeth;

/// <summary>A permanent tooth by its ISO 3950 number.</summary>
/// <remarks><c>default</c> is no tooth: its <see cref="Iso"/> is 0. Use <see cref="FromIso"/> or
/// <see cref="TryParse"/>. Primary teeth (quadrants 5 to 8) are not archwire teeth here and are refused.</remarks>
public readonly record struct ToothNumber
{
    private static readonly string[] Kinds =
    [
        "central incisor", "lateral incisor", "canine", "first premolar", "second premolar",
        "first molar", "second molar", "third molar",
    ];

    private ToothNumber(int iso) => Iso = iso;

    /// <summary>Two digits: quadrant 1 to 4 (upper right, upper left, lower left, lower right), then position 1 to 8
    /// from the midline.</summary>
    public int Iso { get; }

    /// <summary>1 upper right, 2 upper left, 3 lower left, 4 lower right.</summary>
    public int Quadrant => Iso / 10;

    /// <summary>1 central incisor to 8 third molar.</summary>
    public int Position => Iso % 10;

    /// <summary>True in the upper jaw.</summary>
    public bool IsUpper => Quadrant is 1 or 2;

    /// <summary>True on the patient's right.</summary>
    public bool IsRight => Quadrant is 1 or 4;

    /// <summary>True for incisors and canines.</summary>
    public bool IsAnterior => Position is >= 1 and <= 3;

    /// <summary>True for molars, which carry tubes.</summary>
    public bool IsMolar => Position >= 6;

    /// <summary>All sixteen upper teeth from the patient's right to the left: 18 … 11, 21 … 28.</summary>
    public static IReadOnlyList<ToothNumber> UpperArch { get; } = Arch(right: 1, left: 2);

    /// <summary>All sixteen lower teeth from the patient's right to the left: 48 … 41, 31 … 38.</summary>
    public static IReadOnlyList<ToothNumber> LowerArch { get; } = Arch(right: 4, left: 3);

    /// <summary>The tooth of an ISO 3950 number.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is not 11–18, 21–28, 31–38 or 41–48.</exception>
    public static ToothNumber FromIso(int iso) =>
        IsPermanent(iso)
            ? new ToothNumber(iso)
            : throw new ArgumentOutOfRangeException(
                nameof(iso), iso, "A permanent tooth is 11-18, 21-28, 31-38 or 41-48 (ISO 3950).");

    /// <summary>Reads an ISO 3950 number: exactly two digits.</summary>
    public static bool TryParse(string? iso, out ToothNumber tooth)
    {
        tooth = default;
        if (iso is not { Length: 2 }
            || !int.TryParse(iso, NumberStyles.None, CultureInfo.InvariantCulture, out int number)
            || !IsPermanent(number))
        {
            return false;
        }

        tooth = new ToothNumber(number);
        return true;
    }

    /// <summary>Two digits, as "13".</summary>
    public string ToIso() => Iso.ToString("00", CultureInfo.InvariantCulture);

    /// <summary>1 to 32, as "6" for the upper right canine.</summary>
    public string ToUniversal()
    {
        int number = Quadrant switch
        {
            1 => 9 - Position,
            2 => 8 + Position,
            3 => 25 - Position,
            4 => 24 + Position,
            _ => 0,
        };
        return number.ToString(CultureInfo.InvariantCulture);
    }

    /// <summary>Quadrant in letters, then position, as "UR3".</summary>
    public string ToPalmer() => (IsUpper ? "U" : "L") + (IsRight ? "R" : "L") + Position;

    /// <summary>In the notation asked for.</summary>
    public string Show(ToothNotation notation) => notation switch
    {
        ToothNotation.Iso => ToIso(),
        ToothNotation.Universal => ToUniversal(),
        ToothNotation.Palmer => ToPalmer(),
        _ => throw new ArgumentOutOfRangeException(nameof(notation), notation, "No such notation."),
    };

    /// <summary>In words: "upper right canine".</summary>
    public string Name => Iso == 0
        ? "no tooth"
        : $"{(IsUpper ? "upper" : "lower")} {(IsRight ? "right" : "left")} {Kinds[Position - 1]}";

    /// <summary>The ISO number.</summary>
    public override string ToString() => ToIso();

    private static bool IsPermanent(int iso) => iso / 10 is >= 1 and <= 4 && iso % 10 is >= 1 and <= 8;

    private static ToothNumber[] Arch(int right, int left) =>
    [
        .. Enumerable.Range(1, 8).Reverse().Select(position => new ToothNumber(10 * right + position)),
        .. Enumerable.Range(1, 8).Select(position => new ToothNumber(10 * left + position)),
    ];
}
