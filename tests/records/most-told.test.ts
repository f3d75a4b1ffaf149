import { expect, test } from 'vitest';
import type { Diagnostic } from '../../scripts/diagnostics/diagnostic.ts';
import { mostTold, mostToldOfOneFile } from '../../scripts/records/most-told.ts';

function faults(count: number, file: string, severity: Diagnostic['severity'] = 'error'): Diagnostic[] {
  return Array.from({ length: count }, (_, index) => ({
    code: 'wrong-value',
    severity,
    message: `Fault ${index + 1}.`,
    hint: 'Mend it.',
    place: { file, line: index + 1, column: 1 },
  }));
}

test('few faults are told as they are', () => {
  const few = [...faults(mostToldOfOneFile, 'a.yaml'), ...faults(3, 'b.yaml')];
  expect(mostTold(few)).toEqual(few);
});

test('of a file that is wrong throughout the first faults are told and the others counted, file by file', () => {
  const told = mostTold([...faults(240_000, 'a.yaml').reverse(), ...faults(2, 'b.yaml')]);
  expect(told).toHaveLength(mostToldOfOneFile + 1 + 2);
  expect(told[0]?.message).toBe('Fault 1.');
  expect(told[mostToldOfOneFile]).toMatchObject({
    message: expect.stringContaining(`at least ${240_000 - mostToldOfOneFile} more`) as string,
    place: { file: 'a.yaml', line: mostToldOfOneFile + 1 },
  });
});

test('an error left out keeps the report from passing as warnings', () => {
  const warnings = faults(mostToldOfOneFile + 1, 'a.yaml', 'warning');
  const [error] = faults(1, 'a.yaml');
  const last: Diagnostic = { ...error!, place: { file: 'a.yaml', line: 9999, column: 1 } };
  expect(mostTold([...warnings, last]).at(-1)?.severity).toBe('error');
});
