/** The outline on the ground of what will stand on it. */
import type { Assembly } from '../../structures/assembly.ts';
import type { Spot } from '../../structures/geometry.ts';
import { project, type Camera } from '../axonometric.ts';
import { path, polygon, type Point } from '../path.ts';
import type { SceneItem } from '../scene.ts';
import { finished } from './bodies.ts';
import { hullOf } from './clearances.ts';

export interface Footprint {
  /** All corners on the ground, or near it. */
  readonly spots: readonly Spot[];
  readonly outline: readonly Point[];
  /** Nothing of it stands yet. */
  readonly bare: boolean;
  readonly items: readonly SceneItem[];
}

/** How far above or below the ground something may begin and still stand on it. */
const nearMm = 30;

/** Undefined once all of it stands. */
export function footprintOf(assembly: Assembly, step: number, camera: Camera): Footprint | undefined {
  const grounded = finished(assembly).flatMap(({ stage, solid, surface }) => {
    const spots = solid.faces.flat();
    const touches = spots.some(({ z }) => z < nearMm) && spots.some(({ z }) => z > -nearMm);
    if (surface === 'plant' || !touches) return [];
    return [{ from: assembly.stages.indexOf(stage), spots: spots.filter(({ z }) => z < nearMm) }];
  });
  if (grounded.every(({ from }) => from <= step)) return undefined;
  const spots = grounded.flatMap((part) => part.spots).map((spot) => ({ ...spot, z: 0 }));
  const outline = hullOf(spots.map((spot) => project(camera, spot)));
  if (outline.length < 3) return undefined;
  const bare = grounded.every(({ from }) => from > step);
  const look = bare ? ({ stroke: 'cut', fill: 'tint' } as const) : ({ stroke: 'hidden' } as const);
  return { spots, outline, bare, items: [path(polygon(outline), look)] };
}
