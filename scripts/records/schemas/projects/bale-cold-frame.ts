import Type, { type Static } from 'typebox';
import { Sources, oneOf, quantityOf, record, sourced } from '../kit.ts';
import { projectFields, Sow } from './common.ts';
import { BoardSize } from './lumber-sizes.ts';

/** What the counts of a bale frame's parts are worked out from. */
export const baleCounts = [
  'bales',
  'stakes',
  'sashes',
  'props',
  'loose-straw-bales',
  'hold-downs',
  'weight-boards',
  'hinges',
  'screens',
  'straps',
  'hooks',
  'pane-covers',
  'filler-boards',
] as const;

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
  'props',
  'sashes',
  'vent',
  'storm',
] as const;

const Wall = record({
  courses: Type.Integer({ minimum: 1, maximum: 3 }),
  /** `flat`: the widest face down. `on-edge`: higher and narrower. */
  lay: oneOf(['flat', 'on-edge']),
});

/** What the panes of a sash are of; of glass, all there, where the record does not say. */
const Panes = record({
  /** `polycarbonate` is sheet of two walls with air between them. */
  kind: oneOf(['glass', 'plastic-film', 'polycarbonate']),
  /** How many panes the sash has room for. */
  number: Type.Optional(Type.Integer({ minimum: 1, maximum: 60 })),
  /** How many of them are broken or gone. */
  missing: Type.Optional(Type.Integer({ minimum: 1, maximum: 60 })),
  /** What the missing ones are covered with. */
  cover: Type.Optional(oneOf(['plastic-film', 'polycarbonate'])),
});

/** A frame of thin wood with insect screen, as large as its sash, that lies under it. */
const Screen = record({
  /** Of the wood round the cloth: how wide it is and how thick. */
  rail: quantityOf('length', { single: true, atLeast: 5, atMost: 150 }),
  thickness: quantityOf('length', { single: true, atLeast: 5, atMost: 60 }),
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
  /**
   * What the sashes get their slope by: the tall wall on edge and the others flat (`lay`), more courses in the tall wall
   * (`courses`), or walls of one height and a ridge of packed straw under a board on the tall one (`wedge`). It follows
   * from the walls where the record does not say.
   */
  slope: Type.Optional(
    record({
      by: oneOf(['lay', 'courses', 'wedge']),
      /** For `wedge`: how high straw and board raise the upper ends. */
      rise: Type.Optional(quantityOf('length', { single: true, atLeast: 10, atMost: 600 })),
      /** For `wedge`: the board on the straw, that the sashes lie on. */
      board: Type.Optional(BoardSize),
    }),
  ),
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
      glass: quantityOf('length', { single: true, atLeast: 0.05, atMost: 25 }),
      painted: Type.Boolean(),
      panes: Type.Optional(Panes),
      /**
       * The edge that hinges hold; loose where the record does not say. At the top it is hinged to a board on the tall wall; at
       * a side to the sash beside it, or at the end of the frame to a board on the side wall.
       */
      hinge: Type.Optional(oneOf(['none', 'top', 'west', 'east'])),
      screen: Type.Optional(Screen),
      /** Against the wind; weights where the record has `holdDowns`, and nothing where it does not. */
      holdDown: Type.Optional(oneOf(['none', 'weight', 'strap', 'hook'])),
      /** For a sash that ends short of the low wall: a board on the wall carries its low end, so that it does not set the depth. */
      filler: Type.Optional(oneOf(['board'])),
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
  /**
   * Weights that lie on every sash against the wind: so many at its upper end, and as many at its lower one. The part with
   * `count: hold-downs` says what one weighs.
   */
  holdDowns: Type.Optional(
    record({
      /** Every day. */
      perEnd: Type.Integer({ minimum: 1, maximum: 6 }),
      /**
       * A 3-second gust that the closed sashes are to stand: how many weights that takes is worked out, and boards over both ends
       * carry them (`count: weight-boards`). For sashes that all lie loose.
       */
      forGust: Type.Optional(
        quantityOf('speed', { example: '60 mph', single: true, atLeast: 5, atMost: 120 }),
      ),
      sources: Sources,
    }),
  ),
  /** For sashes on hinges: how many each, and the board on the wall that they are screwed to. */
  hinges: Type.Optional(
    record({ perSash: Type.Integer({ minimum: 2, maximum: 6 }), board: BoardSize, sources: Sources }),
  ),
  /** Depth of planting mix inside. */
  soilDepth: quantityOf('length', { single: true, atLeast: 10, atMost: 1000 }),
  sow: Sow,
});

export type BaleColdFrame = Static<typeof BaleColdFrameSchema>;
