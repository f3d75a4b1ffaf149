/**
 * Dimensions of a plan, elevation or section: each beside what it measures, on the side that the assembly says, as near as
 * it can stand without a line through words.
 */
import type { Assembly, ShownMeasure } from '../../structures/assembly.ts';
import type { Hemisphere } from '../../structures/geometry.ts';
import { project, type Camera } from '../axonometric.ts';
import { overlaps, textBox, type Box } from '../charts/text-width.ts';
import { dimension, type LengthWords } from '../dimension.ts';
import { along, distance, subtract, unit, type Point } from '../path.ts';
import type { SceneItem } from '../scene.ts';
import { grown, outlineMeetsBox, segmentMeetsBox, type Segment } from './clearances.ts';
import { boundsOf } from '../outline.ts';
import type { Scenery } from './callouts.ts';
import { asSeen, directionOf } from './view.ts';

export interface DrawnMeasure {
  readonly finding: string;
  readonly in: ShownMeasure['in'];
  /** The length of its line, in millimetres of the real thing. */
  readonly lengthMm: number;
}

/**
 * How long each dimension line is drawn, by the same projection that draws it: less than the distance between its spots when
 * these do not lie in the plane of the drawing.
 */
export function drawnMeasures(assembly: Assembly): readonly DrawnMeasure[] {
  return asSeen(assembly).measures.map((measure) => {
    const camera = { ...directionOf(measure.in, assembly.hemisphere), scale: 1, origin: { x: 0, y: 0 } };
    const [from, to] = endsOf(measure, camera);
    return { finding: measure.finding, in: measure.in, lengthMm: distance(from, to) };
  });
}

function endsOf({ from, to }: ShownMeasure, camera: Camera): Segment {
  return [project(camera, from), project(camera, to)];
}

const sides = {
  above: { x: 0, y: -1 },
  below: { x: 0, y: 1 },
  left: { x: -1, y: 0 },
  right: { x: 1, y: 0 },
} as const;

export interface MeasureOptions {
  readonly hemisphere: Hemisphere;
  readonly camera: Camera;
  readonly words: (findingId: string) => LengthWords;
  readonly scenery: Scenery;
  /** The figures that lines stand outside of. */
  readonly reach: Scenery['shapes'];
}

export interface PlacedMeasures {
  readonly items: readonly SceneItem[];
  readonly scenery: Scenery;
}

/**
 * Side by side of the drawing, short measures nearer than long ones. A choice that leaves no room for the next is taken
 * back; when even that does not help, words are placed as they come.
 */
export function placeMeasures(measures: readonly ShownMeasure[], options: MeasureOptions): PlacedMeasures {
  const lines = measures
    .map((measure) => ({ ...lineOf(measure, options), side: measure.side }))
    .sort((a, b) => a.side.localeCompare(b.side) || distance(a.from, a.to) - distance(b.from, b.to));
  const start: Placement = { items: [], scenery: options.scenery, drawn: [] };
  const search = { left: mostTries };
  for (const order of [lines, lines.toReversed()]) {
    const placed = placeAll(order, start, search);
    if (placed) return placed;
  }
  return lines.reduce<Placement>((placed, line) => placedWith(placed, firstOf(line, placed)), start);
}

interface MeasureLine {
  readonly from: Point;
  readonly to: Point;
  /** Square to the line, of length 1, to the side where it is drawn. */
  readonly toward: Point;
  /** The nearest that it may stand to the two spots. */
  readonly nearestMm: number;
  readonly words: LengthWords;
}

/**
 * South of the equator the ends of a section, and of a plan, change places. There what is measured near one end of the thing
 * is drawn at that end, even where its assembly names the side that it has in the north.
 */
function sideOf(
  { side, in: drawing }: ShownMeasure,
  [from, to]: Segment,
  { reach, hemisphere }: Pick<MeasureOptions, 'reach' | 'hemisphere'>,
): ShownMeasure['side'] {
  const across = side === 'left' || side === 'right';
  if (hemisphere === 'north' || drawing === 'elevation' || (drawing === 'section') !== across) return side;
  const { left, right, top, bottom } = boundsOf([from, to, ...reach.flat()]);
  const share = across
    ? ((from.x + to.x) / 2 - left) / Math.max(1e-6, right - left)
    : ((from.y + to.y) / 2 - top) / Math.max(1e-6, bottom - top);
  if (share < farEnd) return across ? 'left' : 'above';
  if (share > 1 - farEnd) return across ? 'right' : 'below';
  return side;
}

const farEnd = 0.2;

/** Room for balloons between the thing and the first dimension line. */
const firstOffMm = 7;

function lineOf(measure: ShownMeasure, options: MeasureOptions): MeasureLine {
  const { camera, words, reach } = options;
  const [from, to] = endsOf(measure, camera);
  const ahead = unit(subtract(to, from));
  const side = sides[sideOf(measure, [from, to], options)];
  const square = { x: -ahead.y, y: ahead.x };
  const toward = square.x * side.x + square.y * side.y >= 0 ? square : { x: -square.x, y: -square.y };
  const long = distance(from, to);
  const beyond = reach.flat().flatMap((corner) => {
    const arm = subtract(corner, from);
    const forward = arm.x * ahead.x + arm.y * ahead.y;
    return forward > -2 && forward < long + 2 ? [arm.x * toward.x + arm.y * toward.y] : [];
  });
  return {
    from,
    to,
    toward,
    nearestMm: Math.max(0, ...beyond) + firstOffMm,
    words: words(measure.finding),
  };
}

