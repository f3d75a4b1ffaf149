import { describe, expect, test } from 'vitest';
import { count, quantity } from '../../scripts/findings/finding.ts';
import type { BaleColdFrame } from '../../scripts/records/schemas/projects/bale-cold-frame.ts';
import { billOfMaterials } from '../../scripts/structures/bill-of-materials.ts';
import { partOf, projectWith, quantityIn } from './project.ts';
import { frameOf, numberOf, valueOf } from './read-frame.ts';

/** Nine bales for the walls, one to open, 18 stakes, three sashes, 11.96 ft3 of mix (worked in bale-cold-frame.test.ts). */
const sashes = [
  [27, 54],
  [27, 54],
  [24, 57],
] as const;

type Part = BaleColdFrame['parts'][number];

const rows: readonly {
  readonly name: string;
  readonly part: Part;
  readonly quantity: number;
  readonly cost: number;
}[] = [
  { name: 'bales', part: partOf({ count: 'bales', price: 9 }), quantity: 9, cost: 81 },
  { name: 'loose straw', part: partOf({ count: 'loose-straw-bales', price: 9 }), quantity: 1, cost: 9 },
  {
    name: 'stakes with a tenth to spare: 19.8',
    part: partOf({ count: 'stakes', spare: 10, price: 2.25 }),
    quantity: 20,
    cost: 45,
  },
  {
    name: 'spares that come out even: 18 and a half again',
    part: partOf({ count: 'stakes', spare: 50, price: 0.1 }),
    quantity: 27,
    cost: 2.7,
  },
  {
    name: 'spares that the arithmetic of the machine puts a hair above 55',
    part: partOf({ count: 'each', number: 50, spare: 10, price: 1 }),
    quantity: 55,
    cost: 55,
  },
  {
    name: 'bags of planting mix: 11.96 in bags of 2',
    part: partOf({ count: 'soil-litres', pack: quantityIn('volume', 'ft3', 2), price: 14 }),
    quantity: 6,
    cost: 84,
  },
  { name: 'sashes', part: partOf({ count: 'sashes', price: 5 }), quantity: 3, cost: 15 },
  { name: 'a stick for each sash', part: partOf({ count: 'props', price: 0.5 }), quantity: 3, cost: 1.5 },
  { name: 'its own number', part: partOf({ count: 'each', number: 2, price: 3.35 }), quantity: 2, cost: 6.7 },
];

describe('a line of the bill', () => {
  test.each(rows)('$name', ({ part, quantity, cost }) => {
    const frame = frameOf(projectWith({ sashes, parts: [part] }));
    expect(numberOf(frame, 'build.part-a.quantity')).toBe(quantity);
    expect(numberOf(frame, 'build.part-a.cost', 'USD')).toBeCloseTo(cost, 9);
    expect(numberOf(frame, 'build.total-cost', 'USD')).toBeCloseTo(cost, 9);
  });

  test('what is at hand is listed without a price', () => {
    const parts = [
      partOf({ letter: 'A', price: 9 }),
      partOf({ letter: 'B', count: 'sashes', price: 50, atHand: true }),
    ];
    const frame = frameOf(projectWith({ sashes, parts }));
    expect(
      frame.bill.map(({ letter, atHand, price, cost }) => [
        letter,
        atHand,
        price === undefined,
        cost === undefined,
      ]),
    ).toEqual([
      ['A', false, false, false],
      ['B', true, true, true],
    ]);
    expect(numberOf(frame, 'build.part-b.quantity')).toBe(3);
    expect(numberOf(frame, 'build.total-cost', 'USD')).toBe(81);
  });

  test('a bill with nothing to buy says so', () => {
    const frame = frameOf(projectWith({ sashes, parts: [partOf({ atHand: true })] }));
    expect(valueOf(frame, 'build.total-cost')).toEqual({ kind: 'none', reason: 'all-at-hand' });
  });
});

test('the total is the sum of its lines to the cent', () => {
  const parts = rows.map(({ part }, index) => ({ ...part, letter: 'ABCDEFGHI'[index]! }));
  const frame = frameOf(projectWith({ sashes, parts }));
  expect(numberOf(frame, 'build.total-cost', 'USD')).toBe(299.9);
  expect(frame.bill.map(({ letter }) => letter).join('')).toBe('ABCDEFGHI');
});

describe('how long a stake is', () => {
  const lineOf = (part: Parameters<typeof partOf>[0]) => {
    const record = { parts: [partOf(part)], priceSource: 'price-source' };
    const given = { id: 'frame.stake-length', value: quantity('length', 914.4), method: 'build.given' };
    const stakes = { ...given, inputs: [], sources: ['a-source'] };
    return billOfMaterials(record, {
      counts: { stakes: { ...stakes, id: 'frame.stakes', value: count(18) } },
      lengths: { stakes },
      pieces: [],
      findings: [],
    }).lines[0]!;
  };

  test('the record says it for a part that it counts', () => {
    const { length } = lineOf({ count: 'each', number: 4, length: quantityIn('length', 'in', 12) });
    expect(length).toMatchObject({
      id: 'build.part-a.length',
      value: { value: expect.closeTo(304.8, 6) as number },
    });
  });
  test('the structure says it for one that the structure counts', () => {
    const { length } = lineOf({ count: 'stakes' });
    expect(length).toMatchObject({
      id: 'build.part-a.length',
      value: { value: 914.4 },
      sources: ['a-source'],
    });
  });
  test('nobody says it for a box of staples', () => {
    expect(lineOf({ count: 'each', number: 1 }).length).toBeUndefined();
  });
});
