/**
 * A bed from above, north up: rows from east to west to scale, the tallest at the poleward side, a mark for each plant, and
 * the drip lines between them. On a narrow page the names of the rows stand below the bed.
 */
import { spread } from '../charts/spread.ts';
import { estimateTextWidthMm, lineMm } from '../charts/text-width.ts';
import { baselineFor, dimension, wordsSize, type LengthWords, type SayLength } from '../dimension.ts';
import { circle, path, polyline, rectangle, segment, text, type Point } from '../path.ts';
import type { Scene, SceneItem } from '../scene.ts';
import { northArrow, sun } from '../symbols.ts';

/** Rows of one crop that stand side by side. */
export interface BedBlock {
  /** "Snap pea". */
  readonly name: string;
  /** How far apart its plants stand, ready-made: "every 2 in (5 cm)". */
  readonly spacing: string;
  /** A crop that shades what stands poleward of it gets a larger mark. */
  readonly tall: boolean;
  /** From the poleward edge on. */
  readonly rows: readonly BedPlanRow[];
}

export interface BedPlanRow {
  readonly number: number;
  /** From the inside of the poleward edge to the row. */
  readonly distanceFromPolewardMm: number;
  /** Plants, from the west end of the bed. */
  readonly plantsMm: readonly number[];
}

export interface BedPlanWords {
  /** The letter at the north arrow. */
  readonly north: string;
  /** At the edge toward the noon sun: "south, the sunny side". */
  readonly sunnySide: string;
  readonly dripLine: string;
  readonly length: SayLength;
  /** So many rows the same distance apart: "8 × 4 in". */
  readonly times: (number: number, words: LengthWords) => LengthWords;
  /** "1  Snap pea", or "2–9  Carrot" for rows too close for a name each. */
  readonly rows: (first: number, last: number, name: string) => string;
}

export interface BedPlanOptions {
  readonly id: string;
  readonly alternative: string;
  readonly insideLengthMm: number;
  readonly insideDepthMm: number;
  /** From the poleward edge on. */
  readonly blocks: readonly BedBlock[];
  /** Drip lines, from the poleward edge. */
  readonly linesMm?: readonly number[];
  readonly hemisphere: 'north' | 'south';
  readonly words: BedPlanWords;
  /** 80 to 175; below 120 the names stand under the bed. Default 165. */
  readonly widthMm?: number;
}

/** A bed is drawn no deeper than this on the page. */
const deepestMm = 105;
/** Rows closer than this on the page cannot be told apart; a bed that would be drawn smaller is cut short instead. */
const closestRowsMm = 2;
/** A row with a name of its own takes this much. */
const namedRowMm = 2 * lineMm + 0.6;
/** Plants closer than this on the page run together; every second or third one is then drawn. */
const closestMarksMm = 1.5;
const narrowBelowMm = 120;

export function bedPlan(options: BedPlanOptions): Scene {
  const { widthMm = 165, words, hemisphere } = options;
  const page = placeOnPage(options, widthMm);
  const names = page.narrow ? namesBelow(options, page) : namesBeside(options, page);
  const distances = rowDistances(options, page);
  const arrowY = hemisphere === 'north' ? page.bottom + 15 : page.top - 10;
  return {
    id: options.id,
    widthMm,
    heightMm: names.bottomMm,
    alternative: options.alternative,
    items: [
      ...bedOutline(page),
      ...(options.linesMm ?? []).map((mm) => dripLine(mm, page)),
      ...options.blocks.flatMap((block) => block.rows.flatMap((row) => rowItems(row, block, page))),
      ...distances,
      ...lengthDimension(options, page),
      ...sunSide(words.sunnySide, page),
      ...names.items,
      ...northArrow({ x: widthMm - 5, y: arrowY }, { x: 0, y: -1 }, words.north, 10),
    ],
  };
}

interface Page {
  readonly widthMm: number;
  readonly narrow: boolean;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  /** Down the page toward the sun, or up: 1 or -1. */
  readonly sunward: 1 | -1;
  readonly scale: number;
  /** The length of bed that is drawn; less than the whole of a bed too long for the page. */
  readonly shownMm: number;
  readonly cut: boolean;
  /** A place in the bed: `alongMm` from its west end, `fromPolewardMm` from its poleward edge. */
  readonly at: (alongMm: number, fromPolewardMm: number) => Point;
  /** True when the rows of a block are far enough apart for a name each. */
  readonly roomy: (block: BedBlock) => boolean;
}

const sunSideMm = 22;
const poleSideMm = 17;

