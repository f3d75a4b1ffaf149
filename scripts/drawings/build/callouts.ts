/** Where letters go: a balloon in free room with a line to its part that crosses no other and runs through no words. */
import { overlaps, type Box } from '../charts/text-width.ts';
import { balloon, callout } from '../symbols.ts';
import { distance, subtract, type Point } from '../path.ts';
import type { SceneItem } from '../scene.ts';
import {
  distanceToEdge,
  distanceToOutline,
  distanceToSegment,
  grown,
  isInside,
  segmentMeetsBox,
  segmentsMeet,
  type Segment,
} from './clearances.ts';
import { boundsOf } from '../outline.ts';

/** What is on the page already. */
export interface Scenery {
  /** Words and signs: nothing may touch them. */
  readonly boxes: readonly Box[];
  /** Lines: words and balloons stay clear of them. */
  readonly lines: readonly Segment[];
  /** Convex figures: words and balloons stay off them. */
  readonly shapes: readonly (readonly Point[])[];
}

export interface Target {
  readonly letter: string;
  /** Places on the part that are seen, the best first; not empty. */
  readonly spots: readonly Point[];
  /** Figures of the part in which the balloon itself may stand, each with what lies over it. */
  readonly rooms?: readonly {
    readonly outline: readonly Point[];
    readonly over: readonly (readonly Point[])[];
  }[];
}

const radiusMm = 2.35;
/** From the middle of a balloon to what it must stay clear of. */
const clearMm = radiusMm + 0.75;
const gridMm = 1.2;

interface Placed {
  readonly centre: Point;
  /** Undefined for a balloon that stands on its part. */
  readonly leader?: Segment;
}

/** A target for which there is no room is left out; the others stand. */
export function placeCallouts(targets: readonly Target[], page: Box, scenery: Scenery): readonly SceneItem[] {
  if (targets.length === 0) return [];
  const shapes = scenery.shapes.map((outline) => ({ outline, box: boundsOf(outline) }));
  let free: readonly Point[] | undefined;
  const placed: Placed[] = [];
  const items: SceneItem[] = [];
  for (const target of targets) {
    const on = standingOn(target, placed, scenery);
    if (on) {
      placed.push({ centre: on });
      items.push(...balloon(on, target.letter));
      continue;
    }
    free ??= gridOf(page).filter((point) => isFree(point, scenery, shapes));
    const best = bestLeader(target, targets, { free, placed, scenery });
    if (!best) continue;
    placed.push({ centre: best.centre, leader: [best.spot, best.centre] });
    items.push(...callout(best.spot, subtract(best.centre, best.spot), target.letter));
  }
  return items;
}

function gridOf({ left, right, top, bottom }: Box, paceMm = gridMm): readonly Point[] {
  const inset = radiusMm + 0.4;
  const points: Point[] = [];
  for (let y = top + inset; y <= bottom - inset; y += paceMm)
    for (let x = left + inset; x <= right - inset; x += paceMm) points.push({ x, y });
  return points;
}

interface BoxedShape {
  readonly outline: readonly Point[];
  readonly box: Box;
}

function isFree(point: Point, { boxes, lines }: Scenery, shapes: readonly BoxedShape[]): boolean {
  return (
    boxes.every((box) => !near(box, point)) &&
    lines.every((line) => distanceToSegment(line, point) > clearMm) &&
    shapes.every(({ outline, box }) => !near(box, point) || distanceToOutline(outline, point) > clearMm)
  );
}

function near({ left, right, top, bottom }: Box, { x, y }: Point): boolean {
  const across = Math.max(left - x, 0, x - right);
  const down = Math.max(top - y, 0, y - bottom);
  return Math.hypot(across, down) < clearMm;
}

/** The place on the part itself with the most room round it, where that is enough for a balloon. */
function standingOn(
  { rooms = [] }: Target,
  placed: readonly Placed[],
  { lines, boxes }: Scenery,
): Point | undefined {
  const candidates = rooms.flatMap(({ outline, over }) => {
    const inside = gridOf(boundsOf(outline), 2).filter(
      (point) => isInside(outline, point) && distanceToEdge(outline, point) >= clearMm,
    );
    const covers = over.filter((shape) => overlaps(boundsOf(shape), grown(boundsOf(outline), clearMm)));
    return inside.flatMap((point) => {
      const room = Math.min(
        distanceToEdge(outline, point),
        ...covers.map((shape) => distanceToOutline(shape, point)),
        ...lines.map((line) => distanceToSegment(line, point)),
        ...placed.map(({ centre }) => distance(centre, point) - radiusMm),
        ...placed.flatMap(({ leader }) => (leader ? [distanceToSegment(leader, point)] : [])),
      );
      return room >= clearMm && boxes.every((box) => !near(box, point)) ? [{ point, room }] : [];
    });
  });
  return candidates.reduce<(typeof candidates)[number] | undefined>(
    (best, candidate) => (best === undefined || candidate.room > best.room + 0.5 ? candidate : best),
    undefined,
  )?.point;
}

interface Room {
  readonly free: readonly Point[];
  readonly placed: readonly Placed[];
  readonly scenery: Scenery;
}

function bestLeader(
  target: Target,
  targets: readonly Target[],
  { free, placed, scenery }: Room,
): { readonly spot: Point; readonly centre: Point } | undefined {
  const centres = free.filter((centre) =>
    placed.every(
      (other) =>
        distance(other.centre, centre) > 2 * radiusMm + 0.8 &&
        (other.leader === undefined || distanceToSegment(other.leader, centre) > clearMm),
    ),
  );
  const others = targets.filter((other) => other !== target);
  let best: { readonly spot: Point; readonly centre: Point; readonly cost: number } | undefined;
  for (const [rank, spot] of target.spots.entries()) {
    for (const centre of centres) {
      const long = Math.sqrt((spot.x - centre.x) ** 2 + (spot.y - centre.y) ** 2);
      const least = long + rank * 0.15;
      if (long < radiusMm + 1.5 || (best && least >= best.cost)) continue;
      const leader: Segment = [spot, centre];
      const misread = others.filter(({ spots }) => distanceToSegment(leader, spots[0]!) < 0.8).length;
      const crossed = scenery.lines.filter((line) => segmentsMeet(leader, line)).length;
      const cost = least + 4 * crossed + 3 * misread;
      if ((!best || cost < best.cost) && isClear(leader, placed, scenery)) best = { spot, centre, cost };
    }
  }
  return best;
}

function isClear(leader: Segment, placed: readonly Placed[], { boxes }: Scenery): boolean {
  return (
    boxes.every((box) => !segmentMeetsBox(leader, box)) &&
    placed.every(
      (other) =>
        distanceToSegment(leader, other.centre) > clearMm &&
        (other.leader === undefined || !segmentsMeet(leader, other.leader)),
    )
  );
}
