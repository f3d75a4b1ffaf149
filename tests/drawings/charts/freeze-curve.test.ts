import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  freezeCurve,
  type FreezeChance,
  type FreezeCurveOptions,
  type FreezeCurveRow,
} from '../../../scripts/drawings/charts/freeze-curve.ts';
import { textBox } from '../../../scripts/drawings/charts/text-width.ts';
import type { Scene } from '../../../scripts/drawings/scene.ts';
import { dateLabel, monthLabels } from './freeze-cases.ts';
import { boxOf, itemsOutside, pathsOf, textsOf, touchingWords, wordsOf } from './scene-reading.ts';

const dateText = (day: number): string => dateLabel(0, day).replace(' · 0 %', '');

/** Nine chances around a day; not of any place. A negative spread is that of the first freeze. */
const around = (day: number, spreadDays: number): readonly FreezeChance[] =>
  [90, 80, 70, 60, 50, 40, 30, 20, 10].map((chance) => ({
    chance,
    day: day + ((50 - chance) / 40) * spreadDays,
  }));

const row = (threshold: string, last: number, first: number, spreadDays = 14): FreezeCurveRow => ({
  threshold,
  last: around(last, spreadDays),
  first: around(first, -spreadDays),
});

const rows: readonly FreezeCurveRow[] = [
  row('36\u00a0°F', 125, 272),
  row('32\u00a0°F', 110, 285),
  row('28\u00a0°F', 97, 298),
  row('24\u00a0°F', 84, 311),
  row('20\u00a0°F', 71, 324),
  row('16\u00a0°F', 52, 340),
];
const noFreeze: FreezeCurveRow = {
  threshold: '16\u00a0°F',
  last: [],
  first: [],
  note: 'No freeze this hard in most years',
};

const options: FreezeCurveOptions = {
  id: 'freeze-curve',
  widthMm: 115,
  from: 1,
  to: 365,
  monthLabels,
  rows,
  lastHeading: 'Last freeze in spring',
  firstHeading: 'First freeze in fall',
  chanceLabel: 'Height of the shape: the chance of a freeze after that day in spring, or before it in fall',
  chanceText: (chance) => `${chance}\u00a0%`,
  dateText,
  alternative: 'Invented freeze dates.',
};

/** The shapes of the lanes, without that of the key. */
const shapesOf = (scene: Scene) =>
  pathsOf(scene, { fill: 'shade', stroke: 'thin', hue: 'clay' }).slice(0, -1);
const mmPerDay = (scene: Scene): number => {
  const [jan, dec] = ['Jan', 'Dec'].map((name) => textsOf(scene).find(({ text }) => text === name)!.x);
  return (dec! - jan!) / (335 + 15 - 16);
};

const expectSound = (scene: Scene): void => {
  expect(touchingWords(scene)).toEqual([]);
  expect(itemsOutside(scene)).toEqual([]);
  const shapes = shapesOf(scene).map(boxOf);
  const onShapes = textsOf(scene).filter((item) => {
    const box = textBox(item);
    return shapes.some(
      ({ left, right, top, bottom }) =>
        box.left < right && left < box.right && box.top < bottom - 0.2 && top < box.bottom - 0.2,
    );
  });
  expect(onShapes.map(({ text }) => text)).toEqual([]);
};

