/**
 * The daily mean temperature of bare garden soil through the average year, from the air's: each wave of the year goes down
 * into the soil weaker and later. At depth z a wave is smaller by exp(-z/d) and later by z/d radians, where d =
 * sqrt(2 κ/ω) is its damping depth, κ the thermal diffusivity of the soil and ω the wave's angular frequency.
 *
 * Source of the model: D. Hillel, Introduction to Soil Physics, 1982, as given by the soil physics group of Oklahoma State
 * University. Its assumptions: the surface follows the daily mean of the air, and the soil is the same all the
 * way down and all year round.
 *
 * What that leaves out, and how far off it can be. Sun warms a bare dry bed above the air and shade or mulch keeps one
 * below it: expect 2 degrees C either way, which is about a week in spring (our own judgement). Snow keeps
 * soil warmer than the air, and freezing or thawing holds it near 0 C for weeks, so that temperatures below about 1 C are no
 * more than a sign of frozen ground, and a thaw after a snowy winter comes later than worked out. By night and by day
 * the soil at seed depth swings about the mean by several degrees, less the deeper it lies.
 */
import { choice, date, none, quantity, type DateFinding, type DayNumber } from '../findings/finding.ts';
import type { SoilTexture } from '../records/schemas/region.ts';
import { crossingDay, temperatureName, type WantedTemperature } from './air-temperature.ts';
import { daysInYear, dayOfYear } from './calendar.ts';
import { meanOn, type SoilTemperatureYear, type TemperatureYear } from './temperature-year.ts';

export type SoilMoisture = 'dry' | 'moist' | 'wet';

export interface SoilForTemperature {
  readonly texture: SoilTexture;
  readonly moisture: SoilMoisture;
  /** Id of the source that says what the soil is. */
  readonly source: string;
}

/**
 * The soil's temperatures through the year. Depths are in millimetres below the surface; a negative one throws a
 * RangeError. Meant for seed depths of 10 to 100 mm, and good to a metre or so.
 */
export function soilTemperatureYear(air: TemperatureYear, soil: SoilForTemperature): SoilTemperatureYear {
  const { meanC, waves } = yearlyWaves(air);
  const diffusivity = thermalDiffusivity(soil);
  const byDepth = new Map<number, readonly number[]>();
  const yearAt = (depthMm: number): readonly number[] => {
    if (!(depthMm >= 0)) throw new RangeError(`no such depth: ${depthMm}`);
    const damped = waves.map((wave) => {
      const depthsDown = depthMm / dampingDepthMm(diffusivity, wave.cycles);
      return { ...wave, heightC: wave.heightC * Math.exp(-depthsDown), phase: wave.phase - depthsDown };
    });
    return Array.from({ length: daysInYear }, (_, index) =>
      damped.reduce(
        (sum, wave) => sum + wave.heightC * Math.cos(wave.cycles * angleOf(index + 1) + wave.phase),
        meanC,
      ),
    );
  };
  return {
    at: (day, depthMm) => {
      const year = byDepth.get(depthMm) ?? yearAt(depthMm);
      byDepth.set(depthMm, year);
      return year[dayOfYear(day) - 1]!;
    },
    sources: [...new Set([...air.sources, soil.source, ...methodSources])],
    inputs: [
      { name: 'soil-texture', value: choice(soil.texture) },
      { name: 'soil-moisture', value: choice(soil.moisture) },
    ],
  };
}

/** The thermal diffusivity of a soil, in square millimetres per second. */
export function thermalDiffusivity({ texture, moisture }: Omit<SoilForTemperature, 'source'>): number {
  const { sand, clay } = diffusivities[moisture];
  return clay + (sand - clay) * sandiness[texture];
}

/** The depth at which a wave has faded to 37 %, in millimetres; one cycle a year unless more are given. */
export function dampingDepthMm(diffusivityMm2PerS: number, cyclesPerYear = 1): number {
  const secondsInYear = daysInYear * 86_400;
  return Math.sqrt((2 * diffusivityMm2PerS * secondsInYear) / (2 * Math.PI * cyclesPerYear));
}

