/** Beds to draw, with words as long as the longest that a sheet prints. */
import type { BedPlanOptions } from '../../../scripts/drawings/bed/bed-plan.ts';
import { plantsAlongRow } from '../../../scripts/agronomy/bed-rows.ts';
import { words } from '../frame/scenes.ts';

export const inch = 25.4;

interface Row {
  readonly name: string;
  readonly tall?: boolean;
  /** Inches from the poleward edge. */
  readonly at: readonly number[];
  readonly everyIn: number;
}

/** A plan of rows; numbers follow from their order. */
export function planOf(bed: {
  lengthIn: number;
  depthIn: number;
  rows: readonly Row[];
  linesIn?: readonly number[];
}): BedPlanOptions {
  let number = 0;
  return {
    id: 'bed',
    alternative: 'A bed.',
    insideLengthMm: bed.lengthIn * inch,
    insideDepthMm: bed.depthIn * inch,
    hemisphere: 'north',
    linesMm: (bed.linesIn ?? []).map((at) => at * inch),
    blocks: bed.rows.map(({ name, tall = false, at, everyIn }) => ({
      name,
      spacing: `every ${everyIn} in (${Math.round(everyIn * 2.54)} cm)`,
      tall,
      rows: at.map((place) => ({
        number: (number += 1),
        distanceFromPolewardMm: place * inch,
        plantsMm: plantsAlongRow({ lengthMm: bed.lengthIn * inch, spacingMm: everyIn * inch }),
      })),
    })),
    words: {
      north: 'N',
      sunnySide: 'south, the sunny side',
      dripLine: 'drip line',
      length: words.length,
      times: (count, { first, second }) => ({
        first: `${count} × ${first}`,
        ...(second === undefined ? {} : { second }),
      }),
      rows: (first, last, name) => (first === last ? `${first}  ${name}` : `${first}–${last}  ${name}`),
    },
  };
}

const pea = { name: 'Snap pea', tall: true, everyIn: 3 } as const;
const carrot = { name: 'Carrot', everyIn: 2 } as const;

/** Each a different trouble for the page. */
export const beds: readonly (readonly [string, BedPlanOptions])[] = [
  [
    'a frame of four rows',
    planOf({
      lengthIn: 72,
      depthIn: 48,
      rows: [
        { ...pea, at: [4.125] },
        { ...carrot, at: [19.4, 31.65, 43.9] },
      ],
    }),
  ],
  [
    'three crops and two drip lines',
    planOf({
      lengthIn: 96,
      depthIn: 48,
      linesIn: [12, 36],
      rows: [
        { name: 'Tomato', tall: true, everyIn: 36, at: [4] },
        { name: 'Lettuce', everyIn: 6, at: [27] },
        { name: 'Radish', everyIn: 1, at: [44] },
      ],
    }),
  ],
  [
    'squares too close for a name each',
    planOf({
      lengthIn: 96,
      depthIn: 36,
      rows: [
        { ...pea, at: [4] },
        { name: 'Radish', everyIn: 1, at: Array.from({ length: 9 }, (_, row) => 20 + row) },
      ],
    }),
  ],
  [
    'a market bed of 100 ft',
    planOf({
      lengthIn: 1200,
      depthIn: 30,
      linesIn: [7.5, 22.5],
      rows: [{ name: 'Onion', everyIn: 4, at: [3, 11, 19, 27] }],
    }),
  ],
  [
    'rows near each other in a deep bed',
    planOf({
      lengthIn: 240,
      depthIn: 120,
      rows: [
        { ...pea, at: [4] },
        { ...carrot, at: [9] },
        { name: 'Radish', everyIn: 1, at: [14.5, 60] },
      ],
    }),
  ],
  [
    'one row in a box',
    planOf({ lengthIn: 24, depthIn: 10, rows: [{ name: 'Basil', everyIn: 10, at: [5] }] }),
  ],
];
