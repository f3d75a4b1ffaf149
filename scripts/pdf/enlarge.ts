import type { Step } from '../document/document.ts';
import { itemHeight, type Enlarging, type Group, type Item, type Piece } from './items.ts';
import type { PageHeights, Placement } from './paginate.ts';

/** Less than this is no gain to the eye, and the drawing stays beside the words. */
const leastGain = 1.1;

/**
 * How large the drawings of steps can be drawn under their words in the room that the pages leave, as multiples of their
 * natural size. The steps of one page share its room alike, so that their drawings have one scale; where that is too
 * little for all of them, those that cost the most stay as they are. Steps of which nothing is gained are left out, and
 * so are pages. A page each, from the first on.
 */
export function enlargedDrawings(
  items: readonly Item[],
  placements: readonly Placement[],
  { first, later }: PageHeights,
): readonly ReadonlyMap<Step, number>[] {
  const steps = stepsOf(items);
  if (steps.length === 0) return [];
  const pageOf = new Map(
    placements.filter(({ repeated }) => !repeated).map(({ piece, page }) => [piece, page]),
  );
  const bottoms = new Map<number, number>();
  for (const { page, top, piece } of placements)
    bottoms.set(page, Math.max(bottoms.get(page) ?? 0, top + piece.height));
  return [...bottoms]
    .sort(([a], [b]) => a - b)
    .map(([page, bottom]) => {
      const ofPage = steps.filter((step) => pageOfWhole(step, pageOf) === page);
      const room = (page === 0 ? first : later) - bottom;
      return new Map(sharedScale(ofPage, room));
    })
    .filter(({ size }) => size > 0);
}

interface Enlargeable {
  readonly group: Group;
  readonly enlarging: Enlarging;
}

function stepsOf(items: readonly Item[]): readonly Enlargeable[] {
  return items.flatMap((item): readonly Enlargeable[] => {
    if (item.kind !== 'group') return [];
    return item.enlarging ? [{ group: item, enlarging: item.enlarging }] : stepsOf(item.items);
  });
}

/** The page that holds all of a step; undefined where it runs over two. */
function pageOfWhole({ group }: Enlargeable, pageOf: ReadonlyMap<Piece, number>): number | undefined {
  const pages = new Set(piecesOf(group).map((piece) => pageOf.get(piece)));
  return pages.size === 1 ? [...pages][0] : undefined;
}

function piecesOf(item: Item): readonly Piece[] {
  switch (item.kind) {
    case 'piece':
      return [item];
    case 'columns':
      return item.columns.flatMap((flow) => flow.flatMap(piecesOf));
    case 'group':
    case 'column-text':
      return item.items.flatMap(piecesOf);
    case 'break':
      return [];
  }
}

/** The largest scale at which the drawings of some steps of a page fit under their words in the room it leaves. */
function sharedScale(steps: readonly Enlargeable[], room: number): readonly (readonly [Step, number])[] {
  let candidates = steps.filter(({ enlarging }) => enlarging.most >= leastGain);
  while (candidates.length > 0) {
    const scale = largestScale(candidates, room);
    if (scale >= leastGain) {
      return candidates.map(({ enlarging }) => [enlarging.step, Math.min(scale, enlarging.most)]);
    }
    const dearest = Math.max(...candidates.map((step) => cost(step, leastGain)));
    candidates = candidates.filter((step) => cost(step, leastGain) < dearest);
  }
  return [];
}

function largestScale(steps: readonly Enlargeable[], room: number): number {
  const fits = (scale: number): boolean =>
    steps.reduce((sum, step) => sum + cost(step, Math.min(scale, step.enlarging.most)), 0) <= room;
  let [low, high] = [0, Math.max(...steps.map(({ enlarging }) => enlarging.most))];
  if (fits(high)) return high;
  while (high - low > 0.01) {
    const middle = (low + high) / 2;
    if (fits(middle)) low = middle;
    else high = middle;
  }
  return low;
}

/** By how much a step grows with its drawing under its words. */
function cost({ group, enlarging }: Enlargeable, scale: number): number {
  return enlarging.wordsHeight() + enlarging.gap + scale * enlarging.drawingHeight - itemHeight(group);
}
