import Type, { type Static } from 'typebox';
import { CalendarDay, Id, Words, quantityOf, record, ref } from './kit.ts';

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
  threshold: quantityOf('temperature', { single: true, atLeast: -20, atMost: 5 }),
  /** Last in spring: chance that it freezes AFTER the date. The 10 % date is the late one. */
  last: ChanceTable,
  /** First in fall: chance that it freezes BEFORE the date. The 10 % date is the early one. */
  first: ChanceTable,
});

export const RegionSchema = record({
  id: Id,
  name: Words,
  /** True for a region that does not exist; every sheet then says so. */
  invented: Type.Boolean(),
  /** North positive, south negative. */
  latitude: quantityOf('angle', { single: true, atLeast: -90, atMost: 90 }),
  /** East positive, west negative. */
  longitude: quantityOf('angle', { single: true, atLeast: -180, atMost: 180 }),
  /** Below the sea is negative. */
  elevation: quantityOf('length', { single: true, atLeast: -500_000, atMost: 9_000_000 }),
  freeze: Type.Union([
    record({ table: Type.Array(FreezeRow, { minItems: 1, maxItems: 6 }), source: ref('source') }),
    /** GHCN-Daily by-station CSV in content/regions/, at least 10 usable years; see climate/freeze.ts. */
    record({ daily: Type.String({ guideFile: 'content/regions' }), source: ref('source') }),
    /** NOAA 1991-2020 annual/seasonal normals by-station CSV in content/regions/. */
    record({ normals: Type.String({ guideFile: 'content/regions' }), source: ref('source') }),
  ]),
});

export type Region = Static<typeof RegionSchema>;
