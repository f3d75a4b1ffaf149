/** What stands around the bodies of a step drawing: letters, arrows, dimensions, tools and what gives the scale. */
import type { FrameGeometry, PlacedSash } from '../../structures/geometry.ts';
import { drawSolid } from '../axonometric.ts';
import { dimension, wordsSize, type Dimension, type LengthWords } from '../dimension.ts';
import { segmentMeetsBox, type Segment } from '../build/clearances.ts';
import { textBox } from '../charts/text-width.ts';
import { between, circle, path, placed, polygon, rectangle, segment, type Point } from '../path.ts';
import type { PathCommand, SceneItem } from '../scene.ts';
import { balloon, boot, callout, sun } from '../symbols.ts';
import { propPlace, sashCorners } from './bodies.ts';
import { bagTop } from './sandbags.ts';
import {
  groundCorners,
  heightMm,
  liftMm,
  motion,
  nextStake,
  propMm,
  sashesFromLeft,
  stakeOutMm,
  widthMm,
  type Stage,
  type StepName,
} from './stage.ts';
import type { View } from './view.ts';

type Signs = (stage: Stage) => readonly SceneItem[];

/** Balloons, arrows, dimensions and what gives the scale, by step. */
export const signs: Readonly<Record<StepName, Signs>> = {
  ground: (stage) => [
    ...outsideDimensions(stage),
    ...sunSign(),
    ...levelSign(stage),
    ...bootSign(stage, 'inside'),
  ],
  'poleward-wall': (stage) => [
    ...wallCallout(stage, 'poleward', { x: 4, y: -5.5 }),
    ...pushTogether(stage, 'poleward'),
    ...bootSign(stage, 'outside'),
  ],
  'side-walls': (stage) => [
    ...wallCallout(stage, 'left', { x: -6, y: -5 }),
    ...insideLengthDimension(stage),
    ...cutPieceNote(stage),
    ...pushBack(stage),
  ],
  'equator-wall': (stage) => [
    ...wallCallout(stage, 'equator', { x: -5, y: 7 }),
    ...insideDepthDimension(stage),
    ...pushTogether(stage, 'equator'),
  ],
  stakes: stakeSigns,
  gaps: gapSigns,
  soil: soilSigns,
  sow: sowSigns,
  props: () => [],
  sashes: sashSigns,
  vent: ventSigns,
  storm: () => [],
};

/** Arrows at both ends of a long wall: its bales are pushed together. */
function pushTogether({ geometry, view }: Stage, wall: 'poleward' | 'equator'): readonly SceneItem[] {
  const bales = geometry.bales.filter((bale) => bale.wall === wall && bale.course === 0);
  const { from } = bales[0]!.box;
  const { to } = bales.at(-1)!.box;
  const y = from.y + (to.y - from.y) * 0.35;
  const z = from.z + (to.z - from.z) * 0.45;
  return [
    ...motion(view.at(to.x + 250, y, z), view.at(to.x + 30, y, z)),
    ...motion(view.at(from.x - 320, y, z), view.at(from.x - 30, y, z)),
  ];
}

/** An arrow in front of each side wall: it is pushed against the tall wall. */
function pushBack({ geometry, view }: Stage): readonly SceneItem[] {
  const z = geometry.equatorHeightMm / 2;
  const half = geometry.sideThicknessMm / 2;
  return [-half, geometry.insideLengthMm + half].flatMap((x) =>
    motion(view.at(x, -420, z), view.at(x, -30, z)),
  );
}

/** How long the piece is that closes a side wall. */
function cutPieceNote({ geometry, view, words }: Stage): readonly SceneItem[] {
  const right = view.right(0, 1) === 1 ? 'east' : 'west';
  const piece = geometry.bales.find(
    ({ wall, kind, course }) => wall === right && kind === 'cut' && course === 0,
  );
  if (!piece) return [];
  const { from, to } = piece.box;
  const x = view.right(from.x, to.x);
  return besideRight(view, { x, fromY: from.y, toY: to.y, words: words.length(to.y - from.y) });
}

