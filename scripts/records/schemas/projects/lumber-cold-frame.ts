import Type, { type Static } from 'typebox';
import { Sources, oneOf, quantityOf, record, sourced } from '../kit.ts';
import { projectFields, Sow } from './common.ts';
import { BoardSize } from './lumber-sizes.ts';

/** What the counts of a lumber frame's parts are worked out from. */
export const lumberFrameCounts = [
  'screws',
  'lids',
  'hold-downs',
  'hinges',
  'props',
  'glazing-sheets',
  'glazing-fasteners',
  'lid-brackets',
] as const;

/** The step drawings of a lumber frame, in the order of building. */
export const lumberFrameDrawings = [
  'ground',
  'cut',
  'slope-cut',
  'back',
  'front',
  'sides',
  'slopes',
  'bars',
  'soil',
  'sow',
  'lids',
  'hang',
  'vent',
] as const;

const Course = Type.Array(BoardSize, { minItems: 1, maxItems: 4 });

/** An old sash, measured. */
const Sash = record({
  thickness: quantityOf('length', { single: true, atLeast: 5, atMost: 150 }),
  /** Area of each square metre that is glass, 0 to 1; the rest is wood. */
  glassShare: Type.Number({ minimum: 0.2, maximum: 1 }),
  /** Thickness of the panes. */
  glass: quantityOf('length', { single: true, atLeast: 1, atMost: 25 }),
  painted: Type.Boolean(),
});

/** Two stiles and two rails under a sheet. */
const BuiltLid = record({
  nominal: oneOf(['2x2', '2x3', '2x4']),
  sheet: oneOf(['polycarbonate', 'film']),
  /** What one square metre of the sheet weighs. */
  sheetMass: sourced(quantityOf('mass', { description: 'of one square metre', atLeast: 10, atMost: 30_000 })),
});

/** A box of boards with a sloped lid. */
export const LumberColdFrameSchema = record({
  ...projectFields({
    kind: 'lumber-cold-frame',
    counts: lumberFrameCounts,
    drawings: lumberFrameDrawings,
  }),
  /** Nominal boards of each wall, from the ground up; the sides carry a sloped board on top of theirs. */
  walls: record({
    back: Course,
    front: Course,
    sides: Course,
    /** The board that both sloped pieces are cut from. */
    slope: BoardSize,
  }),
  posts: oneOf(['2x2', '4x4']),
  lids: record({
    number: Type.Integer({ minimum: 1, maximum: 6 }),
    /** Along the frame, east to west. */
    width: quantityOf('length', { single: true, atLeast: 200, atMost: 3000 }),
    /** Down the slope. */
    length: quantityOf('length', { single: true, atLeast: 300, atMost: 3000 }),
    /** How far the low end reaches past the front, so that rain drips clear. */
    overhang: quantityOf('length', { single: true, atMost: 200 }),
    /** One of the two: old sashes, or lids made of lumber. */
    sash: Type.Optional(Sash),
    built: Type.Optional(BuiltLid),
    /**
     * Sandbags on the low end of each lid, beside its hook, against the wind. The part with `count: hold-downs` says what one
     * weighs. `atBack` more lie on its back end, over the hinges: they keep the whole frame from tipping up.
     */
    holdDowns: Type.Optional(
      record({
        perLid: Type.Integer({ minimum: 1, maximum: 6 }),
        atBack: Type.Optional(Type.Integer({ minimum: 1, maximum: 6 })),
        sources: Sources,
      }),
    ),
  }),
  prop: quantityOf('length', { single: true, atLeast: 50, atMost: 1500 }),
  soilDepth: quantityOf('length', { single: true, atLeast: 10, atMost: 1000 }),
  sow: Sow,
});

export type LumberColdFrame = Static<typeof LumberColdFrameSchema>;
