import type { Design } from '../document/design.ts';
import type { Block } from '../document/document.ts';

/** Space between two blocks of one column, in points; the baseline step of the design is the measure. */
export function spaceBetween(
  above: Block | undefined,
  below: Block,
  design: Design,
  listDepth: number,
): number {
  const last = above && lastInside(above);
  const first = firstInside(below);
  if (!last || last.kind === 'page-break' || !first) return 0;
  const tight = listDepth > 0 && isProse(last) && isProse(first);
  return design.grid.baselinePt * (tight ? 1 / 4 : baselinesBetween(last, first));
}

function baselinesBetween(above: Block, below: Block): number {
  if (below.kind === 'heading') return above.kind === 'heading' ? 1 / 2 : beforeHeading[below.level];
  if (above.kind === 'heading') return isProse(below) ? afterHeading[above.level] : 1 / 2;
  if (isProse(above) && isProse(below)) return 1 / 2;
  return 1;
}

const beforeHeading = { 2: 2, 3: 5 / 4, 4: 3 / 4 } as const;
const afterHeading = { 2: 1 / 3, 3: 1 / 6, 4: 0 } as const;

const isProse = ({ kind }: Block): boolean =>
  kind === 'paragraph' || kind === 'doer' || kind === 'list' || kind === 'checklist';

/** The block whose space counts: a container has none of its own. */
function firstInside(block: Block): Block | undefined {
  const inner = contentOf(block)?.[0];
  return inner ? firstInside(inner) : block;
}

function lastInside(block: Block): Block | undefined {
  const inner = contentOf(block)?.at(-1);
  return inner ? lastInside(inner) : block;
}

function contentOf(block: Block): readonly Block[] | undefined {
  if (block.kind === 'wide' || block.kind === 'together') return block.content;
  return block.kind === 'beside' ? block.main : undefined;
}
