import { describe, expect, test } from 'vitest';
import { mostAliasedValues } from '../../scripts/records/yaml-tree.ts';
import { parseYaml } from '../../scripts/records/yaml-file.ts';

describe('what is well-formed and yet no record', () => {
  const cases: [string, string, string, number, number][] = [
    ['a key twice', 'a: 1\na: 2\n', 'duplicate-key', 2, 1],
    ['a key with and without quotation marks', 'a:\n  10: x\n  "10": y\n', 'duplicate-key', 3, 3],
    ['a key by its value, not its spelling', '0x10: x\n16: y\n', 'duplicate-key', 2, 1],
    ['a list as a key', '? [a]\n: b\n', 'yaml-syntax', 1, 3],
    ['an alias of nothing', 'a: *b\n', 'yaml-syntax', 1, 4],
    ['an alias before its anchor', 'a: *b\nc: &b 1\n', 'yaml-syntax', 1, 4],
    ['an alias inside its own value', 'a: &b\n  c: *b\n', 'yaml-alias-bomb', 2, 6],
    [
      'one alias for a large value',
      `a: &b [${'x, '.repeat(mostAliasedValues)}]\nc: *b\n`,
      'yaml-alias-bomb',
      2,
      4,
    ],
    ['brackets without end', '['.repeat(100_000), 'yaml-syntax', 1, 1],
  ];
  test.each(cases)('%s', (_, text, code, line, column) => {
    const { file, diagnostics } = parseYaml('x.yaml', text);
    expect(file).toBeUndefined();
    expect(diagnostics).toHaveLength(1);
    expect(diagnostics[0]).toMatchObject({ code, place: { file: 'x.yaml', line, column } });
  });
});

test('an alias stands for the nearest value of its name before it', () => {
  const { file } = parseYaml('x.yaml', 'a: &n 1\nb: *n\nc: &n { d: [2] }\ne: *n\n');
  expect(file?.value).toEqual({ a: 1, b: 1, c: { d: [2] }, e: { d: [2] } });
  expect(file?.placeOf('/e/d/0')).toEqual({ file: 'x.yaml', line: 3, column: 13 });
});

test('one text may be repeated as often as a record needs it', () => {
  const { file } = parseYaml('x.yaml', `a: &n x\nb: [${'*n, '.repeat(500)}]\n`);
  expect((file?.value as { b: string[] }).b).toHaveLength(500);
});

test('a key that objects have of themselves is a key like others', () => {
  const { file } = parseYaml('x.yaml', '__proto__: { a: 1 }\nconstructor: 2\n');
  expect(Object.keys(file?.value as object)).toEqual(['__proto__', 'constructor']);
});