export interface WantedSoilTemperature extends WantedTemperature {
  readonly soil: SoilTemperatureYear;
  /** Below the surface. */
  readonly depthMm: number;
}

/**
 * The date on which the soil at a depth reaches a temperature, as finding `soil.rising.50f.25mm`: rising, the day that
 * reaches it after one below; falling, the day that comes down to it after one above. When it does not cross the
 * temperature at all: `none('soil-always-warmer')` or `none('soil-always-cooler')`.
 */
export function soilReaches(wanted: WantedSoilTemperature): DateFinding {
  const { soil, depthMm, temperatureC, direction } = wanted;
  const day = crossingDay((on) => soil.at(on, depthMm), wanted);
  return {
    id: `soil.${direction}.${temperatureName(temperatureC)}.${Math.round(depthMm)}mm`,
    value:
      typeof day === 'number'
        ? date(day)
        : none(day === 'always-above' ? 'soil-always-warmer' : 'soil-always-cooler'),
    method: `soil.${direction}`,
    inputs: [
      { name: 'soil-temperature', value: quantity('temperature', temperatureC) },
      { name: 'soil-depth', value: quantity('length', depthMm) },
      ...(soil.inputs ?? []),
    ],
    sources: soil.sources,
  };
}

const methodSources = ['hillel-1982-soil-temperature', 'moene-van-dam-2014', 'cosby-1984-textures'];

/**
 * Thermal diffusivity of loosely packed sand and of clay, both with 40 % of pores, in mm²/s: dry, with water in half of the
 * pores, and saturated.
 *
 * Source: A. F. Moene and J. C. van Dam, Transport in the Atmosphere-Vegetation-Soil Continuum, Cambridge University Press,
 * 2014, table 2.2, after D. A. de Vries, 1963.
 */
const diffusivities: Readonly<Record<SoilMoisture, { readonly sand: number; readonly clay: number }>> = {
  dry: { sand: 0.19, clay: 0.1 },
  moist: { sand: 0.99, clay: 0.4 },
  wet: { sand: 0.85, clay: 0.45 },
};

/**
 * Where each texture stands between clay (0) and sand (1): by the percent of sand in the middle of its class (92, 58, 43,
 * 17, 32 and 22 for the six; B. J. Cosby et al., Water Resources Research 20, 1984, from memory), reckoned from that of
 * clay to that of sand. To reckon along a line is our own judgement: the table has no loams. At seed depth the
 * difference between textures is a fraction of a degree.
 */
const sandiness: Readonly<Record<SoilTexture, number>> = {
  sand: 1,
  'sandy-loam': 0.51,
  loam: 0.3,
  'silt-loam': 0,
  'clay-loam': 0.14,
  clay: 0,
};

interface Wave {
  readonly cycles: number;
  readonly heightC: number;
  readonly phase: number;
}

/** A curve through twelve monthly means has little beyond six waves a year; twice as many leave nothing out. */
const mostCycles = 12;

/** The air's daily mean as a mean and waves of one, two and more cycles a year. */
function yearlyWaves(air: TemperatureYear): { meanC: number; waves: readonly Wave[] } {
  const means = Array.from({ length: daysInYear }, (_, index) => meanOn(air, index + 1));
  const average = (valueOf: (meanC: number, day: DayNumber) => number): number =>
    means.reduce((sum, meanC, index) => sum + valueOf(meanC, index + 1), 0) / daysInYear;
  const waves = Array.from({ length: mostCycles }, (_, index) => {
    const cycles = index + 1;
    const cosine = 2 * average((meanC, day) => meanC * Math.cos(cycles * angleOf(day)));
    const sine = 2 * average((meanC, day) => meanC * Math.sin(cycles * angleOf(day)));
    return { cycles, heightC: Math.hypot(cosine, sine), phase: Math.atan2(-sine, cosine) };
  });
  return { meanC: average((meanC) => meanC), waves };
}

function angleOf(day: DayNumber): number {
  return (2 * Math.PI * day) / daysInYear;
}
