/**
 * Finds places for the names in a plot of curves: of the points marked on them, and of the curves themselves. A name
 * lies beside its point or along its curve if it can, further off with a leader if not.
 */
import type { Point } from '../path.ts';
import { boxesAlong, boxOver } from './curves.ts';
import type { LabelledMark, PlacedLabel } from './label-placement.ts';
import type { Line } from './shapes.ts';
import { estimateTextWidthMm, overlaps, textBox, type Box, type TextItem } from './text-width.ts';

export interface NamedCurve {
  readonly label: string;
  /** The pieces of the curve, each in order of x. */
  readonly pieces: readonly Line[];
  /** On which side of the curve its name may lie without a leader. */
  readonly side: 'above' | 'below' | 'either';
}

export interface PlotNames {
  readonly marks: readonly LabelledMark[];
  /** In the order in which they choose their places. */
  readonly curves: readonly NamedCurve[];
  /** Curves that have no name, but must not run through one. */
  readonly otherCurves: readonly Line[];
  readonly bounds: Box;
  /** What a name lies on only if it must; whoever draws it leaves the name out. */
  readonly avoided: readonly Box[];
}

export interface NamePlaces {
  /** One for each mark, `undefined` where there is no free place. */
  readonly marks: readonly (PlacedLabel | undefined)[];
  /** One for each curve, `undefined` where there is no free place or nothing of the curve to name. */
  readonly curves: readonly (PlacedLabel | undefined)[];
}

/**
 * Marks choose first, since they are bound to one point; then the curves that a name can lie along; then those that
 * need a leader. No name lies on a curve, a mark or another name.
 */
export function placeNames({ marks, curves, otherCurves, bounds, avoided }: PlotNames): NamePlaces {
  const namedLines = curves.flatMap(({ pieces }) => pieces);
  const soFar: Box[] = marks.map((mark) => boxOver([mark], markReachMm));
  const allPieces = [...namedLines, ...otherCurves];
  const allLines = boxesOf(allPieces, ownClearMm);
  const crossed = boxesOf(namedLines, leaderClearMm);
  const settle = (candidates: readonly Candidate[], room: Omit<Room, 'bounds' | 'avoided'>) => {
    const place = best(candidates, { ...room, bounds, avoided });
    if (place) soFar.push(grown(textBox(place.item)), ...leaderBoxes(place));
    return place;
  };
  const markPlaces = marks.map((mark) => {
    const reach = boxOver([mark], markReachMm);
    return settle([...besideMark(mark), ...leadersFrom(mark, mark.label)], {
      taken: [...soFar, ...allLines],
      closedToLeader: soFar.filter((box) => !holds(box, mark)),
      crossed: crossed.filter((box) => !overlaps(box, reach)),
    });
  });
  const follow = (curve: NamedCurve): PlacedLabel | undefined => {
    const own = boxesOf(curve.pieces, ownClearMm);
    const near = boxesOf(allPieces.filter(isNotOf(curve)), otherClearMm);
    const room = { taken: [...soFar, ...own, ...near], closedToLeader: [], crossed: [] };
    return settle(alongside(curve), room);
  };
  const lead = (curve: NamedCurve): PlacedLabel | undefined => {
    const near = boxesOf(allPieces.filter(isNotOf(curve)), otherClearMm);
    const elsewhere = boxesOf(namedLines.filter(isNotOf(curve)), leaderClearMm);
    return settle(withLeader(curve, near), {
      taken: [...soFar, ...allLines],
      closedToLeader: soFar,
      crossed: elsewhere,
    });
  };
  const alongPlaces = curves.map(follow);
  const curvePlaces = curves.map((curve, index) => alongPlaces[index] ?? lead(curve));
  return { marks: markPlaces, curves: curvePlaces };
}

const isNotOf =
  ({ pieces }: NamedCurve) =>
  (line: Line): boolean =>
    !pieces.includes(line);

/** The highest point of a curve, the first of several. */
export function highestPoint({ pieces }: Pick<NamedCurve, 'pieces'>): Point | undefined {
  return pieces
    .flat()
    .reduce<Point | undefined>((top, point) => (top && top.y <= point.y ? top : point), undefined);
}

