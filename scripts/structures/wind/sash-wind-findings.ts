/** What the wind does to one sash, closed and propped open, as findings. */
import {
  choice,
  count,
  inputOf,
  none,
  quantity,
  type Finding,
  type FindingInput,
  type FindingValue,
} from '../../findings/finding.ts';
import {
  gravity,
  leaveUpToMps,
  liftsAtMps,
  sashInWind,
  type SashState,
  type WindSash,
} from './sash-in-wind.ts';
import { frameStandsUpToMps, type StandingFrame } from './frame-in-wind.ts';
import { pressureSource, type RegionWind } from './velocity-pressure.ts';

export interface SashWindOptions {
  /** What the ids begin with: `frame.sash-a` gives `frame.sash-a.wind-lift-closed`. */
  readonly id: string;
  readonly wind: RegionWind;
  /** The finding that gives the weight of the sash, where there is one. */
  readonly weight?: Finding;
  /** What its hinges hold it to, where that stands by its weight alone. */
  readonly frame?: StandingFrame;
}

const sources: Readonly<Record<SashState, readonly string[]>> = {
  closed: [pressureSource, 'lid-uplift', 'ubc-1997-overturning'],
  open: [pressureSource, 'flat-plate-force', 'ubc-1997-overturning'],
};

/**
 * For the closed sash, and for the open one where it opens:
 *
 * - `wind-lift-closed`: the force of the region's gust on it;
 * - `wind-force-closed` and `wind-weight-closed`: the hold-down needed in that gust, as a force and as a weight of the
 *   same pull, or `none('weight-holds-it')`;
 * - `wind-held-closed`: whether weight and hold-down as given withstand that gust;
 * - `wind-lifts-closed`: the gust at which it begins to lift as it is;
 * - `wind-limit-closed`: the gust above which it is not to be left so;
 * - `wind-frame-closed`: the gust above which the frame that it is hinged to would not keep standing, where there is
 *   one; the limit is never more, and nothing is held where the frame is not.
 *
 * Without a gust in the region's record the first four are `none('wind-not-given')`.
 */
export function sashWindFindings(sash: WindSash, options: SashWindOptions): readonly Finding[] {
  const states: readonly SashState[] = sash.openAngleDeg === undefined ? ['closed'] : ['closed', 'open'];
  return states.flatMap((state) => ofState(sash, state, options));
}

function ofState(
  sash: WindSash,
  state: SashState,
  { id, wind, weight, frame }: SashWindOptions,
): readonly Finding[] {
  const standsMps = frame ? frameStandsUpToMps(frame, sash, state) : Infinity;
  const gustMps = wind.gust.value.kind === 'quantity' ? wind.gust.value.value : undefined;
  const inGust = gustMps === undefined ? undefined : sashInWind(sash, state, gustMps);
  const needed = inGust?.holdDownNeededN ?? 0;
  const given = (value: () => FindingValue): FindingValue => (inGust ? value() : none('wind-not-given'));
  const needs = (value: FindingValue): FindingValue =>
    given(() => (needed > 0 ? value : none('weight-holds-it')));
  const gust = inputOf('gust', wind.gust);
  const body = bodyInputs(sash, state, weight);
  const holdDown: FindingInput = { name: 'hold-down', value: quantity('force', sash.holdDownN ?? 0) };
  const make = (
    what: string,
    value: FindingValue,
    method: string,
    inputs: readonly FindingInput[],
  ): Finding => ({
    id: `${id}.wind-${what}-${state}`,
    value,
    method: `wind.${method}`,
    inputs,
    sources: sources[state],
  });
  return [
    make(
      'lift',
      given(() => quantity('force', inGust!.liftN)),
      `lift-${state}`,
      [inputOf('wind-pressure', wind.pressure), { name: 'area', value: quantity('area', sash.areaM2) }],
    ),
    make('force', needs(quantity('force', needed)), 'hold-down-force', [gust, ...body]),
    make('weight', needs(quantity('mass', (needed / gravity) * 1000)), 'hold-down-weight', [gust, ...body]),
    make(
      'held',
      given(() => choice(inGust!.held && standsMps >= gustMps! ? 'wind-held' : 'wind-not-held')),
      'held',
      [gust, ...body, holdDown],
    ),
    make('lifts', quantity('speed', liftsAtMps(sash, state)), 'lifts-at', [...body, holdDown]),
    make('limit', quantity('speed', Math.min(standsMps, leaveUpToMps(sash, state))), 'leave-up-to', [
      ...body,
      holdDown,
    ]),
    ...(frame
      ? [
          make('frame', quantity('speed', standsMps), 'frame-stands', [
            ...body,
            holdDown,
            ...frameInputs(frame),
          ]),
        ]
      : []),
  ];
}

function frameInputs({ massKg, depthM, lids, backHoldDownN }: StandingFrame): readonly FindingInput[] {
  return [
    { name: 'frame-weight', value: quantity('mass', massKg * 1000) },
    { name: 'outside-width', value: quantity('length', depthM * 1000) },
    { name: 'lids', value: count(lids) },
    { name: 'back-hold-down', value: quantity('force', backHoldDownN) },
  ];
}

function bodyInputs(sash: WindSash, state: SashState, weight: Finding | undefined): readonly FindingInput[] {
  return [
    weight
      ? inputOf('sash-weight', weight)
      : { name: 'sash-weight', value: quantity('mass', sash.massKg * 1000) },
    { name: 'area', value: quantity('area', sash.areaM2) },
    { name: 'sash-slope', value: quantity('angle', sash.slopeDeg) },
    ...(state === 'open' && sash.openAngleDeg !== undefined
      ? [{ name: 'open-angle', value: quantity('angle', sash.openAngleDeg) }]
      : []),
    { name: 'hinges', value: choice(`hinged-${sash.hinged}`) },
  ];
}
