/** The fact sheets of crops that are no onions, as composed: what they say in each region, and where a record lacks something. */
import { describe, expect, test } from 'vitest';
import { printSheet } from '../../scripts/document/print.ts';
import { check } from '../../scripts/pipeline.ts';
import { parseQuantity } from '../../scripts/quantities/quantity.ts';
import type { RegionRecord, SheetRecord } from '../../scripts/records/guide.ts';
import { composeSheet } from '../../scripts/sheets/compose.ts';
import { cropFindings } from '../../scripts/sheets/crop-findings.ts';
import { regionFacts } from '../../scripts/sheets/facts.ts';
import { wordingOf } from '../../scripts/sheets/sheet-context.ts';
import { repository } from '../demo/demo-guide.ts';

const { sheets, guide } = await check({ root: repository, builtInRoot: repository });

const regionOf = (id: string): RegionRecord => guide.regions.find((region) => region.id === id)!;
const sheetOf = (id: string): SheetRecord => guide.sheets.find((sheet) => sheet.id === id)!;
const text = (region: string, sheet: string): string =>
  printSheet(
    sheets.find((one) => one.region.id === region && one.sheet.id === sheet)!.composed.document,
  ).replaceAll('\u00A0', ' ');

/** A record with some of its keys left out. */
function without<T extends object>(record: T, keys: readonly string[]): T {
  return Object.fromEntries(Object.entries(record).filter(([key]) => !keys.includes(key))) as T;
}

/** A sheet composed anew for a region or a header that a case changed. */
function composed(sheet: SheetRecord, region: RegionRecord, crops = guide.crops) {
  const facts = regionFacts(region, { crops, year: guide.publisher.year });
  const { document, diagnostics } = composeSheet({
    guide,
    sheet,
    facts,
    wording: wordingOf(guide),
    suggest: () => '',
  });
  return { diagnostics, words: printSheet(document).replaceAll('\u00A0', ' ') };
}

describe('in each region', () => {
  test.each([
    ['larkwether', 'carrots', ['Use a raised bed'], false],
    ['larkwether', 'carrots', ['Suits after some work.', 'Rake them out', 'One long season'], true],
    ['hollowmarl', 'carrots', ['Use a raised bed.', 'Too many', 'Too shallow', 'Heavy'], true],
    ['hollowmarl', 'carrots', ['Shallow end, because the soil is heavy', 'harvested in the heat'], true],
    [
      'gullhammock',
      'carrots',
      ['Suits. Sow in the open ground', 'Deep end, because the soil is light'],
      true,
    ],
    ['gullhammock', 'carrots', ['leave the roots in the ground'], true],
    ['larkwether', 'carrots', ['leave the roots in the ground'], false],
    ['gullhammock', 'snap-peas', ['Rain is enough', 'in the pod'], true],
    ['hollowmarl', 'snap-peas', ['harvested in the heat', 'The sowing for fall'], true],
  ] as const)('%s %s: %j is said: %j', (region, sheet, words, said) => {
    for (const piece of words) expect(text(region, sheet).includes(piece)).toBe(said);
  });

  test.each(guide.regions.flatMap(({ id }) => ['carrots', 'snap-peas'].map((sheet) => [id, sheet] as const)))(
    '%s %s: no table is made of dashes',
    (region, sheet) => {
      const rows = text(region, sheet)
        .split('\n')
        .filter((line) => line.includes(' | '));
      expect(rows.length).toBeGreaterThan(15);
      expect(rows.filter((row) => (row.match(/\| –/g) ?? []).length > 2)).toEqual([]);
    },
  );
});

describe('sowings of the demonstration regions', () => {
  const all = guide.regions.flatMap((region) => {
    const facts = regionFacts(region, { crops: guide.crops, year: guide.publisher.year });
    return facts.crops.flatMap(({ crop, windows }) =>
      cropFindings(crop, { ...facts, windows }).sowings.map(
        ({ season, sowings }) =>
          [`${region.id} ${crop.id} ${season}`, { crop, windows, season, sowings }] as const,
      ),
    );
  });

  test.each(all)('%s: within the window, in order, and no sooner ripe than a quick kind', (_, told) => {
    const { crop, windows, season, sowings } = told;
    const window = windows.find((one) => one.season === season && one.method === 'direct-sow')!.plant.value;
    const days = sowings.map(({ sow, harvest }) => {
      if (sow.value.kind !== 'date' || harvest.value.kind !== 'date')
        throw new TypeError('a sowing has its dates');
      return { sow: sow.value.day, ready: harvest.value.day };
    });
    expect(
      window.kind === 'date-range' && days.every(({ sow }) => sow >= window.from && sow <= window.to),
    ).toBe(true);
    expect(days.every(({ sow }, index) => index === 0 || sow > days[index - 1]!.sow)).toBe(true);
    for (const { sow, ready } of days) expect(ready - sow).toBeGreaterThanOrEqual(crop.maturity.days.low);
  });

  test('snap peas of spring are ready before the heat, and carrots at 45° N need two to three weeks to come up', () => {
    const peas = all.filter(([name]) => name.endsWith('snap-pea spring'));
    expect(peas).toHaveLength(3);
    for (const [, { windows, sowings }] of peas) {
      const heat = windows[0]!.plant.inputs.find(({ name }) => name === 'heat-begins')?.value;
      const last = sowings.at(-1)!.harvest.value;
      if (heat?.kind === 'date') expect(last.kind === 'date' && last.day).toBeLessThan(heat.day);
    }
    const [, carrots] = all.find(([name]) => name === 'larkwether carrot spring')!;
    const { sow, comesUp } = carrots.sowings[0]!;
    if (sow.value.kind !== 'date' || comesUp.value.kind !== 'date-range')
      throw new TypeError('carrots come up');
    expect(comesUp.value.from - sow.value.day).toBeGreaterThanOrEqual(14);
    expect(comesUp.value.to - sow.value.day).toBeLessThanOrEqual(24);
  });
});

describe('where a record lacks something', () => {
  const bare = without(regionOf('hollowmarl'), ['temperatureData', 'temperatures', 'soil']);

  test('a region without temperatures and soil has sentences in place of tables', () => {
    const { words, diagnostics } = composed(sheetOf('carrots'), bare);
    expect(diagnostics).toEqual([]);
    expect(words).toContain('The record of Hollowmarl County gives no temperatures');
    expect(words).toContain('The record of Hollowmarl County does not describe its soil');
    expect(words).toContain('The record of Hollowmarl County gives no rain');
    expect(words).toContain('1–1½ in');
  });

  test('a crop without an interval, a yield, a seed rate or soil needs says so', () => {
    const lacking = ['succession', 'yieldPer100Ft', 'seedPer100Ft', 'soil'];
    const plain = guide.crops.map((crop) => (crop.id === 'carrot' ? without(crop, lacking) : crop));
    const { words, diagnostics } = composed(sheetOf('carrots'), regionOf('larkwether'), plain);
    expect(diagnostics).toEqual([]);
    expect(words).toContain('No interval between sowings was found for carrots');
    expect(words).toContain('No published yield was found');
    expect(words).toContain('No published weight of seed');
    expect(words).toContain('What carrots need of the soil is not on record');
  });

  test('a sheet may tell of another length of row', () => {
    const rowLength = parseQuantity('100 ft', 'length');
    if ('fault' in rowLength) throw new TypeError(rowLength.fault);
    const { words } = composed({ ...sheetOf('carrots'), rowLength }, regionOf('larkwether'));
    expect(words).toContain('A row of 100 ft');
    expect(words).toContain('75–100 lb');
    expect(words).toContain('400–600');
  });
});
