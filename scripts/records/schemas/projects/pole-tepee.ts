import Type, { type Static } from 'typebox';
import { Sources, quantityOf, record, sourced } from '../kit.ts';
import { projectFields, Sow } from './common.ts';

/** What the counts of a pole tepee's parts are worked out from. */
export const tepeeCounts = ['poles', 'balls'] as const;

/** The step drawings of a pole tepee, in the order of building. */
export const tepeeDrawings = ['ground', 'holes', 'lash', 'raise', 'strings', 'sow', 'train'] as const;

/** Poles that lean together and are lashed at the top, for climbing crops. */
export const PoleTepeeSchema = record({
  ...projectFields({ kind: 'pole-tepee', counts: tepeeCounts, drawings: tepeeDrawings }),
  poles: record({
    number: Type.Integer({ minimum: 3, maximum: 12 }),
    length: quantityOf('length', { single: true, atLeast: 600, atMost: 6000 }),
    /** Across, at the thick end. */
    thickness: quantityOf('length', { single: true, atLeast: 5, atMost: 150 }),
    /** How much of each pole stands in the ground, along the pole. */
    buried: quantityOf('length', { single: true, atLeast: 20, atMost: 1500 }),
    /** Of one pole. */
    mass: quantityOf('mass', { atLeast: 20, atMost: 50_000 }),
    sources: Sources,
  }),
  /** From the upper end of the poles down to the lashing. */
  tie: quantityOf('length', { single: true, atLeast: 20, atMost: 2000 }),
  /** Across the circle of the feet, on the ground. */
  spread: quantityOf('length', { example: '4 ft', single: true, atLeast: 200, atMost: 6000 }),
  /** Strings round the poles, one above the other, that vines cross over on. */
  rings: Type.Integer({ minimum: 0, maximum: 8 }),
  /** What a ball of twine holds. */
  ball: quantityOf('length', { single: true, atLeast: 1000, atMost: 1_000_000 }),
  /** From plant to plant round the circle. */
  spacing: sourced(quantityOf('length', { single: true, atLeast: 10, atMost: 2000 })),
  /** How deep the ground is loosened. */
  loosened: quantityOf('length', { single: true, atLeast: 10, atMost: 1000 }),
  /** The gust it must stand wherever it is built, covered with leaves; the card judges it by the gust of its region. */
  gust: sourced(quantityOf('speed', { example: '45 mph', single: true, atLeast: 5, atMost: 80 })),
  sow: Sow,
});

export type PoleTepee = Static<typeof PoleTepeeSchema>;
