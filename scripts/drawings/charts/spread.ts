/** Something that wants to stand at `middle` along a line and takes `size` of it. */
export interface Wish {
  readonly middle: number;
  readonly size: number;
}

/**
 * The middles moved just as far as it takes that nothing overlaps and all stays between `from` and `to`, order kept.
 * Where the whole is longer than the line, it runs on past `to`.
 */
export function spread(wishes: readonly Wish[], from: number, to: number): readonly number[] {
  const order = wishes.map((_, index) => index).sort((a, b) => wishes[a]!.middle - wishes[b]!.middle);
  const middles: number[] = wishes.map(({ middle }) => middle);
  let next = to;
  for (const index of [...order].reverse()) {
    const { size } = wishes[index]!;
    middles[index] = Math.min(middles[index]!, next - size / 2);
    next = middles[index] - size / 2;
  }
  next = from;
  for (const index of order) {
    const { size } = wishes[index]!;
    middles[index] = Math.max(middles[index]!, next + size / 2);
    next = middles[index] + size / 2;
  }
  return middles;
}
