/** What the drawings of a build are told in words, ready-made in the sheet's language. */
import type { LengthWords } from '../dimension.ts';

export interface BuildWords {
  /** The letter at a north arrow, and at the north end of a section. */
  readonly north: string;
  /** The letter at the south end of a section. */
  readonly south: string;
  /** At the sun of a section. */
  readonly sun?: string;
  /** Under the ground line. */
  readonly ground?: string;
  /** Beside the mark on the plan that shows where the section is cut. */
  readonly cut?: string;
  /** The value of a finding, by its id, as it stands at a dimension line. */
  readonly measure: (findingId: string) => LengthWords;
}

/** Letters by which roles go in the list of parts; a role without one is drawn without a balloon. */
export type RoleLetters = Readonly<Partial<Record<string, string>>>;

/** What each drawing tells someone who does not see it. None may be empty. */
export interface BuildAlternatives {
  readonly plan: string;
  readonly elevation: string;
  readonly section: string;
  readonly step: (stage: string) => string;
}
