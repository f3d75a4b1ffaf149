/** What a surface looks like: lines and dots on a figure of the page, dense where it is cut or new, sparse where it stands. */
import type { Surface } from '../../structures/assembly.ts';
import { dotsInside, hatchLines } from '../hatch.ts';
import { along, between, circle, distance, path, segment, subtract, unit, type Point } from '../path.ts';
import type { PathCommand, SceneItem } from '../scene.ts';
import { areaOf, distanceToEdge, isInside } from './clearances.ts';

/** How much there is of it: on a cut, on what is new or shown as a whole, on what only stands there. */
export type Density = 'cut' | 'full' | 'sparse';

/**
 * The texture inside a convex figure, its dots and strokes at least `clearMm` from the edge. Something small has none.
 */
export function texture(
  surface: Surface,
  outline: readonly Point[],
  density: Density,
  clearMm = 0.65,
): readonly SceneItem[] {
  if (outline.length < 3 || areaOf(outline) < 4) return [];
  switch (surface) {
    case 'wood':
      return density === 'cut'
        ? lines(outline, [{ angleDeg: 58, spacingMm: 1 }])
        : density === 'full'
          ? grain(outline)
          : [];
    case 'block':
      return density === 'cut'
        ? lines(outline, [
            { angleDeg: 45, spacingMm: 1.7 },
            { angleDeg: 135, spacingMm: 1.7 },
          ])
        : [];
    case 'straw':
      return density === 'sparse' ? [] : strokes(outline, 1.9, 'along', clearMm);
    case 'soil':
      return dots(outline, density === 'sparse' ? 3.4 : 2.2, 0.22, clearMm);
    case 'compost':
      return density === 'sparse'
        ? dots(outline, 3.4, 0.22, clearMm)
        : [...strokes(outline, 2.6, 'every-way', clearMm), ...dots(outline, 3.1, 0.2, clearMm)];
    case 'gravel':
      return pebbles(outline, density === 'sparse' ? 3 : 2, clearMm);
    case 'mesh':
      return lines(outline, [
        { angleDeg: 45, spacingMm: density === 'sparse' ? 3 : 1.6 },
        { angleDeg: 135, spacingMm: density === 'sparse' ? 3 : 1.6 },
      ]);
    case 'cloth':
      return density === 'sparse' ? [] : lines(outline, [{ angleDeg: 20, spacingMm: 1.5 }]);
    case 'glass':
      return density === 'sparse' ? [] : glint(outline);
    case 'metal':
    case 'cord':
    case 'plant':
      return [];
  }
}

function lines(
  outline: readonly Point[],
  rows: readonly { readonly angleDeg: number; readonly spacingMm: number }[],
): readonly SceneItem[] {
  const commands = rows.flatMap((options) => hatchLines(outline, options));
  return commands.length === 0 ? [] : [path(commands, { stroke: 'thin' })];
}

/** Two broken lines along the longest edge. */
function grain(outline: readonly Point[]): readonly SceneItem[] {
  const edges = outline.map((corner, index) => [corner, outline[(index + 1) % outline.length]!] as const);
  const [a, b] = edges.reduce((best, edge) => (distance(...edge) > distance(...best) ? edge : best));
  const ahead = unit(subtract(b, a));
  const side = { x: -ahead.y, y: ahead.x };
  const reach = outline.map((corner) => (corner.x - a.x) * side.x + (corner.y - a.y) * side.y);
  const deep =
    Math.abs(Math.max(...reach)) > Math.abs(Math.min(...reach)) ? Math.max(...reach) : Math.min(...reach);
  if (Math.abs(deep) < 1.8 || distance(a, b) < 8) return [];
  const stretches: readonly (readonly [number, number, number])[] = [
    [0.34, 0.06, 0.5],
    [0.34, 0.58, 0.7],
    [0.68, 0.3, 0.44],
    [0.68, 0.5, 0.92],
  ];
  const commands = stretches.flatMap(([across, from, to]): readonly PathCommand[] => {
    const at = (share: number): Point => along(between(a, b, share), side, deep * across);
    const [start, end] = [at(from), at(to)];
    return isInside(outline, start) && isInside(outline, end) ? segment(start, end) : [];
  });
  return commands.length === 0 ? [] : [path(commands, { stroke: 'thin' })];
}

function dots(
  outline: readonly Point[],
  spacingMm: number,
  radius: number,
  clearMm: number,
): readonly SceneItem[] {
  return dotsInside(outline, spacingMm, clearMm).map((dot) => circle(dot, radius, { fill: 'ink' }));
}

function pebbles(outline: readonly Point[], spacingMm: number, clearMm: number): readonly SceneItem[] {
  return dotsInside(outline, spacingMm, clearMm).map((dot, index) =>
    circle(dot, 0.42 + 0.2 * fraction(index * 0.618034), { stroke: 'thin', fill: 'paper' }),
  );
}

function strokes(
  outline: readonly Point[],
  spacingMm: number,
  way: 'along' | 'every-way',
  clearMm: number,
): readonly SceneItem[] {
  const [a, b] = [outline[0]!, outline[1]!];
  const start = Math.atan2(b.y - a.y, b.x - a.x);
  const commands = dotsInside(outline, spacingMm, clearMm).flatMap((dot, index): readonly PathCommand[] => {
    const unrest = fraction(index * 0.7548776662) - 0.5;
    const angle = start + unrest * (way === 'along' ? 0.5 : Math.PI);
    const half =
      Math.min(0.85, Math.max(0.35, distanceToEdge(outline, dot) - 0.2)) *
      (0.6 + 0.4 * fraction(index * 0.41421356));
    const arm = { x: Math.cos(angle), y: Math.sin(angle) };
    return segment(along(dot, arm, -half), along(dot, arm, half));
  });
  return commands.length === 0 ? [] : [path(commands, { stroke: 'thin' })];
}

/** Two short strokes across a pane, leaning. */
function glint(outline: readonly Point[]): readonly SceneItem[] {
  const xs = outline.map(({ x }) => x);
  const ys = outline.map(({ y }) => y);
  const middle = {
    x: Math.min(...xs) * 0.7 + Math.max(...xs) * 0.3,
    y: (Math.min(...ys) + Math.max(...ys)) / 2,
  };
  const arm = unit({ x: 1, y: -1.3 });
  const pair = [
    { off: -0.9, half: 2.4 },
    { off: 1.1, half: 1.6 },
  ].flatMap(({ off, half }): readonly PathCommand[] => {
    const at = { x: middle.x + off, y: middle.y };
    const ends = [along(at, arm, -half), along(at, arm, half)] as const;
    return ends.every((end) => isInside(outline, end)) ? segment(...ends) : [];
  });
  return pair.length === 0 ? [] : [path(pair, { stroke: 'thin' })];
}

function fraction(value: number): number {
  return value - Math.floor(value);
}
