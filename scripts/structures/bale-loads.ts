/** What is lifted at a frame of bales, what the wind gets hold of, and how the heat sees it. */
import { count, quantity, type Finding } from '../findings/finding.ts';
import { middle, type Quantity } from '../quantities/quantity.ts';
import type { BaleColdFrame } from '../records/schemas/projects/bale-cold-frame.ts';
import type { FindingList } from './finding-list.ts';
import { baleFrameEnvelope } from './frame-heat/bale-envelope.ts';
import { glazingKinds, type GlazingKind } from './frame-heat/glazing.ts';
import { mixSoil, nightCovers } from './frame-heat/materials.ts';
import { highestPropM } from './frame-heat/months.ts';
import type { FrameGeometry, PlacedSash } from './geometry.ts';
import { missingShare, sashId } from './sash-findings.ts';
import { isHinged, sashPlans, type SashPlan } from './sash-plan.ts';
import type { LiftedItem, Structure, WindCover } from './structure.ts';
import { baleAsLaid } from './wall-layout.ts';
import { gravity } from './wind/sash-in-wind.ts';

/**
 * How many weights lie on the sashes, and what those on one sash weigh together. Needs `frame.sashes`. A record without
 * hold-downs has none of them, and then their weight is 0. Sashes on hinges have theirs at the edge that opens only. Where
 * sashes are held in different ways, each says for itself what holds it.
 */
export function addHoldDowns(made: FindingList, project: BaleColdFrame): void {
  const perEnd = project.holdDowns?.perEnd ?? 0;
  const sources = project.holdDowns?.sources ?? [project.priceSource];
  const mass = partMass(project, 'hold-downs');
  made.add('frame.hold-downs-per-end', count(perEnd), { method: 'frame.given', inputs: [], sources });
  const plans = sashPlans(project);
  const weights = plans.reduce((sum, plan) => sum + weightsOn(plan, perEnd), 0);
  made.add('frame.hold-downs', count(weights), {
    method: 'frame.hold-downs',
    inputs: made.from({ 'hold-downs-per-end': 'frame.hold-downs-per-end', sashes: 'frame.sashes' }),
    sources,
  });
  if (mass) addMass(made, project, 'hold-down', mass);
  if (
    plans.some(
      ({ holdDown, hinge }) => isHinged({ hinge }) || holdDown !== plans[0]!.holdDown || holdDown === 'strap',
    )
  ) {
    addHoldDownOfEach(made, project, plans, { perEnd, massG: mass?.low ?? 0, sources });
    return;
  }
  made.add('frame.hold-down-per-sash', quantity('mass', mass ? 2 * perEnd * mass.low : 0), {
    method: 'frame.hold-down-per-sash',
    inputs: made.from({
      'hold-downs-per-end': 'frame.hold-downs-per-end',
      ...(mass ? { load: 'frame.hold-down' } : {}),
    }),
    sources,
  });
}

/** Weights at both ends of a loose sash, at one of a hinged one. */
function weightsOn({ holdDown, hinge }: SashPlan, perEnd: number): number {
  if (holdDown !== 'weight') return 0;
  return isHinged({ hinge }) ? perEnd : 2 * perEnd;
}

/**
 * A strap round the frame holds by the bales inside it: it gives when it lifts the lightest bale at one end, with those on
 * top of it. A hook in a stake is not counted on, since no figure for the pull of stakes in garden soil could be found.
 */
function addHoldDownOfEach(
  made: FindingList,
  project: BaleColdFrame,
  plans: readonly SashPlan[],
  { perEnd, massG, sources }: { perEnd: number; massG: number; sources: readonly string[] },
): void {
  const strapG =
    project.bale.mass.low * Math.min(project.walls.poleward.courses, project.walls.others.courses);
  project.sashes.forEach(({ id }, index) => {
    const plan = plans[index]!;
    const ends = isHinged(plan) ? 1 : 2;
    const held = plan.holdDown === 'strap' ? ends * strapG : weightsOn(plan, perEnd) * massG;
    made.add(sashId(id, 'hold-down-per-sash'), quantity('mass', held), {
      method: plan.holdDown === 'strap' ? 'frame.strap-holds' : 'frame.hold-down-per-sash',
      inputs:
        plan.holdDown === 'strap'
          ? made.from({ load: 'frame.bale-mass' })
          : made.from({ 'hold-downs-per-end': 'frame.hold-downs-per-end' }),
      sources: plan.holdDown === 'strap' ? project.bale.sources : sources,
    });
  });
}

