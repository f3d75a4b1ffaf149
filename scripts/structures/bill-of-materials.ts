/** What a build takes and what of it is still to buy: quantity with spares, unit price and line total, as findings. */
import { count, inputOf, none, quantity, type Finding, type FindingInput } from '../findings/finding.ts';
import { middle, type Quantity } from '../quantities/quantity.ts';
import type { ProjectPart } from '../records/schemas/project.ts';
import { cutList, usualKerfMm, type CutBoard, type CutList } from './cut-list.ts';
import { unique } from './finding-list.ts';
import type { CutPiece, StructureDiagnosis } from './structure.ts';

export interface BillLine {
  readonly letter: string;
  readonly name: string;
  /** Id of the material in the hazard catalogue. */
  readonly material: string;
  readonly unit: string;
  readonly atHand: boolean;
  /** For lumber: the length of the boards that this line counts. */
  readonly stockMm?: number;
  /** How long one stake, pole or stick is; absent where its length does not matter. */
  readonly length?: Finding;
  /** How many units, spares included. */
  readonly quantity: Finding;
  /** How many of them the builder has; absent where the record does not say. */
  readonly have?: Finding;
  /** How many are still to buy; absent for a part that is at hand. */
  readonly toBuy?: Finding;
  /** Absent for a part that is at hand. */
  readonly price?: Finding;
  readonly cost?: Finding;
}

/** How the pieces of one lumber part are cut from its boards. */
export interface PartCuts {
  readonly letter: string;
  readonly name: string;
  readonly nominal: string;
  readonly kerfMm: number;
  readonly list: CutList;
  /** Share of the boards used that is left over. */
  readonly offcut: Finding;
}

export interface Bill {
  readonly lines: readonly BillLine[];
  readonly cuts: readonly PartCuts[];
  /** The sum of the line totals; parts at hand cost nothing. */
  readonly total: Finding;
  /** Every finding of the bill, the total last. */
  readonly findings: readonly Finding[];
}

/** The part of a record that a bill is made from. */
export interface BillRecord {
  readonly parts: readonly ProjectPart[];
  readonly priceSource: string;
  /** What one saw cut takes. */
  readonly kerf?: Quantity<'length'>;
}

/** What the bill takes from a structure. */
export interface BillNeeds {
  /** What part counts follow from; `each` parts bring their own number. */
  readonly counts: Readonly<Record<string, Finding>>;
  /** The length of a part that comes in one length, by the same names. */
  readonly lengths?: Readonly<Record<string, Finding>>;
  readonly pieces: readonly CutPiece[];
  /** Findings that the lengths of pieces are named by. */
  readonly findings: readonly Finding[];
}

/** Source of the width of cut where a record gives none. */
const kerfSource = 'saw-kerf-practice';

export function billOfMaterials(record: BillRecord, needs: BillNeeds): Bill {
  const maker = new BillMaker(record, needs);
  const lines = record.parts.flatMap((part) => maker.linesOf(part));
  const costs = lines.flatMap((line) => (line.cost ? [line.cost] : []));
  const total: Finding = {
    id: 'build.total-cost',
    value:
      costs.length === 0 ? none('all-at-hand') : quantity('money', cents(costs.map(amount).reduce(sum, 0))),
    method: 'build.total-cost',
    inputs: costs.map((cost) => inputOf('line-total', cost)),
    sources: [record.priceSource],
  };
  const findings = lines.flatMap((line) =>
    [line.quantity, line.length, line.have, line.toBuy, line.price, line.cost].filter(
      (finding) => finding !== undefined,
    ),
  );
  return {
    lines,
    cuts: maker.cuts,
    total,
    findings: [...findings, ...maker.cuts.map(({ offcut }) => offcut), total],
  };
}

/** Faults of the parts of a record that a bill cannot be made from. */
export function billFaults(record: BillRecord, pieces: readonly CutPiece[]): readonly StructureDiagnosis[] {
  return record.parts.flatMap((part, index) => partFaults(part, pieces).map(at(['parts', index])));
}

const at =
  (path: readonly (string | number)[]) =>
  (fault: StructureDiagnosis): StructureDiagnosis => ({ ...fault, path: [...path, ...fault.path] });

