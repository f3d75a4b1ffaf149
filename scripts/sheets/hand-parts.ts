/** What is still to buy, and the largest build that comes of what is at hand. */
import { list, paragraph } from '../document/build.ts';
import type { Block, Inline } from '../document/document.ts';
import type { Finding } from '../findings/finding.ts';
import { billOfMaterials } from '../structures/bill-of-materials.ts';
import { largestFromHand, type FromHand } from '../structures/from-hand.ts';
import type { BuildPlace } from '../structures/structure.ts';
import { structureOf } from '../structures/structures.ts';
import type { Exhibit } from './names.ts';
import { sayWith } from './say-with.ts';
import type { BuiltProject, SheetContext } from './sheet-context.ts';

export interface HandParts {
  /** `at-hand`, for a record that counts what the builder has. */
  readonly exhibits: readonly (readonly [string, Exhibit])[];
  readonly findings: readonly Finding[];
}

export function handParts(context: SheetContext, built: BuiltProject): HandParts {
  const { project, structure } = built;
  const bill = billOfMaterials(project, structure);
  const counted = bill.lines.filter(({ have }) => have !== undefined);
  if (counted.length === 0) return { exhibits: [], findings: [] };
  const place: BuildPlace = { hemisphere: context.facts.south ? 'south' : 'north' };
  const smaller = structure.versions;
  const largest = smaller && largestFromHand(project, { versions: smaller(), build: structureOf, place });
  const glance = largest ? glanceOf(largest) : [];
  const {
    printer,
    wording: { say },
  } = context;
  const needed = (line: (typeof counted)[number]): readonly Block[] => {
    const { have, toBuy, letter, name } = line;
    const missing = toBuy?.value.kind === 'count' ? toBuy.value.value : 0;
    return [
      paragraph(
        sayWith(say, missing > 0 ? 'at-hand.still' : 'at-hand.enough', {
          letter,
          name,
          have: printer.print(have!),
          toBuy: toBuy ? printer.print(toBuy) : '',
        }),
      ),
    ];
  };
  const short = counted.some(({ toBuy }) => toBuy?.value.kind === 'count' && toBuy.value.value > 0);
  return {
    exhibits: [
      [
        'at-hand',
        {
          wide: true,
          blocks: () => [
            list(false, counted.map(needed)),
            ...(short && smaller ? [paragraph(largestInWords(context, glance))] : []),
          ],
        },
      ],
    ],
    findings: glance,
  };
}

/** What a card shows large, of the smaller build: `at-hand.frame.inside-length`. */
function glanceOf({ structure }: FromHand): readonly Finding[] {
  return structure.glance.map((id) => {
    const finding = structure.findings.find((other) => other.id === id);
    if (!finding) throw new TypeError(`no finding ${id} to show at a glance`);
    return { ...finding, id: `at-hand.${id}` };
  });
}

function largestInWords(
  { printer, wording: { say } }: SheetContext,
  glance: readonly Finding[],
): readonly Inline[] {
  if (glance.length === 0) return sayWith(say, 'at-hand.nothing', {});
  const measures = glance.flatMap((finding, index): (string | Inline)[] => [
    ...(index === 0 ? [] : [', ']),
    printer.print(finding, { style: 'cell' }),
    ` ${say(`glance.${finding.id.slice(finding.id.lastIndexOf('.') + 1)}`)}`,
  ]);
  return [
    ...sayWith(say, 'at-hand.largest', {}),
    { kind: 'text', text: ' ' },
    ...measures.map((word): Inline => (typeof word === 'string' ? { kind: 'text', text: word } : word)),
    { kind: 'text', text: '.' },
  ];
}
