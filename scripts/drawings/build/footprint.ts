/** The outline on the ground of what will stand on it. */
import type { Assembly } from '../../structures/assembly.ts';
import type { Spot } from '../../structures/geometry.ts';
import { project, type Camera } from '../axonometric.ts';
import { path, polygon, type Look, type Point } from '../path.ts';
import type { SceneItem } from '../scene.ts';
import { finished } from './bodies.ts';
import { hullOf } from '../outline.ts';

export interface Footprint {
  /** All corners on the ground, or near it. */
  readonly spots: readonly Spot[];
  readonly outline: readonly Point[];
  /** It is what the step marks: the first, before anything stands. */
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
  const bare = step === 0 && grounded.every(({ from }) => from > step);
  // Where string marks the ground, that is its outline.
  const marked = assembly.members.some(
    ({ surface, stage }) => surface === 'cord' && stage === assembly.stages[step],
  );
  const look: Look = bare ? { fill: 'tint', ...(marked ? {} : { stroke: 'cut' }) } : { stroke: 'hidden' };
  return { spots, outline, bare, items: [path(polygon(outline), look)] };
}
