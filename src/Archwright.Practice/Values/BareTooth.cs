namespace Archwright.Practice.Values;

/// <summary>Why a place of an arch holds no bracket on a day.</summary>
public enum BareTooth
{
    /// <summary>The tooth is there without a bracket: one that came off, or was never bonded. No wire acts on it;
    /// its neighbours touch it, and it counts in what is measured.</summary>
    NotBonded,

    /// <summary>The tooth is not there: extracted, unerupted, missing. Its place stays open.</summary>
    Absent,
}
