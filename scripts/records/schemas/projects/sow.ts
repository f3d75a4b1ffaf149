/** What a record says of a bed: what is sown in it, how its plants stand, and what waters it. */
import Type, { type Static } from 'typebox';
import { oneOf, quantityOf, record, ref } from '../kit.ts';
import { plantingMethods } from '../crop.ts';

/** `rows`: lines of plants; `square`: the same distance both ways; `offset`: every second row moved half a space. */
export const bedLayouts = ['rows', 'square', 'offset'] as const;
export type BedLayoutKind = (typeof bedLayouts)[number];

/** What is sown in a bed: rows run east to west, the tallest on the poleward side. */
export const Sow = Type.Array(
  record({
    crop: ref('crop'),
    rows: Type.Integer({ minimum: 1, maximum: 40 }),
    /** `rows` where it is not given. */
    layout: Type.Optional(oneOf(bedLayouts)),
    /** Only for a crop that is wanted on the sunny side whatever its height, as for its shade. */
    side: Type.Optional(oneOf(['equator'])),
    /** How it is planted; the first way of the crop's record where it is not given. */
    method: Type.Optional(oneOf(plantingMethods)),
    /** Seeds sown for each plant that stays. */
    seedsPerPlace: Type.Optional(Type.Integer({ minimum: 1, maximum: 50 })),
    /** What a packet of its seed holds, by number or by weight; that of the crop's record where it is not given. */
    packet: Type.Optional(
      Type.Union([
        record({ seeds: Type.Integer({ minimum: 1, maximum: 10_000_000 }) }),
        record({ mass: quantityOf('mass', { single: true, atLeast: 0.001, atMost: 100_000 }) }),
      ]),
    ),
  }),
  { minItems: 1, maxItems: 12 },
);

/** Drip lines that lie evenly over the width of a bed, along its rows. */
export const Irrigation = record({
  lines: Type.Integer({ minimum: 1, maximum: 20 }),
  emitterSpacing: quantityOf('length', { single: true, atLeast: 20, atMost: 3000 }),
  /** What one emitter gives in an hour. */
  emitterFlow: quantityOf('volume', { example: '0.5 gal', single: true, atLeast: 0.05, atMost: 50 }),
  /** Rows keep this far from a line. */
  clearance: quantityOf('length', { example: '2 in', single: true, atMost: 500 }),
});

export type Sow = Static<typeof Sow>;
export type Irrigation = Static<typeof Irrigation>;
