/** The chance that a region plans by moves its planting windows, and the sheet says so. */
import { beforeAll, describe, expect, test } from 'vitest';
import { readGuide } from '../../scripts/records/read-guide.ts';
import type { Guide, RegionRecord } from '../../scripts/records/guide.ts';
import type { FreezeChance } from '../../scripts/records/schemas/region.ts';
import { composeSheet } from '../../scripts/sheets/compose.ts';
import { printSheet } from '../../scripts/document/print.ts';
import { regionFacts, type RegionFacts } from '../../scripts/sheets/facts.ts';
import { edgeRuleWords } from '../../scripts/sheets/window-rules.ts';
import { wordingOf } from '../../scripts/sheets/sheet-context.ts';
import { edgeRules } from '../../scripts/agronomy/window-parts.ts';
import { repository } from '../demo/demo-guide.ts';

let guide: Guide;
beforeAll(async () => {
  guide = (await readGuide({ root: repository, builtInRoot: repository })).guide;
});

const facts = (chance?: FreezeChance, id = 'hollowmarl'): RegionFacts => {
  const region = guide.regions.find((known) => known.id === id)!;
  const planned = chance === undefined ? region : { ...region, planForChance: chance };
  return regionFacts(planned, { crops: guide.crops, year: 2027 });
};
const days = (found: RegionFacts, id: string): { from: number; to: number } => {
  const value = found.findings.get(id)?.value;
  if (value?.kind !== 'date-range') throw new TypeError(`${id}: no dates`);
  return value;
};
const chart = (found: RegionFacts): string =>
  printSheet(
    composeSheet({
      guide,
      sheet: guide.sheets.find(({ id }) => id === 'planting-chart')!,
      facts: found,
      wording: wordingOf(guide),
      suggest: () => '',
    }).document,
  );

describe('a region that plans by a chance of its own', () => {
  test('even odds, said or unsaid, are the average dates themselves', () => {
    expect([...facts(50).findings]).toEqual([...facts().findings]);
    expect(facts().planning.chance).toBe(50);
  });
  test('less risk plants tender crops later and ends fall sowing sooner', () => {
    // Hollowmarl: April 13 at 50 % and April 23 at 20 %; October 19 and October 10.
    expect(days(facts(20), 'sweet-corn.direct-sow.spring').from).toBe(
      days(facts(), 'sweet-corn.direct-sow.spring').from + 10,
    );
    expect(days(facts(20), 'snap-bean.direct-sow.fall').to).toBe(
      days(facts(), 'snap-bean.direct-sow.fall').to - 9,
    );
  });
  test('planting never opens earlier as the risk falls', () => {
    const openings = ([50, 40, 30, 20, 10] as const).map((chance) =>
      ['carrot.direct-sow.spring', 'tomato.set-out.spring', 'onion.plant-sets.spring'].map(
        (id) => days(facts(chance), id).from,
      ),
    );
    openings.slice(1).forEach((row, index) => {
      row.forEach((day, crop) => {
        expect(day).toBeGreaterThanOrEqual(openings[index]![crop]!);
      });
    });
  });
  test('what overwinters is counted from the average freeze all the same', () => {
    expect(days(facts(20), 'garlic.plant-sets.overwinter')).toEqual(
      days(facts(), 'garlic.plant-sets.overwinter'),
    );
  });
  test('the chart says which risk it plans by, and why', () => {
    expect(chart(facts())).toContain('counted from the average last and first freeze');
    const text = chart(facts(20));
    expect(text).toContain('counted from April 23 and October 10, not from the average');
    expect(text).toContain('plans by a chance of 20% of a later freeze');
    expect(chart(facts(70))).toContain('That is bolder than the average');
  });
});

test('every rule that sets an edge has words, in every region', () => {
  const wording = wordingOf(guide);
  const met = new Set<string>();
  for (const { id } of guide.regions) {
    for (const { windows } of facts(undefined, id).crops) {
      for (const planting of windows) {
        for (const edge of ['opens', 'closes'] as const) {
          met.add(planting.edges[edge]);
          const words = edgeRuleWords(planting, edge, wording);
          expect(words).toMatch(/^\S.*\S$/);
          expect(words).not.toMatch(/\(\)|undefined|NaN| $/);
        }
      }
    }
  }
  expect([...met].filter((rule) => !(edgeRules as readonly string[]).includes(rule))).toEqual([]);
  expect([...met]).toEqual(
    expect.arrayContaining([
      'offset',
      'soil-temperature',
      'soil-workable',
      'cold-limit',
      'late-freeze',
      'heat',
      'ending-freeze',
      'first-freeze',
      'year-end',
      'window-length',
      'after-spring',
      'soil-heat',
    ]),
  );
});

describe('crops that stand the winter', () => {
  const overwinters = (id: string): readonly string[] =>
    facts(undefined, id)
      .crops.filter(({ windows }) =>
        windows.some(({ season, plant }) => season === 'overwinter' && plant.value.kind === 'date-range'),
      )
      .map(({ crop }) => crop.id);
  test.each<[string, string, readonly string[]]>([
    ['a cold inland winter: only garlic', 'larkwether', ['garlic']],
    ['a winter of the middle latitudes: onions cannot be told', 'hollowmarl', ['garlic', 'spinach']],
    ['a mild coast: all three', 'gullhammock', ['garlic', 'onion', 'spinach']],
  ])('%s', (_, id, crops) => {
    expect(overwinters(id)).toEqual(crops);
  });
  test('have a row of their own in the table, with a harvest in the next year', () => {
    const text = chart(facts(undefined, 'larkwether'));
    expect(text).toMatch(/Garlic \| Plant sets, to stand the winter \| – \| Oct 11–25 \| .*, next year/);
    expect(text).not.toMatch(/Spinach \| .*, to stand the winter/);
    expect(text).toContain('harvested in the year after, 2028');
  });
  test('and are told by their own name', () => {
    const text = chart(facts(undefined, 'larkwether'));
    expect(text).toMatch(/Garlic over winter/);
  });
});

test('a region may say what a cold frame gains there', () => {
  const region = guide.regions.find(({ id }) => id === 'larkwether')!;
  const coldFrame = {
    earlier: { dimension: 'duration', low: 10, high: 20 },
    later: { dimension: 'duration', low: 10, high: 20 },
    sources: ['common-practice-gardening'],
  } as unknown as NonNullable<RegionRecord['coldFrame']>;
  const own = regionFacts({ ...region, coldFrame }, { crops: guide.crops, year: 2027 });
  const garden = days(own, 'carrot.direct-sow.spring');
  expect(days(own, 'carrot.frame-sow.spring')).toMatchObject({ from: garden.from - 10, to: garden.from - 1 });
  expect(days(facts(undefined, 'larkwether'), 'carrot.frame-sow.spring').from).toBe(garden.from - 28);
});
