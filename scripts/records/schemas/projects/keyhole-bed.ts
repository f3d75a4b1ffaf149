import Type, { type Static } from 'typebox';
import { Sources, quantityOf, record, sourced } from '../kit.ts';
import { projectFields, Sow } from './common.ts';

/** What the counts of a keyhole bed's parts are worked out from. */
export const keyholeCounts = [
  'blocks',
  'stakes',
  'base-litres',
  'drainage-litres',
  'brown-litres',
  'green-litres',
] as const;

/** The step drawings of a keyhole bed, in the order of building. */
export const keyholeDrawings = [
  'ground',
  'base',
  'first-course',
  'courses',
  'basket',
  'lining',
  'drainage',
  'layers',
  'soil',
  'plant',
  'feed',
] as const;

const Percent = Type.Number({ minimum: 0, maximum: 60 });

/**
 * A round bed behind a wall of dry-stacked block, with a wedge-shaped notch to walk in by and a basket for kitchen scraps in
 * the middle.
 */
export const KeyholeBedSchema = record({
  ...projectFields({ kind: 'keyhole-bed', counts: keyholeCounts, drawings: keyholeDrawings }),
  /** Across the ring outside, at the most: it is made a little smaller so that the blocks come out whole. */
  diameter: quantityOf('length', { example: '6 ft', single: true, atLeast: 600, atMost: 6000 }),
  block: record({
    /** From end to end on the outer face. */
    face: quantityOf('length', { single: true, atLeast: 50, atMost: 600 }),
    /** From end to end at the back; the same as `face` for a block that does not taper. */
    back: quantityOf('length', { single: true, atLeast: 50, atMost: 600 }),
    /** From face to back. */
    depth: quantityOf('length', { single: true, atLeast: 50, atMost: 600 }),
    height: quantityOf('length', { single: true, atLeast: 25, atMost: 400 }),
    /** Of one block; from its size and the weight of concrete where it is not given. */
    mass: Type.Optional(quantityOf('mass', { atLeast: 500, atMost: 100_000 })),
    sources: Sources,
  }),
  /** How high a wall of this block may be stacked without mortar, the part in the ground counted in. */
  highest: sourced(quantityOf('length', { single: true, atLeast: 50, atMost: 2000 })),
  /** Of the wall above the ground, at the least; it is made of whole courses. */
  height: quantityOf('length', { single: true, atLeast: 50, atMost: 2000 }),
  /** How much of the first course lies in the ground. */
  buried: quantityOf('length', { single: true, atMost: 400 }),
  /** The widest gap between two blocks of a course, outside or at the back. */
  joint: sourced(quantityOf('length', { single: true, atLeast: 1, atMost: 100 })),
  /** The bed of gravel under the wall. */
  base: record({
    depth: quantityOf('length', { single: true, atMost: 600 }),
    width: quantityOf('length', { single: true, atLeast: 50, atMost: 1500 }),
    sources: Sources,
  }),
  /** How wide the notch is outside; it narrows toward the basket. */
  notch: sourced(quantityOf('length', { example: '24 in', single: true, atLeast: 100, atMost: 2000 })),
  /** A tube of wire mesh in the middle. */
  basket: record({
    diameter: quantityOf('length', { single: true, atLeast: 100, atMost: 2000 }),
    /** As wide as the mesh comes off the roll. */
    height: quantityOf('length', { single: true, atLeast: 100, atMost: 2500 }),
    /** Where the two ends of the mesh lie over each other. */
    overlap: quantityOf('length', { single: true, atMost: 500 }),
    /** What the roll of mesh holds. */
    roll: quantityOf('length', { single: true, atLeast: 300, atMost: 100_000 }),
    stakes: record({
      number: Type.Integer({ minimum: 2, maximum: 16 }),
      length: quantityOf('length', { single: true, atLeast: 200, atMost: 4000 }),
    }),
    sources: Sources,
  }),
  /** What the bed is filled with, from the bottom up, once it has settled. */
  layers: record({
    /** Stones or coarse wood on the ground. */
    drainage: quantityOf('length', { single: true, atMost: 1000 }),
    /** The planting mix on top; between the two lie browns and greens. */
    soil: quantityOf('length', { single: true, atLeast: 10, atMost: 1000 }),
    /** Parts of browns to one part of greens. */
    brownParts: Type.Number({ minimum: 0.5, maximum: 10 }),
    /** From the top of the wall down to the mix at the wall. */
    below: quantityOf('length', { single: true, atMost: 500 }),
    /** How much higher the mix lies at the basket than at the wall. */
    rise: quantityOf('length', { single: true, atMost: 1000 }),
    sources: Sources,
  }),
  /** What each loses as it settles, in percent of what is filled in. */
  settling: record({ soilPercent: Percent, fillPercent: Percent, sources: Sources }),
  sow: Sow,
});

export type KeyholeBed = Static<typeof KeyholeBedSchema>;
