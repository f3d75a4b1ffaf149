import Type, { type Static } from 'typebox';
import { Sources, oneOf, quantityOf, record, sourced } from '../kit.ts';
import { projectFields, Sow } from './common.ts';

/** What the counts of a bale frame's parts are worked out from. */
export const baleCounts = ['bales', 'stakes', 'sashes', 'props', 'loose-straw-bales'] as const;

/** The step drawings of a bale frame, in the order of building. */
export const baleDrawings = [
  'ground',
  'poleward-wall',
  'side-walls',
  'equator-wall',
  'stakes',
  'gaps',
  'soil',
  'sow',
  'sashes',
  'vent',
] as const;

const Wall = record({
  courses: Type.Integer({ minimum: 1, maximum: 3 }),
  /** `flat`: the widest face down. `on-edge`: higher and narrower. */
  lay: oneOf(['flat', 'on-edge']),
});

/** Old window sashes on low walls of straw. */
export const BaleColdFrameSchema = record({
  ...projectFields({ kind: 'bale-cold-frame', counts: baleCounts, drawings: baleDrawings }),
  bale: record({
    length: quantityOf('length', { single: true, atLeast: 100, atMost: 3000 }),
    width: quantityOf('length', { single: true, atLeast: 100, atMost: 2000 }),
    height: quantityOf('length', { single: true, atLeast: 100, atMost: 2000 }),
    mass: quantityOf('mass', { atLeast: 1000, atMost: 1_000_000 }),
    sources: Sources,
  }),
  walls: record({ poleward: Wall, others: Wall }),
  /** The window sashes at hand, in the order they lie from west to east. */
  sashes: Type.Array(
    record({
      id: Type.String({ pattern: '^[A-Z]$' }),
      /** Along the frame, east to west. */
      width: quantityOf('length', { single: true, atLeast: 100, atMost: 3000 }),
      /** Down the slope. */
      length: quantityOf('length', { single: true, atLeast: 100, atMost: 4000 }),
      thickness: quantityOf('length', { single: true, atLeast: 5, atMost: 150 }),
      /** Area of each square metre that is glass, 0 to 1; the rest is wood. */
      glassShare: Type.Number({ minimum: 0.2, maximum: 1 }),
      /** Thickness of the panes. */
      glass: quantityOf('length', { single: true, atLeast: 1, atMost: 25 }),
      painted: Type.Boolean(),
    }),
    { minItems: 1, maxItems: 12 },
  ),
  /** How far each sash must lie on the wall at either end, at the least. */
  bearing: sourced(quantityOf('length', { single: true, atLeast: 1, atMost: 1000 })),
  stakes: record({
    perBale: Type.Integer({ minimum: 1, maximum: 4 }),
    length: quantityOf('length', { single: true, atLeast: 100, atMost: 5000 }),
    sources: Sources,
  }),
  /** Depth of planting mix inside. */
  soilDepth: quantityOf('length', { single: true, atLeast: 10, atMost: 1000 }),
  sow: Sow,
});

export type BaleColdFrame = Static<typeof BaleColdFrameSchema>;
