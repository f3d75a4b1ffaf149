import { distance } from 'fastest-levenshtein';

/** The known name nearest to a mistyped one, if it is near enough to have been meant. */
export function nearest(word: string, known: Iterable<string>): string | undefined {
  let best: { name: string; cost: number } | undefined;
  for (const name of known) {
    const cost = distance(word.toLowerCase(), name.toLowerCase());
    if (!best || cost < best.cost || (cost === best.cost && name < best.name)) best = { name, cost };
  }
  const near = word.length <= 3 ? 1 : Math.max(2, Math.floor(word.length / 3));
  return best && best.cost <= near ? best.name : undefined;
}

/** `Did you mean “carrot”?`, or the choices when there are few, or `otherwise`. */
export function suggestion(word: string, known: Iterable<string>, otherwise: string): string {
  const names = [...known].sort();
  const near = nearest(word, names);
  if (near !== undefined) return `Did you mean “${near}”?`;
  if (names.length > 0 && names.length <= 12) return `Use one of: ${names.join(', ')}.`;
  return otherwise;
}
