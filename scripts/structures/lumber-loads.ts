/** What the wind gets hold of at a frame of lumber, what lies on its lids, and how the heat sees it. */
import { count, quantity, type Finding } from '../findings/finding.ts';
import type { LumberColdFrame } from '../records/schemas/projects/lumber-cold-frame.ts';
import { asValue, type FindingList } from './finding-list.ts';
import { glazingKinds, type GlazingKind } from './frame-heat/glazing.ts';
import { lumberFrameEnvelope } from './frame-heat/lumber-envelope.ts';
import { mixSoil, nightCovers } from './frame-heat/materials.ts';
import type { LumberFrameLayout } from './lumber-frame-layout.ts';
import type { LiftedItem, Structure, WindCover } from './structure.ts';
import { gravity } from './wind/sash-in-wind.ts';

/** What begins the ids of a lid in the wind: all lids are alike. */
const lidId = 'frame.lid';

/** The part whose weight holds the lids down. */
function weightPart({ parts }: LumberColdFrame): LumberColdFrame['parts'][number] | undefined {
  return parts.find((part) => part.count === 'hold-downs');
}

/**
 * How many weights lie on the lids, 0 in a record without hold-downs, and where it has some, what those on the low end of one
 * weigh together. Hooks are not counted on: no figure for the pull of a hook and eye in a gust could be found. Needs `frame.lids`.
 */
export function addLidHoldDowns(made: FindingList, project: LumberColdFrame): void {
  const { holdDowns } = project.lids;
  const { perLid, sources } = holdDowns ?? { perLid: 0, sources: [project.priceSource] };
  const atBack = holdDowns?.atBack ?? 0;
  const given = { method: 'build.given', inputs: [] };
  made.add('frame.hold-downs-per-lid', count(perLid), { ...given, sources });
  made.add('frame.hold-downs-at-back', count(atBack), { ...given, sources });
  made.add('frame.hold-downs', count((perLid + atBack) * project.lids.number), {
    method: 'lumber-frame.hold-downs',
    inputs: made.from({
      'hold-downs-per-lid': 'frame.hold-downs-per-lid',
      'hold-downs-at-back': 'frame.hold-downs-at-back',
      lids: 'frame.lids',
    }),
    sources,
  });
  const mass = weightPart(project)?.mass;
  if (!holdDowns || !mass) return;
  made.add('frame.hold-down', asValue(mass), { ...given, sources: [project.priceSource] });
  made.add(`${lidId}.hold-down-per-sash`, quantity('mass', perLid * mass.low), {
    method: 'lumber-frame.hold-down-per-lid',
    inputs: made.from({ 'hold-downs-per-lid': 'frame.hold-downs-per-lid', load: 'frame.hold-down' }),
    sources,
  });
}

/** A small bag, held by its neck before the body; undefined where the record has none. */
export function lidWeightLift(made: FindingList, layout: LumberFrameLayout): LiftedItem | undefined {
  const bag = made.all().find(({ id }) => id === 'frame.hold-down');
  if (!bag) return undefined;
  return {
    item: 'sandbag',
    mass: bag.id,
    massG: ends(bag).high,
    stage: 'hang',
    depthMm: 250,
    widthMm: 350,
    fromMm: 150,
    toMm: layout.frontHeightMm + layout.lids.thicknessMm,
    grip: 'poor',
  };
}

/**
 * One lid for all of them, on hinges at its upper edge, propped as the record says, on a frame that stands by its weight.
 * Needs `frame.lid-weight` and `frame.boards-weight`.
 */
export function lumberCovers(
  made: FindingList,
  project: LumberColdFrame,
  layout: LumberFrameLayout,
): readonly WindCover[] {
  const { lids, slopeDeg, propOpensDeg } = layout;
  const bagG = weightPart(project)?.mass?.low ?? 0;
  const [widthM, lengthM] = [lids.widthMm / 1000, lids.lengthMm / 1000];
  const weights = made.all().find(({ id }) => id === `${lidId}.hold-down-per-sash`);
  return [
    {
      id: lidId,
      weight: 'frame.lid-weight',
      sash: {
        areaM2: widthM * lengthM,
        massKg: ends(made.get('frame.lid-weight')).low / 1000,
        widthM,
        lengthM,
        slopeDeg,
        // A prop as long as the lid opens it by 60 degrees, which rounding may exceed by a hair.
        openAngleDeg: Math.min(60, propOpensDeg),
        holdDownN: weights ? (ends(weights).low / 1000) * gravity : 0,
        hinged: 'top',
      },
      frame: {
        massKg: ends(made.get('frame.boards-weight')).low / 1000,
        depthM: layout.outsideDepthMm / 1000,
        lids: project.lids.number,
        backHoldDownN: ((project.lids.holdDowns?.atBack ?? 0) * bagG * gravity) / 1000,
      },
    },
  ];
}

/** The frame under its lids on a bed of planting mix, and with a blanket over the lids at night. */
export function lumberHeat(
  { lids }: LumberColdFrame,
  layout: LumberFrameLayout,
  propMm: number,
): NonNullable<Structure['heat']> {
  return lumberFrameEnvelope(layout, {
    soil: mixSoil,
    glazing: glazingOf(lids),
    ...(lids.sash ? { glassShare: lids.sash.glassShare } : {}),
    propMm,
    nightCover: nightCovers.blanket,
  });
}

/** Polycarbonate for frames is sold as sheet of two walls. */
function glazingOf({ built }: LumberColdFrame['lids']): GlazingKind {
  if (!built) return glazingKinds['single-glass'];
  return glazingKinds[built.sheet === 'film' ? 'film' : 'twin-wall'];
}

function ends({ id, value }: Finding): { readonly low: number; readonly high: number } {
  if (value.kind === 'range') return value;
  if (value.kind === 'quantity') return { low: value.value, high: value.value };
  throw new TypeError(`${id} is no weight`);
}