/** Bales, sashes, and the bags whose weight the record gives. Needs the findings of bales, sashes and hold-downs. */
export function baleLifts(
  made: FindingList,
  project: BaleColdFrame,
  geometry: FrameGeometry,
): readonly LiftedItem[] {
  const top = Math.max(geometry.polewardHeightMm, geometry.equatorHeightMm);
  const bag = partMass(project, 'soil-litres');
  const litres = project.parts.find((part) => part.count === 'soil-litres')?.pack;
  if (bag) addMass(made, project, 'soil-bag', bag);
  return [
    bale(made, project, top),
    sash(made, project, geometry),
    ...(bag && litres ? [soilBag(made.get('frame.soil-bag'), middle(litres))] : []),
    ...(project.holdDowns && partMass(project, 'hold-downs')
      ? [sandbag(made.get('frame.hold-down'), top)]
      : []),
  ];
}

/**
 * Taken up by both strings, which are on top of a bale that lies flat, and set down on the top course. Two people stand at its
 * ends and take the strings a hand's length in.
 */
function bale(made: FindingList, project: BaleColdFrame, topMm: number): LiftedItem {
  const widthMm = middle(project.bale.width);
  const heightMm = middle(project.bale.height);
  return {
    item: 'bale',
    ...massOf(made.get('frame.bale-mass')),
    stage: 'poleward-wall',
    depthMm: widthMm,
    widthMm: middle(project.bale.length),
    fromMm: heightMm,
    toMm: Math.max(heightMm, topMm),
    grip: 'fair',
    reachOfTwoMm: handsBeforeBodyMm + stringsInMm,
  };
}

/**
 * Held flat when it is laid down: by one person as far out as it is wide, by two at an end each, with their arms over as
 * much of the thickest wall as the bearing leaves. It is taken up from where it stands on its long edge.
 */
function sash(made: FindingList, project: BaleColdFrame, geometry: FrameGeometry): LiftedItem {
  const bales = {
    lengthMm: middle(project.bale.length),
    widthMm: middle(project.bale.width),
    heightMm: middle(project.bale.height),
  };
  const walls = [project.walls.poleward, project.walls.others];
  const thickestMm = Math.max(...walls.map(({ lay }) => baleAsLaid(bales, lay).thicknessMm));
  const widest = Math.max(...geometry.sashes.map(({ widthMm }) => widthMm));
  return {
    item: 'sash',
    ...massOf(made.get('frame.heaviest-sash')),
    stage: 'sashes',
    depthMm: widest,
    widthMm: Math.max(...geometry.sashes.map(({ lengthMm }) => lengthMm)),
    fromMm: widest / 2,
    toMm: geometry.polewardHeightMm,
    grip: 'fair',
    reachOfTwoMm: handsBeforeBodyMm + thickestMm - geometry.bearingMm,
  };
}

/** How far from the end of a bale its strings are taken (our own judgement). */
const stringsInMm = 150;

/** From the ankles to hands at the edge of what one stands before: 8 in, as the lifting equation has it (20 cm). */
const handsBeforeBodyMm = 200;

/**
 * A bag lies 4 to 2 1/2 to 1, as bags of planting mix do (our own judgement); it is tipped over the wall or into a cart. Two people
 * take two corners each.
 */
export function soilBag(mass: Finding, litres: number): LiftedItem {
  const thickMm = 100 * Math.cbrt(litres / 10);
  return {
    item: 'soil-bag',
    ...massOf(mass),
    stage: 'soil',
    depthMm: 2.5 * thickMm,
    widthMm: 4 * thickMm,
    fromMm: thickMm / 2,
    toMm: cartRimMm,
    grip: 'poor',
    reachOfTwoMm: handsBeforeBodyMm + 50,
  };
}

/** The rim of a wheelbarrow, about 2 ft up (our own judgement). */
const cartRimMm = 600;

/** A small bag, held by its neck before the body. */
function sandbag(mass: Finding, topMm: number): LiftedItem {
  return {
    item: 'sandbag',
    ...massOf(mass),
    stage: 'sashes',
    depthMm: 250,
    widthMm: 350,
    fromMm: 150,
    toMm: topMm,
    grip: 'poor',
  };
}

