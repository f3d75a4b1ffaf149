import { path, segment, type Point } from '../path.ts';
import type { PathCommand, SceneItem } from '../scene.ts';

/** A sprout as the sign of a row: a stem with two leaves, `heightMm` high on the page. */
export function shoot(foot: Point, heightMm: number): readonly SceneItem[] {
  const fork = foot.y - heightMm * 0.5;
  const reach = Math.min(heightMm * 0.45, 1.8);
  const leaf = (side: number): readonly PathCommand[] => [
    ['M', foot.x, fork],
    [
      'C',
      foot.x + side * reach * 0.1,
      foot.y - heightMm * 0.85,
      foot.x + side * reach * 0.6,
      foot.y - heightMm * 1.02,
      foot.x + side * reach,
      foot.y - heightMm,
    ],
    [
      'C',
      foot.x + side * reach,
      foot.y - heightMm * 0.75,
      foot.x + side * reach * 0.5,
      fork + heightMm * 0.05,
      foot.x,
      fork,
    ],
    ['Z'],
  ];
  return [
    path(segment(foot, { x: foot.x, y: fork }), { stroke: 'seen' }),
    path([...leaf(-1), ...leaf(1)], { stroke: 'thin', fill: 'paper' }),
  ];
}