function outsideDimensions({ geometry, view, words }: Stage): readonly SceneItem[] {
  const [nearWest, nearEast, , farWest] = groundCorners(geometry);
  const front = nearWest.y - 280;
  return [
    ...dimension({
      from: view.at(nearWest.x, front, 0),
      to: view.at(nearEast.x, front, 0),
      corners: [view.at(nearWest.x, nearWest.y, 0), view.at(nearEast.x, nearEast.y, 0)],
      words: words.length(geometry.outsideLengthMm),
      toward: { x: 0, y: 1 },
    }),
    ...besideRight(view, {
      x: view.right(nearWest.x, nearEast.x),
      fromY: nearWest.y,
      toY: farWest.y,
      words: words.length(geometry.outsideDepthMm),
    }),
  ];
}

/**
 * Between the inner top edges of the side walls, so that it is seen from end to end; in front of the walls when its words do
 * not fit between them.
 */
function insideLengthDimension({ geometry, view, words }: Stage): readonly SceneItem[] {
  const { insideLengthMm, insideDepthMm, equatorHeightMm, sideThicknessMm } = geometry;
  const size = words.length(insideLengthMm);
  const between = (y: number, z: number): { readonly from: Point; readonly to: Point } => ({
    from: view.at(view.left(0, insideLengthMm), y, z),
    to: view.at(view.right(0, insideLengthMm), y, z),
  });
  const inside = between(insideDepthMm * 0.32, equatorHeightMm);
  const toward = { x: 0, y: 1 };
  if (inside.to.x - inside.from.x > wordsSize(size).width + 5) {
    const items = dimension({ ...inside, words: size, toward });
    return [...clearedBehind(items, frontEdge(geometry, view)), ...items];
  }
  const front = between(-sideThicknessMm - 260, 0);
  const { from, to } = between(0, 0);
  return dimension({ ...front, corners: [from, to], words: size, toward });
}

/** Where the marked edge of the ground would run through words, the ground behind them is left white. */
function clearedBehind(items: readonly SceneItem[], edge: Segment): readonly SceneItem[] {
  return items.flatMap((item) => {
    if (item.kind !== 'text') return [];
    const { left, right, top, bottom } = textBox(item);
    if (!segmentMeetsBox(edge, { left, right, top, bottom })) return [];
    return [path(rectangle(left, top, right - left, bottom - top), { fill: 'paper' })];
  });
}

function frontEdge(geometry: FrameGeometry, view: View): Segment {
  const [west, east] = groundCorners(geometry);
  return [view.at(west.x, west.y, 0), view.at(east.x, east.y, 0)];
}

/** Along the outer foot of the right side wall, which is as long as the bed is deep. */
function insideDepthDimension(stage: Stage): readonly SceneItem[] {
  const { geometry, view, words } = stage;
  const { insideLengthMm, insideDepthMm, sideThicknessMm } = geometry;
  const x = view.right(-sideThicknessMm, insideLengthMm + sideThicknessMm);
  const span = { x, fromY: 0, toY: insideDepthMm, words: words.length(insideDepthMm) };
  return besideRight(view, span, pushTogether(stage, 'equator'));
}

/**
 * A dimension on the ground along the right of the frame, at `x`, from one y to another. Its words stand as near to the
 * middle as the edge of the page lets them.
 */
function besideRight(
  view: View,
  {
    x,
    fromY,
    toY,
    words,
  }: { readonly x: number; readonly fromY: number; readonly toY: number; readonly words: LengthWords },
  around: readonly SceneItem[] = [],
): readonly SceneItem[] {
  const out = view.right(-280, 280);
  const line: Dimension = {
    from: view.at(x + out, fromY, 0),
    to: view.at(x + out, toY, 0),
    corners: [view.at(x, fromY, 0), view.at(x, toY, 0)],
    words,
    toward: { x: 1, y: 1 },
  };
  const shares = [0.4, 0.3, 0.2, 0.1, 0.5, 0.6, 0.7];
  const tries = shares.map((share) => dimension({ ...line, share }));
  return tries.find((items) => onPage(items) && !runsThrough(around, items)) ?? nearStart(line);
}

