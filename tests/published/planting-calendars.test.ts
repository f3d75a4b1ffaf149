/**
 * Planting dates that extension services publish for places like the demonstration regions. The regions are invented, with
 * the climates of central Minnesota (larkwether, 45 N) and of the Gulf coast (gullhammock, 30 N), so that the
 * check is of the rules as a whole: freeze dates, soil, cold limits and heat together.
 */
import { beforeAll, describe, expect, test } from 'vitest';
import { plantingWindows, type WindowClimate } from '../../scripts/agronomy/windows.ts';
import type { Guide } from '../../scripts/records/guide.ts';
import { readGuide } from '../../scripts/records/read-guide.ts';
import { regionFacts, type RegionFacts } from '../../scripts/sheets/facts.ts';
import { given } from '../agronomy/years.ts';
import { repository } from '../demo/demo-guide.ts';

let guide: Guide;
const known = new Map<string, RegionFacts>();
beforeAll(async () => {
  guide = (await readGuide({ root: repository, builtInRoot: repository })).guide;
  for (const region of guide.regions)
    known.set(region.id, regionFacts(region, { crops: guide.crops, year: 2027 }));
});

const monthDays = [0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334];
const day = (month: number, date: number): number => monthDays[month - 1]! + date;
const opening = (region: string, id: string): number => {
  const value = known.get(region)?.findings.get(id)?.value;
  if (value?.kind !== 'date-range') throw new TypeError(`${id}: no dates`);
  return value.from;
};

/**
 * University of Minnesota Extension, as quoted in When To Plant Vegetables In Minnesota (storiesofthemoment.com) and
 * When to Plant Garlic in Minnesota (thatsdays.com). The tolerance is a week: the source gives months and parts of
 * months for a whole state.
 */
describe('central Minnesota', () => {
  test.each<[string, string, number, number]>([
    ['tomatoes after the last frost, mid to late May', 'tomato.set-out.spring', day(5, 15), day(5, 31)],
    ['peppers, mid to late May', 'pepper.set-out.spring', day(5, 15), day(5, 31)],
    ['eggplants, mid to late May', 'eggplant.set-out.spring', day(5, 15), day(5, 31)],
    ['basil, mid to late May', 'basil.set-out.spring', day(5, 15), day(5, 31)],
    ['summer squash seed in late May', 'summer-squash.direct-sow.spring', day(5, 21), day(5, 31)],
    ['onion sets in April', 'onion.plant-sets.spring', day(4, 1), day(4, 30)],
    ['spinach in April', 'spinach.direct-sow.spring', day(4, 1), day(4, 30)],
    ['leaf lettuce in April', 'lettuce.direct-sow.spring', day(4, 1), day(4, 30)],
    ['radishes in April', 'radish.direct-sow.spring', day(4, 1), day(4, 30)],
    [
      'garlic a week or two after the first frost of October 4',
      'garlic.plant-sets.overwinter',
      day(10, 11),
      day(10, 18),
    ],
  ])('%s', (_, id, from, to) => {
    expect(opening('larkwether', id)).toBeGreaterThanOrEqual(from - 7);
    expect(opening('larkwether', id)).toBeLessThanOrEqual(to + 7);
  });
});

/**
 * LSU AgCenter: Gardeners Get Ready (2017), Houma Today (2013) and T. J. Koske on onions (2004), for south Louisiana;
 * sweet corn by New Orleans Month to Month Gardening; okra and sweet potato by Gardeners Get Ready and T. Koske, Vegetables to
 * Plant in April (2005). A week, since the source gives whole months, and says to wait a week or two more with melons and squash.
 */
describe('the Gulf coast', () => {
  test.each<[string, string, number, number]>([
    ['tomato plants after March 15', 'tomato.set-out.spring', day(3, 15), day(3, 31)],
    ['pepper plants after March 15', 'pepper.set-out.spring', day(3, 15), day(3, 31)],
    ['eggplants after March 15', 'eggplant.set-out.spring', day(3, 15), day(4, 30)],
    ['snap beans in March', 'snap-bean.direct-sow.spring', day(3, 1), day(3, 31)],
    ['sweet corn from late February on', 'sweet-corn.direct-sow.spring', day(2, 21), day(3, 31)],
    ['melons a week or two after March 15', 'muskmelon.direct-sow.spring', day(3, 15), day(3, 31)],
    ['cucumbers a week or two after March 15', 'cucumber.direct-sow.spring', day(3, 15), day(3, 31)],
    ['okra in April', 'okra.direct-sow.spring', day(4, 1), day(4, 30)],
    ['sweet potato slips in April', 'sweet-potato.plant-slips.spring', day(4, 1), day(4, 30)],
    [
      'onion seed from late September to early October',
      'onion.direct-sow.overwinter',
      day(9, 21),
      day(10, 10),
    ],
    ['cloves of garlic in October and November', 'garlic.plant-sets.overwinter', day(10, 1), day(11, 30)],
  ])('%s', (_, id, from, to) => {
    expect(opening('gullhammock', id)).toBeGreaterThanOrEqual(from - 7);
    expect(opening('gullhammock', id)).toBeLessThanOrEqual(to + 7);
  });
  test('no onion sets or plants before December', () => {
    for (const id of ['onion.plant-sets.spring', 'onion.set-out.spring'])
      expect(opening('gullhammock', id)).toBeGreaterThanOrEqual(day(12, 1) - 365);
  });
});

/**
 * Iowa State University Extension, Planting and Harvesting Times for Garden Vegetables (docslib.org), for central Iowa, by freeze
 * dates alone: the last freeze about April 30 and the first about October 1 (Grow Veggie Plants, on Iowa). Ten days,
 * since the source gives parts of months and the freeze dates come from elsewhere.
 */
describe('central Iowa', () => {
  const climate: WindowClimate = {
    lastFreeze: given('freeze.last.32f.50', day(4, 30)),
    firstFreeze: () => given('first', day(10, 1)),
  };
  const opens = (id: string): number => {
    const [crop, ...rest] = id.split(' ');
    const record = guide.crops.find((one) => one.id === crop)!;
    const window = plantingWindows(record, climate).find(
      ({ method, season }) => method === rest[0] && season === 'spring',
    )!;
    if (window.plant.value.kind === 'none') throw new TypeError(`${id}: no dates`);
    return window.plant.value.from;
  };
  test.each<[string, string, number, number]>([
    ['potatoes from early to mid-April', 'potato seed-pieces', day(4, 1), day(4, 15)],
    ['turnips in April', 'turnip direct-sow', day(4, 1), day(4, 30)],
    ['snap beans after May 5', 'snap-bean direct-sow', day(5, 5), day(5, 15)],
    ['lima beans from May 20', 'lima-bean direct-sow', day(5, 20), day(5, 31)],
    ['tomatoes in mid-May', 'tomato transplant', day(5, 10), day(5, 20)],
    ['peppers in mid-May', 'pepper transplant', day(5, 10), day(5, 20)],
    ['eggplants in mid-May', 'eggplant transplant', day(5, 10), day(5, 20)],
    ['summer squash in mid-May', 'summer-squash direct-sow', day(5, 10), day(5, 20)],
  ])('%s', (_, id, from, to) => {
    expect(opens(id)).toBeGreaterThanOrEqual(from - 10);
    expect(opens(id)).toBeLessThanOrEqual(to + 10);
  });
});
