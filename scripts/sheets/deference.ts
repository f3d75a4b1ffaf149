/** What every sheet on building ends with: who is to be asked before the work begins, and who is right in doubt. */
import { heading, list, paragraph } from '../document/build.ts';
import type { Block } from '../document/document.ts';
import type { SheetContext } from './sheet-context.ts';

/** Buried lines, permits and codes, licensed trades and makers' instructions, with what the region's record says of each. */
export function deference({ facts: { region }, printer, wording: { say } }: SheetContext): readonly Block[] {
  const { local } = region;
  if (local) printer.cite(local.sources);
  const lines = [
    local?.locate ? say('deference.locate', local.locate) : say('deference.locate-anywhere'),
    local?.permits ?? say('deference.permits'),
    ...(local?.notes ?? []),
    say('deference.trades'),
    say('deference.makers'),
  ];
  return [
    heading(2, 'local-rules', say('deference.title')),
    list(
      false,
      lines.map((line) => [paragraph(line)]),
    ),
  ];
}
