import type { Crop, HardinessGroup } from '../records/schemas/crop.ts';

/**
 * When each hardiness group is planted in spring, in days from the average (50 %) last 32 F freeze.
 *
 * Source: Colorado State University Extension, CMG GardenNotes 720, Vegetable Planting Guide: hardy four to two
 * weeks before, semi-hardy two to none, tender on the date, very tender two weeks or more after. The two weeks
 * that the tender groups stay open, and the close of the very tender window, are common practice.
 */
export const springOffsetDays: Readonly<
  Record<HardinessGroup, { readonly opens: number; readonly closes: number }>
> = {
  hardy: { opens: -28, closes: -14 },
  'semi-hardy': { opens: -14, closes: 0 },
  tender: { opens: 0, closes: 14 },
  'very-tender': { opens: 14, closes: 28 },
};

export const springOffsetSources = ['colorado-gardennotes-720', 'common-practice-gardening'] as const;

/**
 * The air temperature whose first fall night ends each group's growth, in degrees Celsius, and how many days
 * before that night the crop should be ready. Freeze classes: 32 F kills tender plants; semi-hardy crops stand
 * repeated light frost of 28 to 32 F; hardy crops stand 25 to 28 F and lower (so 24 F, a hard freeze, ends them).
 * The two weeks kept free before it for tender crops are common practice.
 */
export const fallLimit: Readonly<
  Record<HardinessGroup, { readonly thresholdC: number; readonly readyDaysBefore: number }>
> = {
  hardy: { thresholdC: (24 - 32) / 1.8, readyDaysBefore: 0 },
  'semi-hardy': { thresholdC: (28 - 32) / 1.8, readyDaysBefore: 0 },
  tender: { thresholdC: 0, readyDaysBefore: 14 },
  'very-tender': { thresholdC: 0, readyDaysBefore: 14 },
};

/**
 * Days added to days-to-maturity for a fall planting, because crops grow more slowly as days shorten. Common
 * practice: one to two weeks, here two.
 */
export const shortDayAllowanceDays = 14;

/**
 * Days kept free before the freeze that ends a tender crop, in which to pick it; no more than its harvest lasts at the
 * least, so that a crop lifted at once, such as sweet potato, needs no two weeks.
 */
export function daysToPick(crop: Crop): number {
  return Math.min(fallLimit[crop.hardiness.group].readyDaysBefore, crop.harvestLasts.value.low);
}

/** A window shorter than this is not worth a date, where the season's end or the heat cuts it short. Common practice. */
export const fewestWindowDays = 7;

/** How long a spring window stays open where it opens only after its usual time. Common practice. */
export const springWindowDays = 14;

/** How long a fall planting window stays open before its last safe day. Common practice. */
export const fallWindowDays = 28;

/** True for the groups that one freeze ends. */
export function endedByFreeze(group: HardinessGroup): boolean {
  return group === 'tender' || group === 'very-tender';
}