function partFaults(part: ProjectPart, pieces: readonly CutPiece[]): readonly StructureDiagnosis[] {
  const fault = (message: string, hint: string, path: readonly string[] = []): StructureDiagnosis[] => [
    { path, message, hint },
  ];
  if (part.count !== 'cut') {
    if (part.price === undefined && !part.atHand) {
      return fault(`Part ${part.letter} has no price.`, 'Add price, for one unit, or say atHand: true.');
    }
    return [];
  }
  if (part.nominal === undefined || part.stock === undefined) {
    return fault(
      `Part ${part.letter} is cut from lumber, but its nominal size or the lengths it is sold in are missing.`,
      'Add nominal, such as 2x10, and stock with lengths and prices.',
    );
  }
  const wanted = pieces.filter(({ nominal }) => nominal === part.nominal);
  if (wanted.length === 0) {
    return fault(
      `Nothing of this project is cut from ${part.nominal} lumber.`,
      'Correct nominal, or remove the part.',
      ['nominal'],
    );
  }
  const longest = Math.max(...part.stock.map(({ length }) => middle(length)));
  const tooLong = wanted.filter(({ lengthMm }) => lengthMm > longest + 0.01);
  if (tooLong.length === 0) return [];
  const inches = (mm: number): string => `${Math.round(mm / 2.54) / 10} in`;
  return fault(
    `A piece of ${inches(Math.max(...tooLong.map(({ lengthMm }) => lengthMm)))} does not come out of any of these boards; the longest is ${inches(longest)}.`,
    'Add a longer length to stock, or make the project smaller.',
    ['stock'],
  );
}

class BillMaker {
  readonly #record: BillRecord;
  readonly #needs: BillNeeds;
  readonly cuts: PartCuts[] = [];

  constructor(record: BillRecord, needs: BillNeeds) {
    this.#record = record;
    this.#needs = needs;
  }

  linesOf(part: ProjectPart): readonly BillLine[] {
    return part.count === 'cut' ? this.#lumberLines(part) : [this.#countedLine(part)];
  }

  #countedLine(part: ProjectPart): BillLine {
    const needed = part.count === 'each' ? undefined : this.#needs.counts[part.count];
    if (part.count !== 'each' && !needed) throw new TypeError(`nothing counts ${part.count}`);
    const number: Finding = {
      id: partId(part, 'quantity'),
      value: count(unitsNeeded(part, needed)),
      method: isByVolume(part) ? 'build.part-packs' : 'build.part-quantity',
      inputs: quantityInputs(part, needed),
      sources: needed?.sources ?? [this.#record.priceSource],
    };
    const line = this.#line(part, number, { of: '', price: part.price?.low ?? 0, have: part.have });
    const length = this.#lengthOf(part);
    return length ? { ...line, length } : line;
  }

  /** As the record gives it, or as the structure does. */
  #lengthOf(part: ProjectPart): Finding | undefined {
    const id = partId(part, 'length');
    if (part.length)
      return {
        id,
        value: quantity('length', part.length.low),
        method: 'build.given',
        inputs: [],
        sources: [this.#record.priceSource],
      };
    const known = this.#needs.lengths?.[part.count];
    return known && { ...known, id };
  }