function placeOnPage(options: BedPlanOptions, widthMm: number): Page {
  const { insideLengthMm, insideDepthMm, blocks, hemisphere, words } = options;
  const narrow = widthMm < narrowBelowMm;
  const longest = Math.max(...stretches(options).map(({ said }) => wordsSize(oneLine(said)).width));
  const left = longest + 8;
  const beside = narrow
    ? Math.max(...blocks.map((block) => estimateTextWidthMm(numbersOf(block), 'strong'))) + 7
    : Math.max(...blocks.map((block) => nameWidth(block, words))) + 8;
  const room = widthMm - left - Math.max(beside, 11);
  const wanted = Math.min(room / insideLengthMm, deepestMm / insideDepthMm);
  const scale = Math.min(Math.max(wanted, closestRowsMm / closestGap(options)), deepestMm / insideDepthMm);
  const shownMm = Math.min(insideLengthMm, room / scale);
  const north = hemisphere === 'north';
  const top = north ? poleSideMm - 12 : sunSideMm;
  const depth = insideDepthMm * scale;
  return {
    widthMm,
    narrow,
    left,
    right: left + shownMm * scale,
    top,
    bottom: top + depth,
    sunward: north ? 1 : -1,
    scale,
    shownMm,
    cut: shownMm < insideLengthMm - 1e-6,
    at: (alongMm, fromPolewardMm) => ({
      x: left + alongMm * scale,
      y: north ? top + fromPolewardMm * scale : top + depth - fromPolewardMm * scale,
    }),
    roomy: ({ rows }) =>
      rows.length === 1 ||
      (rows[1]!.distanceFromPolewardMm - rows[0]!.distanceFromPolewardMm) * scale >= namedRowMm,
  };
}

function closestGap({ blocks, insideDepthMm }: BedPlanOptions): number {
  const places = blocks.flatMap(({ rows }) => rows.map((row) => row.distanceFromPolewardMm));
  return Math.min(insideDepthMm, ...places.slice(1).map((place, index) => place - places[index]!));
}

function numbersOf({ rows }: BedBlock): string {
  const [first, last] = [rows[0]!.number, rows.at(-1)!.number];
  return first === last ? `${first}` : `${first}–${last}`;
}

function nameWidth(block: BedBlock, words: BedPlanWords): number {
  const label = words.rows(block.rows[0]!.number, block.rows.at(-1)!.number, block.name);
  return Math.max(estimateTextWidthMm(label, 'strong'), estimateTextWidthMm(block.spacing, 'label'));
}

/** The edge of the bed; open, with a broken end, where the bed goes on past what is drawn. */
function bedOutline({ left, right, top, bottom, cut }: Page): readonly SceneItem[] {
  if (!cut) return [path(rectangle(left, top, right - left, bottom - top), { stroke: 'cut', fill: 'tint' })];
  const open = [
    { x: right, y: top },
    { x: left, y: top },
    { x: left, y: bottom },
    { x: right, y: bottom },
  ];
  const middle = (top + bottom) / 2;
  return [
    path(rectangle(left, top, right - left, bottom - top), { fill: 'tint' }),
    path(polyline(open), { stroke: 'cut' }),
    path(
      polyline([
        { x: right, y: top - 2 },
        { x: right, y: middle - 2.4 },
        { x: right + 1.6, y: middle - 0.8 },
        { x: right - 1.6, y: middle + 0.8 },
        { x: right, y: middle + 2.4 },
        { x: right, y: bottom + 2 },
      ]),
      { stroke: 'thin' },
    ),
  ];
}

function dripLine(fromPolewardMm: number, page: Page): SceneItem {
  return path(segment(page.at(0, fromPolewardMm), page.at(page.shownMm, fromPolewardMm)), {
    stroke: 'hidden',
  });
}

function rowItems(row: BedPlanRow, { tall }: BedBlock, page: Page): readonly SceneItem[] {
  const { distanceFromPolewardMm, plantsMm } = row;
  const apart = plantsMm.length > 1 ? (plantsMm[1]! - plantsMm[0]!) * page.scale : Infinity;
  const every = Math.ceil(closestMarksMm / apart);
  const marks = plantsMm.filter(
    (alongMm, index) => index % every === 0 && alongMm <= page.shownMm - (page.cut ? 1.6 / page.scale : 0),
  );
  const radius = Math.min(1.1, apart * every * 0.36);
  const line = segment(page.at(0, distanceFromPolewardMm), page.at(page.shownMm, distanceFromPolewardMm));
  return [
    path(line, { stroke: 'thin' }),
    ...marks.map((alongMm) => {
      const spot = page.at(alongMm, distanceFromPolewardMm);
      return tall
        ? circle(spot, radius, { stroke: 'seen', fill: 'paper' })
        : circle(spot, 0.6, { fill: 'ink' });
    }),
  ];
}

