import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { plantingActs } from '../../../scripts/drawings/charts/acts.ts';
import type { PlantingBar } from '../../../scripts/drawings/charts/lanes.ts';
import {
  plantingChart,
  plantingChartNarrow,
  type PlantingChartOptions,
  type PlantingGroup,
} from '../../../scripts/drawings/charts/planting-chart.ts';
import type { Scene } from '../../../scripts/drawings/scene.ts';
import { anyFreezeDates, freezeCases, monthLabels } from './freeze-cases.ts';
import { boxOf, itemsOutside, pathsOf, textsOf, touchingWords, wordsOf } from './scene-reading.ts';

const bar = (act: PlantingBar['act'], from: number, to: number): PlantingBar => ({ act, from, to });

const groups: readonly PlantingGroup[] = [
  {
    label: 'Sow outdoors before the last freeze',
    rows: [
      { label: 'Peas', bars: [bar('direct-sow', 76, 104), bar('harvest', 140, 175)] },
      { label: 'Carrots', bars: [bar('direct-sow', 83, 190), bar('harvest', 150, 310)] },
    ],
  },
  {
    label: 'Start indoors, set out after the last freeze',
    rows: [
      {
        label: 'Tomatoes',
        bars: [bar('start-indoors', 60, 75), bar('set-out', 111, 140), bar('harvest', 190, 275)],
      },
      { label: 'Kale for winter', bars: [bar('set-out', 200, 220), bar('harvest', 330, 400)] },
    ],
  },
];

const options: PlantingChartOptions = {
  id: 'year',
  widthMm: 175,
  from: 1,
  to: 365,
  monthLabels,
  groups,
  freeze: { label: 'Chance of a freeze', ...freezeCases[0]![1] },
  key: {
    'start-indoors': 'Start indoors',
    'direct-sow': 'Sow outdoors',
    'set-out': 'Set out plants',
    harvest: 'Harvest',
  },
  alternative: 'Sowing and harvest times of four invented crops.',
};

/** The scale as the ticks of the first month axis show it. */
function ticksOf(scene: Scene): readonly number[] {
  const axis = pathsOf(scene, { stroke: 'thin' }).find(({ commands }) => commands.length > 20)!;
  const xs = axis.commands.flatMap((command) => (command[0] === 'M' ? [command[1]] : []));
  return [...new Set(xs)].sort((a, b) => a - b);
}

describe('planting chart', () => {
  it('draws bars exactly from the beginning of the first day to the end of the last', () => {
    const scene = plantingChart(options);
    const ticks = ticksOf(scene);
    const [left, right] = [ticks[0]!, ticks.at(-1)!];
    const x = (day: number): number => left + ((day - 1) / 365) * (right - left);
    const solid = pathsOf(scene, { fill: 'ink', hue: 'green' }).map(boxOf);
    const [peas, carrots] = solid;
    expect(peas!.left).toBeCloseTo(x(76), 9);
    expect(peas!.right).toBeCloseTo(x(105), 9);
    expect(carrots!.left).toBeCloseTo(x(83), 9);
    expect(carrots!.right).toBeCloseTo(x(191), 9);
  });

  it('stands its months where they begin', () => {
    const ticks = ticksOf(plantingChart(options));
    expect(ticks).toHaveLength(13);
    const dayMm = (ticks[12]! - ticks[0]!) / 365;
    expect((ticks[1]! - ticks[0]!) / dayMm).toBeCloseTo(31, 9);
    expect((ticks[2]! - ticks[1]!) / dayMm).toBeCloseTo(28, 9);
  });

  it('runs the lines of the even chance from the freeze band through the rows', () => {
    const [evenChance] = pathsOf(plantingChart(options), { stroke: 'hidden' });
    const xs = new Set(evenChance!.commands.flatMap((command) => (command[0] === 'Z' ? [] : [command[1]])));
    expect(xs.size).toBe(2);
    expect(evenChance!.commands.filter(([letter]) => letter === 'M')).toHaveLength(2 * (1 + groups.length));
  });

  it('has no such line when no date is known', () => {
    const bare: PlantingChartOptions = {
      ...options,
      freeze: { label: 'Chance of a freeze', last: [], first: [] },
    };
    expect(pathsOf(plantingChart(bare), { stroke: 'hidden' })).toHaveLength(0);
  });

  it('explains only the acts it uses', () => {
    const onlySown = plantingChart({ ...options, groups: [{ label: 'Sow', rows: [groups[0]!.rows[0]!] }] });
    expect(wordsOf(onlySown)).toContain('Sow outdoors');
    expect(wordsOf(onlySown)).not.toContain('Start indoors');
  });

  it('begins in July for the southern hemisphere, with the same dates', () => {
    const scene = plantingChart({ ...options, from: 182, to: 546 });
    const months = wordsOf(scene).filter((word) => monthLabels.includes(word));
    expect(months.slice(0, 12)).toEqual([...monthLabels.slice(6), ...monthLabels.slice(0, 6)]);
    expect(new Set(wordsOf(scene))).toEqual(new Set(wordsOf(plantingChart(options))));
  });

  it('says every date of the freeze band once', () => {
    for (const [, dates] of freezeCases) {
      const words = wordsOf(plantingChart({ ...options, freeze: { label: 'Freeze', ...dates } }));
      const labels = [...dates.last, ...dates.first].map(({ label }) => label);
      expect(words.filter((word) => word.includes('·')).sort()).toEqual([...labels].sort());
    }
  });

  it('holds 18 crops in four groups on a Letter page', () => {
    const crops = Array.from({ length: 18 }, (_, index) => ({
      label: `Crop number ${index + 1}`,
      bars: groups[index % 2]!.rows[index % 2]!.bars,
    }));
    const four = [0, 5, 10, 15].map((first) => ({
      label: 'What to do next',
      rows: crops.slice(first, first + 5),
    }));
    const scene = plantingChart({ ...options, groups: four });
    expect(scene.widthMm).toBe(175);
    expect(scene.heightMm).toBeLessThanOrEqual(215);
    expect(wordsOf(scene)).toContain('Crop number 18');
  });

  it('is the same every time', () => {
    expect(plantingChart(options)).toEqual(plantingChart(structuredClone(options)));
    expect(plantingChartNarrow(options)).toEqual(plantingChartNarrow(structuredClone(options)));
  });
});