interface Candidate extends PlacedLabel {
  readonly cost: number;
}

interface Room {
  readonly bounds: Box;
  /** What the name may not lie on. */
  readonly taken: readonly Box[];
  /** What its leader may not cross. */
  readonly closedToLeader: readonly Box[];
  /** What the name lies on, and what its leader crosses, only at a price. */
  readonly avoided: readonly Box[];
  readonly crossed: readonly Box[];
}

/** The cheapest candidate that is free; the first of several. */
function best(candidates: readonly Candidate[], room: Room): PlacedLabel | undefined {
  const inOrder = [...candidates].sort((a, b) => a.cost - b.cost);
  let cheapest: Candidate | undefined;
  for (const candidate of inOrder) {
    if (cheapest && candidate.cost >= cheapest.cost) break;
    if (!isFree(candidate, room)) continue;
    const cost = candidate.cost + priceOf(candidate, room);
    if (!cheapest || cost < cheapest.cost) cheapest = { ...candidate, cost };
  }
  if (!cheapest) return undefined;
  const { item, leader } = cheapest;
  return leader ? { item, leader } : { item };
}

function isFree(place: PlacedLabel, { bounds, taken, closedToLeader }: Room): boolean {
  const box = textBox(place.item);
  return (
    isWithin(box, bounds) &&
    !taken.some((other) => overlaps(box, other)) &&
    !leaderBoxes(place).some((part) => closedToLeader.some((other) => overlaps(part, other)))
  );
}

function priceOf(place: PlacedLabel, { avoided, crossed }: Room): number {
  const box = textBox(place.item);
  const onAvoided = avoided.some((other) => overlaps(box, other));
  const crosses = leaderBoxes(place).some((part) => crossed.some((other) => overlaps(part, other)));
  return (onAvoided ? avoidedCost : 0) + (crosses ? crossedCost : 0);
}

/** Left and right of a mark, over and under its height, the better side first. */
function besideMark({ x, y, label, side }: LabelledMark): readonly Candidate[] {
  return (['left', 'right'] as const).flatMap((to) =>
    [y - 1.2, y + 3].map((baseline, index) => ({
      item:
        to === 'left'
          ? nameText({ x: x - besideMm, y: baseline }, label, 'end')
          : nameText({ x: x + besideMm, y: baseline }, label, 'start'),
      cost: index + (to === side ? 0 : 2),
    })),
  );
}

/**
 * Names that touch their curve on one side: along it where it is flat, with one corner where it slopes. A name that
 * follows the curve, near its highest point, is best.
 */
function alongside(curve: NamedCurve): readonly Candidate[] {
  const width = estimateTextWidthMm(curve.label, 'label');
  const peak = highestPoint(curve);
  return curve.pieces.flatMap((piece) =>
    anchorsOf(piece).flatMap(({ x }) =>
      [x - width / 2, x, x - width].flatMap((left) => {
        const heights = piece
          .filter((point) => point.x >= left - 0.5 && point.x <= left + width + 0.5)
          .map(({ y }) => y);
        const mean = heights.reduce((sum, y) => sum + y, 0) / heights.length;
        const away = Math.abs(left + width / 2 - peak!.x) * awayCost;
        return bothSides(curve.side).map((side): Candidate => {
          const edge = side === 'above' ? Math.min(...heights) : Math.max(...heights);
          const y = side === 'above' ? edge - ownGapMm - descentMm : edge + ownGapMm + ascentMm;
          const slack = Math.abs(mean - edge) * slackCost;
          return { item: nameText({ x: left, y }, curve.label, 'start'), cost: slack + away };
        });
      }),
    ),
  );
}

