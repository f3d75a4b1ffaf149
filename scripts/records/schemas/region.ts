import Type, { type Static, type TSchema } from 'typebox';
import { CalendarDay, Id, Prose, Sources, Words, oneOf, quantityOf, record, ref } from './kit.ts';

/** Chance in percent that a freeze comes after (spring) or before (fall) the date. */
export const freezeChances = [10, 20, 30, 40, 50, 60, 70, 80, 90] as const;
export type FreezeChance = (typeof freezeChances)[number];

const ChanceTable = record(
  Object.fromEntries(freezeChances.map((chance) => [String(chance), Type.Optional(CalendarDay)])) as Record<
    `${FreezeChance}`,
    ReturnType<typeof Type.Optional<typeof CalendarDay>>
  >,
  { required: ['10', '50'] },
);

const FreezeRow = record({
  /** 36, 32, 28, 24, 20 or 16 F. */
  threshold: quantityOf('temperature', { example: '32 F', single: true, atLeast: -20, atMost: 5 }),
  /** Last in spring: chance that it freezes AFTER the date. The 10 % date is the late one. */
  last: ChanceTable,
  /** First in fall: chance that it freezes BEFORE the date. The 10 % date is the early one. */
  first: ChanceTable,
});

const monthly = <S extends TSchema>(value: S) => Type.Array(value, { minItems: 12, maxItems: 12 });

export const soilTextures = ['sand', 'sandy-loam', 'loam', 'silt-loam', 'clay-loam', 'clay'] as const;
export type SoilTexture = (typeof soilTextures)[number];

export const RegionSchema = record({
  id: Id,
  name: Words,
  /** True for a region that does not exist; every sheet then says so. */
  invented: Type.Boolean(),
  /** North positive, south negative. */
  latitude: quantityOf('angle', { example: '41.2 deg', single: true, atLeast: -90, atMost: 90 }),
  /** East positive, west negative. */
  longitude: quantityOf('angle', { example: '-93.5 deg', single: true, atLeast: -180, atMost: 180 }),
  /** Below the sea is negative. */
  elevation: quantityOf('length', { example: '900 ft', single: true, atLeast: -500_000, atMost: 9_000_000 }),
  freeze: Type.Union([
    record({ table: Type.Array(FreezeRow, { minItems: 1, maxItems: 6 }), source: ref('source') }),
    /** GHCN-Daily by-station CSV in content/regions/, at least 10 usable years; see climate/freeze.ts. */
    record({ daily: Type.String({ guideFile: 'content/regions' }), source: ref('source') }),
    /** NOAA 1991-2020 annual/seasonal normals by-station CSV in content/regions/. */
    record({ normals: Type.String({ guideFile: 'content/regions' }), source: ref('source') }),
  ]),
  /** The chance of a later freeze, in percent, that planting dates are counted from. 50 when absent. */
  planForChance: Type.Optional(
    Type.Unsafe<FreezeChance>(Type.Union(freezeChances.map((chance) => Type.Literal(chance)))),
  ),
  /**
   * What a cold frame gains here at each end of the season, where it is known better than by the published figure for
   * all places.
   */
  coldFrame: Type.Optional(
    record({
      earlier: quantityOf('duration', { example: '4 to 6 weeks', atLeast: 0, atMost: 120 }),
      later: quantityOf('duration', { example: '4 to 6 weeks', atLeast: 0, atMost: 120 }),
      sources: Sources,
    }),
  ),
  /** Monthly means through the year, January first: typed, or a NOAA monthly normals CSV in content/regions/. */
  temperatures: Type.Optional(
    Type.Union([
      record({
        minimum: monthly(quantityOf('temperature', { single: true, atLeast: -80, atMost: 50 })),
        maximum: monthly(quantityOf('temperature', { single: true, atLeast: -80, atMost: 60 })),
        /** Rain and melted snow of each month. */
        rain: Type.Optional(monthly(quantityOf('length', { single: true, atMost: 10_000 }))),
        source: ref('source'),
      }),
      record({ monthlyNormals: Type.String({ guideFile: 'content/regions' }), source: ref('source') }),
    ]),
  ),
  /** The usual garden soil. */
  soil: Type.Optional(
    record({
      texture: oneOf(soilTextures),
      moisture: oneOf(['dry', 'moist', 'wet']),
      stones: oneOf(['none', 'some', 'many']),
      /** Down to a hard layer, rock or the water table. */
      depth: quantityOf('length', { single: true, atMost: 100_000 }),
      ph: Type.Number({ minimum: 3, maximum: 10 }),
      source: ref('source'),
    }),
  ),
  /**
   * The wind to build for. `gust` is the 3-second gust 33 ft (10 m) above open ground, as weather services report it and
   * building codes map it today. The fastest mile of older maps is another measure, 10 to 20 mph lower for the same
   * wind, and does not belong here.
   */
  wind: Type.Optional(
    record({
      gust: quantityOf('speed', { example: '60 mph', single: true, atLeast: 5, atMost: 120 }),
      source: ref('source'),
    }),
  ),
  /** Mean relative humidity of the air in the afternoon, in percent, January first. */
  humidity: Type.Optional(
    record({
      afternoon: monthly(Type.Number({ minimum: 1, maximum: 100 })),
      source: ref('source'),
    }),
  ),
  /** What the county, the state or the utility wants of people who build; every build sheet ends with it. */
  local: Type.Optional(
    record({
      /** The service that marks buried lines: its name, how it is called, and how many working days it wants. */
      locate: Type.Optional(
        record({
          name: Words,
          number: Words,
          days: Type.Integer({ minimum: 0, maximum: 60 }),
        }),
      ),
      /** One or two sentences: what needs a permit, and who gives it. */
      permits: Type.Optional(Prose),
      /** One sentence each. */
      notes: Type.Optional(Type.Array(Prose, { minItems: 1, maxItems: 6 })),
      sources: Sources,
    }),
  ),
});

export type Region = Static<typeof RegionSchema>;
