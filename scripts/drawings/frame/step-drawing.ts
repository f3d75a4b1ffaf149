/**
 * One axonometric drawing for each step of the build. All steps share one view, so that leafing through them shows the
 * frame grow: what the step adds is heavy and tinted, what stands already is light, what moves has an arrow.
 */
import { weightBoards } from '../../structures/frame-boards.ts';
import type { FrameGeometry, PlacedSash } from '../../structures/geometry.ts';
import { backToFront } from '../axonometric.ts';
import { segmentMeetsBox } from '../build/clearances.ts';
import { overlaps, textBox, type Box } from '../charts/text-width.ts';
import { between, path, polygon, type Point } from '../path.ts';
import type { Scene, SceneItem } from '../scene.ts';
import { northArrow } from '../symbols.ts';
import {
  baleBody,
  cordItems,
  propItems,
  sashBody,
  sashCorners,
  soilBody,
  stakeBody,
  strawBody,
  wedgeBody,
  type Body,
  type SashPose,
  type Weight,
} from './bodies.ts';
import {
  groundCorners,
  heightMm,
  liftMm,
  motion,
  nextStake,
  propMm,
  sashesFromLeft,
  stakeOutMm,
  stepNames,
  widthMm,
  type Stage,
  type StepDrawingOptions,
  type StepName,
} from './stage.ts';
import { freeLetters } from './free-letters.ts';
import {
  boardBody,
  boardStraps,
  boardStrapsOnGround,
  hingeItems,
  hookItems,
  isAlongTallWall,
  ridgeBox,
  screenItems,
  strapOnGround,
  strapOver,
} from './hardware.ts';
import { hardwareLetters } from './hardware-letters.ts';
import { propDetail } from './prop-detail.ts';
import { bagsOnBoard, sandbagItems } from './sandbags.ts';
import { signs } from './step-signs.ts';
import { viewOf, type View } from './view.ts';

export { stepNames, type StepDrawingOptions, type StepName } from './stage.ts';

export function stepDrawing(geometry: FrameGeometry, step: StepName, options: StepDrawingOptions): Scene {
  if (step === 'props') return propDetail(geometry, options);
  const view = viewOf(geometry, { x: 5.5, y: 7, width: widthMm - 14.5, height: heightMm - 16 });
  const stage = { geometry, view, step, ...options };
  const shown = [
    ...footprint(stage),
    ...strapsBelow(stage),
    ...backToFront(bodiesOf(stage), view.camera).flatMap((body) => body.items),
    ...sashItems(stage),
    ...signs[step](stage),
  ];
  const items = [...shown, ...northSign(shown, view.north, options.words.north)];
  return {
    id: options.id,
    widthMm,
    heightMm,
    alternative: options.alternative,
    items: [...items, ...freeLetters(items, hardwareLetters(stage), { widthMm, heightMm })],
  };
}

/** In the upper right corner, or in another where a high frame is in its way. */
function northSign(shown: readonly SceneItem[], direction: Point, letter: string): readonly SceneItem[] {
  const corners = [
    { x: widthMm - 8, y: 9 },
    { x: 8, y: 9 },
    { x: widthMm - 8, y: heightMm - 10 },
  ];
  const isFree = ({ x, y }: Point): boolean => {
    const box = { left: x - 7, right: x + 7, top: y - 7, bottom: y + 7 };
    return !shown.some((item) => touches(item, box));
  };
  return northArrow(corners.find(isFree) ?? corners[0]!, direction, letter, 7);
}

function touches(item: SceneItem, box: Box): boolean {
  if (item.kind === 'text') return overlaps(textBox(item), box);
  if (item.kind === 'circle')
    return overlaps(
      {
        left: item.x - item.radius,
        right: item.x + item.radius,
        top: item.y - item.radius,
        bottom: item.y + item.radius,
      },
      box,
    );
  const points = item.commands.flatMap((command) =>
    command[0] === 'M' || command[0] === 'L' ? [{ x: command[1], y: command[2] }] : [],
  );
  return points.some((point, index) => segmentMeetsBox([points[Math.max(0, index - 1)]!, point], box));
}

/** The weight of what a step brings in, once it is there; undefined before. */
function weightOf({ step }: Stage, comesWith: StepName): Weight | undefined {
  const [now, then] = [stepNames.indexOf(step), stepNames.indexOf(comesWith)];
  return now < then ? undefined : now === then ? 'added' : 'standing';
}

