/** How much heat the walls of frames let through. */
import type { Lay } from '../wall-layout.ts';

/** Still air on a wall inside and moving air outside: 0.12 and 0.04 m²K/W (ISO 6946 has 0.13 and 0.04; from memory). */
const surfacesRm2KW = 0.16;

/**
 * Heat resistance of straw per metre, in m K/W: R 1.55 an inch flat and 1.85 on edge (International Residential Code 2021,
 * section AS108.1, from memory). Whole plastered walls were measured from R 17 to R 54 (T. R. Commins and N. I. Stone, 1998),
 * and bare straw in wind and rain does worse than the code's plastered wall. It matters little here: with half the
 * resistance a frame is less than half a degree Celsius colder at night, since nearly all of its heat goes through the cover.
 */
const strawRmKW: Readonly<Record<Lay, number>> = { flat: 10.75, 'on-edge': 12.83 };

/** Softwood across the grain: 0.12 W/mK, R 1.2 an inch (ASHRAE Handbook of Fundamentals, from memory). */
const softwoodWmK = 0.12;

/** Heat through a wall of straw, air to air, in watts per square metre and kelvin. */
export function strawU(lay: Lay, thicknessM: number): number {
  return 1 / (surfacesRm2KW + thicknessM * strawRmKW[lay]);
}

/** The same through softwood. */
export function softwoodU(thicknessM: number): number {
  return 1 / (surfacesRm2KW + thicknessM / softwoodWmK);
}

/** What is laid on a cover for the night: heat resistance in square metres kelvin per watt, from memory of trade tables. */
export const nightCovers = {
  /** A quilt or blanket about an inch thick, R 3. */
  blanket: { extraRm2KW: 0.53 },
  /** An inch of foam board, R 5 (the code's figure for extruded foam). */
  'foam-board': { extraRm2KW: 0.88 },
  /** A mat of straw two inches thick, R 3 as loose straw. */
  'straw-mat': { extraRm2KW: 0.53 },
} as const;

/**
 * What a bed is filled with, by its heat: planting mix and loosened garden soil as moist sandy loam (our own judgement;
 * peat and bark hold less and conduct less, and so keep a frame a little colder at night).
 */
export const mixSoil = { texture: 'sandy-loam', moisture: 'moist' } as const;
