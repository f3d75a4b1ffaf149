import Type, { type Static } from 'typebox';
import { classFields } from './class-handout.ts';
import { companionFields } from './companion-sheet.ts';
import { Words, oneOf, quantityOf, record, ref } from './kit.ts';

/** Front matter of a Markdown file in content/sheets/; the file name is the sheet's id. */
export const SheetSchema = record({
  kind: oneOf([
    'planting-chart',
    'build-card',
    'fact-sheet',
    'climate-sheet',
    'class-handout',
    'companion-sheet',
  ]),
  /** Publication number. */
  number: Type.String({ pattern: '^[A-Za-z0-9][A-Za-z0-9./-]{0,19}$' }),
  /** `{{region}}` prints the region's name. */
  title: Words,
  description: Words,
  /** Only for a build card, a class handout and a companion sheet. */
  project: Type.Optional(ref('project')),
  /** Only for a fact sheet: the crop it is about. */
  crop: Type.Optional(ref('crop')),
  /** Only for a fact sheet: the length of row that seed and yield are told for; 10 ft when absent. */
  rowLength: Type.Optional(
    quantityOf('length', { example: '25 ft', single: true, atLeast: 300, atMost: 1_000_000 }),
  ),
  /** What its readers will use and do: the cautions of each are added. A build card takes them from its project. */
  tools: Type.Optional(Type.Array(ref('tool'), { minItems: 1, maxItems: 12 })),
  materials: Type.Optional(Type.Array(ref('material'), { minItems: 1, maxItems: 12 })),
  actions: Type.Optional(Type.Array(ref('action'), { minItems: 1, maxItems: 12 })),
  ...classFields,
  ...companionFields,
  /** Meant for one page: the build tells by how much it is too long. Nothing is made smaller for it. */
  fit: Type.Optional(oneOf(['one-page'])),
  /** The regions it is made for; all of them when absent. */
  regions: Type.Optional(Type.Array(ref('region'), { minItems: 1 })),
});

export type SheetHeader = Static<typeof SheetSchema>;