/** At the near end of the line, as far left as the edge of the page wants it. */
function nearStart(line: Dimension): readonly SceneItem[] {
  const items = dimension({ ...line, share: 0 });
  const over = Math.max(
    0,
    ...items.map((item) => (item.kind === 'text' ? textBox(item).right - widthMm + 1 : 0)),
  );
  return items.map((item) =>
    item.kind === 'text' ? { ...item, x: item.x - over, y: item.y + over / 2 } : item,
  );
}

function onPage(items: readonly SceneItem[]): boolean {
  return items.every((item) => {
    if (item.kind !== 'text') return true;
    return textBox(item).right <= widthMm - 1 && item.y <= heightMm - 0.6;
  });
}

/** Whether any straight line of `around` runs through the words of `items`. */
function runsThrough(around: readonly SceneItem[], items: readonly SceneItem[]): boolean {
  const lines = around.flatMap((item): Segment[] => {
    if (item.kind !== 'path') return [];
    const points = item.commands.flatMap((command) =>
      command[0] === 'M' || command[0] === 'L' ? [{ x: command[1], y: command[2] }] : [],
    );
    return points.slice(1).map((point, index) => [points[index]!, point]);
  });
  return items.some((item) => {
    if (item.kind !== 'text') return false;
    const box = textBox(item);
    return lines.some((line) => segmentMeetsBox(line, box));
  });
}

/** The sun stands on the side that the viewer looks from. */
function sunSign(): readonly SceneItem[] {
  return sun({ x: 6.5, y: heightMm - 7.5 });
}

/** A spirit level lying on the marked ground. */
function levelSign({ geometry, view }: Stage): readonly SceneItem[] {
  const from = { x: geometry.insideLengthMm * 0.5, y: geometry.insideDepthMm * 0.75, z: 0 };
  const solid = view.box({ from, to: { x: from.x + 610, y: from.y + 45, z: 75 } });
  const vial = (share: number): Point => view.at(from.x + 610 * share, from.y, 38);
  return [
    ...drawSolid(solid, view.camera, { fill: { end: 'shade' }, edge: 'thin', outline: 'seen' }),
    ...[0.12, 0.5, 0.88].map((share) => circle(vial(share), 0.32, { fill: 'ink' })),
  ];
}

function bootSign({ geometry, view }: Stage, where: 'inside' | 'outside'): readonly SceneItem[] {
  const [nearWest, nearEast] = groundCorners(geometry);
  const right = view.right(nearWest.x, nearEast.x);
  const out = right === nearEast.x ? 1 : -1;
  const ground =
    where === 'outside'
      ? view.at(right + out * 480, nearEast.y + 380, 0)
      : view.at(geometry.insideLengthMm * 0.28, geometry.insideDepthMm * 0.4, 0);
  return boot(ground, view.camera.scale);
}

function wallCallout(
  stage: Stage,
  wall: 'poleward' | 'left' | 'equator',
  offset: Point,
): readonly SceneItem[] {
  const { geometry, view, letters } = stage;
  const letter = letters.bales;
  const name = wall === 'left' ? (geometry.hemisphere === 'north' ? 'west' : 'east') : wall;
  const bales = geometry.bales.filter((bale) => bale.wall === name);
  const bale = wall === 'poleward' ? bales[Math.floor(bales.length / 2)] : bales[0];
  if (!letter || !bale) return [];
  const { from, to } = bale.box;
  const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
  const spot =
    wall === 'equator' ? view.at(middle.x, from.y, (from.z + to.z) / 2) : view.at(middle.x, middle.y, to.z);
  return callout(spot, offset, letter);
}

