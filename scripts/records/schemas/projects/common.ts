/** What the records of all kinds of build project have in common. */
import Type from 'typebox';
import { stepSafetyFields } from '../hazard.ts';
import { Id, Prose, Words, oneOf, quantityOf, record, ref } from '../kit.ts';
import { Irrigation } from './sow.ts';

/** A part that the builder has already, or that is bought in lengths and cut: what the counts of every kind share. */
export const sharedCounts = ['each', 'cut', 'soil-litres'] as const;

/**
 * The fields of every project. `counts` are what the number of a part can follow from in this kind, besides the shared
 * ones; `drawings` are its step drawings, in the order of building.
 */
export function projectFields<
  const K extends string,
  const C extends readonly string[],
  const D extends readonly string[],
>({ kind, counts, drawings }: { kind: K; counts: C; drawings: D }) {
  return {
    id: Id,
    kind: oneOf([kind]),
    name: Words,
    helpers: Type.Integer({ minimum: 0, maximum: 10 }),
    time: quantityOf('day-length', { description: 'hours of work', atLeast: 0.1, atMost: 1000 }),
    parts: Type.Array(partOf<C[number] | (typeof sharedCounts)[number]>([...counts, ...sharedCounts]), {
      minItems: 1,
      maxItems: 26,
    }),
    /** What one saw cut takes; an eighth of an inch where the record does not say. */
    kerf: Type.Optional(quantityOf('length', { single: true, atMost: 20 })),
    priceSource: ref('source'),
    /** Drip lines in the bed, where it has them. */
    irrigation: Type.Optional(Irrigation),
    tools: Type.Array(ref('tool'), { minItems: 1, maxItems: 20 }),
    steps: Type.Array(stepOf<D[number]>(drawings), { minItems: 1, maxItems: 20 }),
  };
}

function partOf<C extends string>(counts: readonly C[]) {
  return record({
    /** The letter that the drawings and steps call it by. */
    letter: Type.String({ pattern: '^[A-Z]$' }),
    name: Words,
    material: ref('material'),
    count: oneOf(counts),
    /** For `count: each`. */
    number: Type.Optional(Type.Integer({ minimum: 1, maximum: 100 })),
    /** For `count: cut`: which of the structure's pieces are cut from it, by their nominal section such as `2x10`. */
    nominal: Type.Optional(Type.String({ pattern: '^[1-9][0-9]*x[1-9][0-9]*$' })),
    /** For `count: cut`: the lengths it is sold in, each with its price. */
    stock: Type.Optional(
      Type.Array(
        record({
          length: quantityOf('length', { single: true, atLeast: 100, atMost: 10_000 }),
          price: quantityOf('money', { single: true, atMost: 1_000_000 }),
        }),
        { minItems: 1, maxItems: 8 },
      ),
    ),
    /** Extra to buy, in percent. */
    spare: Type.Optional(Type.Number({ minimum: 0, maximum: 100 })),
    unit: Words,
    /** Of one stake, pole or stick, where the structure does not give it; the list of parts prints it. */
    length: Type.Optional(quantityOf('length', { single: true, atLeast: 50, atMost: 10_000 })),
    /** What one unit weighs, for a part that somebody lifts or that holds something down. */
    mass: Type.Optional(quantityOf('mass', { example: '50 lb', atLeast: 1, atMost: 1_000_000 })),
    /** For `count: soil-litres` and others in litres: how much one unit holds. */
    pack: Type.Optional(quantityOf('volume', { atLeast: 0.1, atMost: 100_000 })),
    /** For one unit; a part that is cut has the prices of its lengths instead. */
    price: Type.Optional(
      quantityOf('money', { description: 'for one unit', single: true, atMost: 1_000_000 }),
    ),
    /** True when the builder has all of it already: it is listed, but not priced. */
    atHand: Type.Boolean(),
    /** How many units of it the builder has already; only the rest is bought. */
    have: Type.Optional(Type.Integer({ minimum: 0, maximum: 10_000 })),
    /** For `count: cut`: lengths that the builder has already, used first. */
    haveLengths: Type.Optional(
      Type.Array(
        record({
          length: quantityOf('length', { single: true, atLeast: 100, atMost: 10_000 }),
          number: Type.Integer({ minimum: 1, maximum: 100 }),
        }),
        { minItems: 1, maxItems: 20 },
      ),
    ),
  });
}

function stepOf<D extends string>(drawings: readonly D[]) {
  return record({
    title: Words,
    /** Inline Markdown; `{{name}}` prints a finding, `(A)` calls a part by its letter. One act. */
    text: Prose,
    /** The same in plain words for a class; the text itself where it is absent. */
    class: Type.Optional(Prose),
    drawing: oneOf(drawings),
    tools: Type.Array(ref('tool'), { maxItems: 8 }),
    materials: Type.Array(ref('material'), { maxItems: 8 }),
    actions: Type.Array(ref('action'), { maxItems: 8 }),
    ...stepSafetyFields,
  });
}

export { Sow } from './sow.ts';
