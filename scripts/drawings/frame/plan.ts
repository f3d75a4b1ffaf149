/** The frame from above, north up: walls, stakes, the bed, and the sashes as dashed outlines over it. */
import type { FrameGeometry, PlacedBale, PlacedSash } from '../../structures/geometry.ts';
import { dimension } from '../dimension.ts';
import {
  circle,
  path,
  polyline,
  rectangle,
  segment,
  subtract,
  text,
  textSizeMm,
  type Point,
} from '../path.ts';
import type { PathCommand, Scene, SceneItem } from '../scene.ts';
import { balloon, callout, northArrow } from '../symbols.ts';
import { freeLetters } from './free-letters.ts';
import { hardwareFromAbove, hardwareLettersFromAbove } from './plan-hardware.ts';
import { sashWidths } from './plan-widths.ts';
import type { FrameWords, PartLetters } from './words.ts';

export interface PlanOptions {
  readonly id: string;
  readonly alternative: string;
  readonly words: FrameWords;
  readonly letters: PartLetters;
  /** 120 to 175. Default 150. */
  readonly widthMm?: number;
}

/** In a plan lower than this the words at its right leave the arrow room only in the corner. */
const lowPlanMm = 75;

/** From one row of sash widths to the next. */
const rowMm = 10;

/** Room for dimensions: left and right of the frame, and above and below it. */
const margin = { left: 24, right: 25, outer: 14, sunSide: 24 } as const;

export function framePlan(geometry: FrameGeometry, options: PlanOptions): Scene {
  const { widthMm = 150, words } = options;
  const page = placeOnPage(geometry, widthMm, words);
  const north = geometry.hemisphere === 'north';
  const items = [
    ...bed(geometry, page),
    ...geometry.bales
      .filter((bale) => isTopCourse(bale, geometry))
      .flatMap((bale) => baleFromAbove(bale, page)),
    ...geometry.stakes.map(({ x, y }) => circle(page.at(x, y), 0.75, { fill: 'ink' })),
    ...hardwareFromAbove(geometry, page),
    ...geometry.sashes.flatMap((sash) => sashOutline(sash, geometry, page)),
    ...letters(geometry, page, options.letters),
    ...dimensions(geometry, page, words),
    ...northArrow(
      { x: widthMm - 8, y: north ? 12 : page.heightMm - (page.heightMm < lowPlanMm ? 7.5 : 16) },
      { x: 0, y: -1 },
      words.north,
      11,
    ),
  ];
  const lettered = hardwareLettersFromAbove(geometry, page, options.letters);
  return {
    id: options.id,
    widthMm,
    heightMm: page.heightMm,
    alternative: options.alternative,
    items: [...items, ...freeLetters(items, lettered, { widthMm, heightMm: page.heightMm })],
  };
}

interface Page {
  readonly at: (x: number, y: number) => Point;
  readonly scale: number;
  readonly heightMm: number;
  /** Down the page on the sun side of the frame, up on the other: 1 or -1. */
  readonly sunward: 1 | -1;
}

/** East is right. Poleward is up north of the equator and down south of it. */
function placeOnPage(geometry: FrameGeometry, widthMm: number, words: FrameWords): Page {
  const lowestY = Math.min(-geometry.sideThicknessMm, ...geometry.sashes.map(({ lower }) => lower.y));
  const westX = Math.min(-geometry.sideThicknessMm, (geometry.insideLengthMm - geometry.outsideLengthMm) / 2);
  const scale = (widthMm - margin.left - margin.right) / (geometry.insideLengthMm - 2 * westX);
  const highestY = geometry.outsideDepthMm - geometry.sideThicknessMm;
  const depthMm = (highestY - lowestY) * scale;
  const north = geometry.hemisphere === 'north';
  const twoRows = sashWidths(geometry.sashes, words, scale).some(({ level }) => level === 1);
  const outer = margin.outer + (twoRows ? rowMm : 0);
  return {
    scale,
    heightMm: outer + depthMm + margin.sunSide,
    sunward: north ? 1 : -1,
    at: (x, y) => ({
      x: margin.left + (x - westX) * scale,
      y: north ? outer + (highestY - y) * scale : margin.sunSide + (y - lowestY) * scale,
    }),
  };
}

function isTopCourse(bale: PlacedBale, { bales }: FrameGeometry): boolean {
  return !bales.some(({ wall, course }) => wall === bale.wall && course > bale.course);
}

function area(page: Page, from: Point, to: Point): readonly PathCommand[] {
  const [a, b] = [page.at(from.x, from.y), page.at(to.x, to.y)];
  return rectangle(Math.min(a.x, b.x), Math.min(a.y, b.y), Math.abs(b.x - a.x), Math.abs(b.y - a.y));
}

function bed({ insideLengthMm, insideDepthMm }: FrameGeometry, page: Page): readonly SceneItem[] {
  return [path(area(page, { x: 0, y: 0 }, { x: insideLengthMm, y: insideDepthMm }), { fill: 'tint' })];
}

/** The two strings are on top of a bale that lies flat; on a bale on edge they run along its sides. */
function baleFromAbove({ box: { from, to }, wall, lay }: PlacedBale, page: Page): readonly SceneItem[] {
  const runsEast = wall === 'poleward' || wall === 'equator';
  const strings = [0.25, 0.75].map((share) => {
    const x = from.x + (to.x - from.x) * share;
    const y = from.y + (to.y - from.y) * share;
    return runsEast
      ? segment(page.at(from.x, y), page.at(to.x, y))
      : segment(page.at(x, from.y), page.at(x, to.y));
  });
  return [
    path(area(page, from, to), { stroke: 'seen', fill: 'paper' }),
    ...(lay === 'flat' ? [path(strings.flat(), { stroke: 'thin' })] : []),
  ];
}

