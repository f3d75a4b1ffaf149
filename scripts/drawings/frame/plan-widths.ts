/** How the widths of sashes are written along the plan, so that their words do not run into each other. */
import type { PlacedSash } from '../../structures/geometry.ts';
import { wordsSize, type LengthWords } from '../dimension.ts';
import type { FrameWords } from './words.ts';

export interface SashWidth {
  readonly fromX: number;
  readonly toX: number;
  readonly words: LengthWords;
  /** Row of the dimension, 0 nearest to the wall. */
  readonly level: 0 | 1;
}

/** Room on either side of words. */
const asideMm = 0.8;

/**
 * Each sash by itself where that fits; a width whose words are wider than its sash goes to a second row. Where those would
 * meet, sashes of one width that lie side by side are measured together. Nothing where that does not fit either: then the
 * table of sashes has the sizes.
 */
export function sashWidths(
  sashes: readonly PlacedSash[],
  words: FrameWords,
  scale: number,
): readonly SashWidth[] {
  const single = sashes.map(({ x, widthMm }) => spanOf(x, x + widthMm, words.length(widthMm), scale));
  if (fits(single, scale)) return single;
  const alike = runsOf(sashes).map((run) => {
    const { x, widthMm } = run[0]!;
    return spanOf(x, x + run.length * widthMm, timesWords(run.length, words.length(widthMm)), scale);
  });
  return fits(alike, scale) ? alike : [];
}

function spanOf(fromX: number, toX: number, words: LengthWords, scale: number): SashWidth {
  const room = (toX - fromX) * scale - 2 * asideMm;
  return { fromX, toX, words, level: wordsSize(words).width <= room ? 0 : 1 };
}

/** Whether no two words of the second row meet; those of the first stay within their own sashes. */
function fits(spans: readonly SashWidth[], scale: number): boolean {
  const raised = spans.filter(({ level }) => level === 1);
  return raised.every((span, index) => {
    const next = raised[index + 1];
    if (!next) return true;
    const apart = ((next.fromX + next.toX - span.fromX - span.toX) / 2) * scale;
    return apart >= (wordsSize(span.words).width + wordsSize(next.words).width) / 2 + 2 * asideMm;
  });
}

function runsOf(sashes: readonly PlacedSash[]): readonly (readonly PlacedSash[])[] {
  const runs: PlacedSash[][] = [];
  for (const sash of sashes) {
    const last = runs.at(-1);
    if (last && Math.abs(last[0]!.widthMm - sash.widthMm) < 0.5) last.push(sash);
    else runs.push([sash]);
  }
  return runs;
}

function timesWords(number: number, { first, ...rest }: LengthWords): LengthWords {
  return { ...rest, first: number === 1 ? first : `${number} × ${first}` };
}