function stakeSigns(stage: Stage): readonly SceneItem[] {
  const { geometry, view, letters } = stage;
  const driven = nextStake(stage);
  const done = geometry.stakes.filter(({ wall }) => wall === 'poleward')[2] ?? geometry.stakes[0];
  if (!driven || !done) return [];
  const top = view.at(driven.x, driven.y, driven.topMm + stakeOutMm);
  const mouth = view.at(driven.x, driven.y, driven.topMm);
  const foot = view.at(driven.x, driven.y, driven.bottomMm);
  return [
    path(segment(mouth, foot), { stroke: 'hidden' }),
    ...hammer({ x: top.x, y: top.y - 1.8 }),
    ...motion({ x: top.x - 3.4, y: top.y - 6 }, { x: top.x - 3.4, y: top.y + 2.5 }),
    ...(letters.stakes
      ? callout(view.at(done.x, done.y, done.topMm), { x: 4, y: -5.5 }, letters.stakes)
      : []),
  ];
}

/** A sledge hammer on its way down, with its lower face at `face`. */
function hammer(face: Point): readonly SceneItem[] {
  const head = polygon([
    { x: -1, y: -5.2 },
    { x: 1, y: -5.2 },
    { x: 1.35, y: -4.6 },
    { x: 1.35, y: -0.6 },
    { x: 1, y: 0 },
    { x: -1, y: 0 },
    { x: -1.35, y: -0.6 },
    { x: -1.35, y: -4.6 },
  ]);
  const handle = polygon([
    { x: 1.35, y: -3.2 },
    { x: 15.4, y: -6 },
    { x: 15.6, y: -5 },
    { x: 1.35, y: -2.2 },
  ]);
  return [
    path(placed(handle, face), { stroke: 'seen', fill: 'paper' }),
    path(placed(head, face), { stroke: 'seen', fill: 'shade' }),
  ];
}

function gapSigns({ geometry, view, letters }: Stage): readonly SceneItem[] {
  const letter = letters['loose-straw-bales'];
  const right = geometry.hemisphere === 'north' ? 'east' : 'west';
  const arrows = geometry.wedges.flatMap((wedge) => {
    const top = (share: number): Point =>
      view.at((wedge.fromX + wedge.toX) / 2, wedge.depthMm * share, wedge.baseMm + wedge.riseMm * share);
    const tip = top(0.6);
    return [
      ...motion({ x: tip.x, y: tip.y - 9 }, { x: tip.x, y: tip.y - 0.6 }),
      ...(letter && wedge.wall === right ? callout(top(0.3), { x: 8, y: 5 }, letter) : []),
    ];
  });
  return [...stuffedJoints(geometry, view), ...arrows];
}

/** Straw pushed into the joints of the long walls: short strokes across each joint, on top. */
function stuffedJoints({ bales }: FrameGeometry, view: View): readonly SceneItem[] {
  const topCourse = (wall: string): number =>
    Math.max(...bales.filter((bale) => bale.wall === wall).map(({ course }) => course));
  const strokes = bales.flatMap((bale, index): readonly PathCommand[] => {
    const next = bales[index + 1];
    const { from, to } = bale.box;
    const joint = bale.wall === 'poleward' || bale.wall === 'equator';
    if (
      !joint ||
      next?.wall !== bale.wall ||
      bale.course !== topCourse(bale.wall) ||
      next.course !== bale.course
    )
      return [];
    return [0.14, 0.26, 0.38, 0.5, 0.62, 0.74, 0.86].flatMap((share, stroke) => {
      const y = from.y + (to.y - from.y) * share;
      const half = stroke % 2 === 0 ? 62 : 36;
      return segment(view.at(to.x - half, y - 12, to.z), view.at(to.x + half, y + 12, to.z));
    });
  });
  return strokes.length === 0 ? [] : [path(strokes, { stroke: 'seen' })];
}

