/**
 * The crops of a bed as they stand when grown, to scale, seen along the rows toward the west, so that north is on the right.
 * Their heights stand on the sunny side, where lower crops leave room for the lines to them.
 */
import { spread } from '../charts/spread.ts';
import { estimateTextWidthMm, lineMm } from '../charts/text-width.ts';
import { baselineFor, type LengthWords } from '../dimension.ts';
import { path, polyline, rectangle, segment, text, type Point } from '../path.ts';
import type { PathCommand, Scene, SceneItem } from '../scene.ts';

export interface HeightBlock {
  readonly name: string;
  readonly heightMm: number;
  /** Its height as published, ready-made. */
  readonly height: LengthWords;
  readonly rows: readonly { readonly number: number; readonly distanceFromPolewardMm: number }[];
}

export interface BedHeightsOptions {
  readonly id: string;
  readonly alternative: string;
  readonly insideDepthMm: number;
  readonly hemisphere: 'north' | 'south';
  /** From the poleward edge on. */
  readonly blocks: readonly HeightBlock[];
  /** The lowest place of what covers the bed, over the soil. */
  readonly cover?: { readonly heightMm: number; readonly name: string; readonly height: LengthWords };
  readonly words: { readonly north: string; readonly south: string };
  /** 80 to 175. Default 165. */
  readonly widthMm?: number;
}

const tallestMm = 60;
const topMm = 4;
const soilMm = 3.5;
const footMm = 8;

export function bedHeights(options: BedHeightsOptions): Scene {
  const { widthMm = 165 } = options;
  const page = placeOnPage(options, widthMm);
  return {
    id: options.id,
    widthMm,
    heightMm: page.groundY + soilMm + footMm,
    alternative: options.alternative,
    items: [
      path(
        rectangle(
          Math.min(page.x(0), page.x(options.insideDepthMm)),
          page.groundY,
          options.insideDepthMm * page.scale,
          soilMm,
        ),
        { fill: 'shade' },
      ),
      ...labels(options, page),
      ...plants(options, page),
      path(
        segment({ x: page.x(0), y: page.groundY }, { x: page.x(options.insideDepthMm), y: page.groundY }),
        { stroke: 'cut' },
      ),
      ...cover(options, page),
      ...numbers(options, page),
      ...sides(options, page),
    ],
  };
}

interface Page {
  readonly scale: number;
  readonly groundY: number;
  /** A distance from the poleward edge, across the page. */
  readonly x: (fromPolewardMm: number) => number;
  /** Toward the sun on the page: -1 is left, 1 is right. */
  readonly sunward: 1 | -1;
  /** Where the labels of the heights end, toward the bed. */
  readonly labelX: number;
}

function placeOnPage(options: BedHeightsOptions, widthMm: number): Page {
  const { blocks, insideDepthMm, hemisphere, cover: over } = options;
  const column = Math.max(...blocks.map(labelWidth)) + 1;
  const far = over ? coverWidth(over) + 4 : 8;
  const highest = Math.max(over?.heightMm ?? 0, ...blocks.map(({ heightMm }) => heightMm));
  const room = widthMm - column - far - 10;
  const scale = Math.min(room / insideDepthMm, tallestMm / highest);
  const north = hemisphere === 'north';
  const bedMm = insideDepthMm * scale;
  const spare = Math.max(0, (room - bedMm) / 2);
  const sunEdge = north ? column + 10 + spare : widthMm - column - 10 - spare;
  const labelsMm = blocks.length * (2 * lineMm + 1.4);
  return {
    scale,
    groundY: topMm + Math.max(highest * scale, labelsMm),
    x: (fromPolewardMm) =>
      north ? sunEdge + bedMm - fromPolewardMm * scale : sunEdge - bedMm + fromPolewardMm * scale,
    sunward: north ? -1 : 1,
    labelX: north ? sunEdge - 8 : sunEdge + 8,
  };
}

function labelWidth({ name, height }: HeightBlock): number {
  return Math.max(estimateTextWidthMm(name, 'strong'), estimateTextWidthMm(oneLine(height), 'label'));
}

function coverWidth({ name, height }: NonNullable<BedHeightsOptions['cover']>): number {
  return Math.max(
    ...[name, height.first, height.second ?? ''].map((line) => estimateTextWidthMm(line, 'label')),
  );
}

function oneLine({ first, second }: LengthWords): string {
  return second === undefined ? first : `${first} (${second})`;
}

/** On the sunny side, each at the height of its crop where there is room, with a line to the top of its nearest row. */
function labels({ blocks }: BedHeightsOptions, page: Page): readonly SceneItem[] {
  const tops = blocks.map(({ heightMm }) => page.groundY - heightMm * page.scale);
  const middles = spread(
    tops.map((middle) => ({ middle, size: 2 * lineMm + 1 })),
    topMm - 2,
    page.groundY + 1,
  );
  return blocks.flatMap(({ name, height, rows }, index) => {
    const [top, middle] = [tops[index]!, middles[index]!];
    const anchor = page.sunward === -1 ? 'end' : 'start';
    const [from, turn] = [page.labelX - page.sunward * 1.2, page.labelX - page.sunward * 5];
    const nearest = page.x(rows.at(-1)!.distanceFromPolewardMm);
    return [
      path(
        polyline([
          { x: from, y: middle },
          { x: turn, y: top },
          { x: nearest, y: top },
        ]),
        { stroke: 'thin' },
      ),
      text({ x: page.labelX, y: middle - 0.8 }, name, { anchor, style: 'strong' }),
      text({ x: page.labelX, y: middle - 0.8 + lineMm }, oneLine(height), { anchor }),
    ];
  });
}

