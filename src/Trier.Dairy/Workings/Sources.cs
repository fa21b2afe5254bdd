namespace Trier.Dairy.Workings;

/// <summary>The works this library draws on; the keys stand in <c>docs/methods/dairy-references.md</c>.</summary>
public static class Sources
{
    /// <summary>Arithmetic and elementary physics.</summary>
    public static readonly Source Arithmetic = new("arithmetic", "Arithmetic or elementary physics", Status.Derived);

    /// <summary>What makers do, with no source behind it.</summary>
    public static readonly Source Practice = new("practice", "Common practice of the trade", Status.Practice);

    /// <summary>The milk density formula.</summary>
    public static readonly Source Illinois = new("Illinois", "University of Illinois, lactation course page: density of milk from fat, solids-not-fat and temperature", Status.Read, "The page gives no range of validity.");

    /// <summary>The milk density table.</summary>
    public static readonly Source Goff = new("Goff", "H. D. Goff (University of Guelph), table of densities of dairy products, as reproduced on a web page", Status.Secondary);

    /// <summary>Total solids from a 60 F lactometer.</summary>
    public static readonly Source Richmond = new("Richmond", "Historic lactometer formulae (Hehner and Richmond), 60 F scale", Status.Read);

    /// <summary>Total solids from a 20 C hydrometer.</summary>
    public static readonly Source Bs734 = new("BS734", "British Standard 734 (1957), 20 °C density hydrometer", Status.Read);

    /// <summary>Milk composition by species.</summary>
    public static readonly Source Fao2013 = new("FAO2013", "FAO 2013, Milk and dairy products in human nutrition, table 3.1", Status.Secondary, "Compiled from food tables for retail milk.");

    /// <summary>The Guelph cheese book.</summary>
    public static readonly Source GuelphCheese = new("GuelphCheese", "University of Guelph, Cheese Making Technology e-book and older book pages (Hill and Ferrer)", Status.Read);

    /// <summary>Swiss-type practice figures.</summary>
    public static readonly Source ChandanKilara = new("ChandanKilara2008", "Chandan and Kilara (eds) 2008, Dairy Processing and Quality Assurance, pp. 232 and 285", Status.Read);

    /// <summary>A figure recalled, not seen; low confidence.</summary>
    public static readonly Source MemoryLow = new("memory", "From memory", Status.Memory, "Low confidence.");

    /// <summary>A figure recalled, not seen; high confidence.</summary>
    public static readonly Source MemoryHigh = new("memory", "From memory", Status.Memory, "High confidence.");

    /// <summary>The Cheddar yield formula.</summary>
    public static readonly Source VanSlyke = new("VanSlykePrice", "Van Slyke and Price, as given in the Guelph cheese e-book", Status.Read, "Made for Cheddar; ignores variation of salt and whey solids.");

    /// <summary>The general yield formula.</summary>
    public static readonly Source YieldGeneral = new("YieldGeneral", "General yield form with recoveries RF, RC and RS, from a Wisconsin-linked page", Status.Read);

    /// <summary>Composition ratios and firmness classes.</summary>
    public static readonly Source CodexA6 = new("CodexA6", "Codex general standard for cheese A-6: definitions and firmness classes", Status.Read, "The current CXS 283 merges two classes (from memory, high confidence).");

    /// <summary>United States standards of identity.</summary>
    public static readonly Source Cfr133 = new("CFR133", "21 CFR 133, standards of identity (2003-2012 editions)", Status.Read, "Some rows from secondary tables that agree; laws change.");

    /// <summary>The unit of clotting activity.</summary>
    public static readonly Source Iso11815 = new("ISO11815", "ISO 11815 / IDF 157, milk-clotting activity in IMCU", Status.Read);

    /// <summary>The Soxhlet strength of rennet.</summary>
    public static readonly Source Soxhlet = new("Soxhlet", "Textbook definition of Soxhlet strength: 40 min at 35 °C", Status.Memory, "High confidence; one maker's glossary says 45 min.");

    /// <summary>The inverse rule of rennet and time.</summary>
    public static readonly Source StorchSegelcke = new("StorchSegelcke", "Storch and Segelcke: clotting time times enzyme is near constant", Status.Memory, "The rule is a textbook one; its text was not seen.");

    /// <summary>Home makers' figures.</summary>
    public static readonly Source Forum = new("Forum", "Home makers' forum threads", Status.Read, "Weak evidence.");

