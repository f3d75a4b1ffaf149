/** What the step drawings share: the order of the steps, the view, and places that several of them point at. */
import type { FrameGeometry, PlacedSash, PlacedStake } from '../../structures/geometry.ts';
import { arrow, type Point } from '../path.ts';
import type { SceneItem } from '../scene.ts';
import type { View } from './view.ts';
import type { FrameWords, PartLetters, SownRow } from './words.ts';

/** In the order of the build. */
export const stepNames = [
  'ground',
  'poleward-wall',
  'side-walls',
  'equator-wall',
  'stakes',
  'gaps',
  'soil',
  'sow',
  'props',
  'sashes',
  'vent',
  'storm',
] as const;
export type StepName = (typeof stepNames)[number];

export interface StepDrawingOptions {
  readonly id: string;
  readonly alternative: string;
  readonly words: FrameWords;
  readonly letters: PartLetters;
  /** What is sown, for the steps in which the rows are seen. */
  readonly rows: readonly SownRow[];
  /** Weights on each end of a sash before a storm; none where the record has no gust to hold them in. */
  readonly bagsInGust?: number;
}

/** Size of a step drawing. */
export const widthMm = 74;
export const heightMm = 54;
/** How far the low end of a sash is propped up, and how high the last sash is held before it is laid down. */
export const propMm = 180;
export const liftMm = 480;
/** How far the stake that is being driven stands out of the straw. */
export const stakeOutMm = 300;

export interface Stage extends StepDrawingOptions {
  readonly geometry: FrameGeometry;
  readonly view: View;
  readonly step: StepName;
}

/** The stake that is being driven: the one at the near left corner. */
export function nextStake({ geometry, view }: Stage): PlacedStake | undefined {
  const front = geometry.stakes.filter(({ wall }) => wall === 'equator');
  return front.reduce<PlacedStake | undefined>(
    (best, stake) =>
      best === undefined || view.at(stake.x, stake.y, 0).x < view.at(best.x, best.y, 0).x ? stake : best,
    undefined,
  );
}

/** The corners of the ground that the frame covers: near west, near east, far east, far west. */
export function groundCorners({
  insideLengthMm,
  outsideLengthMm,
  outsideDepthMm,
  sideThicknessMm,
}: FrameGeometry): readonly [Point, Point, Point, Point] {
  const west = (insideLengthMm - outsideLengthMm) / 2;
  const east = west + outsideLengthMm;
  const [near, far] = [-sideThicknessMm, outsideDepthMm - sideThicknessMm];
  return [
    { x: west, y: near },
    { x: east, y: near },
    { x: east, y: far },
    { x: west, y: far },
  ];
}

/** The sashes in the order in which the viewer has them. */
export function sashesFromLeft({ hemisphere, sashes }: FrameGeometry): readonly PlacedSash[] {
  return hemisphere === 'north' ? sashes : sashes.toReversed();
}

/** The arrow of something that moves. */
export function motion(from: Point, to: Point): readonly SceneItem[] {
  return arrow(from, to, { hue: 'clay', stroke: 'cut' });
}