interface Names {
  readonly items: readonly SceneItem[];
  readonly bottomMm: number;
}

interface Name {
  readonly y: number;
  readonly lines: readonly { readonly words: string; readonly style: 'label' | 'strong' }[];
  /** The first and last row of a name that stands for several. */
  readonly span?: readonly [number, number];
}

/** At the right of the bed, each beside its row; a name moved to make room has a line to its row. */
function namesBeside(options: BedPlanOptions, page: Page): Names {
  const names = allNames(options, page);
  const size = ({ lines }: Name): number => lines.length * lineMm + 0.6;
  const places = spread(
    names.map((name) => ({ middle: name.y, size: size(name) })),
    page.top - 4,
    page.bottom + 3,
  );
  const items = names.flatMap((name, index) => {
    const y = places[index]!;
    const x = page.right + 6;
    const first = y - ((name.lines.length - 1) * lineMm) / 2;
    return [
      ...pointer(name, y, page),
      ...name.lines.map(({ words, style }, line) =>
        text({ x, y: baselineFor(first + line * lineMm) }, words, { style }),
      ),
    ];
  });
  const lowest = Math.max(0, ...names.map((name, index) => places[index]! + size(name) / 2));
  return { items, bottomMm: Math.max(footMm(options, page), lowest + 1) };
}

function footMm({ hemisphere }: BedPlanOptions, { bottom }: Page): number {
  return bottom + (hemisphere === 'north' ? sunSideMm : poleSideMm - 8);
}

/** A bracket over the rows of a name, and a line to a name that stands beside its row but not at its height. */
function pointer({ y, span }: Name, placeY: number, page: Page): readonly SceneItem[] {
  const edge = page.right + 1.2;
  const turned = Math.abs(placeY - y) > 0.5;
  const lead = turned
    ? [
        path(
          polyline([
            { x: edge + (span ? 1.2 : 0), y },
            { x: edge + 2.2, y },
            { x: edge + 4, y: placeY },
          ]),
          { stroke: 'thin' },
        ),
      ]
    : [];
  if (!span) return lead;
  const [from, to] = span;
  const bracket = [
    { x: edge, y: from },
    { x: edge + 1.2, y: from },
    { x: edge + 1.2, y: to },
    { x: edge, y: to },
  ];
  return [path(polyline(bracket), { stroke: 'thin' }), ...lead];
}

/** Names of rows and of drip lines, in the order of the page from the top. */
function allNames(options: BedPlanOptions, page: Page): readonly Name[] {
  const { words, blocks, linesMm = [] } = options;
  const y = (row: BedPlanRow): number => page.at(0, row.distanceFromPolewardMm).y;
  const rows = blocks.flatMap((block): Name[] => {
    const spacing = { words: block.spacing, style: 'label' } as const;
    const named = (first: number, last: number) =>
      ({ words: words.rows(first, last, block.name), style: 'strong' }) as const;
    if (page.roomy(block))
      return block.rows.map((row) => ({ y: y(row), lines: [named(row.number, row.number), spacing] }));
    const [first, last] = [block.rows[0]!, block.rows.at(-1)!];
    const span = [y(first), y(last)] as const;
    return [{ y: (span[0] + span[1]) / 2, lines: [named(first.number, last.number), spacing], span }];
  });
  const drips = linesMm.map((mm): Name => ({
    y: page.at(0, mm).y,
    lines: [{ words: words.dripLine, style: 'label' }],
  }));
  return [...rows, ...drips].sort((a, b) => a.y - b.y);
}

