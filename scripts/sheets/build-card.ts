import type { SheetContext, SheetParts } from './sheet-context.ts';

export function buildCardParts(_context: SheetContext): SheetParts {
  return { exhibits: new Map() };
}