/** Each as broad as its nearest neighbour leaves room for. */
function plants({ blocks, insideDepthMm }: BedHeightsOptions, page: Page): readonly SceneItem[] {
  const rows = blocks.flatMap(({ heightMm, rows: inBlock }) => inBlock.map((row) => ({ ...row, heightMm })));
  return rows.flatMap(({ distanceFromPolewardMm, heightMm }, index) => {
    const apart = [rows[index - 1], rows[index + 1]].map((other) =>
      other ? Math.abs(other.distanceFromPolewardMm - distanceFromPolewardMm) : insideDepthMm,
    );
    return grownPlant(
      { x: page.x(distanceFromPolewardMm), y: page.groundY },
      heightMm * page.scale,
      Math.min(4, Math.max(0.6, Math.min(...apart) * page.scale * 0.42)),
    );
  });
}

/** A stem with leaves up to the top, `reachMm` to either side; shown whole even where it is far too tall for its cover. */
function grownPlant(foot: Point, heightMm: number, reachMm: number): readonly SceneItem[] {
  const reach = Math.min(reachMm, heightMm * 0.45);
  const step = Math.max(reach * 1.1, 2);
  const pairs = Math.max(1, Math.floor((heightMm * 0.85) / step));
  const top = foot.y - heightMm;
  const leaf = (y: number, side: number): readonly PathCommand[] => [
    ['M', foot.x, y],
    [
      'C',
      foot.x + side * reach * 0.3,
      y - reach * 0.9,
      foot.x + side * reach,
      y - reach * 0.8,
      foot.x + side * reach,
      y - reach * 0.7,
    ],
    ['C', foot.x + side * reach * 0.9, y - reach * 0.2, foot.x + side * reach * 0.4, y, foot.x, y],
    ['Z'],
  ];
  const forks = Array.from({ length: pairs }, (_, index) => top + reach * 0.8 + index * step).filter(
    (y) => y < foot.y - 0.3,
  );
  return [
    path(segment(foot, { x: foot.x, y: top }), { stroke: 'seen' }),
    ...(forks.length === 0
      ? []
      : [
          path(
            forks.flatMap((y) => [...leaf(y, -1), ...leaf(y, 1)]),
            { stroke: 'thin', fill: 'paper', hue: 'green' },
          ),
        ]),
  ];
}

/** Dashed across the bed, told on the poleward side. */
function cover({ cover: over, insideDepthMm }: BedHeightsOptions, page: Page): readonly SceneItem[] {
  if (!over) return [];
  const y = page.groundY - over.heightMm * page.scale;
  const away = -page.sunward;
  const x = page.x(0) + away * 2;
  const anchor = away === 1 ? 'start' : 'end';
  const lines = [over.name, over.height.first, ...(over.height.second ? [over.height.second] : [])];
  const top = Math.min(y, page.groundY - lines.length * lineMm + 2);
  return [
    path(segment({ x: page.x(insideDepthMm), y }, { x: page.x(0) + away * 1, y }), { stroke: 'hidden' }),
    ...lines.map((line, index) =>
      text({ x: x + away * 0.5, y: baselineFor(top + index * lineMm) }, line, {
        anchor,
        style: index === 1 ? 'strong' : 'label',
      }),
    ),
  ];
}

/** The numbers of the rows under the soil; first and last where rows are too close for a number each. */
function numbers({ blocks }: BedHeightsOptions, page: Page): readonly SceneItem[] {
  const y = baselineFor(page.groundY + soilMm + 2.6);
  return blocks.flatMap(({ rows }) => {
    const places = rows.map((row) => page.x(row.distanceFromPolewardMm));
    const apart = places.length > 1 ? Math.abs(places[1]! - places[0]!) : Infinity;
    const label = (x: number, words: string): SceneItem =>
      text({ x, y }, words, { anchor: 'middle', style: 'strong' });
    if (apart >= 5) return rows.map((row, index) => label(places[index]!, `${row.number}`));
    const [first, last] = [rows[0]!, rows.at(-1)!];
    const middle = (places[0]! + places.at(-1)!) / 2;
    return [
      label(
        middle,
        page.sunward === -1 ? `${last.number}–${first.number}` : `${first.number}–${last.number}`,
      ),
    ];
  });
}

/** The letters of north and south at the ends of the bed. */
function sides({ insideDepthMm, words }: BedHeightsOptions, page: Page): readonly SceneItem[] {
  const y = baselineFor(page.groundY + soilMm / 2);
  const [left, right] = [page.x(0), page.x(insideDepthMm)].sort((a, b) => a - b);
  return [
    text({ x: left! - 2, y }, words.south, { anchor: 'end', style: 'strong' }),
    text({ x: right! + 2, y }, words.north, { style: 'strong' }),
  ];
}