function soilSigns({ geometry, view, letters }: Stage): readonly SceneItem[] {
  const at = (share: number): Point =>
    view.at(geometry.insideLengthMm * share, geometry.insideDepthMm * 0.55, geometry.soilDepthMm);
  const letter = letters['soil-litres'];
  return [
    ...[0.25, 0.75].flatMap((share) => {
      const tip = at(share);
      return motion({ x: tip.x, y: tip.y - 11 }, tip);
    }),
    ...(letter ? balloon(at(0.5), letter) : []),
  ];
}

/** Each letter stands behind the tall wall, clear of its neighbour, with a line down to its row. */
function sowSigns({ geometry, view, rows }: Stage): readonly SceneItem[] {
  const { insideLengthMm, insideDepthMm, soilDepthMm } = geometry;
  const lettered = rows.filter(
    ({ letter }, index) =>
      letter !== undefined && rows.findIndex((other) => other.letter === letter) === index,
  );
  let freeX = 0;
  return lettered.flatMap((row, index) => {
    const share = (index + 1) / (lettered.length + 1);
    const x =
      view.left(0, insideLengthMm) + (view.right(0, insideLengthMm) - view.left(0, insideLengthMm)) * share;
    const spot = view.at(x, insideDepthMm - row.distanceFromPolewardMm, soilDepthMm);
    const wallTop = view.at(x, geometry.outsideDepthMm - geometry.sideThicknessMm, geometry.polewardHeightMm);
    const centreX = Math.max(spot.x + 3, freeX);
    freeX = centreX + 6;
    return callout(spot, { x: centreX - spot.x, y: wallTop.y - spot.y - 4 }, row.letter!);
  });
}

function sashSigns({ geometry, view, letters }: Stage): readonly SceneItem[] {
  const [first, ...others] = sashesFromLeft(geometry);
  if (!first || !letters.sashes) return [];
  const lifted = others.length === 0 && first.hinge === 'none';
  const { over } = sashCorners(first, lifted ? { liftMm } : {});
  const upper = over[2]!;
  const spot = view.at(between(upper, over[3]!, 0.3).x, upper.y - 30, upper.z);
  const bag = letters['hold-downs'];
  return [
    ...callout(spot, lifted ? { x: -9, y: -1 } : { x: 2, y: -7 }, letters.sashes),
    ...(bag && !lifted && first.holdDown === 'weight'
      ? callout(bagTop(first, view), { x: -8, y: -5 }, bag)
      : []),
  ];
}

/** An arrow up at the edge that opens, and the letter of the stick of another sash where there is one. */
function ventSigns(stage: Stage): readonly SceneItem[] {
  const { geometry, view, letters } = stage;
  const list = sashesFromLeft(geometry).filter(({ opens }) => opens !== 'never');
  const [first, second = first] = list;
  if (!first || !second) return sunSign();
  const { footAt } = propPlace(second, geometry, propMm);
  const stick = view.at(footAt.x, footAt.y - 60, geometry.equatorHeightMm + propMm * 0.3);
  return [
    ...openingArrow(first, stage),
    ...(letters.props ? callout(stick, { x: -5, y: 9.5 }, letters.props) : []),
    ...sunSign(),
  ];
}

function openingArrow(first: PlacedSash, { geometry, view }: Stage): readonly SceneItem[] {
  const { under } = sashCorners(first, { propMm });
  if (first.opens === 'low-end') {
    const left = view.at(view.left(first.x, first.x + first.widthMm), under[0]!.y, geometry.equatorHeightMm);
    return motion({ x: left.x - 3, y: left.y - 0.5 }, { x: left.x - 3, y: left.y - 9 });
  }
  const corner = under[first.opens === 'west-edge' ? 0 : 1]!;
  const head = view.at(corner.x, corner.y, corner.z);
  return motion({ x: head.x, y: head.y + 9 }, { x: head.x, y: head.y + 1 });
}