const wallStep = {
  poleward: 'poleward-wall',
  west: 'side-walls',
  east: 'side-walls',
  equator: 'equator-wall',
} as const;

function bodiesOf(stage: Stage): readonly Body[] {
  const { geometry, view, rows } = stage;
  const bales = geometry.bales.flatMap((bale) => {
    const weight = weightOf(stage, wallStep[bale.wall]);
    return weight ? [baleBody(bale, view, weight)] : [];
  });
  const wedgeWeight = weightOf(stage, 'gaps');
  const wedges = wedgeWeight ? geometry.wedges.map((wedge) => wedgeBody(wedge, view, wedgeWeight)) : [];
  const soilWeight = weightOf(stage, 'soil');
  const rowWeight = weightOf(stage, 'sow');
  const soil = soilWeight
    ? [soilBody(geometry, view, soilWeight, rowWeight && { list: rows, weight: rowWeight })]
    : [];
  const stakeWeight = weightOf(stage, 'stakes');
  const stakes = stakeWeight
    ? geometry.stakes
        .filter(({ wall }) => !wedgeWeight || wall === 'poleward' || wall === 'equator')
        .map((stake) =>
          stakeBody(
            stake,
            view,
            stakeWeight,
            stakeWeight === 'added' && stake === nextStake(stage) ? stakeOutMm : 0,
          ),
        )
    : [];
  return [...bales, ...wedges, ...ridgeBodies(stage), ...soil, ...stakes];
}

/** Packed straw on the tall wall and the board on it. */
function ridgeBodies(stage: Stage): readonly Body[] {
  const { geometry, view } = stage;
  const weight = weightOf(stage, 'gaps');
  if (!weight) return [];
  const box = ridgeBox(geometry);
  return [
    ...(box ? [strawBody(box, view, weight)] : []),
    ...geometry.boards
      .filter(({ role }) => role === 'rest-board')
      .map((board) => boardBody(board, view, weight)),
  ];
}

/** Straps that go under the walls are laid before the walls are set up. */
function strapsBelow(stage: Stage): readonly SceneItem[] {
  const { geometry, view, step } = stage;
  if (step !== 'ground') return [];
  return [
    ...geometry.sashes
      .filter(({ holdDown }) => holdDown === 'strap')
      .flatMap((sash) => strapOnGround(sash, geometry, view)),
    ...hingeBoardsOf(geometry).flatMap((board) => boardStrapsOnGround(board, geometry, view)),
  ];
}

function hingeBoardsOf({ boards }: FrameGeometry): FrameGeometry['boards'] {
  return boards.filter(({ role }) => role === 'hinge-board');
}

/** The rectangle on the ground that the frame will cover. */
function footprint({ geometry, view, step }: Stage): readonly SceneItem[] {
  const corners = groundCorners(geometry).map(({ x, y }) => view.at(x, y, 0));
  if (step === 'ground') return [path(polygon(corners), { stroke: 'cut', fill: 'tint' }), ...pegs(corners)];
  if (stepNames.indexOf(step) > stepNames.indexOf('side-walls')) return [];
  return [path(polygon(corners), { stroke: 'hidden' })];
}

function pegs(corners: readonly Point[]): readonly SceneItem[] {
  return corners.map(({ x, y }) =>
    path(
      polygon([
        { x: x - 0.6, y: y - 3.4 },
        { x: x + 0.6, y: y - 3.4 },
        { x: x + 0.6, y },
        { x, y: y + 0.9 },
        { x: x - 0.6, y },
      ]),
      {
        stroke: 'seen',
        fill: 'paper',
      },
    ),
  );
}

/** Sashes lie on top of everything, with what they lie on and what holds them; the stick of a propped one is behind its edge. */
function sashItems(stage: Stage): readonly SceneItem[] {
  const { geometry, view, step } = stage;
  if (step !== 'sashes' && step !== 'vent' && step !== 'storm') return [];
  const list = sashesFromLeft(geometry);
  const weight: Weight = step === 'sashes' ? 'added' : 'standing';
  return [
    ...boardsUnder(stage, weight),
    ...list.flatMap((sash, index) => {
      if (step === 'vent') return ventedSash(stage, sash);
      if (step === 'storm') return shutSash(stage, sash);
      if (index < list.length - 1 || sash.hinge !== 'none') return laidSash(stage, sash);
      return [
        ...landing(sash, view),
        ...(sash.screenMm > 0 ? screenItems(sash, view, 'added') : []),
        ...sashBody(sash, view, 'added', { liftMm }).items,
      ];
    }),
    ...(step === 'storm' ? stormWeights(stage) : []),
  ];
}

