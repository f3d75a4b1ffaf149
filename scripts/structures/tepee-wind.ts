/**
 * How a tepee full of leaves fares in the gust of its region, and what would make it stand: legs set deeper, or a weight
 * tied under the lashing.
 */
import {
  choice,
  none,
  quantity,
  type Finding,
  type FindingInput,
  type FindingValue,
} from '../findings/finding.ts';
import { middle } from '../quantities/quantity.ts';
import { toHeld } from '../quantities/units.ts';
import type { PoleTepee } from '../records/schemas/projects/pole-tepee.ts';
import { unique } from './finding-list.ts';
import { layTepee, pushN, tepeeInWind, weightForGustG, withLegsBuried } from './tepee-layout.ts';
import { tepeeSources } from './tepee-practice.ts';
import { pressureSource, type RegionWind } from './wind/velocity-pressure.ts';

export interface TepeeWindOptions {
  readonly wind: RegionWind;
  /** A finding of the tepee by its id; it must be there. */
  readonly given: (id: string) => Finding;
}

/** Deeper than this no bar goes by hand (our own judgement). */
export const deepestLegMm = toHeld(24, 'in');
const depthStepMm = toHeld(1, 'in');

/**
 * Six findings of the tepee in the region's gust:
 *
 * - `tepee.gust`: that gust, or `none('wind-not-given')`, as then are the others;
 * - `tepee.wind-push`: how hard it pushes;
 * - `tepee.stands`: `tepee-stands` where what holds it is half as much again as what tips it, otherwise `tepee-tips`;
 * - `tepee.buried-needed`: how much of each pole must stand in the ground for that, in whole inches, or
 *   `none('tepee-too-windy')` where not even the deepest holes do;
 * - `tepee.weight-needed`: the weight that does the same, tied tight under the lashing from the ground in the middle.
 *
 * The last two are `none('tepee-needs-nothing')` where it stands as it is.
 */
export function tepeeWindFindings(project: PoleTepee, { wind, given }: TepeeWindOptions): readonly Finding[] {
  const of = tepeeInWind(project, layTepee(project));
  const gustMps = wind.gust.value.kind === 'quantity' ? wind.gust.value.value : undefined;
  const valueOf = (make: (gust: number) => FindingValue): FindingValue =>
    gustMps === undefined ? none('wind-not-given') : make(gustMps);
  const needed = (make: (gust: number) => FindingValue): FindingValue =>
    valueOf((gust) => (stands(of.standsMps, gust) ? none('tepee-needs-nothing') : make(gust)));
  const gust: Finding = { ...wind.gust, id: 'tepee.gust' };
  const from = (...ids: readonly string[]): readonly FindingInput[] => [
    { name: 'gust', value: gust.value },
    ...ids.map((name) => {
      const { value } = given(idOfInput[name] ?? `tepee.${name}`);
      return { name, value };
    }),
  ];
  const make = (what: string, value: FindingValue, inputs: readonly FindingInput[]): Finding => ({
    id: `tepee.${what}`,
    value,
    method: `tepee.${what}`,
    inputs,
    sources: [...gust.sources, ...sources].filter(unique),
  });
  return [
    gust,
    make(
      'wind-push',
      valueOf((mps) => quantity('force', pushN(of, mps))),
      from('sail'),
    ),
    make(
      'stands',
      valueOf((mps) => choice(stands(of.standsMps, mps) ? 'tepee-stands' : 'tepee-tips')),
      from('stands-to'),
    ),
    make(
      'buried-needed',
      needed((mps) => depthValue(depthNeededMm(project, mps))),
      from('stands-to', 'pole-length', 'pole-buried', 'pole-thickness', 'spread', 'poles'),
    ),
    make(
      'weight-needed',
      needed((mps) => quantity('mass', weightForGustG(of, mps))),
      from('stands-to', 'sail', 'tepee-height', 'spread', 'poles'),
    ),
  ];
}

/** Inputs whose words are those of another finding. */
const idOfInput: Readonly<Record<string, string>> = { 'tepee-height': 'tepee.height' };

const sources: readonly string[] = [
  pressureSource,
  tepeeSources.plate,
  tepeeSources.pullOut,
  tepeeSources.practice,
  'ubc-1997-overturning',
];

/** Whether a tepee that stands one gust stands another. */
export function stands(standsMps: number, gustMps: number): boolean {
  return standsMps >= gustMps - 1e-9;
}

/** The least depth of the legs, along the pole and in whole inches, at which the tepee stands a gust; undefined where none does. */
export function depthNeededMm(project: PoleTepee, gustMps: number): number | undefined {
  const least = Math.ceil(middle(project.poles.buried) / depthStepMm - 1e-6) * depthStepMm;
  for (let mm = least; mm <= deepestLegMm + 1e-6; mm += depthStepMm) {
    const deeper = withLegsBuried(project, mm);
    const layout = layTepee(deeper);
    if (layout.heightMm <= layout.radiusMm) return undefined;
    if (stands(tepeeInWind(deeper, layout).standsMps, gustMps)) return mm;
  }
  return undefined;
}

function depthValue(mm: number | undefined): FindingValue {
  return mm === undefined ? none('tepee-too-windy') : quantity('length', mm);
}