interface Placement extends PlacedMeasures {
  /** The dimension lines so far. */
  readonly drawn: readonly Segment[];
}

/** How many places are looked at before the search is given up. */
const mostTries = 6_000;

function placeAll(
  [line, ...rest]: readonly MeasureLine[],
  placed: Placement,
  search: { left: number },
): Placement | undefined {
  if (!line) return placed;
  for (const choice of candidatesFor(line)) {
    if (search.left <= 0) return undefined;
    search.left -= 1;
    if (!isClear(choice, placed.scenery, placed.drawn)) continue;
    const all = placeAll(rest, placedWith(placed, choice), search);
    if (all) return all;
  }
  return undefined;
}

function placedWith(placed: Placement, { items, main }: Candidate): Placement {
  return {
    items: [...placed.items, ...items],
    scenery: added(placed.scenery, items),
    drawn: [...placed.drawn, main],
  };
}

function firstOf(line: MeasureLine, placed: Placement): Candidate {
  for (const choice of candidatesFor(line)) {
    if (isClear(choice, placed.scenery, placed.drawn)) return choice;
  }
  return candidate(line, line.nearestMm, 0.5);
}

/** Where along its line the words may stand; past an end only for a line that is shorter than they are. */
const shares = [0.5, 0.36, 0.64, 0.22, 0.78, 0.1, 0.9, 'past-end', 'past-start'] as const;
type Share = (typeof shares)[number];
const shortMm = 14;

interface Candidate {
  readonly items: readonly SceneItem[];
  readonly main: Segment;
}

/** All places for a measure, the nearest first. */
function* candidatesFor(line: MeasureLine): Generator<Candidate> {
  const short = distance(line.from, line.to) <= shortMm;
  for (let off = line.nearestMm; off < line.nearestMm + furthestMm; off += paceMm) {
    for (const share of shares) {
      if (short || typeof share === 'number') yield candidate(line, off, share);
    }
  }
}

const furthestMm = 42;
const paceMm = 1.4;

function candidate(measured: MeasureLine, offMm: number, share: Share): Candidate {
  const line = share === 'past-start' ? { ...measured, from: measured.to, to: measured.from } : measured;
  const from = along(line.from, line.toward, offMm);
  const to = along(line.to, line.toward, offMm);
  const items = dimension({
    from,
    to,
    corners: [line.from, line.to],
    words: line.words,
    toward: line.toward,
    share: share === 'past-start' ? 'past-end' : share,
  });
  return { items, main: [from, to] };
}

/** Words keep this far from lines and other words, and dimension lines this far from each other. */
const wordsClearMm = 0.6;
const lanesApartMm = 3;

function isClear({ items, main }: Candidate, scenery: Scenery, drawn: readonly Segment[]): boolean {
  if (drawn.some((other) => crowds(main, other))) return false;
  const words = wordBoxes(items).map((box) => grown(box, wordsClearMm));
  const whole = words.reduce(united);
  if (
    scenery.shapes.some(
      (shape) => outlineMeetsBox(shape, whole) && words.some((box) => outlineMeetsBox(shape, box)),
    )
  )
    return false;
  if (words.some((box) => scenery.boxes.some((other) => overlaps(box, other)))) return false;
  if (words.some((box) => scenery.lines.some((line) => segmentMeetsBox(line, box)))) return false;
  const own = linesOf(items);
  return scenery.boxes.every((box) => {
    const room = grown(box, wordsClearMm);
    return own.every((line) => !segmentMeetsBox(line, room));
  });
}

function united(a: Box, b: Box): Box {
  return {
    left: Math.min(a.left, b.left),
    right: Math.max(a.right, b.right),
    top: Math.min(a.top, b.top),
    bottom: Math.max(a.bottom, b.bottom),
  };
}

/** Two dimension lines side by side that are too near to be told apart; ends of a chain in one line may touch. */
function crowds(one: Segment, other: Segment): boolean {
  const ahead = unit(subtract(one[1], one[0]));
  const place = (point: Point): { readonly on: number; readonly off: number } => {
    const arm = subtract(point, one[0]);
    return { on: arm.x * ahead.x + arm.y * ahead.y, off: arm.y * ahead.x - arm.x * ahead.y };
  };
  const [a, b] = [place(other[0]), place(other[1])];
  if (Math.abs(a.off - b.off) > 0.5) return false;
  const shared = Math.min(distance(...one), Math.max(a.on, b.on)) - Math.max(0, Math.min(a.on, b.on));
  return shared > 0.1 && Math.abs(a.off) < lanesApartMm;
}

/** What is on the page once `items` are. */
export function added(scenery: Scenery, items: readonly SceneItem[]): Scenery {
  return {
    ...scenery,
    boxes: [...scenery.boxes, ...wordBoxes(items)],
    lines: [...scenery.lines, ...linesOf(items)],
  };
}

export function wordBoxes(items: readonly SceneItem[]): Scenery['boxes'] {
  return items.flatMap((item) => (item.kind === 'text' ? [textBox(item)] : []));
}

/** The straight lines of paths. */
export function linesOf(items: readonly SceneItem[]): readonly Segment[] {
  return items.flatMap((item): readonly Segment[] => {
    if (item.kind !== 'path') return [];
    const { commands } = item;
    return commands.flatMap((command, index): readonly Segment[] => {
      const before = commands[index - 1];
      if (command[0] !== 'L' || !before || before[0] === 'Z' || before[0] === 'C') return [];
      return [
        [
          { x: before[1], y: before[2] },
          { x: command[1], y: command[2] },
        ],
      ];
    });
  });
}
