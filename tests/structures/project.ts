import { readFileSync } from 'node:fs';
import type { Quantity } from '../../scripts/quantities/quantity.ts';
import { toHeld, type Dimension } from '../../scripts/quantities/units.ts';
import { collectSingles } from '../../scripts/records/collect.ts';
import {
  BaleColdFrameSchema,
  type BaleColdFrame,
} from '../../scripts/records/schemas/projects/bale-cold-frame.ts';

export function quantityIn<D extends Dimension>(
  dimension: D,
  unit: string,
  low: number,
  high = low,
): Quantity<D> {
  return { dimension, low: toHeld(low, unit), high: toHeld(high, unit), written: `${low} ${unit}` };
}

export const inches = (value: number): Quantity<'length'> => quantityIn('length', 'in', value);

export interface Choices {
  /** Width and length of each sash in inches, from west to east. */
  readonly sashes?: readonly (readonly [number, number])[];
  readonly bearing?: number;
  readonly poleward?: BaleColdFrame['walls']['poleward'];
  readonly others?: BaleColdFrame['walls']['others'];
  readonly stakes?: { readonly perBale: number; readonly length: number };
  readonly soilDepth?: number;
  /** Length, width and height in inches. */
  readonly bale?: readonly [number, number, number];
  readonly parts?: BaleColdFrame['parts'];
  /** What single sashes have beyond their size, by their place in the list. */
  readonly special?: Readonly<Record<number, SashExtras>>;
  readonly slope?: BaleColdFrame['slope'];
  readonly hinges?: BaleColdFrame['hinges'];
  readonly holdDowns?: BaleColdFrame['holdDowns'];
}

export type SashExtras = Partial<
  Pick<BaleColdFrame['sashes'][number], 'hinge' | 'panes' | 'screen' | 'holdDown' | 'filler' | 'glass'>
>;

/** Two hinges to a sash, on a 2 by 6. */
export const hingesOn2x6: NonNullable<BaleColdFrame['hinges']> = {
  perSash: 2,
  board: '2x6',
  sources: ['hinge-source'],
};

/** A screen in a frame of wood 1 1/2 in wide and 3/4 in thick. */
export const thinScreen: NonNullable<BaleColdFrame['sashes'][number]['screen']> = {
  rail: inches(1.5),
  thickness: inches(0.75),
};

const sashLetters = 'KLMNOPQRSTUV';

/** A project of round sizes in inches: bales 36 × 18 × 14, the poleward wall on edge, a bearing of 3. */
export function projectWith({
  sashes = [[36, 54]],
  bearing = 3,
  poleward = { courses: 1, lay: 'on-edge' },
  others = { courses: 1, lay: 'flat' },
  stakes = { perBale: 2, length: 36 },
  soilDepth = 6,
  bale = [36, 18, 14],
  parts = [partOf({ letter: 'A', count: 'bales', price: 10 })],
  special = {},
  slope,
  hinges,
  holdDowns,
}: Choices = {}): BaleColdFrame {
  return {
    id: 'test-frame',
    kind: 'bale-cold-frame',
    name: 'Test frame',
    bale: {
      length: inches(bale[0]),
      width: inches(bale[1]),
      height: inches(bale[2]),
      mass: quantityIn('mass', 'lb', 40, 60),
      sources: ['bale-source'],
    },
    walls: { poleward, others },
    sashes: sashes.map(([width, length], index) => ({
      id: sashLetters[index]!,
      width: inches(width),
      length: inches(length),
      thickness: inches(1.375),
      glassShare: 0.7,
      glass: inches(0.125),
      painted: true,
      ...special[index],
    })),
    ...(slope ? { slope } : {}),
    ...(hinges ? { hinges } : {}),
    ...(holdDowns ? { holdDowns } : {}),
    bearing: { value: inches(bearing), sources: ['bearing-source'] },
    stakes: { perBale: stakes.perBale, length: inches(stakes.length), sources: ['stake-source'] },
    soilDepth: inches(soilDepth),
    helpers: 1,
    time: quantityIn('day-length', 'h', 4, 6),
    parts,
    priceSource: 'price-source',
    tools: ['spade'],
    steps: [{ title: 'Begin', text: 'Begin.', drawing: 'ground', tools: [], materials: [], actions: [] }],
    sow: [{ crop: 'carrot', rows: 1 }],
  };
}

/** A part with a price in dollars. */
export function partOf(
  part: Partial<Omit<BaleColdFrame['parts'][number], 'price'>> & { readonly price?: number },
): BaleColdFrame['parts'][number] {
  const { price = 1, ...rest } = part;
  return {
    letter: 'A',
    name: 'Part',
    material: 'straw-bale',
    count: 'bales',
    unit: 'piece',
    atHand: false,
    ...rest,
    price: quantityIn('money', 'USD', price),
  };
}

/** The project of the demonstration guide, as its readers get it. */
export function demoProject(): BaleColdFrame {
  const path = 'content/projects/straw-bale-cold-frame.yaml';
  const text = readFileSync(new URL(`../../${path}`, import.meta.url), 'utf8');
  const { records, diagnostics } = collectSingles(BaleColdFrameSchema, [{ path, text }]);
  if (diagnostics.length > 0) throw new Error(JSON.stringify(diagnostics, null, 2));
  return records[0]!.value;
}
