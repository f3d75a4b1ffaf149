/**
 * What holds sashes down in the wind: how many weights lie on them every day, how many of them the gust of the record takes,
 * and what they then stand.
 */
import { count, inputOf, quantity, type Finding, type FindingInput } from '../findings/finding.ts';
import type { Quantity } from '../quantities/quantity.ts';
import type { BaleColdFrame } from '../records/schemas/projects/bale-cold-frame.ts';
import { asValue, type FindingList } from './finding-list.ts';
import { weightBoards } from './frame-boards.ts';
import { highestPropM } from './frame-heat/months.ts';
import type { FrameGeometry, PlacedSash } from './geometry.ts';
import { structureSources } from './practice.ts';
import { sashId } from './sash-findings.ts';
import { isHinged, sashPlans, type SashPlan } from './sash-plan.ts';
import { gravity, leaveUpToMps, sashInWind, type SashState, type WindSash } from './wind/sash-in-wind.ts';
import { pressureSource } from './wind/velocity-pressure.ts';

/**
 * How many weights lie on the sashes, and what those on one sash weigh together. Needs `frame.sashes` and the weights of the
 * sashes. A record without hold-downs has none of them, and then their weight is 0. Sashes on hinges have theirs at the edge
 * that opens only. Where sashes are held in different ways, each says for itself what holds it. With a gust in the record
 * the total is what it takes in that gust, and what the sashes stand is told for every day and for that gust.
 */
export function addHoldDowns(made: FindingList, project: BaleColdFrame, geometry: FrameGeometry): void {
  const perEnd = project.holdDowns?.perEnd ?? 0;
  const sources = project.holdDowns?.sources ?? [project.priceSource];
  const mass = partMass(project, 'hold-downs');
  made.add('frame.hold-downs-per-end', count(perEnd), { method: 'frame.given', inputs: [], sources });
  if (mass) addMass(made, project, 'hold-down', mass);
  const mostPerEnd = addForGust(made, project, geometry) ?? perEnd;
  const plans = sashPlans(project);
  const weights = plans.reduce((sum, plan) => sum + weightsOn(plan, mostPerEnd), 0);
  const perEndId = mostPerEnd > perEnd ? 'frame.hold-downs-in-gust' : 'frame.hold-downs-per-end';
  const perEndInput = made.from({ 'hold-downs-per-end': perEndId });
  made.add('frame.hold-downs', count(weights), {
    method: 'frame.hold-downs',
    inputs: [...perEndInput, ...made.from({ sashes: 'frame.sashes' })],
    sources,
  });
  if (
    plans.some(
      ({ holdDown, hinge }) => isHinged({ hinge }) || holdDown !== plans[0]!.holdDown || holdDown === 'strap',
    )
  ) {
    addHoldDownOfEach(made, project, plans, { perEnd, massG: mass?.low ?? 0, sources });
    return;
  }
  made.add('frame.hold-down-per-sash', quantity('mass', mass ? 2 * mostPerEnd * mass.low : 0), {
    method: 'frame.hold-down-per-sash',
    inputs: [...perEndInput, ...(mass ? made.from({ load: 'frame.hold-down' }) : [])],
    sources,
  });
  if (!mass || project.holdDowns?.forGust === undefined) return;
  addLimits(made, geometry, { daily: 2 * perEnd * mass.low, gust: 2 * mostPerEnd * mass.low });
}

/** Weights at both ends of a loose sash, at one of a hinged one. */
function weightsOn({ holdDown, hinge }: SashPlan, perEnd: number): number {
  if (holdDown !== 'weight') return 0;
  return isHinged({ hinge }) ? perEnd : 2 * perEnd;
}

/** Weights at each end in the gust of the record, never fewer than every day; undefined where the record has no gust. */
function addForGust(
  made: FindingList,
  { holdDowns, priceSource }: BaleColdFrame,
  geometry: FrameGeometry,
): number | undefined {
  if (holdDowns?.forGust === undefined) return undefined;
  made.add('frame.hold-down-gust', asValue(holdDowns.forGust), {
    method: 'frame.given',
    inputs: [],
    sources: [priceSource],
  });
  const load = made.all().find(({ id }) => id === 'frame.hold-down');
  if (!load) return undefined;
  const gustMps = holdDowns.forGust.low;
  const needed = geometry.sashes.map(
    (sash) => sashInWind(windSash(made, geometry, sash), 'closed', gustMps).holdDownNeededN / 2,
  );
  const oneN = (lowest(load) / 1000) * gravity;
  const number = Math.max(holdDowns.perEnd, Math.ceil(Math.max(...needed) / oneN - 1e-9));
  made.add('frame.hold-downs-in-gust', count(number), {
    method: 'frame.hold-downs-in-gust',
    inputs: [
      ...made.from({ gust: 'frame.hold-down-gust', load: 'frame.hold-down' }),
      ...sashInputs(made, geometry),
    ],
    sources: windSources.closed,
  });
  const boards = weightBoards(geometry);
  made.add('frame.weight-boards', count(boards.length), {
    method: 'frame.weight-boards',
    inputs: made.from({ sashes: 'frame.sashes' }),
    sources: [structureSources.fittings],
  });
  made.add('frame.weight-board', quantity('length', Math.max(...boards.map(({ lengthMm }) => lengthMm))), {
    method: 'frame.weight-board',
    inputs: geometry.sashes.map(({ id }) => inputOf('sash-width', made.get(sashId(id, 'width')))),
    sources: [structureSources.fittings],
  });
  return number;
}

