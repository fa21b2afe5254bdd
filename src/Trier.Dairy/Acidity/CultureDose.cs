using Trier.Dairy.Milk;
using Trier.Dairy.Quantities;
using Trier.Dairy.Workings;

namespace Trier.Dairy.Acidity;

/// <summary>A stock that makes a tiny mass measurable: weigh, dissolve, use a part.</summary>
/// <param name="Weigh">Mass to weigh.</param>
/// <param name="In">Volume it is dissolved in.</param>
/// <param name="Use">Volume of the stock to use; the rest is thrown away.</param>
public sealed record StockDilution(Mass Weigh, Volume In, Volume Use);

/// <summary>The propionic dose: cells, powder and the dilution.</summary>
/// <param name="Cells">Cells in all.</param>
/// <param name="Powder">Mass of powder, mostly too small to weigh.</param>
/// <param name="Stock">How to measure it.</param>
public sealed record PropionicDose(double Cells, Mass Powder, StockDilution Stock);

/// <summary>Cultures: bulk starter by per cent of milk, propionic culture by cells. Direct-set cultures go by their packet.</summary>
public static class CultureDose
{
    /// <summary>m = p x milk. Doses by style: Tables/culture_doses.md ([ChandanKilara2008] and [GuelphCheese], read).</summary>
    /// <param name="milk">Mass of milk.</param>
    /// <param name="share">Part of the milk.</param>
    public static Outcome<Mass> Bulk(Mass milk, Share share)
    {
        var gate = new Gate().Check(MilkFields.MilkMass, milk.Kilograms).Check(AcidityFields.BulkStarter, share.Percent);
        if (gate.Shut) return gate.Refusal<Mass>();
        return gate.Answer(milk * share.Fraction, new Working(
            "Bulk starter",
            "m = p x milk",
            [new("Milk", milk.Kilograms, "kg"), new("Part p", share.Percent, "%")],
            [new("Starter", milk.Grams * share.Fraction, "g")],
            Sources.ChandanKilara)
        {
            LikelyError = "The activity of a bulk starter varies more than its mass; the pH curve is the check.",
        });
    }

    /// <summary>
    /// cells = V x c; powder = cells/(cfu/g); stock of <paramref name="weigh"/> in <paramref name="stock"/>. Milk should hold 100 to 1000 cfu/mL [Hutkins2006], read.
    /// </summary>
    /// <param name="milk">Volume of milk.</param>
    /// <param name="cellsPerMillilitre">Cells wanted, cfu/mL.</param>
    /// <param name="cellsPerGram">Cells in the powder, cfu/g.</param>
    /// <param name="weigh">Mass the scale can weigh well, such as 1 g.</param>
    /// <param name="stock">Volume of boiled, cooled water or milk it goes into, such as 500 mL.</param>
    public static Outcome<PropionicDose> Propionic(Volume milk, double cellsPerMillilitre, double cellsPerGram, Mass weigh, Volume stock)
    {
        var gate = new Gate()
            .Check(MilkFields.MilkVolume, milk.Litres)
            .Check(AcidityFields.CellsPerMillilitre, cellsPerMillilitre)
            .Check(AcidityFields.CellsPerGram, cellsPerGram)
            .Check(AcidityFields.Weighing, weigh.Grams)
            .Check(AcidityFields.StockVolume, stock.Millilitres);
        if (gate.Shut) return gate.Refusal<PropionicDose>();
        var cells = milk.Millilitres * cellsPerMillilitre;
        var powder = Mass.FromGrams(cells / cellsPerGram);
        var use = stock * (powder / weigh);
        if (use > stock)
        {
            gate.Refuse(ProblemKind.Contradiction, AcidityFields.Weighing, $"Mass to weigh for the stock is {Field.Number(weigh.Grams)} g, but {Field.Number(powder.Grams)} g of powder are needed: weigh that much directly.");
            return gate.Refusal<PropionicDose>();
        }

        if (use.Millilitres is < 0.5)
            gate.Ask(AcidityFields.StockVolume, $"Only {Field.Number(use.Millilitres)} mL of the stock would be used, hard to measure: take a larger stock or dilute twice?");
        return gate.Answer(new PropionicDose(cells, powder, new StockDilution(weigh, stock, use)), new Working(
            "Propionic culture",
            "cells = V c; powder = cells / n; use = stock x powder / weighed",
            [
                new("Milk V", milk.Litres, "L"),
                new("Cells wanted c", cellsPerMillilitre, "cfu/mL"),
                new("Cells in the powder n", cellsPerGram, "cfu/g"),
                new("Weighed", weigh.Grams, "g"),
                new("Stock", stock.Millilitres, "mL"),
            ],
            [new("Cells", cells, "cfu"), new("Powder", powder.Milligrams, "mg"), new("Use of the stock", use.Millilitres, "mL")],
            Sources.Hutkins)
        {
            LikelyError = "A powder's live cells may be a third of the label's or three times it; eyes forgive that, a guess by spoon does not.",
        });
    }
}
