/** What to buy: quantity with spares, unit price and line total of each part, as findings. */
import { count, inputOf, none, quantity, type Finding, type FindingInput } from '../findings/finding.ts';
import { middle } from '../quantities/quantity.ts';
import type { ProjectPart } from '../records/schemas/project.ts';

export interface BillLine {
  readonly letter: string;
  readonly name: string;
  /** Id of the material in the hazard catalogue. */
  readonly material: string;
  readonly unit: string;
  readonly atHand: boolean;
  /** How many units, spares included. */
  readonly quantity: Finding;
  /** Absent for a part that is at hand. */
  readonly price?: Finding;
  readonly cost?: Finding;
}

export interface Bill {
  readonly lines: readonly BillLine[];
  /** The sum of the line totals; parts at hand cost nothing. */
  readonly total: Finding;
  /** Every finding of the bill, the total last. */
  readonly findings: readonly Finding[];
}

type Part = ProjectPart;

/** The part of a record that a bill is made from. */
export interface BillRecord {
  readonly parts: readonly ProjectPart[];
  readonly priceSource: string;
}

/**
 * Makes the bill. `counts` are the findings that part counts follow from; `each` parts bring their own number, and
 * `soil-litres` parts the volume that one unit holds.
 */
export function billOfMaterials(project: BillRecord, counts: Readonly<Record<string, Finding>>): Bill {
  const lines = project.parts.map((part) => billLine(part, counts, project.priceSource));
  const costs = lines.flatMap((line) => (line.cost ? [line.cost] : []));
  const total: Finding = {
    id: 'build.total-cost',
    value:
      costs.length === 0 ? none('all-at-hand') : quantity('money', cents(costs.map(amount).reduce(sum, 0))),
    method: 'build.total-cost',
    inputs: costs.map((cost) => inputOf('line-total', cost)),
    sources: [project.priceSource],
  };
  const findings = lines.flatMap(({ quantity: number, price, cost }) => [
    number,
    ...(price ? [price] : []),
    ...(cost ? [cost] : []),
  ]);
  return { lines, total, findings: [...findings, total] };
}

function billLine(part: Part, counts: Readonly<Record<string, Finding>>, priceSource: string): BillLine {
  const { letter, name, material, unit, atHand } = part;
  const needed = part.count === 'each' ? undefined : counts[part.count];
  const number: Finding = {
    id: partId(letter, 'quantity'),
    value: count(unitsToBuy(part, needed)),
    method: part.count === 'soil-litres' ? 'build.part-packs' : 'build.part-quantity',
    inputs: quantityInputs(part, needed),
    sources: needed?.sources ?? [priceSource],
  };
  const line = { letter, name, material, unit, atHand, quantity: number };
  if (atHand) return line;
  const unitPrice = part.price?.low ?? 0;
  const price = given(partId(letter, 'price'), unitPrice, priceSource);
  const cost: Finding = {
    id: partId(letter, 'cost'),
    value: quantity('money', cents(unitPrice * amount(number))),
    method: 'build.part-cost',
    inputs: [inputOf('quantity', number), inputOf('price', price)],
    sources: [priceSource],
  };
  return { ...line, price, cost };
}

/** Whole units, spares included: 9 stakes with 10 percent spare are 10, and 20 are 22. */
function unitsToBuy(part: Part, needed: Finding | undefined): number {
  const exact = needed === undefined ? (part.number ?? 1) : amount(needed);
  const units = part.count === 'soil-litres' && part.pack ? exact / middle(part.pack) : exact;
  return Math.ceil(Math.round(units * (1 + (part.spare ?? 0) / 100) * 1e6) / 1e6);
}

function quantityInputs(part: Part, needed: Finding | undefined): readonly FindingInput[] {
  return [
    ...(needed ? [inputOf('needed', needed)] : [{ name: 'needed', value: count(part.number ?? 1) }]),
    ...(part.count === 'soil-litres' && part.pack
      ? [{ name: 'pack', value: quantity('volume', part.pack.low, part.pack.high) }]
      : []),
    ...(part.spare === undefined ? [] : [{ name: 'spare-percent', value: count(part.spare) }]),
  ];
}

function given(id: string, price: number, source: string): Finding {
  return { id, value: quantity('money', price), method: 'frame.given', inputs: [], sources: [source] };
}

function partId(letter: string, what: string): string {
  return `build.part-${letter.toLowerCase()}.${what}`;
}

/** The number of a finding that has exactly one; 0 for one that has none. */
function amount({ value }: Finding): number {
  return value.kind === 'count' || value.kind === 'quantity' ? value.value : 0;
}

function sum(a: number, b: number): number {
  return a + b;
}

function cents(value: number): number {
  return Math.round(value * 100) / 100;
}
