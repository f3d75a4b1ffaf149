/**
 * A frame through typical days of every month: the balance of the frame run over an average day until it repeats, and from there
 * a clear day, a covered day and the coldest nights.
 *
 * Honest error. The model is one of a frame that is closed, sound, dry in the joints and in the open. Against frames that people
 * measured (tests/published/frame-heat.test.ts) it comes within about 4 C at night, rather too cold than too warm, and within 8 C
 * at noon of a clear day. Wind, wet straw, snow on the glass, a tree or house that shades, and how much water evaporates each do more than the figures of the walls.
 */
import { dayLengthHours } from '../../climate/day-length.ts';
import { dayNumber } from '../../climate/calendar.ts';
import { monthlyMeansOf } from '../../climate/temperature-curve.ts';
import type { DayNumber } from '../../findings/finding.ts';
import { toHeld } from '../../quantities/units.ts';
import {
  clearSkyCoolingK,
  frameModel,
  heatFlows,
  nextState,
  stateAt,
  soilDepthM,
  stepsPerDay,
  type FrameModel,
  type FrameState,
  type Surroundings,
} from './balance.ts';
import { irradiance, sunDirection } from './clear-sky.ts';
import type { FrameEnvelope } from './envelope.ts';
import { airAt, coldestNightZ, usualSpreadC, type FrameClimate } from './outside.ts';
import { sunInside, type SunInside } from './sun-inside.ts';
import { propHeightM, type VentOpening } from './vent.ts';

/**
 * Open the frame at this: 75 F, between the 70 F that a national gardening association gives as the most for young plants and the
 * 80 to 85 F, lower for cool-weather crops, of other guides.
 */
export const ventAtC = toHeld(75, 'F');
/** Where it is less than this below the limit outside, no opening holds it: the cover comes off. */
const leastDifferenceK = 2;
/** A sash propped higher than this is better taken off: a foot. */
export const highestPropM = 0.3048;

/** Shares of years in which the coldest night of the month is colder. */
export type NightChance = 50 | 10;

export interface ColdNight {
  readonly outsideC: number;
  readonly insideC: number;
}

/** What to do at noon of a clear day at the mean high outside; unknown where nothing is said of what opens. */
export type Opening =
  | { readonly kind: 'unknown' }
  | { readonly kind: 'closed' }
  | { readonly kind: 'prop'; readonly heightM: number }
  | { readonly kind: 'take-off' };

export interface FrameMonth {
  /** 1 to 12 */
  readonly month: number;
  readonly outsideLowC: number;
  readonly outsideHighC: number;
  readonly spreadC: number;
  /** Half clear, half covered sky, opened at the limit. */
  readonly average: { readonly lowC: number; readonly highC: number };
  /** The highest inside at the mean high outside, never opened; undefined when the sun does not rise. */
  readonly clearHighC: number | undefined;
  readonly coveredHighC: number | undefined;
  readonly coldest: Readonly<Record<NightChance, ColdNight>>;
  /** All nights that were run, the mildest first: a mild one, an average one, and the two coldest. */
  readonly nights: readonly ColdNight[];
  /** The outside high above which a clear day brings the closed frame to the limit; undefined without sun. */
  readonly ventOutsideC: number | undefined;
  readonly opening: Opening;
}

export interface FrameMonthsOptions {
  /** A frame without a night cover in its envelope is the same with both. */
  readonly nightCover: 'on' | 'off';
  /** `ventAtC` of this module when absent. */
  readonly ventAtC?: number;
  /** What is opened; without it nothing is said of how far. */
  readonly vent?: VentOpening;
}

export interface FrameMonths {
  readonly months: readonly FrameMonth[];
  readonly climate: FrameClimate;
  readonly envelope: FrameEnvelope;
  readonly nightCover: 'on' | 'off';
  readonly ventAtC: number;
}

/** The twelve months, January first. */
export function frameMonths(
  envelope: FrameEnvelope,
  climate: FrameClimate,
  options: FrameMonthsOptions,
): FrameMonths {
  const model = frameModel(envelope);
  const lows = monthlyMeansOf(climate.air.minimumC);
  const highs = monthlyMeansOf(climate.air.maximumC);
  const limitC = options.ventAtC ?? ventAtC;
  const months = lows.map((outsideLowC, index) => {
    const day = dayNumber({ month: index + 1, day: 15 });
    const sun = sunOfDay(envelope, climate, day);
    const outside = {
      lowC: outsideLowC,
      highC: Math.max(outsideLowC, highs[index]!),
      dayLengthHours: sun.dayLengthHours,
    };
    const scene: Scene = {
      ...sun,
      model,
      limitC,
      cover: options.nightCover,
      lowC: outside.lowC,
      highC: outside.highC,
      belowC: climate.soil.at(day, soilDepthM * 1000),
      outsideC: sun.sunUp.map((_, step) => airAt(hourOf(step), outside)),
    };
    const spreadC = climate.spreadC?.[index] ?? usualSpreadC(outsideLowC);
    return monthOf(scene, { month: index + 1, spreadC, vent: options.vent });
  });
  return { months, climate, envelope, nightCover: options.nightCover, ventAtC: limitC };
}