describe('freeze curve', () => {
  it('draws each spread from the day of 90 percent to that of 10 percent', () => {
    const scene = freezeCurve(options);
    const shapes = shapesOf(scene);
    expect(shapes).toHaveLength(12);
    for (const shape of shapes) {
      const { left, right } = boxOf(shape);
      expect(right - left).toBeCloseTo(28 * mmPerDay(scene) + 0.1764, 1);
    }
  });

  it('is as high as the chance: nine times as high at 90 percent as at 10', () => {
    const [spring, fall] = shapesOf(freezeCurve(options)).map(({ commands }) =>
      commands.flatMap((command) => (command[0] === 'Z' ? [] : [command[2]])),
    );
    const height = (ys: readonly number[], index: number): number => ys[0]! - ys.at(index)!;
    expect(height(spring!, 1) / height(spring!, -2)).toBeCloseTo(9, 6);
    expect(height(fall!, -2) / height(fall!, 1)).toBeCloseTo(9, 6);
  });

  it('marks the even chance where its date is, and writes both dates of each season', () => {
    const scene = freezeCurve(options);
    const marks = pathsOf(scene, { stroke: 'cut', hue: 'clay' }).map(({ commands }) =>
      commands.flatMap((command) => (command[0] === 'M' ? [command[1]] : [])),
    );
    expect(marks).toHaveLength(7);
    const [first] = marks;
    expect(first![1]! - first![0]!).toBeCloseTo((272 - 125) * mmPerDay(scene), 0);
    const dates = wordsOf(scene).filter((words) => /^[A-Z][a-z]{2} \d+$/.test(words));
    const wanted = rows.flatMap(({ last, first: fall }) =>
      [...last, ...fall]
        .filter(({ chance }) => chance === 50 || chance === 10)
        .map(({ day }) => dateText(day)),
    );
    expect([...dates].sort()).toEqual([...wanted].sort());
  });

  it('writes the date of the thin end on the side of the growing season', () => {
    const scene = freezeCurve({ ...options, rows: rows.slice(0, 1) });
    const [spring, fall] = shapesOf(scene).map(boxOf);
    const box = (day: number) => textBox(textsOf(scene).find(({ text }) => text === dateText(day))!);
    expect(box(139).left).toBeGreaterThan(spring!.right);
    expect(box(258).right).toBeLessThan(fall!.left);
  });

  it('gives a lane a line more where two seasons leave no room between them', () => {
    const [alpine, roomy] = [row('36\u00a0°F', 185, 205, 12), row('36\u00a0°F', 125, 272, 12)].map((only) =>
      freezeCurve({ ...options, rows: [only] }),
    );
    expect(alpine!.heightMm).toBeGreaterThan(roomy!.heightMm + 4);
    expectSound(alpine!);
  });

  it('tells a lane without dates by its note, and leaves it out without one', () => {
    const { note, ...silent } = noFreeze;
    const told = wordsOf(freezeCurve({ ...options, rows: [...rows.slice(0, 5), noFreeze] }));
    expect(told).toContain(note);
    expect(told).toContain('16\u00a0°F');
    expect(wordsOf(freezeCurve({ ...options, rows: [...rows.slice(0, 5), silent] }))).not.toContain(
      '16\u00a0°F',
    );
  });

  it('draws what is known when freezes come in few years', () => {
    const few = { ...row('20\u00a0°F', 20, 355), note: 'In one year out of three' };
    const rare = (list: readonly FreezeChance[]) => list.filter(({ chance }) => chance <= 30);
    const scene = freezeCurve({
      ...options,
      rows: [{ ...few, last: rare(few.last), first: rare(few.first) }],
    });
    expect(shapesOf(scene)).toHaveLength(2);
    expect(wordsOf(scene)).toContain(few.note);
    expectSound(scene);
  });

  it('has the spring of the south on the left of a year from July', () => {
    const south = [row('32\u00a0°F', 290, 465)];
    const scene = freezeCurve({ ...options, rows: south, from: 182, to: 546 });
    const [last, first] = [290, 465].map(
      (day) => textsOf(scene).find(({ text }) => text === dateText(day))!.x,
    );
    expect(last).toBeLessThan(first!);
    expectSound(scene);
  });

  it('refuses more than six lanes', () => {
    expect(() => freezeCurve({ ...options, rows: [...rows, noFreeze] })).toThrow(RangeError);
  });

  it.each([
    ['six lanes', {}],
    ['across the page', { widthMm: 175 }],
    ['narrow', { widthMm: 90 }],
    ['July to June', { from: 182, to: 546 }],
    ['no lane at all', { rows: [] }],
    ['one lane without dates', { rows: [noFreeze] }],
    ['no headings', { lastHeading: '', firstHeading: '' }],
    [
      'headings that need two lines',
      { widthMm: 90, lastHeading: 'The last freeze that comes in spring of most years' },
    ],
    [
      'a long note in a full lane',
      { rows: [{ ...row('36\u00a0°F', 120, 250, 50), note: 'In most years. '.repeat(12).trim() }] },
    ],
    ['all on one day', { rows: [row('32\u00a0°F', 110, 285, 0)] }],
    ['spread over New Year', { rows: [row('20\u00a0°F', 12, 358, 25)] }],
    ['last and first on the same day', { rows: [row('36\u00a0°F', 195, 195, 20)] }],
  ])('no words touch, nothing sticks out, no date lies on a shape: %s', (_, more) => {
    expectSound(freezeCurve({ ...options, ...more }));
  });

  it('nor with any dates', () => {
    const anyRow = fc
      .tuple(
        fc.integer({ min: -60, max: 240 }),
        fc.integer({ min: 200, max: 420 }),
        fc.integer({ min: 0, max: 30 }),
        fc.option(fc.constantFrom('Seldom', 'No freeze this hard in most years'), { nil: undefined }),
        fc.constantFrom('both', 'last', 'first'),
      )
      .map(([last, first, spreadDays, note, known]): FreezeCurveRow => {
        const full = row('32\u00a0°F', last, first, spreadDays);
        return {
          threshold: full.threshold,
          last: known === 'first' ? [] : full.last,
          first: known === 'last' ? [] : full.first,
          ...(note === undefined ? {} : { note }),
        };
      });
    fc.assert(
      fc.property(
        fc.array(anyRow, { maxLength: 6 }),
        fc.constantFrom(90, 115, 175),
        fc.constantFrom(1, 182),
        (list, widthMm, from) => {
          expectSound(freezeCurve({ ...options, rows: list, widthMm, from, to: from + 364 }));
        },
      ),
      { numRuns: 80 },
    );
  });

  it('is the same every time', () => {
    expect(freezeCurve(options)).toEqual(freezeCurve(options));
  });
});
