using System.Collections.Immutable;
using Trier.Trials.Common;
using Trier.Trials.Tastings;

namespace Trier.Storage.Crasher;

/// <summary>A ballot whose every word follows from its send's id, so that whoever knows the id knows what must be on the disk.</summary>
public static class Said
{
    /// <summary>The ballot of a send.</summary>
    /// <param name="plate">The codes served, at least one.</param>
    /// <param name="id">The send's id.</param>
    public static Ballot On(ImmutableArray<BlindCode> plate, RevisionId id)
    {
        var bytes = id.Value.ToByteArray();
        var first = bytes[0] % plate.Length;
        var order = plate.Skip(first).Concat(plate.Take(first)).Select(code => (IReadOnlyCollection<BlindCode>)[code]);
        var answer = new SampleAnswer { Liking = 1 + (bytes[1] % 9), Remark = $"said “{id.Value:N}”" };
        return Ballot.Of(plate, order, [KeyValuePair.Create(plate[first], answer)]).Value;
    }
}
