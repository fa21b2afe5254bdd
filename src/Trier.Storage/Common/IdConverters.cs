using Microsoft.EntityFrameworkCore.Storage.ValueConversion;
using Trier.Trials.Common;

namespace Trier.Storage;

internal sealed class TrialIdConverter() : ValueConverter<TrialId, Guid>(id => id.Value, value => new TrialId(value));

internal sealed class TasterIdConverter() : ValueConverter<TasterId, Guid>(id => id.Value, value => new TasterId(value));

internal sealed class WheelIdConverter() : ValueConverter<WheelId, Guid>(id => id.Value, value => new WheelId(value));

internal sealed class RevisionIdConverter() : ValueConverter<RevisionId, Guid>(id => id.Value, value => new RevisionId(value));

internal sealed class RecipeIdConverter() : ValueConverter<RecipeId, Guid>(id => id.Value, value => new RecipeId(value));

internal sealed class MakeIdConverter() : ValueConverter<MakeId, Guid>(id => id.Value, value => new MakeId(value));

internal sealed class ThingIdConverter() : ValueConverter<ThingId, Guid>(id => id.Value, value => new ThingId(value));
