/** Shares a width by weight, but gives no column less than it needs as long as there is enough for all. */
export function sharedWidths(least: readonly number[], weights: readonly number[], room: number): number[] {
  if (sum(least) >= room) return least.map((width) => (width / sum(least)) * room);
  const fixed = new Set<number>();
  for (;;) {
    const free = room - sum(least.filter((_, index) => fixed.has(index)));
    const share = free / sum(weights.filter((_, index) => !fixed.has(index)));
    const tooNarrow = least.findIndex((width, index) => !fixed.has(index) && weights[index]! * share < width);
    if (tooNarrow < 0)
      return least.map((width, index) => (fixed.has(index) ? width : weights[index]! * share));
    fixed.add(tooNarrow);
  }
}

const sum = (numbers: readonly number[]): number => numbers.reduce((a, b) => a + b, 0);