/** Names further off, joined to a point of the curve that is clear of the other curves and of its ends. */
function withLeader(curve: NamedCurve, others: readonly Box[]): readonly Candidate[] {
  const peak = highestPoint(curve);
  return curve.pieces.flatMap((piece) => {
    const [start, end] = [piece[0]!.x + 2, piece.at(-1)!.x - 2];
    return anchorsOf(piece)
      .filter((foot) => start < foot.x && foot.x < end && !others.some((box) => holds(box, foot)))
      .flatMap((foot) => {
        const away = Math.abs(foot.x - peak!.x) * awayCost;
        return leadersFrom(foot, curve.label).map((place) => ({ ...place, cost: place.cost + away }));
      });
  });
}

function leadersFrom(foot: Point, label: string): readonly Candidate[] {
  return risesMm.flatMap((rise) =>
    slantsMm.map((slant): Candidate => {
      const end = { x: foot.x + slant, y: foot.y + rise };
      const anchor = slant === 0 ? 'middle' : slant > 0 ? 'start' : 'end';
      const y = rise < 0 ? end.y - descentMm : end.y + ascentMm;
      const x = slant === 0 ? end.x : end.x - Math.sign(slant) * 2;
      return {
        item: nameText({ x, y }, label, anchor),
        leader: [foot, end],
        cost: Math.hypot(slant, rise),
      };
    }),
  );
}

const nameText = ({ x, y }: Point, label: string, anchor: TextItem['anchor']): TextItem => ({
  kind: 'text',
  x,
  y,
  text: label,
  anchor,
  style: 'label',
});

/** Points of a piece a few millimetres apart. */
function anchorsOf(piece: Line): readonly Point[] {
  const anchors: Point[] = [];
  for (const point of piece) {
    const last = anchors.at(-1);
    if (!last || point.x - last.x >= anchorApartMm) anchors.push(point);
  }
  return anchors;
}

const bothSides = (side: NamedCurve['side']): readonly ('above' | 'below')[] =>
  side === 'either' ? ['above', 'below'] : [side];

const boxesOf = (pieces: readonly Line[], reachMm: number): readonly Box[] =>
  pieces.flatMap((piece) => boxesAlong(piece, reachMm));

const grown = ({ left, right, top, bottom }: Box): Box => ({
  left: left - nameApartMm,
  right: right + nameApartMm,
  top: top - nameApartMm / 2,
  bottom: bottom + nameApartMm / 2,
});

const isWithin = (box: Box, bounds: Box): boolean =>
  box.left >= bounds.left &&
  box.right <= bounds.right &&
  box.top >= bounds.top &&
  box.bottom <= bounds.bottom;

const holds = (box: Box, { x, y }: Point): boolean =>
  box.left <= x && x <= box.right && box.top <= y && y <= box.bottom;

/** A leader as a chain of small boxes, its foot left out. */
function leaderBoxes({ leader }: PlacedLabel): readonly Box[] {
  if (!leader) return [];
  const [from, to] = leader;
  const steps = Math.max(4, Math.ceil(Math.hypot(to.x - from.x, to.y - from.y)));
  return Array.from({ length: steps }, (_, index) => {
    const share = (index + 1) / steps;
    return boxOver([{ x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share }], 0.2);
  });
}

/** From the baseline of a label to the top and the foot of its box. */
const ascentMm = 2.52;
const descentMm = 0.84;
/** A name keeps this distance from its own curve, and is kept as far or a hair less from any. */
const ownGapMm = 0.5;
const ownClearMm = 0.45;
/** A name that lies along its curve keeps this distance from the others, so that it is seen whose it is. */
const otherClearMm = 1.4;
const leaderClearMm = 0.2;
const markReachMm = 1.1;
const besideMm = 1.9;
const nameApartMm = 1.4;
const anchorApartMm = 1.5;
/** What one millimetre away from the highest point, and one of distance between name and curve, cost. */
const awayCost = 0.06;
const slackCost = 0.5;
/** What lying on an avoided box, and crossing another named curve, cost, in millimetres of leader. */
const avoidedCost = 3;
const crossedCost = 9;
const risesMm = [-4, 4, -6, 6, -9, 9, -12, 12, -16, 16, -21, 21, -27, 27] as const;
const slantsMm = [0, 3, -3, 6, -6, 10, -10] as const;