    /// <summary>A rennet maker's reference figures.</summary>
    public static readonly Source Clerici = new("Clerici", "Technical pages of a rennet maker", Status.Read);

    /// <summary>Swiss and Cheddar figures.</summary>
    public static readonly Source Hutkins = new("Hutkins2006", "A fermented-foods textbook, taken to be Hutkins 2006 (copy without author)", Status.Read);

    /// <summary>Conversions of titratable acidity.</summary>
    public static readonly Source Hanna = new("Hanna", "Instrument maker's manual: units of titratable acidity", Status.Read);

    /// <summary>Brine density.</summary>
    public static readonly Source BrineHandbook = new("Wnt1974", "Physico-chemical handbook, WNT 1974: density of NaCl solutions, 20 °C column and temperature coefficient (copy)", Status.Read, "The copy's 15 °C column is really 10 °C and is used as that.");

    /// <summary>The Baume scale.</summary>
    public static readonly Source Baume = new("Baume", "Baume scale for liquids heavier than water, 145 - 145/SG (US, 60 F)", Status.Read, "Europe uses 144.3.");

    /// <summary>Diffusion into a slab, a cylinder, a finite cylinder.</summary>
    public static readonly Source Crank = new("Crank1975", "Crank, The Mathematics of Diffusion: series for slab and cylinder, product for the finite cylinder", Status.Derived, "Book from memory; series checked against a finite-difference solution in the tests.");

    /// <summary>Salt diffusivities.</summary>
    public static readonly Source Floury = new("Floury2010", "Floury et al. 2010, review of solute diffusion in cheese, table II", Status.Read);

    /// <summary>Water lost for salt taken.</summary>
    public static readonly Source GuineeFox = new("GuineeFox1983", "Guinee and Fox 1983, Romano salting", Status.Read);

    /// <summary>Why saturated brine is outside the model.</summary>
    public static readonly Source Melilli = new("Melilli", "Melilli et al., two Ragusano brining studies", Status.Read);

    /// <summary>The rule of thumb for brining.</summary>
    public static readonly Source RulePound = new("RulePound", "Rule of thumb: one hour a pound an inch of thickness, two pages", Status.Read);

    /// <summary>Humidity of air.</summary>
    public static readonly Source Wmo8 = new("WMO8", "WMO-No. 8 (2012): Magnus form and psychrometer formula, read through a calculator's notes", Status.Read);

    /// <summary>The other psychrometer constants.</summary>
    public static readonly Source Ams = new("AMS", "AMS Glossary of Meteorology: psychrometric formula", Status.Read, "Read in part.");

    /// <summary>The propionic equation.</summary>
    public static readonly Source Fitz = new("Fitz", "Ideal equation of propionic fermentation (Fitz)", Status.Memory, "High confidence; strains with aspartate metabolism give more gas and less propionate.");

    /// <summary>Where the gas of a large wheel goes.</summary>
    public static readonly Source McSweeneyFox = new("McSweeneyFox2004", "McSweeney and Fox 2004, as quoted: gas balance of an 80 kg wheel", Status.Read);

    /// <summary>Gas held by Gruyere and Emmental.</summary>
    public static readonly Source Agroscope = new("Agroscope", "Agroscope study of carbon dioxide in Gruyere", Status.Read);

    /// <summary>Density and heat of food components.</summary>
    public static readonly Source ChoiOkos = new("ChoiOkos1986", "Choi and Okos 1986, properties of food components, read in two code listings", Status.Read, "Copies differ in one exponent of the fat terms.");

    /// <summary>The legal pasteurisation pairs.</summary>
    public static readonly Source Pmo = new("PMO", "State pasteurisation laws after the PMO (MCL 288.697, 25 TAC 217.1, SDCL 40-32-2)", Status.Read, "The solids clause was read in one state's text only; laws change: the law where the cheese is made decides.");

    /// <summary>Heat resistance figures.</summary>
    public static readonly Source Bradshaw = new("Bradshaw1985", "Bradshaw et al. 1985 and 1987, heat resistance of Listeria monocytogenes in milk", Status.Read, "Two fits of the same bacterium differ widely.");

    /// <summary>Water activity from salt.</summary>
    public static readonly Source OsmoticCoefficient = new("OsmoticNaCl", "Osmotic coefficient 0.93 of sodium chloride solutions", Status.Memory, "High confidence.");
}
