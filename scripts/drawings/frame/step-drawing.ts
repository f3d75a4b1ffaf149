/**
 * One axonometric drawing for each step of the build. All steps share one view, so that leafing through them shows the
 * frame grow: what the step adds is heavy and tinted, what stands already is light, what moves has an arrow.
 */
import type { FrameGeometry, PlacedSash } from '../../structures/geometry.ts';
import { backToFront } from '../axonometric.ts';
import { between, path, polygon, type Point } from '../path.ts';
import type { Scene, SceneItem } from '../scene.ts';
import { northArrow } from '../symbols.ts';
import {
  baleBody,
  propItems,
  sashBody,
  sashCorners,
  soilBody,
  stakeBody,
  wedgeBody,
  type Body,
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
import { signs } from './step-signs.ts';
import { viewOf, type View } from './view.ts';

export { stepNames, type StepDrawingOptions, type StepName } from './stage.ts';

export function stepDrawing(geometry: FrameGeometry, step: StepName, options: StepDrawingOptions): Scene {
  const view = viewOf(geometry, { x: 5.5, y: 7, width: widthMm - 14.5, height: heightMm - 16 });
  const stage = { geometry, view, step, ...options };
  return {
    id: options.id,
    widthMm,
    heightMm,
    alternative: options.alternative,
    items: [
      ...footprint(stage),
      ...backToFront(bodiesOf(stage), view.camera).flatMap(({ items }) => items),
      ...sashItems(stage),
      ...signs[step](stage),
      ...northArrow({ x: widthMm - 8, y: 9 }, view.north, options.words.north, 7),
    ],
  };
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
  return [...bales, ...wedges, ...soil, ...stakes];
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

/** Sashes lie on top of everything; the stick of a propped one is behind its low edge. */
function sashItems(stage: Stage): readonly SceneItem[] {
  const { geometry, view, step } = stage;
  if (step !== 'sashes' && step !== 'vent') return [];
  const list = sashesFromLeft(geometry);
  return list.flatMap((sash, index) => {
    if (step === 'vent') {
      return [...propItems(sash, geometry, view, propMm), ...sashBody(sash, view, 'added', { propMm }).items];
    }
    if (index < list.length - 1) return sashBody(sash, view, 'added').items;
    return [...landing(sash, view), ...sashBody(sash, view, 'added', { liftMm }).items];
  });
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
