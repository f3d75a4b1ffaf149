/** What the build card of a lumber cold frame has of its own: how the sloped pieces lie on their board. */
import { figure } from '../document/build.ts';
import type { Block } from '../document/document.ts';
import { slopeCut } from '../drawings/build/slope-cut.ts';
import { assemblyParts } from './assembly-parts.ts';
import type { KindParts } from './kind-parts.ts';
import type { BuiltProject, SheetContext } from './sheet-context.ts';

/** The drawings of its assembly, and the exhibit `slope-layout`. */
export function lumberFrameParts(context: SheetContext, built: BuiltProject): KindParts {
  const { drawings, exhibits } = assemblyParts(context, built);
  return {
    drawings,
    exhibits: [...exhibits, ['slope-layout', { wide: true, blocks: () => [slopeLayout(context, built)] }]],
  };
}

function slopeLayout({ wording, printer }: SheetContext, { structure }: BuiltProject): Block {
  const { say, measures } = wording;
  const finding = (name: string) => structure.findings.find(({ id }) => id === `frame.${name}`)!;
  const mm = (name: string): number => {
    const { value } = finding(name);
    return value.kind === 'quantity' ? value.value : 0;
  };
  const [lengthMm, lowMm, highMm] = [mm('side-board'), mm('slope-low'), mm('slope-high')];
  const boards = finding('slope-boards').value;
  const onOne = boards.kind === 'count' && boards.value === 1;
  printer.print(finding('slope-boards'), { style: 'cell' });
  const options = {
    id: 'slope-layout',
    lengthMm,
    widthMm: mm('slope-board-width'),
    lowMm,
    highMm,
    pieces: onOne ? (2 as const) : (1 as const),
    words: {
      length: measures.lengthOnDrawing(lengthMm),
      low: { first: measures.onDrawing(lowMm) },
      high: measures.lengthOnDrawing(highMm),
      piece: say('piece.lumber-cold-frame.slope-board'),
    },
    alternative: say('build.slope-alternative', {
      pieces: onOne ? 2 : 1,
      length: measures.both('length', lengthMm),
      low: measures.both('length', lowMm),
      high: measures.both('length', highMm),
    }),
  };
  return figure(slopeCut(options), {
    caption: say('build.slope-caption', { pieces: onOne ? 2 : 1 }),
    narrow: slopeCut({ ...options, id: 'slope-layout-narrow', pageMm: 92 }),
  });
}
