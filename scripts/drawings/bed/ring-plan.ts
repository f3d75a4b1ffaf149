/**
 * A ring of soil from above, to scale: rows as circles round its middle, a mark for each plant, and the name of each row at
 * the side. The notch of a keyhole bed opens toward the sun; the poles of a tepee stand as small circles. On a narrow page the
 * names stand below.
 */
import { lineMm } from '../charts/text-width.ts';
import { baselineFor } from '../dimension.ts';
import { circle, path, polygon, polyline, segment, text, type Point } from '../path.ts';
import type { Scene, SceneItem } from '../scene.ts';
import { northArrow } from '../symbols.ts';

export interface RingPlanRow {
  readonly number: number;
  /** "1  Swiss chard", and "every 8 in (20 cm)". */
  readonly name: string;
  readonly spacing: string;
  readonly radiusMm: number;
  readonly plants: number;
  readonly tall: boolean;
}

export interface RingPlanOptions {
  readonly id: string;
  readonly alternative: string;
  readonly innerRadiusMm: number;
  readonly outerRadiusMm: number;
  /** Half the angle, in radians, that is open toward the sun at this distance from the middle; 0 for a closed ring. */
  readonly openAngleAt: (radiusMm: number) => number;
  /** Poles in the ring, in millimetres east and poleward of its middle. */
  readonly poles?: readonly { readonly x: number; readonly y: number }[];
  readonly rows: readonly RingPlanRow[];
  readonly hemisphere: 'north' | 'south';
  readonly words: { readonly north: string };
  /** 80 to 175; below 120 the names stand under the ring. Default 150. */
  readonly widthMm?: number;
}

const ringMm = 74;
const narrowBelowMm = 120;
const edgeMm = 6;

export function ringPlan(options: RingPlanOptions): Scene {
  const { widthMm = 150, rows, hemisphere, outerRadiusMm } = options;
  const narrow = widthMm < narrowBelowMm;
  const scale = ringMm / 2 / outerRadiusMm;
  const middle: Point = { x: narrow ? widthMm / 2 : edgeMm + ringMm / 2, y: edgeMm + ringMm / 2 };
  const poleward = hemisphere === 'north' ? -1 : 1;
  const at: Place = (radiusMm, angle) => ({
    x: middle.x + Math.sin(angle) * radiusMm * scale,
    y: middle.y - Math.cos(angle) * radiusMm * scale * poleward,
  });
  const list = rows.flatMap((row, index) => rowName(row, index, options, { narrow, at, middle }));
  const bottom = narrow ? edgeMm + ringMm + 8 + rows.length * (2 * lineMm + 2) : edgeMm + ringMm + edgeMm;
  return {
    id: options.id,
    widthMm,
    heightMm: bottom,
    alternative: options.alternative,
    items: [
      ...soil(options, { at, middle, scale }),
      ...rows.flatMap((row) => rowItems(row, options, at, scale)),
      ...(options.poles ?? []).map(({ x, y }) =>
        circle({ x: middle.x + x * scale, y: middle.y + y * scale * poleward }, 1.5, {
          stroke: 'seen',
          fill: 'paper',
        }),
      ),
      ...list,
      ...northArrow(
        { x: narrow ? widthMm - 6 : edgeMm + ringMm + 12, y: 14 },
        { x: 0, y: -1 },
        options.words.north,
        9,
      ),
    ],
  };
}

/** The ring of soil; without a notch as two circles, so that no seam shows. */
function soil(
  options: RingPlanOptions,
  { at, middle, scale }: { readonly at: Place; readonly middle: Point; readonly scale: number },
): readonly SceneItem[] {
  const { innerRadiusMm, outerRadiusMm, openAngleAt } = options;
  if (openAngleAt(outerRadiusMm) > 0)
    return [path(polygon(outline(options, at)), { stroke: 'cut', fill: 'tint' })];
  return [
    circle(middle, outerRadiusMm * scale, { stroke: 'cut', fill: 'tint' }),
    circle(middle, innerRadiusMm * scale, { stroke: 'cut', fill: 'paper' }),
  ];
}