describe('planting chart for a narrow screen', () => {
  const narrow = plantingChartNarrow({ ...options, widthMm: 100 });

  it('shows two half years, each month once above its half', () => {
    const months = wordsOf(narrow).filter((word) => monthLabels.includes(word));
    expect(months).toEqual(monthLabels);
  });

  it('shows in each half only the crops with something to do', () => {
    expect(wordsOf(narrow).filter((word) => word === 'Carrots')).toHaveLength(2);
    expect(wordsOf(narrow).filter((word) => word === 'Peas')).toHaveLength(1);
  });

  it('parts a year from July at New Year', () => {
    const scene = plantingChartNarrow({ ...options, widthMm: 100, from: 182, to: 546 });
    const texts = textsOf(scene).filter(({ text }) => monthLabels.includes(text));
    const heights = texts.map(({ y }) => y);
    expect(texts.map(({ text }) => text)).toEqual([...monthLabels.slice(6), ...monthLabels.slice(0, 6)]);
    expect(new Set(heights.slice(0, 6)).size).toBe(1);
    expect(heights[6]).toBeGreaterThan(heights[0]!);
  });
});

const charts = [
  ['wide', 175, plantingChart],
  ['narrow', 100, plantingChartNarrow],
] as const;

describe.each(charts)('%s planting chart', (_, widthMm, draw) => {
  it.each(freezeCases)('no words touch and nothing sticks out: %s', (_case, dates) => {
    for (const window of [
      { from: 1, to: 365 },
      { from: 182, to: 546 },
    ]) {
      const scene = draw({
        ...options,
        ...window,
        widthMm,
        freeze: { label: 'Chance of a freeze', ...dates },
      });
      expect(touchingWords(scene)).toEqual([]);
      expect(itemsOutside(scene)).toEqual([]);
    }
  });

  it('nor does it with any dates and any bars', () => {
    const anyBar = fc
      .record({
        act: fc.constantFrom(...plantingActs),
        from: fc.integer({ min: -60, max: 420 }),
        days: fc.nat(120),
      })
      .map(({ act, from, days }) => bar(act, from, from + days));
    const anyRow = fc.record({
      label: fc.constantFrom('Peas', 'Brussels sprouts', 'Onions, transplants from a shop, set out early'),
      bars: fc.array(anyBar, { maxLength: 6 }),
    });
    const anyGroup = fc.record({
      label: fc.constantFrom(
        'Sow outdoors',
        'Start indoors, then set out after the last freeze of the spring',
      ),
      rows: fc.array(anyRow, { maxLength: 4 }),
    });
    fc.assert(
      fc.property(
        fc.array(anyGroup, { maxLength: 3 }),
        anyFreezeDates,
        fc.constantFrom({ from: 1, to: 365 }, { from: 182, to: 546 }, { from: 60, to: 243 }),
        (anyGroups, dates, window) => {
          const freeze = { label: 'Chance of a freeze', ...dates };
          const scene = draw({ ...options, ...window, widthMm, groups: anyGroups, freeze });
          expect(touchingWords(scene)).toEqual([]);
          expect(itemsOutside(scene)).toEqual([]);
        },
      ),
    );
  });
});
