import type { Audience, CautionRecord } from '../records/schemas/hazard.ts';

/** A caution in the words for one audience. The signal word and the sources are those of the record, for everyone. */
export interface WordedCaution {
  /** The hazard in a word or two, for lists. */
  readonly title: string;
  /** The hazard and what it does; inline Markdown. */
  readonly hazard: string;
  /** What to do; inline Markdown. */
  readonly avoidance: string;
}

/** The words of a caution for an audience; where its record has none for it, those for adults stand. */
export function wordedFor(caution: CautionRecord, audience: Audience = 'adults'): WordedCaution {
  const own = audience === 'adults' ? undefined : caution.wordings?.[audience];
  const { hazard, avoidance } = own ?? caution;
  return { title: own?.title ?? caution.title, hazard, avoidance };
}