type Place = (radiusMm: number, angle: number) => Point;

/** Points of an arc round the ring at this distance from the middle, from one side of what is open to the other. */
function arc(radiusMm: number, open: number, at: Place): readonly Point[] {
  const parts = 72;
  return Array.from({ length: parts + 1 }, (_, index) =>
    at(radiusMm, open + ((2 * Math.PI - 2 * open) * index) / parts),
  );
}

/** Out along the one side of the notch, round, in along the other, and back round the basket. */
function outline(
  { innerRadiusMm, outerRadiusMm, openAngleAt }: RingPlanOptions,
  at: Place,
): readonly Point[] {
  const steps = Array.from(
    { length: 9 },
    (_, index) => innerRadiusMm + ((outerRadiusMm - innerRadiusMm) * index) / 8,
  );
  const side = steps.map((radiusMm) => at(radiusMm, openAngleAt(radiusMm)));
  const other = steps.map((radiusMm) => at(radiusMm, -openAngleAt(radiusMm))).toReversed();
  return [
    ...side,
    ...arc(outerRadiusMm, openAngleAt(outerRadiusMm), at),
    ...other,
    ...arc(innerRadiusMm, openAngleAt(innerRadiusMm), at).toReversed(),
  ];
}

function rowItems(
  { radiusMm, plants, tall }: RingPlanRow,
  { openAngleAt }: RingPlanOptions,
  at: Place,
  scale: number,
): readonly SceneItem[] {
  const open = openAngleAt(radiusMm);
  const turn = 2 * Math.PI - 2 * open;
  const apart = (turn * radiusMm * scale) / Math.max(1, plants);
  const radius = Math.min(1.1, apart * 0.36);
  return [
    path(polyline(arc(radiusMm, open, at)), { stroke: 'thin' }),
    ...Array.from({ length: plants }, (_, index) => at(radiusMm, open + (turn * (index + 0.5)) / plants)).map(
      (spot) =>
        tall
          ? circle(spot, radius, { stroke: 'seen', fill: 'paper' })
          : circle(spot, Math.min(0.7, radius), { fill: 'ink' }),
    ),
  ];
}

/** At the side with a line to the row, or below with its number on the row. */
function rowName(
  row: RingPlanRow,
  index: number,
  { openAngleAt, rows }: RingPlanOptions,
  { narrow, at, middle }: { readonly narrow: boolean; readonly at: Place; readonly middle: Point },
): readonly SceneItem[] {
  const open = openAngleAt(row.radiusMm);
  const turn = 2 * Math.PI - 2 * open;
  const number = Math.max(1, row.plants);
  // On the east side, between two plants, one row a little further round than the next.
  const wanted = Math.PI / 2 + 0.25 * ((rows.length - 1) / 2 - index);
  const between = Math.round(((wanted - open) / turn) * number);
  const spot = at(row.radiusMm, open + (turn * between) / number);
  const y = narrow
    ? edgeMm + ringMm + 10 + index * (2 * lineMm + 2)
    : middle.y + (index - (rows.length - 1) / 2) * (2 * lineMm + 5);
  const x = narrow ? 4 : edgeMm + ringMm + 10;
  const words = [
    text({ x, y: baselineFor(y - lineMm / 2) }, row.name, { style: 'strong' }),
    text({ x, y: baselineFor(y + lineMm / 2) }, row.spacing, { style: 'label' }),
  ];
  if (narrow) {
    const number = text({ x: spot.x, y: baselineFor(spot.y) }, `${row.number}`, {
      anchor: 'middle',
      style: 'strong',
    });
    return [circle(spot, 2.4, { fill: 'paper', stroke: 'thin' }), number, ...words];
  }
  return [
    path(segment(spot, { x: x - 1.5, y }), { stroke: 'thin' }),
    circle(spot, 0.45, { fill: 'ink' }),
    ...words,
  ];
}
