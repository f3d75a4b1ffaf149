import Type, { type Static } from 'typebox';
import { Words, oneOf, record, ref } from './kit.ts';

/** Front matter of a Markdown file in content/sheets/; the file name is the sheet's id. */
export const SheetSchema = record({
  kind: oneOf(['planting-chart', 'build-card', 'fact-sheet']),
  /** Publication number. */
  number: Type.String({ pattern: '^[A-Za-z0-9][A-Za-z0-9./-]{0,19}$' }),
  /** `{{region}}` prints the region's name. */
  title: Words,
  description: Words,
  /** Only for a build card. */
  project: Type.Optional(ref('project')),
  /** Only for a fact sheet: the crop it is about. */
  crop: Type.Optional(ref('crop')),
  /** The regions it is made for; all of them when absent. */
  regions: Type.Optional(Type.Array(ref('region'), { minItems: 1 })),
});

export type SheetHeader = Static<typeof SheetSchema>;
