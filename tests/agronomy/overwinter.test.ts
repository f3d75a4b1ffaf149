import { describe, expect, test } from 'vitest';
import { plantingWindows, type WindowClimate } from '../../scripts/agronomy/windows.ts';
import { none } from '../../scripts/findings/finding.ts';
import type { Crop } from '../../scripts/records/schemas/crop.ts';
import { cropLike, q } from './crop.ts';
import { airYear, given } from './years.ts';

const sources = ['a-source'];
const crop = (changes: Partial<Crop> = {}): Crop =>
  cropLike({
    hardiness: { group: 'hardy', sources },
    overwinter: {
      opensBeforeFreeze: q('6 weeks', 'duration'),
      closesBeforeFreeze: q('3 weeks', 'duration'),
      stands: q('20 F', 'temperature'),
      sources: ['winter-source'],
    },
    ...changes,
  });

/** Half of the years reach thresholds down to `coldestF`, first on day 300 for 32 F and a week later for each 4 F. */
const winter = (coldestF: number, otherwise = 'freeze-not-this-likely'): WindowClimate => ({
  lastFreeze: given('last', 90),
  firstFreeze: (thresholdC) => {
    const thresholdF = Math.round(thresholdC * 1.8 + 32);
    return thresholdF >= coldestF
      ? given(`first.${thresholdF}`, 300 + ((32 - thresholdF) / 4) * 7)
      : { ...given('first', undefined), value: none(otherwise) };
  },
});
const overwinter = (of: Crop, climate: WindowClimate) =>
  plantingWindows(of, climate).find(({ season }) => season === 'overwinter');

test('a crop without it in its record has no such window', () => {
  expect(overwinter(cropLike(), winter(24))).toBeUndefined();
});

describe('where half of the winters stay above what it stands', () => {
  const air = airYear({ meanF: 55, halfRangeF: 20 });
  test('planted before the first freeze', () => {
    const windows = overwinter(crop(), { ...winter(20), air })!;
    expect(windows.plant).toMatchObject({
      id: 'testcrop.direct-sow.overwinter',
      value: { kind: 'date-range', from: 300 - 42, to: 300 - 21 },
      method: 'window.overwinter',
    });
    expect(windows.edges).toEqual({ opens: 'first-freeze', closes: 'first-freeze' });
  });
  test('harvested in the next spring, never in the same fall', () => {
    const { harvest } = overwinter(crop(), { ...winter(20), air })!;
    expect(harvest).toMatchObject({ value: { kind: 'date-range' }, method: 'window.harvest-growing-days' });
    if (harvest.value.kind !== 'none') expect(harvest.value.from).toBeGreaterThanOrEqual(365 + 20);
  });
  test('sets grow from spring on, so that they are later than seed', () => {
    const seed = overwinter(crop(), { ...winter(20), air })!.harvest.value;
    const sets = overwinter(crop({ plantings: [{ method: 'sets', fall: false }] }), { ...winter(20), air })!
      .harvest.value;
    if (seed.kind === 'none' || sets.kind === 'none') throw new TypeError('no harvest');
    expect(sets.from).toBeGreaterThan(seed.from);
  });
  test('published days that span the winter count by the calendar', () => {
    const long = crop({
      maturity: { days: q('240 to 260 days', 'duration'), from: 'planting-out', sources },
    });
    expect(overwinter(long, winter(20))!.harvest.value).toMatchObject({
      from: 258 + 240,
      to: 279 + 260 + 21,
    });
  });
  test('no temperatures, no harvest date', () => {
    expect(overwinter(crop(), winter(20))!.harvest.value).toEqual(none('temperatures-not-given'));
  });
});

describe('where it is left out', () => {
  test('half of the winters are colder', () => {
    const windows = overwinter(crop(), winter(16))!;
    expect(windows.plant.value).toEqual(none('winter-too-cold'));
    expect(windows.plant.inputs.map(({ name }) => name)).toContain('winter-reaches');
    expect(windows.harvest.value).toEqual(none('winter-too-cold'));
  });
  test('the table does not tell how cold it gets', () => {
    expect(overwinter(crop(), winter(20, 'not-given'))!.plant.value).toEqual(none('winter-cold-not-known'));
  });
  test('a crop that stands the coldest threshold is not asked', () => {
    const hardy = crop();
    const record = { ...hardy.overwinter!, stands: q('10 F', 'temperature') };
    expect(overwinter({ ...hardy, overwinter: record }, winter(16))!.plant.value.kind).toBe('date-range');
  });
  test('a place without a first freeze to count from', () => {
    expect(overwinter(crop(), winter(40))!.plant.value).toEqual(none('no-first-freeze'));
  });
});

describe('a limit below the coldest threshold', () => {
  const veryHardy = (): Crop => ({
    ...crop(),
    overwinter: { ...crop().overwinter!, stands: q('10 F', 'temperature') },
  });
  test('is held against the coldest average night', () => {
    // Coldest mean 29 F less 10 is 19 F; coldest mean 13 F less 10 is 3 F.
    const mild = airYear({ meanF: 51, halfRangeF: 22 });
    const bitter = airYear({ meanF: 45, halfRangeF: 32 });
    expect(overwinter(veryHardy(), { ...winter(16), air: mild })!.plant.value.kind).toBe('date-range');
    const refused = overwinter(veryHardy(), { ...winter(16), air: bitter })!;
    expect(refused.plant.value).toEqual(none('winter-too-cold'));
    expect(refused.plant.inputs.map(({ name }) => name)).toContain('coldest-average-night');
  });
});

describe('what the record may say besides', () => {
  test('another way of planting than the first', () => {
    const sown = crop({
      plantings: [
        { method: 'sets', fall: false },
        { method: 'direct-sow', fall: false },
      ],
      overwinter: { ...crop().overwinter!, method: 'direct-sow' },
    });
    expect(overwinter(sown, winter(20))!.plant.id).toBe('testcrop.direct-sow.overwinter');
  });
  test('other weeks where fewer than half of the winters reach 24 F', () => {
    const whereMild = {
      opensBeforeFreeze: q('9 weeks', 'duration'),
      closesBeforeFreeze: q('1 week', 'duration'),
      sources: ['mild-source'],
    };
    const record = crop({ overwinter: { ...crop().overwinter!, whereMild } });
    expect(overwinter(record, winter(28))!.plant).toMatchObject({ value: { from: 300 - 63, to: 300 - 7 } });
    expect(overwinter(record, winter(28))!.plant.sources).toContain('mild-source');
    expect(overwinter(record, winter(24))!.plant).toMatchObject({ value: { from: 300 - 42, to: 300 - 21 } });
    expect(overwinter(record, winter(28, 'not-given'))).toMatchObject({
      plant: { value: none('winter-cold-not-known') },
    });
  });
  test('that spring planting comes to little where fall planting can be done', () => {
    const record = crop({ overwinter: { ...crop().overwinter!, replacesSpring: true } });
    const season = (climate: WindowClimate) =>
      plantingWindows(record, climate).find((windows) => windows.season === 'spring')!.plant.value;
    expect(season(winter(20))).toEqual(none('planted-in-fall'));
    expect(season(winter(16)).kind).toBe('date-range');
  });
  test('a region that plans by another chance still counts winters by the average', () => {
    const bold: WindowClimate = {
      ...winter(20),
      firstFreeze: () => given('first', 280),
      averageFirstFreeze: winter(20).firstFreeze,
    };
    expect(overwinter(crop(), bold)!.plant).toMatchObject({ value: { from: 300 - 42 } });
  });
});
