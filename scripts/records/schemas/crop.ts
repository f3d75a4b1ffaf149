import Type, { type Static } from 'typebox';
import { Id, Prose, Sources, Words, oneOf, quantityOf, record, sourced } from './kit.ts';

export const hardinessGroups = ['hardy', 'semi-hardy', 'tender', 'very-tender'] as const;
export type HardinessGroup = (typeof hardinessGroups)[number];

export const dayLengthClasses = ['short-day', 'intermediate', 'long-day'] as const;
export type DayLengthClass = (typeof dayLengthClasses)[number];

export const plantingMethods = ['direct-sow', 'transplant', 'sets', 'slips', 'seed-pieces'] as const;
export type PlantingMethod = (typeof plantingMethods)[number];

/**
 * Limits, in held units, are beyond what any garden crop needs: they catch a slipped decimal point, a wrong unit and a
 * wrong sign, not an unusual figure. Our own judgement.
 */
const soilOrAir = { atLeast: -20, atMost: 60 } as const;
const halfYear = { atLeast: -182, atMost: 182 } as const;
const mostCounted = 10_000_000;

/** Weeks from the average last freeze (spring) at which planting opens and closes; negative is before. */
const SpringWindow = record({
  opens: quantityOf('duration', {
    description: 'from the average last freeze; negative is before it',
    single: true,
    ...halfYear,
  }),
  closes: quantityOf('duration', {
    description: 'from the average last freeze; negative is before it',
    single: true,
    ...halfYear,
  }),
  sources: Sources,
});

/** From a seed to a trellis, from a winter to a fire, from a day to some years, from a seed to a load. */
const figureLimits = {
  length: { atMost: 100_000 },
  temperature: { atLeast: -80, atMost: 300 },
  duration: { atLeast: -400, atMost: 4000 },
  mass: { atMost: 1_000_000 },
} as const;

const figureOf = <D extends 'length' | 'temperature' | 'duration' | 'mass'>(dimension: D) =>
  record({ id: Id, [dimension]: quantityOf(dimension, figureLimits[dimension]), sources: Sources } as {
    id: typeof Id;
    sources: typeof Sources;
  } & Record<D, ReturnType<typeof quantityOf<D>>>);

const Count = Type.Number({ minimum: -mostCounted, maximum: mostCounted });

/**
 * A figure of this crop alone that its sheets speak of, such as the largest diameter of an onion set. Prose
 * prints it by the crop's id and its own: `{{onion.set-diameter}}`. The temperature `cold-limit` is the coldest night that
 * plants set out of it stand; planting windows wait for it.
 */
const Figure = Type.Union([
  figureOf('length'),
  figureOf('temperature'),
  figureOf('duration'),
  figureOf('mass'),
  record({ id: Id, low: Count, high: Count, sources: Sources }),
]);

