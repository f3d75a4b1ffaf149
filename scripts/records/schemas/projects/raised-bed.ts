import Type, { type Static } from 'typebox';
import { Sources, oneOf, quantityOf, record } from '../kit.ts';
import { projectFields, Sow } from './common.ts';
import { BoardSize } from './lumber-sizes.ts';

/** What the counts of a raised bed's parts are worked out from. */
export const raisedBedCounts = ['screws', 'cloth-feet', 'plant-stakes'] as const;

/** The step drawings of a raised bed, in the order of building. */
export const raisedBedDrawings = [
  'ground',
  'cut',
  'ends',
  'holes',
  'stand',
  'sides',
  'middle-posts',
  'square',
  'bottom',
  'fill',
  'sow',
] as const;

/** A bed of boards on posts, open to the ground. */
export const RaisedBedSchema = record({
  ...projectFields({ kind: 'raised-bed', counts: raisedBedCounts, drawings: raisedBedDrawings }),
  /** Outside, from east to west. */
  length: quantityOf('length', { single: true, atLeast: 300, atMost: 10_000 }),
  /** Outside, from north to south. */
  width: quantityOf('length', { single: true, atLeast: 300, atMost: 10_000 }),
  boards: record({ nominal: BoardSize, courses: Type.Integer({ minimum: 1, maximum: 6 }) }),
  posts: record({
    nominal: oneOf(['2x2', '4x4', '6x6']),
    /** How deep they stand in the ground; 0 for cleats that only hold the boards together. */
    inGround: quantityOf('length', { single: true, atMost: 1500 }),
  }),
  soil: record({
    /** Once it has settled. */
    depth: quantityOf('length', { single: true, atLeast: 10, atMost: 1500 }),
    /** What loose soil loses as it settles, in percent of the depth that stays. */
    settlesPercent: Type.Number({ minimum: 0, maximum: 50 }),
    sources: Sources,
  }),
  /** A sheet under the soil, turned up at the boards; none where it is not given. */
  bottom: Type.Optional(
    record({
      sheet: oneOf(['wire-mesh', 'landscape-fabric']),
      rollWidth: quantityOf('length', { single: true, atLeast: 300, atMost: 5000 }),
      turnUp: quantityOf('length', { single: true, atMost: 300 }),
      /** Where two strips meet. */
      overlap: quantityOf('length', { single: true, atMost: 300 }),
    }),
  ),
  /** Stakes for tall plants, driven into the ground close outside the bed; none where it is not given. */
  plantStakes: Type.Optional(
    record({
      number: Type.Integer({ minimum: 1, maximum: 40 }),
      length: quantityOf('length', { example: '6 ft', single: true, atLeast: 300, atMost: 4000 }),
      inGround: quantityOf('length', { single: true, atLeast: 100, atMost: 1500 }),
      sources: Sources,
    }),
  ),
  sow: Sow,
});

export type RaisedBed = Static<typeof RaisedBedSchema>;
