/** The panes of a sash as they are drawn: a grid, with hatching over the places of missing ones. */
import type { PlacedSash } from '../../structures/geometry.ts';
import { hatchLines } from '../hatch.ts';
import { path, polygon, segment, subtract, type Point } from '../path.ts';
import type { SceneItem } from '../scene.ts';

/** How wide the wood round the glass is, so that the glass has its share of the area. */
export function railMm({
  widthMm,
  lengthMm,
  glassShare,
}: Pick<PlacedSash, 'widthMm' | 'lengthMm' | 'glassShare'>): number {
  const half = (widthMm + lengthMm) / 4;
  return half - Math.sqrt(half ** 2 - (widthMm * lengthMm * (1 - glassShare)) / 4);
}

/** Columns and rows of panes a little higher than wide; two, one over the other, where the record does not count them. */
export function paneGrid({ panes, widthMm, lengthMm }: PlacedSash): {
  readonly columns: number;
  readonly rows: number;
} {
  const { number } = panes;
  if (number === undefined) return { columns: 1, rows: panes.kind === 'glass' ? 2 : 1 };
  const choices = Array.from({ length: number }, (_, index) => index + 1)
    .filter((columns) => number % columns === 0)
    .map((columns) => ({ columns, rows: number / columns }));
  const shape = ({ columns, rows }: { columns: number; rows: number }): number =>
    Math.abs(Math.log((lengthMm * columns) / (widthMm * rows) / 1.25));
  return choices.reduce((best, choice) => (shape(choice) < shape(best) ? choice : best));
}

/**
 * Every pane by its corners on the page (lower left, lower right, upper right, upper left), the lowest row first. `spot`
 * places a share of the sash's width from the west and a share of its length from the low end.
 */
export function panesOf(
  sash: PlacedSash,
  spot: (across: number, up: number) => Point,
): readonly (readonly Point[])[] {
  const { columns, rows } = paneGrid(sash);
  const rail = railMm(sash);
  const cells = (count: number, lengthMm: number): readonly (readonly [number, number])[] => {
    const [edge, bar] = [rail / lengthMm, rail / lengthMm / 2];
    const free = (1 - 2 * edge - (count - 1) * bar) / count;
    return Array.from({ length: count }, (_, index) => {
      const from = edge + index * (free + bar);
      return [from, from + free] as const;
    });
  };
  return cells(rows, sash.lengthMm).flatMap(([low, high]) =>
    cells(columns, sash.widthMm).map(([west, east]) => [
      spot(west, low),
      spot(east, low),
      spot(east, high),
      spot(west, high),
    ]),
  );
}

/** Glass has a glint, film and sheet have none; a covered place is hatched. */
export function paneItems(
  sash: PlacedSash,
  panes: readonly (readonly Point[])[],
  weight: 'added' | 'standing',
): readonly SceneItem[] {
  const { kind, missing } = sash.panes;
  const stroke = weight === 'added' ? 'seen' : 'thin';
  return panes.flatMap((pane, index) => {
    const covered = index < missing;
    const hatch = covered ? hatchLines(pane, { angleDeg: 45, spacingMm: 1.1 }) : [];
    return [
      path(polygon(pane), { fill: covered ? 'tint' : 'paper', stroke }),
      ...(hatch.length > 0 ? [path(hatch, { stroke: 'thin' })] : []),
      ...(!covered && kind === 'glass' && weight === 'added' ? [glint(pane)] : []),
    ];
  });
}

/** The place of a missing pane, for a letter to point at. */
export function coveredPane(
  sash: PlacedSash,
  panes: readonly (readonly Point[])[],
): readonly Point[] | undefined {
  return sash.panes.missing > 0 ? panes[0] : undefined;
}

/** Two short strokes across the upper corner of a pane. */
function glint(pane: readonly Point[]): SceneItem {
  const [bottomLeft, , topRight, topLeft] = pane as [Point, Point, Point, Point];
  const right = subtract(topRight, topLeft);
  const down = subtract(bottomLeft, topLeft);
  const inside = (across: number, below: number): Point => ({
    x: topLeft.x + right.x * across + down.x * below,
    y: topLeft.y + right.y * across + down.y * below,
  });
  return path(
    [...segment(inside(0.18, 0.72), inside(0.42, 0.2)), ...segment(inside(0.32, 0.72), inside(0.5, 0.32))],
    { stroke: 'thin' },
  );
}
