/** What the front matter of a segment companion sheet has beyond that of other sheets. */
import Type, { type Static } from 'typebox';
import { Prose, Words, record, ref } from './kit.ts';

export const airtimePattern = '^[0-9]{1,2}:[0-5][0-9]$';

/** Minutes and seconds on air: `0:45`, `12:30`. */
const Airtime = Type.String({ pattern: airtimePattern });

const Beat = record({
  length: Airtime,
  /** What is seen. */
  picture: Words,
  /** What is said. Inline Markdown; `{{name}}` prints a finding. */
  say: Prose,
  /** Words over the picture, as a viewer reads them; inline Markdown like `say`. */
  caption: Type.Optional(Prose),
  /** The steps of the project that it shows, by their numbers from 1. */
  steps: Type.Optional(Type.Array(Type.Integer({ minimum: 1 }), { minItems: 1, maxItems: 20 })),
  /** What it uses and does beyond those steps, or where the segment has no project: the cautions of each are added. */
  tools: Type.Optional(Type.Array(ref('tool'), { minItems: 1, maxItems: 12 })),
  materials: Type.Optional(Type.Array(ref('material'), { minItems: 1, maxItems: 12 })),
  actions: Type.Optional(Type.Array(ref('action'), { minItems: 1, maxItems: 12 })),
});

/** Only for a segment companion sheet. */
export const companionFields = {
  /** How long the segment runs; the lengths of its beats add up to it. */
  runs: Type.Optional(Airtime),
  beats: Type.Optional(Type.Array(Beat, { minItems: 1, maxItems: 40 })),
};

export type SegmentBeat = Static<typeof Beat>;

/** Seconds of a length such as `1:05`. */
export function secondsOf(length: string): number {
  const [minutes = 0, seconds = 0] = length.split(':').map(Number);
  return minutes * 60 + seconds;
}

/** `1:05` */
export function airtime(seconds: number): string {
  return `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`;
}
