import { describe, expect, test } from 'vitest';
import { count, quantity, type Finding } from '../../scripts/findings/finding.ts';
import { billFaults, billOfMaterials } from '../../scripts/structures/bill-of-materials.ts';
import { inches, partOf, quantityIn } from './project.ts';

const length = (id: string, inch: number): Finding => ({
  id,
  value: quantity('length', inch * 25.4),
  method: 'bed.board',
  inputs: [],
  sources: ['a-source'],
});
const findings = [length('bed.side', 96), length('bed.end', 45)];
const pieces = [
  { role: 'side', nominal: '2x10', length: 'bed.side', lengthMm: 96 * 25.4, number: 2 },
  { role: 'end', nominal: '2x10', length: 'bed.end', lengthMm: 45 * 25.4, number: 2 },
];
const money = (usd: number) => quantityIn('money', 'USD', usd);
const boards = {
  ...partOf({ letter: 'A', count: 'cut', nominal: '2x10', name: 'Board' }),
  stock: [
    { length: inches(96), price: money(13) },
    { length: inches(144), price: money(21.5) },
  ],
};
const bill = (part: typeof boards) =>
  billOfMaterials({ parts: [part], priceSource: 'price-source' }, { counts: {}, pieces, findings });

describe('the bill of lumber', () => {
  test('a side and an end out of each of two boards of 12 ft, 2 3/4 in left of each', () => {
    const { lines, total, cuts } = bill(boards);
    expect(lines.map(({ stockMm, quantity: { value } }) => [Math.round(stockMm! / 25.4), value])).toEqual([
      [144, count(2)],
    ]);
    expect(total.value).toEqual(quantity('money', 43));
    // 5.5 in of 288 in.
    expect(cuts[0]!.offcut.value).toEqual(count(2));
  });

  test('a board at hand is used and not paid for', () => {
    const { lines, total } = bill({ ...boards, haveLengths: [{ length: inches(144), number: 1 }] });
    expect(lines.map(({ have, toBuy }) => [have?.value, toBuy?.value])).toEqual([[count(1), count(1)]]);
    expect(total.value).toEqual(quantity('money', 21.5));
  });

  test('odd lengths at hand have lines of their own', () => {
    const { lines, total } = bill({ ...boards, haveLengths: [{ length: inches(50), number: 2 }] });
    expect(lines.map(({ stockMm, toBuy }) => [Math.round(stockMm! / 25.4), toBuy?.value])).toEqual([
      [96, count(2)],
      [50, count(0)],
    ]);
    expect(total.value).toEqual(quantity('money', 26));
  });

  test('ids are unique and every input is the value of its finding', () => {
    const made = bill({ ...boards, haveLengths: [{ length: inches(50), number: 2 }] }).findings;
    const byId = new Map([...made, ...findings].map((finding) => [finding.id, finding]));
    expect(byId.size).toBe(made.length + findings.length);
    for (const { inputs } of made) {
      for (const { finding, value } of inputs) if (finding) expect(byId.get(finding)?.value).toEqual(value);
    }
  });
});

describe('units at hand', () => {
  const stakes = { ...partOf({ letter: 'A', count: 'stakes' as const, price: 2 }) };
  const needed: Finding = {
    id: 'frame.stakes',
    value: count(18),
    method: 'frame.stakes',
    inputs: [],
    sources: ['s'],
  };
  test.each([
    { name: 'some: the rest is bought', have: 4, toBuy: 14, cost: 28 },
    { name: 'none: all are bought', have: 0, toBuy: 18, cost: 36 },
    { name: 'more than needed: none is bought', have: 30, toBuy: 0, cost: 0 },
  ])('$name', ({ have, toBuy, cost }) => {
    const { lines, total } = billOfMaterials(
      { parts: [{ ...stakes, have }], priceSource: 'price-source' },
      { counts: { stakes: needed }, pieces: [], findings: [needed] },
    );
    expect(lines[0]!.toBuy!.value).toEqual(count(toBuy));
    expect(total.value).toEqual(quantity('money', cost));
  });
});

describe('parts that no bill can be made from', () => {
  const withoutStock = partOf({ letter: 'A', count: 'cut', nominal: '2x10' });
  const withoutPrice = partOf({ letter: 'A', count: 'stakes' as const });
  delete withoutPrice.price;
  test.each([
    { name: 'lumber without lengths', part: withoutStock, fault: /lengths it is sold in are missing/ },
    {
      name: 'lumber that nothing is cut from',
      part: { ...boards, nominal: '2x4' },
      fault: /Nothing of this project is cut from 2x4/,
    },
    {
      name: 'a piece longer than any board',
      part: { ...boards, stock: [{ length: inches(72), price: money(9) }] },
      fault: /A piece of 96 in does not come out of any of these boards; the longest is 72 in/,
    },
    { name: 'no price', part: withoutPrice, fault: /Part A has no price/ },
  ])('$name', ({ part, fault }) => {
    const found = billFaults({ parts: [part], priceSource: 'price-source' }, pieces);
    expect(found.map(({ message }) => message)).toEqual([expect.stringMatching(fault)]);
    expect(found[0]!.path.slice(0, 2)).toEqual(['parts', 0]);
  });
});