/** A sash that lies shut already, before the boards and the weights come onto it. */
function shutSash(stage: Stage, sash: PlacedSash): readonly SceneItem[] {
  const { geometry, view } = stage;
  return [
    ...(sash.screenMm > 0 ? screenItems(sash, view, 'standing') : []),
    ...sashBody(sash, view, 'standing').items,
    ...hingeItems(sash, view, {}),
    ...(sash.holdDown === 'strap' ? strapOver(sash, geometry, view) : []),
    ...(stage.bagsInGust === undefined ? bags(stage, sash, {}) : []),
  ];
}

/** Boards across all sashes, the upper one first, and the weights on them. */
function stormWeights({ geometry, view, bagsInGust }: Stage): readonly SceneItem[] {
  if (bagsInGust === undefined) return [];
  return weightBoards(geometry).flatMap((board) => [
    ...boardBody(board, view, 'added').items,
    ...bagsOnBoard(board, bagsInGust * board.sashes.length, view),
  ]);
}

/** Hinge boards with their straps, and filler boards: from the tall wall to the front. */
function boardsUnder({ geometry, view }: Stage, weight: Weight): readonly SceneItem[] {
  const hinged = hingeBoardsOf(geometry);
  const behind = hinged.filter(isAlongTallWall);
  const beside = hinged.filter((board) => !isAlongTallWall(board));
  const fillers = geometry.boards.filter(({ role }) => role === 'filler-board');
  const withStraps = [...behind, ...beside].flatMap((board) => [
    ...boardBody(board, view, weight).items,
    ...boardStraps(board, view),
  ]);
  return [...withStraps, ...fillers.flatMap((board) => boardBody(board, view, weight).items)];
}

function laidSash(stage: Stage, sash: PlacedSash): readonly SceneItem[] {
  const { geometry, view } = stage;
  return [
    ...(sash.screenMm > 0 ? screenItems(sash, view, 'standing') : []),
    ...sashBody(sash, view, 'added').items,
    ...hingeItems(sash, view, {}),
    ...(sash.holdDown === 'strap' ? strapOver(sash, geometry, view) : []),
    ...(sash.holdDown === 'hook' ? hookItems(sash, view, {}) : []),
    ...bags(stage, sash, {}),
  ];
}

function ventedSash(stage: Stage, sash: PlacedSash): readonly SceneItem[] {
  const { geometry, view, letters } = stage;
  const pose = { propMm };
  return [
    ...(sash.screenMm > 0 ? screenItems(sash, view, 'standing') : []),
    ...(sash.opens === 'low-end' ? [] : propItems(sash, geometry, view, propMm)),
    ...sashBody(sash, view, 'added', pose).items,
    ...(letters.twine ? cordItems(sash, geometry, view, propMm) : []),
    ...(sash.opens === 'low-end' ? propItems(sash, geometry, view, propMm) : []),
    ...hingeItems(sash, view, pose),
    ...(sash.holdDown === 'strap' && sash.opens === 'never' ? strapOver(sash, geometry, view) : []),
    ...bags(stage, sash, pose),
  ];
}

function bags({ view, letters }: Stage, sash: PlacedSash, pose: SashPose): readonly SceneItem[] {
  return letters['hold-downs'] && sash.holdDown === 'weight' ? sandbagItems(sash, view, pose) : [];
}

/** Where the lifted sash will lie, and the arrows that it comes down along. */
function landing(sash: PlacedSash, view: View): readonly SceneItem[] {
  const place = sashCorners(sash, {}).under.map(({ x, y, z }) => view.at(x, y, z));
  const lifted = sashCorners(sash, { liftMm }).under.map(({ x, y, z }) => view.at(x, y, z));
  return [
    path(polygon(place), { stroke: 'hidden', fill: 'paper' }),
    ...[0, 1].flatMap((corner) =>
      motion(between(lifted[corner]!, place[corner]!, 0.02), between(lifted[corner]!, place[corner]!, 0.94)),
    ),
  ];
}
