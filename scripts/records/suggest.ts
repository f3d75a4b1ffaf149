import { distance } from 'fastest-levenshtein';

/** What is longer is no mistyped name. */
const longestWord = 100;

/** The known name nearest to a mistyped one, if it is near enough to have been meant. */
export function nearest(word: string, known: Iterable<string>): string | undefined {
  if (word.length > longestWord) return undefined;
  const near = word.length <= 3 ? 1 : Math.max(2, Math.floor(word.length / 3));
  let best: { name: string; cost: number } | undefined;
  for (const name of known) {
    // At least as many letters differ as the lengths do.
    if (Math.abs(name.length - word.length) > near) continue;
    const cost = distance(word.toLowerCase(), name.toLowerCase());
    if (!best || cost < best.cost || (cost === best.cost && name < best.name)) best = { name, cost };
  }
  return best && best.cost <= near ? best.name : undefined;
}

/** `Did you mean “carrot”?`, or the choices when there are few, or `otherwise`. */
export function suggestion(word: string, known: Iterable<string>, otherwise: string): string {
  const names = [...known];
  const near = nearest(word, names);
  if (near !== undefined) return `Did you mean “${near}”?`;
  if (names.length > 0 && names.length <= 12) return `Use one of: ${names.sort().join(', ')}.`;
  return otherwise;
}
