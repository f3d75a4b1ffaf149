/** Widths of the stretches of a text that stay on one line, in points. */
export interface UnitWidths {
  /** Each with the space after it. */
  readonly full: readonly number[];
  /** Each without it: as the last of its line. */
  readonly bare: readonly number[];
}

/** `running` text may end where it ends; the lines of a `heading` are all of about one length. */
export type LastLine = 'running' | 'heading';

/**
 * Indices of the units that begin lines no wider than `width`: of all ways the one with the least sum of squared free
 * space, so that the right edge is as even as it can be; it has no more lines than any other. A last line is no single
 * short word where that can be avoided. A unit wider than the measure has a line of its own.
 *
 * The dynamic programme is written here because the libraries for optimal line breaking set justified text: they look for
 * lines whose spaces stretch least, while in ragged text spaces never stretch and only the free space counts.
 */
export function lineStarts({ full, bare }: UnitWidths, width: number, lastLine: LastLine): number[] {
  const count = full.length;
  const cost = new Array<number>(count + 1).fill(Number.POSITIVE_INFINITY);
  const next = new Array<number>(count + 1).fill(count);
  cost[count] = 0;
  for (let start = count - 1; start >= 0; start -= 1) {
    let used = 0;
    for (let end = start; end < count; end += 1) {
      const lineWidth = used + bare[end]!;
      if (end > start && lineWidth > width + 0.01) break;
      used += full[end]!;
      const line: LineOfText = {
        filled: lineWidth / width,
        units: end - start + 1,
        isFirst: start === 0,
        isLast: end === count - 1,
        dividesWord: full[end] === bare[end],
      };
      const newCost = cost[end + 1]! + lineCost(line, lastLine);
      if (newCost >= cost[start]!) continue;
      [cost[start], next[start]] = [newCost, end + 1];
    }
  }
  const starts: number[] = [];
  for (let start = 0; start < count; start = next[start]!) starts.push(start);
  return starts;
}

interface LineOfText {
  /** Share of the measure. */
  readonly filled: number;
  readonly units: number;
  readonly isFirst: boolean;
  readonly isLast: boolean;
  /** It ends after a hyphen or a slash within a word. */
  readonly dividesWord: boolean;
}

/** A last line shorter than this share of the measure looks like a mistake; a single word, like a larger one. */
const shortLastLine = 0.22;
const shortLastWord = 0.33;
const loneWordCost = 0.3;
const dividedWordCost = 0.04;

function lineCost(line: LineOfText, lastLine: LastLine): number {
  const { filled, units, isFirst, isLast, dividesWord } = line;
  if (!isLast) return (1 - filled) ** 2 + (dividesWord ? dividedWordCost : 0);
  if (isFirst) return 0;
  if (lastLine === 'heading') return (1 - filled) ** 2;
  const lone = units === 1 && filled < shortLastWord ? loneWordCost : 0;
  return lone + Math.max(0, shortLastLine - filled) * 2;
}