/** The lowest inside on a night with this low outside, in degrees Celsius: read between the nights that were run. */
export function insideLowC(month: FrameMonth, outsideC: number): number {
  return outsideC + liftBetween(month, outsideC);
}

/** The low outside at which the frame comes down to a temperature inside. */
export function outsideForInsideC(month: FrameMonth, insideC: number): number {
  // What a frame keeps changes little with the cold, so the step goes to rest within a few turns.
  let outsideC = insideC;
  for (let turn = 0; turn < 40; turn += 1) outsideC = insideC - liftBetween(month, outsideC);
  return outsideC;
}

/** Inside less outside, by the outside low: on a line between the nights that were run, level beyond them. */
function liftBetween({ nights }: FrameMonth, outsideC: number): number {
  const lift = (at: number): number => nights[at]!.insideC - nights[at]!.outsideC;
  const colder = nights.findIndex((night) => night.outsideC <= outsideC);
  if (colder === 0) return lift(0);
  if (colder < 0) return lift(nights.length - 1);
  const [warm, cold] = [nights[colder - 1]!.outsideC, nights[colder]!.outsideC];
  return lift(colder) + ((outsideC - cold) / (warm - cold)) * (lift(colder - 1) - lift(colder));
}

interface SunOfDay {
  readonly clear: readonly SunInside[];
  readonly covered: readonly SunInside[];
  readonly average: readonly SunInside[];
  readonly sunUp: readonly boolean[];
  readonly dayLengthHours: number;
}

interface Scene extends SunOfDay {
  readonly model: FrameModel;
  readonly limitC: number;
  readonly cover: 'on' | 'off';
  readonly lowC: number;
  readonly highC: number;
  readonly belowC: number;
  /** Air outside at each step. */
  readonly outsideC: readonly number[];
}

function sunOfDay(envelope: FrameEnvelope, { place }: FrameClimate, day: DayNumber): SunOfDay {
  const directions = Array.from({ length: stepsPerDay }, (_, step) =>
    sunDirection({ ...place, day, solarHour: hourOf(step) }),
  );
  const under = (sky: 'clear' | 'covered'): readonly SunInside[] =>
    directions.map((sun) =>
      sunInside(envelope, sun, irradiance(sun, { sky, day, latitudeDeg: place.latitudeDeg })),
    );
  const [clear, covered] = [under('clear'), under('covered')];
  return {
    clear,
    covered,
    average: clear.map((sun, step) => ({
      soilW: (sun.soilW + covered[step]!.soilW) / 2,
      airW: (sun.airW + covered[step]!.airW) / 2,
    })),
    sunUp: directions.map(({ up }) => up > 0),
    dayLengthHours: dayLengthHours({ ...place, day }),
  };
}

/** From the balance of a day's means the soil comes to within 0.1 C of rest in this many days. */
const daysToRest = 12;

function monthOf(
  scene: Scene,
  more: { month: number; spreadC: number; vent: VentOpening | undefined },
): FrameMonth {
  const { lowC, highC, limitC, sunUp } = scene;
  let settled: DayRun = { start: startOf(scene), states: [] };
  for (let day = 0; day < daysToRest; day += 1)
    settled = runDay(scene, endOf(settled), { sky: 'average', shiftK: 0, ventAtC: limitC });
  const rest = endOf(settled);
  const anySun = sunUp.some(Boolean);
  const clearHighC = highest(runDay(scene, rest, { sky: 'clear', shiftK: 0 }));
  const average = { lowC: lowest(settled), highC: highest(settled) };
  const coldest = {
    50: nightOf(scene, rest, { sky: 'clear', shiftK: -coldestNightZ(0.5) * more.spreadC }),
    10: nightOf(scene, rest, { sky: 'clear', shiftK: -coldestNightZ(0.1) * more.spreadC }),
  };
  return {
    month: more.month,
    outsideLowC: lowC,
    outsideHighC: highC,
    spreadC: more.spreadC,
    average,
    clearHighC: anySun ? clearHighC : undefined,
    coveredHighC: anySun ? highest(runDay(scene, rest, { sky: 'covered', shiftK: 0 })) : undefined,
    coldest,
    nights: [
      nightOf(scene, rest, { sky: 'covered', shiftK: coldestNightZ(0.5) * more.spreadC }),
      { outsideC: lowC, insideC: average.lowC },
      coldest[50],
      coldest[10],
    ],
    // Warmer outside by one degree is warmer inside by one degree, while the frame is closed.
    ventOutsideC: anySun ? highC + limitC - clearHighC : undefined,
    opening: openingOf(scene, rest, more.vent),
  };
}

