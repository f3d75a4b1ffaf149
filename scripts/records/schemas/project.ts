import Type, { type Static } from 'typebox';
import { Id, Prose, Sources, Words, oneOf, quantityOf, record, ref, sourced } from './kit.ts';

/** What each count of the bill of materials is worked out from. */
export const billCounts = [
  'bales',
  'stakes',
  'sashes',
  'props',
  'loose-straw-bales',
  'soil-litres',
  'each',
] as const;

const Wall = record({
  courses: Type.Integer({ minimum: 1, maximum: 3 }),
  /** `flat`: the widest face down. `on-edge`: higher and narrower. */
  lay: oneOf(['flat', 'on-edge']),
});

export const ProjectSchema = record({
  id: Id,
  kind: oneOf(['bale-cold-frame']),
  name: Words,
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
  helpers: Type.Integer({ minimum: 0, maximum: 10 }),
  time: quantityOf('day-length', { description: 'hours of work', atLeast: 0.1, atMost: 1000 }),
  parts: Type.Array(
    record({
      /** The letter that the drawings and steps call it by. */
      letter: Type.String({ pattern: '^[A-Z]$' }),
      name: Words,
      material: ref('material'),
      count: oneOf(billCounts),
      /** For `count: each`. */
      number: Type.Optional(Type.Integer({ minimum: 1, maximum: 100 })),
      /** Extra to buy, in percent. */
      spare: Type.Optional(Type.Number({ minimum: 0, maximum: 100 })),
      unit: Words,
      /** For `count: soil-litres`: how much one unit holds. */
      pack: Type.Optional(quantityOf('volume', { atLeast: 0.1, atMost: 100_000 })),
      price: quantityOf('money', { description: 'for one unit', single: true, atMost: 1_000_000 }),
      /** True when the builder has it already: it is listed, but not priced. */
      atHand: Type.Boolean(),
    }),
    { minItems: 1, maxItems: 26 },
  ),
  priceSource: ref('source'),
  tools: Type.Array(ref('tool'), { minItems: 1, maxItems: 20 }),
  steps: Type.Array(
    record({
      title: Words,
      /** Inline Markdown; `{{name}}` prints a finding. One act. */
      text: Prose,
      drawing: oneOf([
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
      ]),
      tools: Type.Array(ref('tool'), { maxItems: 8 }),
      materials: Type.Array(ref('material'), { maxItems: 8 }),
      actions: Type.Array(ref('action'), { maxItems: 8 }),
    }),
    { minItems: 1, maxItems: 20 },
  ),
  /** What is sown in it: rows run east to west, the tallest on the poleward side. */
  sow: Type.Array(record({ crop: ref('crop'), rows: Type.Integer({ minimum: 1, maximum: 20 }) }), {
    minItems: 1,
    maxItems: 6,
  }),
});

export type Project = Static<typeof ProjectSchema>;
export type ProjectStep = Project['steps'][number];
export type BillCount = (typeof billCounts)[number];
