/** What the drawings of a cold frame are told in words, ready-made in the sheet's language. */
import type { SayLength } from '../dimension.ts';

export interface FrameWords {
  /** The letter at a north arrow. */
  readonly north: string;
  /** At the two ends of the section. */
  readonly south: string;
  readonly sun: string;
  /** In the planting mix of the section, where there is room. */
  readonly plantingMix?: string;
  /** Under the ground line of the section. */
  readonly ground?: string;
  /** Above the length by which a sash lies on a wall. */
  readonly bearing?: string;
  /** An angle in degrees. */
  readonly angle: (degrees: number) => string;
  readonly length: SayLength;
}

/** Letters by which the parts go in the list of parts; a part without one is drawn without a balloon. */
export type PartLetters = Readonly<
  Partial<
    Record<
      | 'bales'
      | 'stakes'
      | 'sashes'
      | 'props'
      | 'loose-straw-bales'
      | 'soil-litres'
      | 'hold-downs'
      | 'weight-boards'
      | 'twine'
      | 'hinges'
      | 'screens'
      | 'straps'
      | 'hooks'
      | 'pane-covers'
      | 'filler-boards'
      | 'hinge-board'
      | 'rest-board',
      string
    >
  >
>;

/** A row of plants across the bed. */
export interface SownRow {
  /** From the inside of the poleward wall. */
  readonly distanceFromPolewardMm: number;
  readonly plantSpacingMm: number;
  readonly tall: boolean;
  /** The letter of its seed in the list of parts. */
  readonly letter?: string;
}