/** Every sash with what holds it. Missing panes are covered, so that the wind acts on all of it. */
export function baleCovers(made: FindingList, geometry: FrameGeometry): readonly WindCover[] {
  const own = new Map(made.all().map((finding) => [finding.id, finding]));
  const same = own.get('frame.hold-down-per-sash');
  return geometry.sashes.map(({ id, widthMm, lengthMm, hinge, opens }): WindCover => {
    const [widthM, lengthM] = [widthMm / 1000, lengthMm / 1000];
    const hinged = hinge === 'none' || hinge === 'top' ? hinge : 'side';
    const holds = own.get(sashId(id, 'hold-down-per-sash')) ?? same;
    const holdDownN = holds ? (low(holds) / 1000) * gravity : 0;
    const lever = hinged === 'side' ? widthM : lengthM;
    const prop = Math.min(highestPropM, lever * steepestProp);
    return {
      id: sashId(id, 'x').slice(0, -'.x'.length),
      letter: id,
      weight: sashId(id, 'weight'),
      sash: {
        areaM2: widthM * lengthM,
        massKg: low(made.get(sashId(id, 'weight'))) / 1000,
        widthM,
        lengthM,
        slopeDeg: geometry.slopeDeg,
        ...(opens === 'never' ? {} : { openAngleDeg: (Math.asin(prop / lever) * 180) / Math.PI }),
        holdDownN,
        hinged,
      },
    };
  });
}

/** A prop is never longer than this share of what it lifts: half, which is 30 degrees. */
const steepestProp = 0.5;

/** What the panes of all sashes are together, by their area; covers of missing ones are glazing of their own kind. */
function mixedGlazing(sashes: readonly PlacedSash[]): GlazingKind | undefined {
  const kinds = { glass: 'single-glass', 'plastic-film': 'film', polycarbonate: 'twin-wall' } as const;
  if (sashes.every(({ panes }) => panes.kind === 'glass' && panes.missing === 0)) return undefined;
  const parts = sashes.flatMap(({ panes, widthMm, lengthMm, glassShare }) => {
    const area = widthMm * lengthMm * glassShare;
    const missing = missingShare(panes);
    return [
      { kind: glazingKinds[kinds[panes.kind]], area: area * (1 - missing) },
      ...(panes.cover ? [{ kind: glazingKinds[kinds[panes.cover]], area: area * missing }] : []),
    ];
  });
  const all = parts.reduce((sum, { area }) => sum + area, 0);
  const mean = (value: (kind: GlazingKind) => number): number =>
    parts.reduce((sum, { kind, area }) => sum + value(kind) * area, 0) / all;
  return {
    uWm2K: mean(({ uWm2K }) => uWm2K),
    transmittanceNormal: mean(({ transmittanceNormal }) => transmittanceNormal),
    layers: mean(({ layers }) => layers),
  };
}

/** The frame under its panes on a bed of planting mix, and with a blanket over the glass at night. */
export function baleHeat(geometry: FrameGeometry): NonNullable<Structure['heat']> {
  const glazing = mixedGlazing(geometry.sashes);
  return baleFrameEnvelope(geometry, {
    soil: mixSoil,
    nightCover: nightCovers.blanket,
    ...(glazing ? { glazing } : {}),
  });
}

function partMass(project: BaleColdFrame, counted: string): Quantity<'mass'> | undefined {
  return project.parts.find((part) => part.count === counted)?.mass;
}

function addMass(made: FindingList, project: BaleColdFrame, name: string, mass: Quantity<'mass'>): void {
  made.add(`frame.${name}`, quantity('mass', mass.low, mass.high), {
    method: 'frame.given',
    inputs: [],
    sources: [project.priceSource],
  });
}

function massOf({ id, value }: Finding): { readonly mass: string; readonly massG: number } {
  if (value.kind === 'range') return { mass: id, massG: value.high };
  if (value.kind === 'quantity') return { mass: id, massG: value.value };
  throw new TypeError(`${id} is no weight`);
}

/** The lower end of a weight: what can be counted on against the wind. */
function low({ value }: Finding): number {
  return value.kind === 'range' ? value.low : value.kind === 'quantity' ? value.value : 0;
}
