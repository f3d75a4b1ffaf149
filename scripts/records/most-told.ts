import { compareDiagnostics, type Diagnostic } from '../diagnostics/diagnostic.ts';

/** How many faults of one file are told one by one. */
export const mostToldOfOneFile = 50;

/**
 * The first faults of each file, in order of their places, and one line that counts the others: a file that is wrong
 * throughout is mended from its beginning, and a report of a hundred thousand lines tells nobody more. The line that
 * counts is an error where any of those left out is one.
 */
export function mostTold(diagnostics: readonly Diagnostic[]): readonly Diagnostic[] {
  const byFile = new Map<string, Diagnostic[]>();
  for (const diagnostic of diagnostics) {
    const file = diagnostic.place?.file ?? '';
    const known = byFile.get(file);
    if (known) known.push(diagnostic);
    else byFile.set(file, [diagnostic]);
  }
  return [...byFile.values()].flatMap((ofFile) => {
    if (ofFile.length <= mostToldOfOneFile) return ofFile;
    const sorted = [...ofFile].sort(compareDiagnostics);
    const [next, ...others] = sorted.slice(mostToldOfOneFile) as [Diagnostic, ...Diagnostic[]];
    if (others.length === 0) return sorted;
    const left = [next, ...others];
    return [
      ...sorted.slice(0, mostToldOfOneFile),
      {
        ...next,
        severity: left.some(({ severity }) => severity === 'error') ? 'error' : 'warning',
        message: `From here on ${next.place?.file ?? 'the guide'} has at least ${left.length} more faults, which are not told one by one.`,
        hint: 'Mend those above first, and check again.',
      },
    ];
  });
}
