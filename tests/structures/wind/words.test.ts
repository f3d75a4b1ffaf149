/**
 * Every word that findings of wind, lifting and heat are told with stands in the phrases, and every source in the
 * records.
 */
import { readFileSync, readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { heatBands } from '../../../scripts/climate/heat-index.ts';
import { heatOfMonths } from '../../../scripts/climate/heat-of-months.ts';
import type { Finding, FindingValue } from '../../../scripts/findings/finding.ts';
import { liftFindings } from '../../../scripts/structures/lifting/lift-findings.ts';
import { sashWindFindings } from '../../../scripts/structures/wind/sash-wind-findings.ts';
import { regionWind } from '../../../scripts/structures/wind/velocity-pressure.ts';

const content = fileURLToPath(new URL('../../../content/', import.meta.url));
const read = (path: string): unknown => parse(readFileSync(`${content}${path}`, 'utf8'));
const { phrases } = read('languages/en.yaml') as { phrases: Record<string, unknown> };
const sources = new Set(
  readdirSync(content)
    .filter((name) => /^sources.*\.yaml$/.test(name))
    .flatMap((name) => (read(name) as { id: string }[]).map(({ id }) => id)),
);

/** From a place in the record of the tests themselves. */
const ofTheRecord = new Set(['a-station']);

const year = (value: number): number[] => Array.from({ length: 12 }, () => value);
const body = { areaM2: 1, widthM: 1, lengthM: 1, slopeDeg: 5, openAngleDeg: 20 };
const gust = { dimension: 'speed', low: 20, high: 20, written: '20 mps' } as const;
const findings: readonly Finding[] = [
  ...(['none', 'top', 'side'] as const).flatMap((hinged) =>
    [5, 500].flatMap((massKg) =>
      [regionWind(undefined), regionWind({ gust, source: 'a-station' })].flatMap((wind) => [
        wind.gust,
        wind.pressure,
        ...sashWindFindings({ ...body, hinged, massKg }, { id: 'frame.sash-a', wind }),
        ...(hinged === 'top'
          ? sashWindFindings(
              { ...body, hinged, massKg },
              { id: 'frame.lid', wind, frame: { massKg: 40, depthM: 1, lids: 2, backHoldDownN: 100 } },
            )
          : []),
      ]),
    ),
  ),
  ...(['good', 'fair', 'poor'] as const).flatMap((grip) =>
    (['up-to-1-hour', '1-to-2-hours', '2-to-8-hours'] as const).flatMap((time) =>
      [1, 12, 90].flatMap((kg) =>
        [0.1, 2].flatMap((depthM) =>
          liftFindings(
            { massKg: { low: kg, high: kg }, depthM, fromM: 0.7, toM: 0.8, grip, time },
            { id: 'frame.sash-a' },
          ),
        ),
      ),
    ),
  ),
  ...[undefined, { minimumC: year(10), maximumC: year(35), source: 'a-station' }].flatMap((climate) =>
    heatOfMonths(climate).flatMap(({ humidity, index, band }) => [humidity, index, band]),
  ),
];

function wordsOf(value: FindingValue): string[] {
  if (value.kind === 'choice') return [`choice.${value.value}`];
  return value.kind === 'none' ? [`none.${value.reason}`] : [];
}

function phrase(key: string): unknown {
  return key
    .split('.')
    .reduce<unknown>((at, part) => (at as Record<string, unknown> | undefined)?.[part], phrases);
}

describe('every finding can be told', () => {
  const keys = findings.flatMap(({ id, value, method, inputs }) => [
    `method.${method}.title`,
    `method.${method}.text`,
    ...(id.startsWith('frame.sash-a.') ? [`finding.sash-what.${id.slice('frame.sash-a.'.length)}`] : []),
    ...wordsOf(value),
    ...inputs.flatMap((input) => [`input.${input.name}`, ...wordsOf(input.value)]),
  ]);
  test.each([...new Set([...keys, ...heatBands.map((band) => `choice.heat-${band}`)])].sort())(
    '%s',
    (key) => {
      expect(typeof phrase(key)).toBe('string');
    },
  );
});

test('every source of theirs is on record', () => {
  const cited = new Set(findings.flatMap((finding) => finding.sources));
  expect([...cited].filter((id) => !sources.has(id) && !ofTheRecord.has(id))).toEqual([]);
  expect(cited.size).toBeGreaterThan(8);
});