  #lumberLines(part: ProjectPart): readonly BillLine[] {
    const wanted = this.#needs.pieces.filter(({ nominal }) => nominal === part.nominal);
    const kerfMm = this.#record.kerf ? middle(this.#record.kerf) : usualKerfMm;
    const list = cutList({
      pieces: wanted,
      stock: (part.stock ?? []).map(({ length, price }) => ({ lengthMm: middle(length), price: price.low })),
      atHandMm: (part.haveLengths ?? []).flatMap(({ length, number }) =>
        Array.from({ length: number }, () => middle(length)),
      ),
      kerfMm,
    });
    const inputs = [
      ...wanted.map(({ length }) => inputOf('piece', this.#finding(length))),
      { name: 'kerf', value: quantity('length', kerfMm) },
    ];
    const sources = [...(this.#record.kerf ? [] : [kerfSource]), this.#record.priceSource];
    this.cuts.push({
      letter: part.letter,
      name: part.name,
      nominal: part.nominal ?? '',
      kerfMm,
      list,
      offcut: {
        id: partId(part, 'offcut'),
        value: count(offcutPercent(list.boards)),
        method: 'build.offcut',
        inputs,
        sources,
      },
    });
    return boardsByLength(list.boards).map(({ stockMm, all, own }) => {
      const of = `.${Math.round(stockMm)}mm`;
      const number: Finding = {
        id: partId(part, `quantity${of}`),
        value: count(all),
        method: list.proven ? 'build.boards' : 'build.boards-unproven',
        inputs,
        sources,
      };
      const price = (part.stock ?? []).find(({ length }) => Math.abs(middle(length) - stockMm) < 0.5)?.price
        .low;
      const line = this.#line(part, number, {
        of,
        price: price ?? 0,
        have: part.haveLengths ? own : undefined,
      });
      return { ...line, stockMm };
    });
  }

  #line(
    part: ProjectPart,
    number: Finding,
    { of, price: unitPrice, have }: { of: string; price: number; have: number | undefined },
  ): BillLine {
    const { letter, name, material, unit, atHand } = part;
    const line = { letter, name, material, unit, atHand, quantity: number };
    if (atHand) return line;
    const { priceSource } = this.#record;
    const id = (what: string): string => partId(part, `${what}${of}`);
    const own: Finding | undefined =
      have === undefined
        ? undefined
        : { id: id('have'), value: count(have), method: 'build.given', inputs: [], sources: [priceSource] };
    const toBuy: Finding = {
      id: id('to-buy'),
      value: count(Math.max(0, amount(number) - (have ?? 0))),
      method: 'build.to-buy',
      inputs: [inputOf('quantity', number), ...(own ? [inputOf('at-hand', own)] : [])],
      sources: number.sources,
    };
    const price: Finding = {
      id: id('price'),
      value: quantity('money', unitPrice),
      method: 'build.given',
      inputs: [],
      sources: [priceSource],
    };
    const cost: Finding = {
      id: id('cost'),
      value: quantity('money', cents(unitPrice * amount(toBuy))),
      method: 'build.part-cost',
      inputs: [inputOf('quantity', toBuy), inputOf('price', price)],
      sources: [priceSource],
    };
    return { ...line, ...(own ? { have: own } : {}), toBuy, price, cost };
  }

  #finding(id: string): Finding {
    const finding = this.#needs.findings.find((other) => other.id === id);
    if (!finding) throw new TypeError(`no finding ${id} gives the length of a piece`);
    return finding;
  }
}

/** Mix, gravel and the like are counted in litres and come in packs. */
function isByVolume({ count: counted }: ProjectPart): boolean {
  return counted.endsWith('-litres');
}

/** Whole units, spares included: 9 stakes with 10 percent spare are 10, and 20 are 22. */
function unitsNeeded(part: ProjectPart, needed: Finding | undefined): number {
  const exact = needed === undefined ? (part.number ?? 1) : amount(needed);
  const units = isByVolume(part) && part.pack ? exact / middle(part.pack) : exact;
  return Math.ceil(Math.round(units * (1 + (part.spare ?? 0) / 100) * 1e6) / 1e6);
}

function quantityInputs(part: ProjectPart, needed: Finding | undefined): readonly FindingInput[] {
  return [
    ...(needed ? [inputOf('needed', needed)] : [{ name: 'needed', value: count(part.number ?? 1) }]),
    ...(isByVolume(part) && part.pack
      ? [{ name: 'pack', value: quantity('volume', part.pack.low, part.pack.high) }]
      : []),
    ...(part.spare === undefined ? [] : [{ name: 'spare-percent', value: count(part.spare) }]),
  ];
}

/** The boards of a list by their length, the longest first; `own` are those at hand. */
function boardsByLength(
  boards: readonly CutBoard[],
): readonly { readonly stockMm: number; readonly all: number; readonly own: number }[] {
  const lengths = boards.map(({ stockMm }) => stockMm).filter(unique);
  return lengths
    .sort((a, b) => b - a)
    .map((stockMm) => {
      const same = boards.filter((board) => board.stockMm === stockMm);
      return { stockMm, all: same.length, own: same.filter(({ from }) => from === 'at-hand').length };
    });
}

function offcutPercent(boards: readonly CutBoard[]): number {
  const all = boards.reduce((length, { stockMm }) => length + stockMm, 0);
  const left = boards.reduce((length, { offcutMm }) => length + offcutMm, 0);
  return all === 0 ? 0 : Math.round((left / all) * 100);
}

/** `build.part-a.quantity` */
function partId({ letter }: ProjectPart, what: string): string {
  return `build.part-${letter.toLowerCase()}.${what}`;
}

/** The number of a finding that has exactly one, the upper end of one that has a range; 0 for one that has none. */
function amount({ value }: Finding): number {
  if (value.kind === 'range') return value.high;
  return value.kind === 'count' || value.kind === 'quantity' ? value.value : 0;
}

function sum(a: number, b: number): number {
  return a + b;
}

function cents(value: number): number {
  return Math.round(value * 100) / 100;
}
