/** A region south of the equator through the whole of a build: the year turns, and so does the frame. */
import { cp, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { formatReport } from '../../scripts/diagnostics/diagnostic.ts';
import { printSheet } from '../../scripts/document/print.ts';
import { check, type CheckResult } from '../../scripts/pipeline.ts';
import { repository } from '../demo/demo-guide.ts';

let root: string;
let result: CheckResult;

beforeAll(async () => {
  root = await mkdtemp(join(tmpdir(), 'groundsheet-south-'));
  await cp(join(repository, 'content'), join(root, 'content'), { recursive: true });
  await cp(join(repository, 'crops'), join(root, 'crops'), { recursive: true });
  const region = await readFile(join(root, 'content/regions/hollowmarl.yaml'), 'utf8');
  // The same climate, half a year on: April 13 becomes October 13, and January has the temperatures of July.
  const turned = region
    .replace('latitude: 37.3 deg', 'latitude: -37.3 deg')
    .replace(
      /\b(Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec) (\d+)/g,
      (_, month: string, day: string) => `${half[month]!} ${Math.min(Number(day), 28)}`,
    )
    .replace(/\[([^\]]+)\]/g, (_, months: string) => {
      const values = months.split(',').map((value) => value.trim());
      return values.length === 12
        ? `[${[...values.slice(6), ...values.slice(0, 6)].join(', ')}]`
        : `[${months}]`;
    });
  await writeFile(join(root, 'content/regions/hollowmarl.yaml'), turned);
  result = await check({ root, builtInRoot: repository });
});
afterAll(() => rm(root, { recursive: true, force: true }));

const half: Readonly<Record<string, string>> = {
  Jan: 'Jul',
  Feb: 'Aug',
  Mar: 'Sep',
  Apr: 'Oct',
  May: 'Nov',
  Jun: 'Dec',
  Jul: 'Jan',
  Aug: 'Feb',
  Sep: 'Mar',
  Oct: 'Apr',
  Nov: 'May',
  Dec: 'Jun',
};

const sheet = (id: string): string => {
  const found = result.sheets.find(
    ({ region, composed }) => region.id === 'hollowmarl' && composed.document.id === id,
  );
  return printSheet(found!.composed.document);
};

test('reads without a fault', () => {
  expect(formatReport(result.diagnostics)).toBe('');
});

test('spring is in October and fall in April', () => {
  const chart = sheet('planting-chart');
  expect(chart).toContain('Dates for Hollowmarl County, 37.3° S');
  expect(chart).toMatch(/Last in spring, 32 °F \| Oct 28 \| Oct 13 \| Sep 28/);
  const tomato = /^ +Tomato \| Set out plants \| (\S+ \d+)–\S+( \d+)? \| (\w{3}) \d+–/m.exec(chart);
  expect(tomato?.[3]).toMatch(/Oct|Nov/);
});

test('the tall wall of the frame, and the tall row in it, are on the south side', () => {
  const card = sheet('straw-bale-cold-frame');
  expect(card).toContain('The tall wall is on the south side');
  expect(card).toContain('with sun from the north');
  expect(card).toMatch(/row 1, Snap pea, .* from the south (edge|wall)/);
});

test('the day is long enough for bulbs half a year later', () => {
  expect(sheet('onions')).toMatch(/here from September \d+ on/);
});