/**
 * The night of the second day of a spell that is colder or milder than the average day throughout. Cold ones are clear and mild
 * ones covered; soil and ground are those of the average day.
 */
function nightOf(scene: Scene, rest: FrameState, spell: DayWeather): ColdNight {
  const weather = { ...spell, ventAtC: scene.limitC };
  const second = runDay(scene, endOf(runDay(scene, rest, weather)), weather);
  return { outsideC: scene.lowC + spell.shiftK, insideC: lowest(second) };
}

function openingOf(scene: Scene, rest: FrameState, vent: VentOpening | undefined): Opening {
  if (!vent) return { kind: 'unknown' };
  const weather: DayWeather = { sky: 'clear', shiftK: 0, ventAtC: scene.limitC };
  const { start, states } = runDay(scene, rest, weather);
  const open = states.flatMap((after, step) => {
    const around = surroundings(scene, weather, step);
    const before = states[step - 1] ?? start;
    const { ventW } = heatFlows(scene.model, before, around);
    return ventW < 0 ? [{ heatW: -ventW, insideC: after.temperaturesC[0]!, outsideC: around.outsideC }] : [];
  });
  if (open.length === 0) return { kind: 'closed' };
  if (open.some(({ outsideC }) => scene.limitC - outsideC < leastDifferenceK)) return { kind: 'take-off' };
  const heightM = Math.max(...open.map(({ heatW, ...air }) => propHeightM(heatW, air, vent)));
  return heightM > Math.min(highestPropM, vent.highestM ?? highestPropM)
    ? { kind: 'take-off' }
    : { kind: 'prop', heightM };
}

/** Midnight to midnight: the state before, and that at the end of each step. */
interface DayRun {
  readonly start: FrameState;
  readonly states: readonly FrameState[];
}

interface DayWeather {
  readonly sky: 'clear' | 'covered' | 'average';
  /** The whole day is warmer by this. */
  readonly shiftK: number;
  readonly ventAtC?: number;
}

/** The average day has half of a clear sky. */
const skyCooling = { clear: clearSkyCoolingK, average: clearSkyCoolingK / 2, covered: 0 } as const;

function runDay(scene: Scene, start: FrameState, weather: DayWeather): DayRun {
  const states: FrameState[] = [];
  for (let step = 0; step < stepsPerDay; step += 1)
    states.push(nextState(scene.model, states[step - 1] ?? start, surroundings(scene, weather, step)));
  return { start, states };
}

function surroundings(
  scene: Scene,
  { sky, shiftK, ventAtC: limitC }: DayWeather,
  step: number,
): Surroundings {
  return {
    outsideC: scene.outsideC[step]! + shiftK,
    skyCoolingK: skyCooling[sky],
    groundBesideC: (scene.lowC + scene.highC) / 2 + shiftK,
    groundBelowC: scene.belowC,
    sun: scene[sky][step]!,
    cover: scene.cover === 'on' && !scene.sunUp[step]! ? 'on' : 'off',
    ventAtC: limitC,
  };
}

/** The middle of a step, in hours of solar time. */
function hourOf(step: number): number {
  return ((step + 0.5) * 24) / stepsPerDay;
}

/** The air at the day's mean, and the soil on a line from there to the ground below. */
function startOf({ model, lowC, highC, belowC }: Scene): FrameState {
  const airC = (lowC + highC) / 2;
  const deepest = model.capacity.length - 1;
  return stateAt(model.capacity.map((_, node) => airC + ((belowC - airC) * node) / deepest));
}

function endOf({ start, states }: DayRun): FrameState {
  return states.at(-1) ?? start;
}

function lowest({ states }: DayRun): number {
  return states.reduce((least, state) => Math.min(least, state.temperaturesC[0]!), Infinity);
}

function highest({ states }: DayRun): number {
  return states.reduce((most, state) => Math.max(most, state.temperaturesC[0]!), -Infinity);
}
