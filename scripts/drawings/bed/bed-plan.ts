/** A bed from above, north up, with its rows from east to west to scale and the tallest at the poleward side. */
import { baselineFor, dimension, wordsSize, type LengthWords, type SayLength } from '../dimension.ts';
import { circle, path, rectangle, segment, text, type Point } from '../path.ts';
import type { Scene, SceneItem } from '../scene.ts';
import { estimateTextWidthMm } from '../charts/text-width.ts';
import { northArrow } from '../symbols.ts';

export interface BedRow {
  /** Written beside the row: "Snap pea". */
  readonly label: string;
  /** From the inside of the poleward edge to the row. */
  readonly distanceFromPolewardMm: number;
  readonly plantSpacingMm: number;
  /** A row that shades what stands poleward of it gets a larger mark. */
  readonly tall: boolean;
}

export interface BedPlanOptions {
  readonly id: string;
  readonly alternative: string;
  readonly insideLengthMm: number;
  readonly insideDepthMm: number;
  /** From the poleward edge on. */
  readonly rows: readonly BedRow[];
  readonly hemisphere: 'north' | 'south';
  readonly words: {
    /** The letter at the north arrow. */
    readonly north: string;
    readonly length: SayLength;
  };
  /** 100 to 175. Default 150. */
  readonly widthMm?: number;
}

const margin = { left: 28, outer: 8, lengthSide: 17 } as const;
/** More marks than this in a row run together and are thinned. */
const mostMarks = 60;

export function bedPlan(options: BedPlanOptions): Scene {
  const { widthMm = 150, words, hemisphere } = options;
  const page = placeOnPage(options, widthMm);
  const north = hemisphere === 'north';
  return {
    id: options.id,
    widthMm,
    heightMm: page.heightMm,
    alternative: options.alternative,
    items: [
      path(rectangle(page.left, page.top, page.right - page.left, page.bottom - page.top), {
        stroke: 'cut',
        fill: 'tint',
      }),
      ...options.rows.flatMap((row) => rowItems(row, options, page)),
      ...rowDistances(options, page),
      ...lengthDimension(options, page),
      ...northArrow({ x: widthMm - 5, y: north ? 10 : page.heightMm - 8 }, { x: 0, y: -1 }, words.north, 10),
    ],
  };
}

interface Page {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly heightMm: number;
  /** A place in the bed: `alongMm` from its west end, `fromPolewardMm` from its poleward edge. */
  readonly at: (alongMm: number, fromPolewardMm: number) => Point;
}

/** Room on the right for the row labels and the north arrow. */
function placeOnPage(
  { insideLengthMm, insideDepthMm, rows, hemisphere }: BedPlanOptions,
  widthMm: number,
): Page {
  const labels = Math.max(0, ...rows.map(({ label }) => estimateTextWidthMm(label, 'strong')));
  const right = widthMm - Math.max(labels + 3, 8) - 9;
  const scale = (right - margin.left) / insideLengthMm;
  const depth = insideDepthMm * scale;
  const north = hemisphere === 'north';
  const top = north ? margin.outer : margin.lengthSide;
  return {
    left: margin.left,
    right,
    top,
    bottom: top + depth,
    heightMm: margin.outer + depth + margin.lengthSide,
    at: (alongMm, fromPolewardMm) => ({
      x: margin.left + alongMm * scale,
      y: north ? top + fromPolewardMm * scale : top + depth - fromPolewardMm * scale,
    }),
  };
}

/**
 * Places of the plants of a row, from the west: as many as whole spacings fit, half a spacing in from either end.
 * Thinned evenly when there are more than can be told apart.
 */
export function plantPlaces(insideLengthMm: number, plantSpacingMm: number): readonly number[] {
  const number = Math.max(1, Math.floor(insideLengthMm / plantSpacingMm + 1e-6));
  const every = Math.ceil(number / mostMarks);
  const marks = Math.ceil(number / every);
  const start = (insideLengthMm - (marks - 1) * every * plantSpacingMm) / 2;
  return Array.from({ length: marks }, (_, index) => start + index * every * plantSpacingMm);
}

function rowItems(row: BedRow, { insideLengthMm }: BedPlanOptions, page: Page): readonly SceneItem[] {
  const { label, distanceFromPolewardMm, plantSpacingMm, tall } = row;
  const places = plantPlaces(insideLengthMm, plantSpacingMm);
  const [first, second] = places.map((alongMm) => page.at(alongMm, distanceFromPolewardMm).x);
  const tallRadius =
    first === undefined || second === undefined ? 1.1 : Math.min(1.1, (second - first) * 0.36);
  const [from, to] = [page.at(0, distanceFromPolewardMm), page.at(insideLengthMm, distanceFromPolewardMm)];
  return [
    path(segment(from, to), { stroke: 'thin' }),
    ...places.map((alongMm) => {
      const spot = page.at(alongMm, distanceFromPolewardMm);
      return tall
        ? circle(spot, tallRadius, { stroke: 'seen', fill: 'paper' })
        : circle(spot, 0.6, { fill: 'ink' });
    }),
    text({ x: page.right + 2.5, y: baselineFor(to.y) }, label, { style: 'strong' }),
  ];
}

/** At the left: from the poleward edge to the first row, from row to row, and to the other edge. */
function rowDistances({ rows, insideDepthMm, words }: BedPlanOptions, page: Page): readonly SceneItem[] {
  const stops = [0, ...rows.map((row) => row.distanceFromPolewardMm), insideDepthMm];
  const x = page.left - 5;
  return stops.slice(1).flatMap((stop, index) => {
    const before = stops[index]!;
    return dimension({
      from: { x, y: page.at(0, before).y },
      to: { x, y: page.at(0, stop).y },
      corners: [page.at(0, before), page.at(0, stop)],
      words: fitted(words.length(stop - before), Math.abs(page.at(0, stop).y - page.at(0, before).y)),
      toward: { x: -1, y: 0 },
    });
  });
}

/** Both systems on one line where two lines would touch the ends of the dimension. */
function fitted(words: LengthWords, roomMm: number): LengthWords {
  if (words.second === undefined || wordsSize(words).height + 2.4 <= roomMm) return words;
  return { first: `${words.first} (${words.second})` };
}

function lengthDimension(
  { insideLengthMm, insideDepthMm, words, hemisphere }: BedPlanOptions,
  page: Page,
): readonly SceneItem[] {
  const [west, east] = [page.at(0, insideDepthMm), page.at(insideLengthMm, insideDepthMm)];
  const down = hemisphere === 'north' ? 1 : -1;
  return dimension({
    from: { x: west.x, y: west.y + 5 * down },
    to: { x: east.x, y: east.y + 5 * down },
    corners: [west, east],
    words: words.length(insideLengthMm),
    toward: { x: 0, y: down },
  });
}