function sashOutline(sash: PlacedSash, { insideDepthMm }: FrameGeometry, page: Page): readonly SceneItem[] {
  const { x, widthMm, upper, lower } = sash;
  const corners = [
    page.at(x, upper.y),
    page.at(x + widthMm, upper.y),
    page.at(x + widthMm, lower.y),
    page.at(x, lower.y),
  ];
  const middle = page.at(x + widthMm / 2, insideDepthMm / 2);
  return [
    path([...polyline(corners), ['Z']], { stroke: 'hidden' }),
    text({ x: middle.x, y: middle.y + textSizeMm.large * 0.34 }, sash.id, {
      anchor: 'middle',
      style: 'large',
    }),
  ];
}

/** A bale of each long wall and a stake carry their letters, outside of what is measured. */
function letters(geometry: FrameGeometry, page: Page, named: PartLetters): readonly SceneItem[] {
  const { bales, stakes } = geometry;
  const long = (['poleward', 'equator'] as const).flatMap((wall) => {
    const row = bales.filter((bale) => bale.wall === wall && bale.course === 0);
    const spot = besideBoards(row, geometry, page.scale);
    return spot && named.bales ? balloon(page.at(spot.x, spot.y), named.bales) : [];
  });
  const [stake, next] = stakes.filter(({ wall }) => wall === 'east');
  if (!stake || !named.stakes) return long;
  const spot = page.at(stake.x, stake.y);
  const aim = next ? page.at((stake.x + next.x) / 2, (stake.y + next.y) / 2) : { x: spot.x, y: spot.y + 7 };
  return [...long, ...callout(spot, subtract(aim, spot), named.stakes)];
}

/** The middle of a bale of a long wall, or where no middle is free of boards a place near the end of the wall. */
function besideBoards(
  row: readonly PlacedBale[],
  { boards }: FrameGeometry,
  scale: number,
): Point | undefined {
  const clearMm = 2.6 / scale;
  const bale = row[Math.floor((row.length - 1) / 2)];
  const ends = [row[0], row.at(-1)];
  if (!bale) return undefined;
  const { from, to } = bale.box;
  const y = (from.y + to.y) / 2;
  const middles = [bale, ...row].map(({ box }) => ({ x: (box.from.x + box.to.x) / 2, y }));
  const outer = ends.flatMap((end) =>
    end
      ? [0.12, 0.88].map((share) => ({ x: end.box.from.x + (end.box.to.x - end.box.from.x) * share, y }))
      : [],
  );
  const beyond = bale.wall === 'poleward' ? to.y - clearMm * 0.9 : from.y + clearMm * 0.9;
  const spots = [...middles, ...outer, { x: middles[0]!.x, y: beyond }];
  const isFree = (spot: Point): boolean =>
    boards.every(({ under }) => {
      const [xs, ys] = [under.map(({ x }) => x), under.map((corner) => corner.y)];
      return (
        spot.x + clearMm < Math.min(...xs) ||
        spot.x - clearMm > Math.max(...xs) ||
        spot.y + clearMm < Math.min(...ys) ||
        spot.y - clearMm > Math.max(...ys)
      );
    });
  return spots.find(isFree) ?? spots.at(-1);
}

/** Sash widths along the poleward side, the bed along the sun side and at the left. */
function dimensions(geometry: FrameGeometry, page: Page, words: FrameWords): readonly SceneItem[] {
  const { insideLengthMm, insideDepthMm, outsideDepthMm, sideThicknessMm } = geometry;
  const up = -page.sunward;
  const top = outsideDepthMm - sideThicknessMm;
  const bottom = Math.min(-sideThicknessMm, ...geometry.sashes.map(({ lower }) => lower.y));
  const shifted = (x: number, y: number, dx: number, dy: number): Point => {
    const { x: px, y: py } = page.at(x, y);
    return { x: px + dx, y: py + dy };
  };
  const west = Math.min(-sideThicknessMm, (insideLengthMm - geometry.outsideLengthMm) / 2);
  const east = insideLengthMm - west;
  const level = (fromX: number, toX: number, fromY: number, off: number): readonly SceneItem[] =>
    dimension({
      from: shifted(fromX, bottom, 0, -off * up),
      to: shifted(toX, bottom, 0, -off * up),
      corners: [page.at(fromX, fromY), page.at(toX, fromY)],
      words: words.length(toX - fromX),
      toward: { x: 0, y: -up },
    });
  return [
    ...sashWidths(geometry.sashes, words, page.scale).flatMap(({ fromX, toX, words: said, level: row }) =>
      dimension({
        from: shifted(fromX, top, 0, (4 + row * rowMm) * up),
        to: shifted(toX, top, 0, (4 + row * rowMm) * up),
        corners: [page.at(fromX, top), page.at(toX, top)],
        words: said,
        toward: { x: 0, y: up },
      }),
    ),
    ...level(0, insideLengthMm, 0, 4),
    ...level(
      (insideLengthMm - geometry.outsideLengthMm) / 2,
      (insideLengthMm + geometry.outsideLengthMm) / 2,
      -sideThicknessMm,
      14,
    ),
    ...dimension({
      from: shifted(west, 0, -5, 0),
      to: shifted(west, insideDepthMm, -5, 0),
      corners: [page.at(0, 0), page.at(0, insideDepthMm)],
      words: words.length(insideDepthMm),
      toward: { x: -1, y: 0 },
    }),
    ...dimension({
      from: shifted(east, -sideThicknessMm, 5, 0),
      to: shifted(east, top, 5, 0),
      corners: [page.at(east, -sideThicknessMm), page.at(east, top)],
      words: words.length(outsideDepthMm),
      toward: { x: 1, y: 0 },
    }),
  ];
}