/** Only numbers beside the rows; the list below tells what they are. */
function namesBelow(options: BedPlanOptions, page: Page): Names {
  const { blocks, words, linesMm = [] } = options;
  const numbers = blocks.flatMap((block) =>
    page.roomy(block)
      ? block.rows.map((row) => ({ y: page.at(0, row.distanceFromPolewardMm).y, words: `${row.number}` }))
      : [
          {
            y:
              (page.at(0, block.rows[0]!.distanceFromPolewardMm).y +
                page.at(0, block.rows.at(-1)!.distanceFromPolewardMm).y) /
              2,
            words: numbersOf(block),
          },
        ],
  );
  const places = spread(
    numbers.map(({ y }) => ({ middle: y, size: lineMm })),
    page.top - 4,
    page.bottom + 4,
  );
  const top = footMm(options, page);
  const list = [
    ...blocks.flatMap((block) => [
      {
        words: words.rows(block.rows[0]!.number, block.rows.at(-1)!.number, block.name),
        style: 'strong' as const,
      },
      { words: block.spacing, style: 'label' as const },
    ]),
    ...(linesMm.length > 0 ? [{ words: `– –  ${words.dripLine}`, style: 'label' as const }] : []),
  ];
  return {
    items: [
      ...numbers.flatMap((number, index) => {
        const y = places[index]!;
        const moved = Math.abs(y - number.y) > 0.5;
        const lead = segment({ x: page.right + 0.8, y: number.y }, { x: page.right + 3, y });
        return [
          ...(moved ? [path(lead, { stroke: 'thin' })] : []),
          text({ x: page.right + 4, y: baselineFor(y) }, number.words, { style: 'strong' }),
        ];
      }),
      ...list.map((line, index) =>
        text({ x: 2, y: top + 3 + index * lineMm }, line.words, { style: line.style }),
      ),
    ],
    bottomMm: top + 3 + list.length * lineMm,
  };
}

interface Stretch {
  readonly fromMm: number;
  readonly toMm: number;
  readonly said: LengthWords;
}

/** From the poleward edge to the first row, from row to row, and to the other edge; equal steps in a block as one. */
function stretches({ blocks, insideDepthMm, words }: BedPlanOptions): readonly Stretch[] {
  const found: Stretch[] = [];
  let from = 0;
  const to = (toMm: number): void => {
    found.push({ fromMm: from, toMm, said: words.length(toMm - from) });
    from = toMm;
  };
  for (const { rows } of blocks) {
    const places = rows.map((row) => row.distanceFromPolewardMm);
    to(places[0]!);
    const steps = places.slice(1).map((place, index) => place - places[index]!);
    const even = steps.length > 2 && steps.every((step) => Math.abs(step - steps[0]!) < 0.5);
    if (!even) places.slice(1).forEach(to);
    else {
      const last = places.at(-1)!;
      found.push({
        fromMm: from,
        toMm: last,
        said: words.times(steps.length, words.length((last - from) / steps.length)),
      });
      from = last;
    }
  }
  to(insideDepthMm);
  return found;
}

/** At the left; both systems on one line where two would touch the ends. Words that would touch others move along. */
function rowDistances(options: BedPlanOptions, page: Page): readonly SceneItem[] {
  const x = page.left - 5;
  const spoken = stretches(options).map(({ fromMm, toMm, said }) => {
    const [a, b] = [page.at(0, fromMm), page.at(0, toMm)];
    const room = Math.abs(b.y - a.y);
    return { a, b, words: room >= wordsSize(said).height + 2.4 ? said : oneLine(said) };
  });
  const middles = spread(
    spoken.map(({ a, b, words }) => ({ middle: (a.y + b.y) / 2, size: wordsSize(words).height + 1.5 })),
    page.top - 3,
    page.bottom + 3,
  );
  return spoken.flatMap(({ a, b, words }, index) =>
    dimension({
      from: { x, y: a.y },
      to: { x, y: b.y },
      corners: [a, b],
      words,
      toward: { x: -1, y: 0 },
      share: (middles[index]! - a.y) / (b.y - a.y),
    }),
  );
}

function oneLine(words: LengthWords): LengthWords {
  return words.second === undefined ? words : { first: `${words.first} (${words.second})` };
}

/** On the sunny side. A bed that is cut short is dimensioned with its whole length all the same. */
function lengthDimension(
  { insideLengthMm, insideDepthMm, words }: BedPlanOptions,
  page: Page,
): readonly SceneItem[] {
  const [west, east] = [page.at(0, insideDepthMm), page.at(page.shownMm, insideDepthMm)];
  return dimension({
    from: { x: west.x, y: west.y + 5 * page.sunward },
    to: { x: east.x, y: east.y + 5 * page.sunward },
    corners: [west, east],
    words: words.length(insideLengthMm),
    toward: { x: 0, y: page.sunward },
  });
}

/** The sun and the name of its side, past the length of the bed. */
function sunSide(words: string, page: Page): readonly SceneItem[] {
  const y = page.sunward === 1 ? page.bottom + 17.5 : page.top - 17.5;
  const middle = (page.left + page.right) / 2;
  const start = Math.max(6, middle - estimateTextWidthMm(words, 'label') / 2);
  return [...sun({ x: start - 1, y }, 1.3), text({ x: start + 3, y: baselineFor(y) }, words)];
}
