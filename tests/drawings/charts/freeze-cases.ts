/** Invented freeze dates, one case for each way in which they can lie to one another. */
import fc from 'fast-check';
import type { FreezeDate, FreezeDates } from '../../../scripts/drawings/charts/freeze-rows.ts';

export const monthLabels = [
  'Jan',
  'Feb',
  'Mar',
  'Apr',
  'May',
  'Jun',
  'Jul',
  'Aug',
  'Sep',
  'Oct',
  'Nov',
  'Dec',
];

/** As wide as such a label gets. */
export const dateLabel = (chance: number, day: number): string => {
  const inYear = ((((Math.round(day) - 1) % 365) + 365) % 365) + 1;
  const month = [335, 305, 274, 244, 213, 182, 152, 121, 91, 60, 32, 1].findIndex((first) => first <= inYear);
  return `${monthLabels[11 - month]!} ${inYear - [335, 305, 274, 244, 213, 182, 152, 121, 91, 60, 32, 1][month]! + 1} · ${chance} %`;
};

const dates = (days: Readonly<Record<number, number>>): readonly FreezeDate[] =>
  Object.entries(days).map(([chance, day]) => ({
    chance: Number(chance),
    day,
    label: dateLabel(Number(chance), day),
  }));

export const freezeCases: readonly (readonly [name: string, dates: FreezeDates])[] = [
  [
    'dates far apart',
    { last: dates({ 90: 90, 50: 112, 10: 136 }), first: dates({ 10: 250, 50: 275, 90: 300 }) },
  ],
  [
    'dates 4 days apart',
    { last: dates({ 90: 100, 50: 104, 10: 108 }), first: dates({ 10: 282, 50: 286, 90: 290 }) },
  ],
  [
    'all on the same day',
    { last: dates({ 90: 104, 50: 104, 10: 104 }), first: dates({ 10: 286, 50: 286, 90: 286 }) },
  ],
  [
    'last and first on the same day',
    { last: dates({ 50: 182, 10: 200 }), first: dates({ 10: 200, 50: 182 }) },
  ],
  [
    'a season of four weeks',
    { last: dates({ 90: 160, 50: 175, 10: 190 }), first: dates({ 10: 200, 50: 203, 90: 215 }) },
  ],
  ['first freeze after New Year', { last: dates({ 50: 15, 10: 45 }), first: dates({ 10: 340, 50: 368 }) }],
  ['last freeze before New Year', { last: dates({ 50: -4, 10: 20 }), first: dates({ 10: 350, 50: 358 }) }],
  ['on the first and the last day of the year', { last: dates({ 50: 1 }), first: dates({ 50: 365 }) }],
  ['only the even chance known', { last: dates({ 50: 104 }), first: dates({ 50: 286 }) }],
  ['only the last freeze known', { last: dates({ 90: 90, 50: 104, 10: 120 }), first: [] }],
  ['only the first freeze known', { last: [], first: dates({ 10: 270, 50: 286, 90: 300 }) }],
  ['no date known', { last: [], first: [] }],
];

const anyDates: fc.Arbitrary<readonly FreezeDate[]> = fc
  .uniqueArray(fc.record({ chance: fc.constantFrom(10, 50, 90), day: fc.integer({ min: -60, max: 430 }) }), {
    selector: ({ chance }) => chance,
    maxLength: 3,
  })
  .map((list) => list.map(({ chance, day }) => ({ chance, day, label: dateLabel(chance, day) })));

/** Dates in no order at all, as no climate has them. */
export const anyFreezeDates: fc.Arbitrary<FreezeDates> = fc.record({ last: anyDates, first: anyDates });