export const CropSchema = record({
  id: Id,
  name: Words,
  /** As in a sentence: `carrots`, `onions`. */
  plural: Words,
  latin: Words,
  /** What is harvested; the chart groups crops by what the gardener does next, then by this. */
  part: oneOf(['root', 'bulb', 'tuber', 'stem', 'leaf', 'flower', 'pod', 'fruit', 'ear', 'herb']),
  season: oneOf(['cool', 'warm']),
  hardiness: record({ group: oneOf(hardinessGroups), sources: Sources }),
  /** The usual ways to plant it, the commonest first. */
  plantings: Type.Array(
    record({
      method: oneOf(plantingMethods),
      /** Age of transplants at setting out; only for `transplant`. */
      age: Type.Optional(
        sourced(quantityOf('duration', { example: '5 to 7 weeks', atLeast: 1, atMost: 200 })),
      ),
      /** Only where it differs from the window of the hardiness group. */
      spring: Type.Optional(SpringWindow),
      /** Whether a second planting for a fall harvest is usual, where the season is long enough. */
      fall: Type.Boolean(),
    }),
    { minItems: 1, maxItems: 3 },
  ),
  /** Of seed, sets or seed pieces. */
  depth: sourced(quantityOf('length', { example: '1/2 in', atMost: 400 })),
  /** How deep a young plant is set; as deep as it stood in its pot where this is not given, which is common practice. */
  setOutDepth: Type.Optional(sourced(oneOf(['as-in-pot', 'to-first-leaves']))),
  spacing: record({
    inRow: sourced(quantityOf('length', { example: '2 to 3 in', atLeast: 3, atMost: 5000 })),
    betweenRows: sourced(quantityOf('length', { example: '12 to 18 in', atLeast: 20, atMost: 6000 })),
  }),
  seedsPerOunce: Type.Optional(
    record({
      low: Type.Number({ exclusiveMinimum: 0, maximum: mostCounted }),
      high: Type.Number({ exclusiveMinimum: 0, maximum: mostCounted }),
      sources: Sources,
    }),
  ),
  /** Seed to sow 100 ft of row. */
  seedPer100Ft: Type.Optional(sourced(quantityOf('mass', { atMost: 100_000 }))),
  emergence: Type.Union([
    /** Days from sowing to emergence at each soil temperature, as published. */
    record({
      points: Type.Array(
        record({
          at: quantityOf('temperature', soilOrAir),
          days: Type.Number({ exclusiveMinimum: 0, maximum: 200 }),
        }),
        { minItems: 2, maxItems: 12 },
      ),
      sources: Sources,
    }),
    /** One published range, where no table by temperature was found. */
    record({
      days: quantityOf('duration', { example: '6 to 10 days', atLeast: 1, atMost: 200 }),
      sources: Sources,
    }),
    /** Planted as sets, slips or seed pieces only. */
    record({ notSown: Type.Literal(true) }),
  ]),
  soilTemperature: Type.Optional(
    record({
      minimum: quantityOf('temperature', soilOrAir),
      optimum: quantityOf('temperature', soilOrAir),
      maximum: quantityOf('temperature', soilOrAir),
      /** The temperature at which sowing makes sense in practice. */
      practical: Type.Optional(quantityOf('temperature', soilOrAir)),
      sources: Sources,
    }),
  ),
  maturity: record({
    days: quantityOf('duration', { atLeast: 5, atMost: 400 }),
    from: oneOf(['sowing', 'planting-out']),
    sources: Sources,
  }),
  /** How long the harvest of one planting usually lasts. */
  harvestLasts: sourced(quantityOf('duration', { example: '3 weeks', atLeast: 0, atMost: 300 })),
  height: sourced(quantityOf('length', { example: '12 in', atLeast: 5, atMost: 6000 })),
  /** Percent of good seed that comes up, at the least: the legal standard or a common germination test. */
  germination: Type.Optional(
    record({ percent: Type.Number({ exclusiveMinimum: 0, maximum: 100 }), sources: Sources }),
  ),
  /** Percent normal seedlings at each soil temperature, as published. */
  normalSeedlings: Type.Optional(
    record({
      points: Type.Array(
        record({
          at: quantityOf('temperature', soilOrAir),
          percent: Type.Number({ minimum: 0, maximum: 100 }),
        }),
        { minItems: 2, maxItems: 12 },
      ),
      sources: Sources,
    }),
  ),
  /** The daily mean air temperature above which the crop fails: it bolts, turns bitter or sets no fruit. */
  heatLimit: Type.Optional(
    record({
      value: quantityOf('temperature', { single: true, atLeast: 5, atMost: 60 }),
      /** True where heat ends the harvest, too: the crop bolts, turns bitter or sheds its buds. */
      endsHarvest: Type.Optional(Type.Boolean()),
      sources: Sources,
    }),
  ),
  /** Temperatures between which growth is counted in degree days; above the upper one it counts no more. */
  degreeDays: Type.Optional(
    record({
      base: quantityOf('temperature', { single: true, ...soilOrAir }),
      upper: Type.Optional(quantityOf('temperature', { single: true, ...soilOrAir })),
      sources: Sources,
    }),
  ),
  /** How the part that is eaten comes to be; `none` where a leaf, root, bulb or bud is eaten. */
  pollination: Type.Optional(record({ by: oneOf(['none', 'self', 'wind', 'insects']), sources: Sources })),
  /** What 100 ft of row give. */
  yieldPer100Ft: Type.Optional(
    record({
      low: Type.Number({ exclusiveMinimum: 0, maximum: mostCounted }),
      high: Type.Number({ exclusiveMinimum: 0, maximum: mostCounted }),
      /** What is counted or weighed: pounds of roots, of pods, of shelled peas; dozens of ears; heads. */
      unit: oneOf(['lb', 'lb-pods', 'lb-shelled', 'dozen-ears', 'heads', 'bunches']),
      sources: Sources,
    }),
  ),
  /**
   * How far apart the harvests of sowings one after another shall be, where sowing again is usual. Where sources differ,
   * the longer one for what keeps in the ground, the shorter one for what must be picked.
   */
  succession: Type.Optional(
    sourced(quantityOf('duration', { example: '3 weeks', single: true, atLeast: 1, atMost: 90 })),
  ),
  /** What a packet of its seed usually holds. */
  packet: Type.Optional(
    sourced(quantityOf('mass', { example: '1.5 g', single: true, atLeast: 0.01, atMost: 2000 })),
  ),
  /** What the soil must offer. */
  soil: Type.Optional(
    record({
      ph: record({
        low: Type.Number({ minimum: 3, maximum: 10 }),
        high: Type.Number({ minimum: 3, maximum: 10 }),
      }),
      /** Depth that must be loose and free of stones; only where it matters. */
      looseDepth: Type.Optional(quantityOf('length', { atMost: 2000 })),
      sources: Sources,
    }),
  ),
  /** Planted in fall for a harvest in the next spring or summer, where winters allow it. */
  overwinter: Type.Optional(
    record({
      /** Weeks before the average first fall freeze of 32 F; negative is after it. */
      opensBeforeFreeze: quantityOf('duration', { single: true, ...halfYear }),
      closesBeforeFreeze: quantityOf('duration', { single: true, ...halfYear }),
      /** The coldest average winter that it stands: the lowest 50 % threshold, in F, that may be reached. */
      stands: quantityOf('temperature', { single: true, atLeast: -60, atMost: 10 }),
      sources: Sources,
      /** The way of planting, one of the crop's own; the first of them when absent. */
      method: Type.Optional(oneOf(plantingMethods)),
      /** Other weeks for places where fewer than half of the winters have a freeze of 24 F. */
      whereMild: Type.Optional(
        record({
          opensBeforeFreeze: quantityOf('duration', { single: true, ...halfYear }),
          closesBeforeFreeze: quantityOf('duration', { single: true, ...halfYear }),
          sources: Sources,
        }),
      ),
      /** True where planting the same way in spring comes to little wherever it can be done in fall. */
      replacesSpring: Type.Optional(Type.Boolean()),
    }),
  ),
  /** For onions: the day length at which each class forms a bulb, and where each class is grown. */
  dayLength: Type.Optional(
    Type.Array(
      record({
        class: oneOf(dayLengthClasses),
        bulbing: quantityOf('day-length', { atMost: 24 }),
        latitudes: quantityOf('angle', { atLeast: 0, atMost: 90 }),
        sources: Sources,
      }),
      { minItems: 1, maxItems: 3 },
    ),
  ),
  figures: Type.Optional(Type.Array(Figure, { minItems: 1, maxItems: 30 })),
  /** One line for a row label or a chart note. */
  note: Type.Optional(Prose),
});

export type Crop = Static<typeof CropSchema>;
export type CropFigure = Static<typeof Figure>;
