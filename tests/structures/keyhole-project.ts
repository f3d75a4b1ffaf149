import { inches, partOf, quantityIn } from './project.ts';
import type { KeyholeBed } from '../../scripts/records/schemas/projects/keyhole-bed.ts';
import type { PoleTepee } from '../../scripts/records/schemas/projects/pole-tepee.ts';

const common = {
  helpers: 1,
  time: quantityIn('day-length', 'h', 4, 6),
  priceSource: 'price-source',
  tools: ['spade'],
};

export interface KeyholeChoices {
  readonly diameter?: number;
  /** Face, back, depth and height in inches. */
  readonly block?: readonly [number, number, number, number];
  readonly highest?: number;
  readonly height?: number;
  readonly buried?: number;
  readonly joint?: number;
  readonly notch?: number;
  readonly basket?: number;
  readonly basketHeight?: number;
  readonly roll?: number;
  readonly stakeLength?: number;
  /** Drainage, mix, below the rim and rise, in inches. */
  readonly layers?: readonly [number, number, number, number];
}

/** The demonstration bed in round inches. */
export function keyholeWith({
  diameter = 72,
  block = [8, 6, 8, 4],
  highest = 20,
  height = 18,
  buried = 2,
  joint = 0.5,
  notch = 24,
  basket = 24,
  basketHeight = 36,
  roll = 120,
  stakeLength = 36,
  layers = [2, 7, 1, 5],
}: KeyholeChoices = {}): KeyholeBed {
  const sources = ['keyhole-source'];
  return {
    ...common,
    id: 'test-keyhole',
    kind: 'keyhole-bed',
    name: 'Test bed',
    diameter: inches(diameter),
    block: {
      face: inches(block[0]),
      back: inches(block[1]),
      depth: inches(block[2]),
      height: inches(block[3]),
      sources,
    },
    highest: { value: inches(highest), sources },
    height: inches(height),
    buried: inches(buried),
    joint: { value: inches(joint), sources },
    base: { depth: inches(6), width: inches(16), sources },
    notch: { value: inches(notch), sources },
    basket: {
      diameter: inches(basket),
      height: inches(basketHeight),
      overlap: inches(4),
      roll: inches(roll),
      stakes: { number: 5, length: inches(stakeLength) },
      sources,
    },
    layers: {
      drainage: inches(layers[0]),
      soil: inches(layers[1]),
      below: inches(layers[2]),
      rise: inches(layers[3]),
      brownParts: 2,
      sources,
    },
    settling: { soilPercent: 15, fillPercent: 40, sources },
    parts: [partOf({ letter: 'A', count: 'each', number: 1 }) as KeyholeBed['parts'][number]],
    steps: [{ title: 'Begin', text: 'Begin.', drawing: 'ground', tools: [], materials: [], actions: [] }],
    sow: [{ crop: 'lettuce', rows: 1 }],
  };
}

export interface TepeeChoices {
  readonly number?: number;
  readonly length?: number;
  readonly thickness?: number;
  readonly buried?: number;
  readonly tie?: number;
  readonly spread?: number;
  readonly rings?: number;
  readonly spacing?: number;
  readonly gust?: number;
  readonly sow?: PoleTepee['sow'];
}

/** The demonstration tepee in round inches, poles of 2 lb. */
export function tepeeWith({
  number = 6,
  length = 96,
  thickness = 1,
  buried = 12,
  tie = 8,
  spread = 48,
  rings = 3,
  spacing = 5,
  gust = 45,
  sow = [{ crop: 'pole-bean', rows: 1 }],
}: TepeeChoices = {}): PoleTepee {
  const sources = ['tepee-source'];
  return {
    ...common,
    id: 'test-tepee',
    kind: 'pole-tepee',
    name: 'Test tepee',
    poles: {
      number,
      length: inches(length),
      thickness: inches(thickness),
      buried: inches(buried),
      mass: quantityIn('mass', 'lb', 2),
      sources,
    },
    tie: inches(tie),
    spread: inches(spread),
    rings,
    ball: quantityIn('length', 'ft', 200),
    spacing: { value: inches(spacing), sources },
    loosened: inches(8),
    gust: { value: quantityIn('speed', 'mph', gust), sources },
    parts: [partOf({ letter: 'A', count: 'each', number: 1 }) as PoleTepee['parts'][number]],
    steps: [{ title: 'Begin', text: 'Begin.', drawing: 'ground', tools: [], materials: [], actions: [] }],
    sow,
  };
}
