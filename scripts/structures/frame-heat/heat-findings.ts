/** What the heat of a frame comes to, month by month, as findings. Main export: `frameHeat`. */
import {
  choice,
  count,
  none,
  quantity,
  type Finding,
  type FindingInput,
  type FindingValue,
} from '../../findings/finding.ts';
import type { FrameEnvelope } from './envelope.ts';
import { frameGain, nightsBelow, type FrameGain } from './gain.ts';
import { heatInputs, heatSources } from './heat-sources.ts';
import { insideYear } from './inside-year.ts';
import { frameMonths, type FrameMonth, type FrameMonths, type Opening } from './months.ts';
import type { FrameClimate } from './outside.ts';
import type { VentOpening } from './vent.ts';
import type { TemperatureYear } from '../../climate/temperature-year.ts';

export interface FrameHeatOptions {
  /** What is propped open; without it nothing is said of how far. */
  readonly vent?: VentOpening;
  /** The inside temperature to open at; 75 F when absent. */
  readonly ventAtC?: number;
}

export interface FrameHeat {
  /** Never covered at night. */
  readonly bare: FrameMonths;
  /** Covered every night; only for an envelope with a night cover. */
  readonly covered: FrameMonths | undefined;
  readonly findings: readonly Finding[];
  readonly gain: { readonly bare: FrameGain; readonly covered: FrameGain | undefined };
  readonly insideYear: { readonly bare: TemperatureYear; readonly covered: TemperatureYear | undefined };
}

/**
 * The heat of a frame at a place. Findings, with N from 1 for January to 12:
 *
 * - `frame-heat.month-N.lowest`: the lowest inside on the coldest night of half of all years; `.lowest-one-in-ten` of the
 *   coldest year in ten
 * - `frame-heat.month-N.freezing-nights`: nights below 0 C inside
 * - `frame-heat.month-N.clear-day`, `.cloudy-day`: the highest inside when it is never opened, at the mean high outside
 * - `frame-heat.month-N.vent-outside`: the high outside above which a clear day asks for opening
 * - `frame-heat.month-N.open`: how high to prop the low end at noon of a clear day without wind, or `frame-keep-closed`, or
 *   `frame-take-off`
 * - `frame-heat.gain.spring` and `.fall`: days gained
 *
 * With a night cover, those that it changes come again with `-covered`. Where the sun does not rise a finding of the day is
 * `none('sun-below-horizon')`.
 */
export function frameHeat(
  envelope: FrameEnvelope,
  climate: FrameClimate,
  options: FrameHeatOptions = {},
): FrameHeat {
  const bare = frameMonths(envelope, climate, { ...options, nightCover: 'off' });
  const covered = envelope.nightCover && frameMonths(envelope, climate, { ...options, nightCover: 'on' });
  const gain = { bare: frameGain(bare), covered: covered && frameGain(covered) };
  return {
    bare,
    covered,
    findings: [
      ...bare.months.flatMap((month) => dayFindings(bare, month)),
      ...nightFindings(bare),
      gain.bare.spring,
      gain.bare.fall,
      ...(covered ? nightFindings(covered) : []),
      ...(gain.covered ? [gain.covered.spring, gain.covered.fall] : []),
    ],
    gain,
    insideYear: { bare: insideYear(bare), covered: covered && insideYear(covered) },
  };
}

function nightFindings(heat: FrameMonths): readonly Finding[] {
  const nights = nightsBelow(heat, 0);
  const ending = heat.nightCover === 'on' ? '-covered' : '';
  return heat.months.flatMap((month, index) => {
    const of = (
      what: string,
      value: FindingValue,
      method: string,
      inputs: readonly FindingInput[],
    ): Finding => ({
      id: `frame-heat.month-${month.month}.${what}${ending}`,
      value,
      method,
      inputs: [...inputs, ...heatInputs(heat)],
      sources: heatSources(heat, 'night'),
    });
    const coldest = (chance: 50 | 10): readonly [FindingValue, string, readonly FindingInput[]] => [
      quantity('temperature', month.coldest[chance].insideC),
      'frame.heat-lowest',
      [
        { name: 'frame-outside-night', value: quantity('temperature', month.coldest[chance].outsideC) },
        { name: 'chance-percent', value: count(chance) },
      ],
    ];
    return [
      of('lowest', ...coldest(50)),
      of('lowest-one-in-ten', ...coldest(10)),
      of('freezing-nights', count(Math.round(nights[index]!.inside)), 'frame.heat-freezing-nights', [
        { name: 'frame-outside-low', value: quantity('temperature', month.outsideLowC) },
        { name: 'frame-outside-freezing-nights', value: count(Math.round(nights[index]!.outside)) },
      ]),
    ];
  });
}

function dayFindings(heat: FrameMonths, month: FrameMonth): readonly Finding[] {
  const high = { name: 'frame-outside-high', value: quantity('temperature', month.outsideHighC) };
  const limit = { name: 'frame-limit', value: quantity('temperature', heat.ventAtC) };
  const of = (
    what: string,
    value: FindingValue,
    { method, inputs }: { method: string; inputs: readonly FindingInput[] },
  ): Finding => ({
    id: `frame-heat.month-${month.month}.${what}`,
    value,
    method,
    inputs: [...inputs, ...heatInputs(heat)],
    sources: heatSources(heat, method === 'frame.heat-closed' ? 'day' : 'vent'),
  });
  const sky = (name: 'sky-clear' | 'sky-covered'): FindingInput => ({
    name: 'frame-sky',
    value: choice(name),
  });
  return [
    of('clear-day', ofSun(month.clearHighC), {
      method: 'frame.heat-closed',
      inputs: [high, sky('sky-clear')],
    }),
    of('cloudy-day', ofSun(month.coveredHighC), {
      method: 'frame.heat-closed',
      inputs: [high, sky('sky-covered')],
    }),
    of('vent-outside', ofSun(month.ventOutsideC), { method: 'frame.heat-vent-outside', inputs: [limit] }),
    ...(month.opening.kind === 'unknown'
      ? []
      : [of('open', openingValue(month.opening), { method: 'frame.heat-open', inputs: [high, limit] })]),
  ];
}

function ofSun(temperatureC: number | undefined): FindingValue {
  return temperatureC === undefined ? none('sun-below-horizon') : quantity('temperature', temperatureC);
}

function openingValue(opening: Exclude<Opening, { kind: 'unknown' }>): FindingValue {
  switch (opening.kind) {
    case 'closed':
      return none('frame-keep-closed');
    case 'take-off':
      return none('frame-take-off');
    case 'prop':
      return quantity('length', opening.heightM * 1000);
  }
}
