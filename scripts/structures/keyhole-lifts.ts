/** What is lifted for a keyhole bed: blocks, bags of gravel and bags of mix. */
import { quantity } from '../findings/finding.ts';
import { middle } from '../quantities/quantity.ts';
import type { ProjectPart } from '../records/schemas/project.ts';
import type { KeyholeBed } from '../records/schemas/projects/keyhole-bed.ts';
import { soilBag } from './bale-loads.ts';
import { asValue, unique, type FindingList } from './finding-list.ts';
import type { KeyholeFill } from './keyhole-layout.ts';
import { blockDensityGPerMm3, gravelDensityGPerL, keyholeSources } from './keyhole-practice.ts';
import { carriedAtMm, fromGroundMm, largestBagL, lumberSources, mixDensityGPerL } from './lumber-practice.ts';
import type { LiftedItem } from './structure.ts';

/** Adds the weights, and gives what somebody lifts in the order of building; what comes on a truck is not lifted. */
export function addLifts(made: FindingList, project: KeyholeBed, fill: KeyholeFill): readonly LiftedItem[] {
  const { block } = project;
  const [face, back, depth, height] = [block.face, block.back, block.depth, block.height].map(middle) as [
    number,
    number,
    number,
    number,
  ];
  const volumeMm3 = ((face + back) / 2) * depth * height;
  const mass = block.mass ?? {
    low: volumeMm3 * blockDensityGPerMm3.low,
    high: volumeMm3 * blockDensityGPerMm3.high,
  };
  const sizes = made.from({
    'block-face': 'bed.block-face',
    'block-back': 'bed.block-back',
    'block-depth': 'bed.block-depth',
    'block-height': 'bed.block-height',
  });
  made.add('bed.block-mass', quantity('mass', mass.low, mass.high), {
    method: block.mass ? 'build.given' : 'keyhole.block-mass',
    inputs: block.mass ? [] : sizes,
    sources: block.mass ? block.sources : [keyholeSources.concrete, ...block.sources].filter(unique),
  });
  const blocks = made.get('bed.blocks').value;
  const number = blocks.kind === 'count' ? blocks.value : 0;
  made.add('bed.blocks-mass', quantity('mass', mass.low * number, mass.high * number), {
    method: 'keyhole.blocks-mass',
    inputs: made.from({ blocks: 'bed.blocks', 'block-mass': 'bed.block-mass' }),
    sources: made.get('bed.block-mass').sources,
  });
  const ofBlock: LiftedItem = {
    item: 'block',
    mass: 'bed.block-mass',
    massG: mass.high,
    stage: 'first-course',
    depthMm: depth,
    widthMm: face,
    fromMm: fromGroundMm,
    toMm: Math.max(fill.aboveMm, carriedAtMm),
    grip: 'fair',
  };
  const gravel = addBagWeight(made, project.parts, {
    count: 'base-litres',
    id: 'bed.gravel-bag-weight',
    method: 'keyhole.gravel-bag-weight',
    densityGPerL: gravelDensityGPerL,
    source: keyholeSources.gravelBag,
  });
  const mix = addBagWeight(made, project.parts, {
    count: 'soil-litres',
    id: 'bed.bag-weight',
    method: 'lumber.bag-weight',
    densityGPerL: mixDensityGPerL,
    source: lumberSources.bagWeight,
  });
  return [
    ...(gravel
      ? [{ ...soilBag(made.get(gravel.id), gravel.litres), item: 'gravel-bag', stage: 'base' }]
      : []),
    ofBlock,
    ...(mix ? [mixBag(mix.massG, fill)] : []),
  ];
}

interface BagKind {
  /** What counts the part that comes in these bags. */
  readonly count: ProjectPart['count'];
  /** Id of the finding of its weight. */
  readonly id: string;
  /** By which it is worked out from the volume. */
  readonly method: string;
  readonly densityGPerL: { readonly low: number; readonly high: number };
  readonly source: string;
}

/** The weight of a bag, as its part gives it or by its volume; undefined where it does not come in bags. */
function addBagWeight(
  made: FindingList,
  parts: readonly ProjectPart[],
  { count, id, method, densityGPerL, source }: BagKind,
): { readonly id: string; readonly massG: number; readonly litres: number } | undefined {
  const part = parts.find((each) => each.count === count);
  const pack = part?.pack;
  if (!pack || pack.high > largestBagL) return undefined;
  const low = part.mass?.low ?? pack.low * densityGPerL.low;
  const high = part.mass?.high ?? pack.high * densityGPerL.high;
  made.add(id, quantity('mass', low, high), {
    method: part.mass ? 'build.given' : method,
    inputs: part.mass ? [] : [{ name: 'pack', value: asValue(pack) }],
    sources: [source],
  });
  return { id, massG: high, litres: middle(pack) };
}

function mixBag(massG: number, fill: KeyholeFill): LiftedItem {
  return {
    item: 'soil-bag',
    mass: 'bed.bag-weight',
    massG,
    stage: 'soil',
    depthMm: 380,
    widthMm: 600,
    fromMm: fromGroundMm,
    toMm: Math.max(fill.aboveMm, carriedAtMm),
    grip: 'poor',
    // Two people stand at its ends, with their hands under it (our own judgement).
    reachOfTwoMm: 250,
  };
}
