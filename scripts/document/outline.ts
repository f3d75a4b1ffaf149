import type { Block } from './document.ts';

/**
 * The level of the headings that each block makes, so that levels never skip on the way down: a section heading
 * as the document has it, but at most one below the heading before it; titles of steps and of caution boxes one
 * below the section they stand in. The sheet's title is level 1.
 */
export function headingLevels(blocks: readonly Block[]): ReadonlyMap<Block, number> {
  const levels = new Map<Block, number>();
  assignLevels(blocks, 1, levels);
  return levels;
}

/** Blocks inside blocks, whichever kind holds them, in reading order. */
export function innerBlocks(block: Block): readonly Block[] {
  switch (block.kind) {
    case 'beside':
      return [...block.aside, ...block.main];
    case 'wide':
    case 'together':
      return block.content;
    case 'list':
      return block.items.flat();
    case 'steps':
      return block.items.flatMap((step) => step.body);
    case 'heading':
    case 'paragraph':
    case 'checklist':
    case 'table':
    case 'figure':
    case 'caution':
    case 'caution-box':
    case 'key-numbers':
    case 'labels':
    case 'doer':
    case 'worksheet':
    case 'workings':
    case 'sources':
    case 'page-break':
      return [];
  }
}

/** Returns the level of the section in which the next block stands. */
function assignLevels(blocks: readonly Block[], above: number, levels: Map<Block, number>): number {
  let section = above;
  for (const block of blocks) {
    const below = Math.min(section + 1, 6);
    if (block.kind === 'heading') {
      section = Math.min(block.level, below);
      levels.set(block, section);
    } else if (block.kind === 'steps') {
      levels.set(block, below);
      assignLevels(innerBlocks(block), below, levels);
    } else if (block.kind === 'caution-box') {
      levels.set(block, below);
    } else {
      section = assignLevels(innerBlocks(block), section, levels);
    }
  }
  return section;
}
