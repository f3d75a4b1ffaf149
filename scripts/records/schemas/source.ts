import Type, { type Static } from 'typebox';
import { Id, Prose, oneOf, record } from './kit.ts';

export const SourceSchema = record({
  id: Id,
  /** As printed: author, title, publisher, year. */
  cite: Prose,
  url: Type.Optional(Type.String({ pattern: '^https?://[^\\s]+$', maxLength: 300 })),
  /** `published`; `common-practice` for what gardeners usually do; `invented` for demonstration data. */
  kind: oneOf(['published', 'common-practice', 'invented']),
  /** How the figure reached this guide: read in the source, read in a reprint, or written from memory. */
  seen: oneOf(['source', 'reprint', 'memory', 'not-applicable']),
});

export type Source = Static<typeof SourceSchema>;
