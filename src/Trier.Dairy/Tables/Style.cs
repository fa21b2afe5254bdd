namespace Trier.Dairy.Tables;

/// <summary>The kinds of cheese the published tables speak of.</summary>
public enum Style
{
    /// <summary>Gruyere, Comte, Beaufort and their kin: cooked, pressed, small eyes or none.</summary>
    Alpine,

    /// <summary>Emmental and its kin: cooked, pressed, with eyes.</summary>
    Swiss,

    /// <summary>Cheddared and milled.</summary>
    Cheddar,

    /// <summary>Washed curd.</summary>
    Gouda,

    /// <summary>Semi-hard with a natural rind.</summary>
    Tomme,

    /// <summary>Extra hard, grana type.</summary>
    Parmesan,

    /// <summary>Extra hard, pecorino type.</summary>
    Romano,

    /// <summary>Stretched curd.</summary>
    PastaFilata,

    /// <summary>Blue-veined.</summary>
    Blue,

    /// <summary>Bloomy rind.</summary>
    Bloomy,

    /// <summary>Any other pressed cheese.</summary>
    OtherPressed,
}