const windSources: Readonly<Record<SashState, readonly string[]>> = {
  closed: [pressureSource, 'lid-uplift', 'ubc-1997-overturning'],
  open: [pressureSource, 'flat-plate-force', 'ubc-1997-overturning'],
};

/** The gusts, of the sash that stands least, up to which sashes are left shut or propped with the weights of every day or of all. */
function addLimits(
  made: FindingList,
  geometry: FrameGeometry,
  massG: { readonly daily: number; readonly gust: number },
): void {
  const add = (when: 'daily' | 'gust', state: SashState): void => {
    const holdDownN = (massG[when] / 1000) * gravity;
    const limits = geometry.sashes
      .filter(({ opens }) => state === 'closed' || opens !== 'never')
      .map((sash) => leaveUpToMps({ ...windSash(made, geometry, sash), holdDownN }, state));
    made.add(`frame.${when}-limit-${state}`, quantity('speed', Math.min(...limits)), {
      method: 'wind.leave-up-to',
      inputs: [...sashInputs(made, geometry), { name: 'hold-down', value: quantity('force', holdDownN) }],
      sources: windSources[state],
    });
  };
  add('daily', 'closed');
  add('daily', 'open');
  add('gust', 'closed');
}

function sashInputs(made: FindingList, { sashes }: FrameGeometry): readonly FindingInput[] {
  return sashes.map(({ id }) => inputOf('sash-weight', made.get(sashId(id, 'weight'))));
}

/**
 * A strap round the frame is not counted on to hold a sash shut: it runs nearly level from the sash over the wall, so that it
 * pulls the bales inward long before it pulls the sash down (`frame.strap-holds`). Nor is a hook in a stake, since no figure
 * for the pull of stakes straight out of garden soil could be found.
 */
function addHoldDownOfEach(
  made: FindingList,
  project: BaleColdFrame,
  plans: readonly SashPlan[],
  { perEnd, massG, sources }: { perEnd: number; massG: number; sources: readonly string[] },
): void {
  project.sashes.forEach(({ id }, index) => {
    const plan = plans[index]!;
    const strapped = plan.holdDown === 'strap';
    made.add(sashId(id, 'hold-down-per-sash'), quantity('mass', weightsOn(plan, perEnd) * massG), {
      method: strapped ? 'frame.strap-holds' : 'frame.hold-down-per-sash',
      inputs: strapped
        ? made.from({ slope: 'frame.slope' })
        : made.from({ 'hold-downs-per-end': 'frame.hold-downs-per-end' }),
      sources: strapped ? [structureSources.fittings] : sources,
    });
  });
}

/** A sash as the wind sees it, with nothing on it. Missing panes are covered, so that the wind acts on all of it. */
export function windSash(
  made: FindingList,
  { slopeDeg }: FrameGeometry,
  { id, widthMm, lengthMm, hinge, opens }: PlacedSash,
): WindSash {
  const [widthM, lengthM] = [widthMm / 1000, lengthMm / 1000];
  const hinged = hinge === 'none' || hinge === 'top' ? hinge : 'side';
  const lever = hinged === 'side' ? widthM : lengthM;
  const open = openingMm({ widthMm, lengthMm, hinge }) / 1000;
  return {
    areaM2: widthM * lengthM,
    massKg: lowest(made.get(sashId(id, 'weight'))) / 1000,
    widthM,
    lengthM,
    slopeDeg,
    ...(opens === 'never' ? {} : { openAngleDeg: (Math.asin(open / lever) * 180) / Math.PI }),
    hinged,
  };
}

/** How far a sash is propped open at the most: a foot, or half of what it lifts where that is less, which is 30 degrees. */
export function openingMm({
  widthMm,
  lengthMm,
  hinge,
}: Pick<PlacedSash, 'widthMm' | 'lengthMm' | 'hinge'>): number {
  const leverMm = hinge === 'west' || hinge === 'east' ? widthMm : lengthMm;
  return Math.min(highestPropM * 1000, leverMm * 0.5);
}

/** What one of a part weighs, where the record says it. */
export function partMass(project: BaleColdFrame, counted: string): Quantity<'mass'> | undefined {
  return project.parts.find((part) => part.count === counted)?.mass;
}

/** What one of a part weighs as a finding of this name. */
export function addMass(
  made: FindingList,
  project: BaleColdFrame,
  name: string,
  mass: Quantity<'mass'>,
): void {
  made.add(`frame.${name}`, quantity('mass', mass.low, mass.high), {
    method: 'frame.given',
    inputs: [],
    sources: [project.priceSource],
  });
}

/** The lower end of a weight: what can be counted on against the wind. */
export function lowest({ value }: Finding): number {
  return value.kind === 'range' ? value.low : value.kind === 'quantity' ? value.value : 0;
}
