/**
 * Works out a round keyhole bed of dry-stacked block: how many blocks each course takes, the basket in its middle, what it is
 * filled with from the bottom up, and who reaches across it.
 */
import {
  choice,
  count,
  quantity,
  type Finding,
  type FindingInput,
  type FindingValue,
} from '../findings/finding.ts';
import { middle } from '../quantities/quantity.ts';
import { fromHeld } from '../quantities/units.ts';
import type { KeyholeBed } from '../records/schemas/projects/keyhole-bed.ts';
import { asValue, FindingList, unique } from './finding-list.ts';
import { keyholeAssembly } from './keyhole-assembly.ts';
import { keyholeFaults } from './keyhole-faults.ts';
import {
  baseLengthMm,
  blocksOf,
  fillOf,
  layRing,
  meanRiseShare,
  ringSizes,
  soilLengthMm,
  type KeyholeFill,
  type Ring,
} from './keyhole-layout.ts';
import { addLifts } from './keyhole-lifts.ts';
import { keyholeSources } from './keyhole-practice.ts';
import { reachers, reachLimits, reachOf, type Reacher } from './raised-bed-reach.ts';
import type { BuildPlace, Built, Structure } from './structure.ts';

/** The bed of a record: built, or everything that does not add up. */
export function keyholeStructure(project: KeyholeBed, { hemisphere }: BuildPlace): Built {
  const faults = keyholeFaults(project);
  const ring = faults.length === 0 ? layRing(ringSizes(project)) : undefined;
  if (!ring) return { kind: 'faults', faults };
  const fill = fillOf(project, ring);
  const made = new FindingList();
  addGiven(made, project);
  made.add('bed.sunny-side', choice(hemisphere === 'north' ? 'south' : 'north'), {
    method: 'keyhole.sunny-side',
    inputs: [],
    sources: [keyholeSources.practice],
  });
  addRing(made, project, ring);
  addWall(made, project, ring, fill);
  addBasket(made, project, ring);
  addInside(made, project, ring, fill);
  addLayers(made, project, ring, fill);
  const lifts = addLifts(made, project, fill);
  addReach(made, ring, fill);
  const structure: Structure = {
    findings: made.all(),
    counts: {
      blocks: made.get('bed.blocks'),
      stakes: made.get('bed.basket-stakes'),
      'base-litres': made.get('bed.base-volume'),
      'drainage-litres': made.get('bed.layer-drainage'),
      'brown-litres': made.get('bed.browns'),
      'green-litres': made.get('bed.greens'),
      'soil-litres': made.get('bed.mix-to-fill'),
    },
    lengths: { stakes: made.get('bed.basket-stake-length') },
    pieces: [],
    lifts,
    bed: {
      shape: 'ring',
      lengthMm: ringLengthMm(ring),
      length: 'bed.ring-length',
      depthMm: ring.insideMm - ring.basketRadiusMm,
      soilDepthMm: fill.soilMm,
      ring: {
        innerRadiusMm: ring.basketRadiusMm,
        openAngleAt: (radiusMm) => Math.PI - soilLengthMm(ring, radiusMm) / (2 * radiusMm),
      },
      cover: 'open',
    },
    glance: ['bed.outside-diameter', 'bed.wall-height', 'bed.blocks'],
    assembly: keyholeAssembly(project, ring, fill, hemisphere),
    versions: () => smallerKeyholeBeds(project, ring, fill),
  };
  return { kind: 'structure', structure };
}

/**
 * The beds of the same record with fewer courses and, for each number of courses, ever narrower by half a foot; those that
 * hold most of what is grown come first: a wide bed before a high one. A bed narrower than 3 ft is no bed.
 */
export function* smallerKeyholeBeds(
  project: KeyholeBed,
  ring: Pick<Ring, 'diameterMm' | 'block'>,
  fill: Pick<KeyholeFill, 'courses'>,
): Generator<KeyholeBed> {
  const inches = (mm: number): KeyholeBed['diameter'] => ({
    dimension: 'length',
    low: mm,
    high: mm,
    written: `${Math.round(fromHeld(mm, 'in') * 1000) / 1000} in`,
  });
  const buriedMm = middle(project.buried);
  for (
    let mm = ring.diameterMm;
    mm >= narrowestVersionMm - 1e-6;
    mm = Math.ceil(mm / versionStepMm - 1 - 1e-6) * versionStepMm
  ) {
    for (let courses = fill.courses; courses >= 2; courses -= 1) {
      if (mm === ring.diameterMm && courses === fill.courses) continue;
      const height =
        courses === fill.courses ? project.height : inches(courses * ring.block.heightMm - buriedMm);
      yield { ...project, diameter: inches(mm), height };
    }
  }
}

const versionStepMm = 152.4;
const narrowestVersionMm = 6 * versionStepMm;

function ringLengthMm(ring: Ring): number {
  return soilLengthMm(ring, (ring.insideMm + ring.basketRadiusMm) / 2);
}

const length = (mm: number): FindingValue => quantity('length', mm);
const litres = (value: number): FindingValue => quantity('volume', value);

function addGiven(made: FindingList, project: KeyholeBed): void {
  const { block, basket, layers, settling, priceSource } = project;
  const given = (id: string, value: FindingValue, sources: readonly string[]): void => {
    made.add(id, value, { method: 'build.given', inputs: [], sources });
  };
  const own = [priceSource];
  given('bed.block-face', asValue(block.face), block.sources);
  given('bed.block-back', asValue(block.back), block.sources);
  given('bed.block-depth', asValue(block.depth), block.sources);
  given('bed.block-height', asValue(block.height), block.sources);
  given('bed.wall-buried', asValue(project.buried), own);
  given('bed.highest', asValue(project.highest.value), project.highest.sources);
  given('bed.widest-joint', asValue(project.joint.value), project.joint.sources);
  given('bed.notch-width', asValue(project.notch.value), project.notch.sources);
  given('bed.base-depth', asValue(project.base.depth), project.base.sources);
  given('bed.base-width', asValue(project.base.width), project.base.sources);
  given('bed.basket-diameter', asValue(basket.diameter), basket.sources);
  given('bed.basket-height', asValue(basket.height), basket.sources);
  given('bed.basket-overlap', asValue(basket.overlap), basket.sources);
  given('bed.basket-stakes', count(basket.stakes.number), basket.sources);
  given('bed.basket-stake-length', asValue(basket.stakes.length), own);
  given('bed.drainage-depth', asValue(layers.drainage), layers.sources);
  given('bed.mix-depth', asValue(layers.soil), layers.sources);
  given('bed.below-wall', asValue(layers.below), layers.sources);
  given('bed.surface-rise', asValue(layers.rise), layers.sources);
  given('bed.brown-parts', count(layers.brownParts), layers.sources);
  given('bed.mix-settles', count(settling.soilPercent), settling.sources);
  given('bed.filling-settles', count(settling.fillPercent), settling.sources);
  given('bed.people', count(project.helpers + 1), own);
  given('bed.time', asValue(project.time), own);
}

function addRing(made: FindingList, project: KeyholeBed, ring: Ring): void {
  const { block, joint, notch } = project;
  const laid = [...block.sources, ...joint.sources, keyholeSources.bond, keyholeSources.practice].filter(
    unique,
  );
  const sizes = {
    'block-face': 'bed.block-face',
    'block-back': 'bed.block-back',
    'block-depth': 'bed.block-depth',
  };
  const add = (id: string, value: FindingValue, method: string, inputs: readonly FindingInput[]): void => {
    made.add(id, value, { method: `keyhole.${method}`, inputs, sources: laid });
  };
  add('bed.outside-diameter', length(ring.diameterMm), 'outside-diameter', [
    { name: 'wanted-diameter', value: asValue(project.diameter) },
    ...made.from({ ...sizes, 'widest-joint': 'bed.widest-joint', 'notch-width': 'bed.notch-width' }),
  ]);
  const outside = { 'outside-diameter': 'bed.outside-diameter' };
  const radii: readonly (readonly [string, number])[] = [
    ['bed.outside-radius', ring.radiusMm],
    ['bed.basket-radius', ring.basketRadiusMm],
  ];
  for (const [id, mm] of radii) {
    const of = id === 'bed.outside-radius' ? 'bed.outside-diameter' : 'bed.basket-diameter';
    add(id, length(mm), 'radius', made.from({ diameter: of }));
  }
  add(
    'bed.inside-diameter',
    length(2 * ring.insideMm),
    'inside-diameter',
    made.from({ ...outside, ...sizes }),
  );
  const gap = (odd: number, even: number): FindingValue => length(Math.max(odd, even));
  const inputs = made.from({ ...outside, ...sizes, 'notch-width': 'bed.notch-width' });
  add('bed.joint-outside', gap(ring.odd.frontGapMm, ring.even.frontGapMm), 'joint', inputs);
  add('bed.joint-back', gap(ring.odd.backGapMm, ring.even.backGapMm), 'joint', inputs);
  add('bed.lap', length(ring.lapMm), 'lap', inputs);
  const pieces = (id: string, value: number): void => {
    add(id, count(value), 'course-blocks', inputs);
  };
  const whole = ({ ring: course }: Ring['odd']): number =>
    course.filter(({ kind }) => kind === 'whole').length;
  pieces('bed.ring-first', whole(ring.odd));
  pieces('bed.ring-second', whole(ring.even));
  pieces('bed.ring-first-halves', ring.odd.ring.length - whole(ring.odd));
  pieces('bed.ring-second-halves', ring.even.ring.length - whole(ring.even));
  const side = (id: string, course: Ring['odd']): void => {
    add(
      id,
      count(course.side.reduce((sum, { kind }) => sum + (kind === 'whole' ? 1 : 0.5), 0)),
      'side-blocks',
      made.from({ ...sizes, ...outside, 'basket-diameter': 'bed.basket-diameter' }),
    );
  };
  side('bed.side-first', ring.odd);
  side('bed.side-second', ring.even);
  add(
    'bed.side-gap',
    length(ring.sideGapMm),
    'side-gap',
    made.from({ ...sizes, ...outside, 'basket-diameter': 'bed.basket-diameter' }),
  );
  made.add('bed.notch-depth', length(ring.radiusMm - ring.basketRadiusMm), {
    method: 'keyhole.notch-depth',
    inputs: made.from({ ...outside, 'basket-diameter': 'bed.basket-diameter' }),
    sources: notch.sources,
  });
}

function addWall(made: FindingList, project: KeyholeBed, ring: Ring, fill: KeyholeFill): void {
  const sources = project.block.sources;
  const { whole, halves } = blocksOf(ring, fill.courses);
  made.add('bed.wall-courses', count(fill.courses), {
    method: 'keyhole.courses',
    inputs: [
      { name: 'wanted-height', value: asValue(project.height) },
      ...made.from({ 'wall-buried': 'bed.wall-buried', 'block-height': 'bed.block-height' }),
    ],
    sources,
  });
  const courses = { courses: 'bed.wall-courses', 'block-height': 'bed.block-height' };
  made.add('bed.wall-height', length(fill.aboveMm), {
    method: 'keyhole.wall-height',
    inputs: made.from({ ...courses, 'wall-buried': 'bed.wall-buried' }),
    sources,
  });
  made.add('bed.wall-in-all', length(fill.wallMm), {
    method: 'keyhole.wall-in-all',
    inputs: made.from(courses),
    sources: project.highest.sources,
  });
  const perCourse = {
    courses: 'bed.wall-courses',
    'first-course': 'bed.ring-first',
    'second-course': 'bed.ring-second',
    'side-first': 'bed.side-first',
    'side-second': 'bed.side-second',
  };
  made.add('bed.blocks-whole', count(whole), {
    method: 'keyhole.blocks-whole',
    inputs: made.from(perCourse),
    sources,
  });
  made.add('bed.half-blocks', count(halves), {
    method: 'keyhole.half-blocks',
    inputs: made.from(perCourse),
    sources,
  });
  made.add('bed.blocks', count(whole + Math.ceil(halves / 2)), {
    method: 'keyhole.blocks',
    inputs: made.from({ 'blocks-whole': 'bed.blocks-whole', 'half-blocks': 'bed.half-blocks' }),
    sources,
  });
  made.add('bed.base-length', length(baseLengthMm(ring)), {
    method: 'keyhole.base-length',
    inputs: made.from({
      'outside-diameter': 'bed.outside-diameter',
      'notch-width': 'bed.notch-width',
      'basket-diameter': 'bed.basket-diameter',
    }),
    sources: project.base.sources,
  });
  made.add('bed.base-volume', litres(fill.baseL), {
    method: 'keyhole.base-volume',
    inputs: made.from({
      'base-length': 'bed.base-length',
      'base-width': 'bed.base-width',
      'base-depth': 'bed.base-depth',
    }),
    sources: project.base.sources,
  });
  made.add('bed.trench-depth', length(middle(project.base.depth) + middle(project.buried)), {
    method: 'keyhole.trench-depth',
    inputs: made.from({ 'base-depth': 'bed.base-depth', 'wall-buried': 'bed.wall-buried' }),
    sources: project.base.sources,
  });
}

function addBasket(made: FindingList, { basket }: KeyholeBed, ring: Ring): void {
  made.add('bed.mesh-length', length(2 * Math.PI * ring.basketRadiusMm + middle(basket.overlap)), {
    method: 'keyhole.mesh-length',
    inputs: made.from({ 'basket-diameter': 'bed.basket-diameter', 'basket-overlap': 'bed.basket-overlap' }),
    sources: basket.sources,
  });
}

function addInside(made: FindingList, project: KeyholeBed, ring: Ring, fill: KeyholeFill): void {
  const sources = [...project.block.sources, ...project.notch.sources].filter(unique);
  const inside = {
    'inside-diameter': 'bed.inside-diameter',
    'basket-diameter': 'bed.basket-diameter',
    'notch-width': 'bed.notch-width',
    'block-depth': 'bed.block-depth',
  };
  made.add('bed.ring-width', length(ring.insideMm - ring.basketRadiusMm), {
    method: 'keyhole.ring-width',
    inputs: made.from({ 'inside-diameter': 'bed.inside-diameter', 'basket-diameter': 'bed.basket-diameter' }),
    sources,
  });
  made.add('bed.ring-length', length(ringLengthMm(ring)), {
    method: 'keyhole.ring-length',
    inputs: made.from(inside),
    sources,
  });
  made.add('bed.soil-area', quantity('area', fill.areaM2), {
    method: 'keyhole.soil-area',
    inputs: made.from(inside),
    sources,
  });
  made.add('bed.surface-slope', quantity('angle', slopeDeg(ring, project)), {
    method: 'keyhole.surface-slope',
    inputs: made.from({ 'surface-rise': 'bed.surface-rise', 'ring-width': 'bed.ring-width' }),
    sources: project.layers.sources,
  });
}

function slopeDeg(ring: Ring, { layers }: KeyholeBed): number {
  const run = ring.insideMm - ring.basketRadiusMm;
  return (Math.atan2(middle(layers.rise), run) * 180) / Math.PI;
}

function addLayers(made: FindingList, project: KeyholeBed, ring: Ring, fill: KeyholeFill): void {
  const { layers, settling } = project;
  const { sources } = layers;
  const add = (
    id: string,
    value: FindingValue,
    method: string,
    inputs: Record<string, string>,
    of = sources,
  ): void => {
    made.add(id, value, { method: `keyhole.${method}`, inputs: made.from(inputs), sources: of });
  };
  const area = { 'soil-area': 'bed.soil-area' };
  add('bed.surface-at-wall', length(fill.atWallMm), 'surface-at-wall', {
    'wall-height': 'bed.wall-height',
    'below-wall': 'bed.below-wall',
  });
  add('bed.surface-at-basket', length(fill.atBasketMm), 'surface-at-basket', {
    'surface-at-wall': 'bed.surface-at-wall',
    'surface-rise': 'bed.surface-rise',
  });
  add('bed.mean-depth', length(fill.atWallMm + middle(layers.rise) * meanRiseShare(ring)), 'mean-depth', {
    'surface-at-wall': 'bed.surface-at-wall',
    'surface-rise': 'bed.surface-rise',
    'inside-diameter': 'bed.inside-diameter',
    'basket-diameter': 'bed.basket-diameter',
  });
  add('bed.organic-below-rim', length(middle(layers.below) + fill.soilMm), 'organic-below-rim', {
    'below-wall': 'bed.below-wall',
    'mix-depth': 'bed.mix-depth',
  });
  add('bed.fill', litres(fill.totalL), 'fill', { ...area, 'mean-depth': 'bed.mean-depth' });
  add('bed.layer-drainage', litres(fill.drainageL), 'layer', { ...area, depth: 'bed.drainage-depth' });
  add('bed.layer-mix', litres(fill.soilL), 'layer', { ...area, depth: 'bed.mix-depth' });
  add('bed.layer-organic', litres(fill.organicL), 'layer-organic', {
    fill: 'bed.fill',
    'layer-drainage': 'bed.layer-drainage',
    'layer-mix': 'bed.layer-mix',
  });
  const loose = (inPlaceL: number, percent: number): number => inPlaceL / (1 - percent / 100);
  const filled = [...settling.sources, ...sources].filter(unique);
  const organicL = loose(fill.organicL, settling.fillPercent);
  add(
    'bed.mix-to-fill',
    litres(loose(fill.soilL, settling.soilPercent)),
    'loose',
    {
      'in-place': 'bed.layer-mix',
      'settles-percent': 'bed.mix-settles',
    },
    filled,
  );
  add(
    'bed.organic-to-fill',
    litres(organicL),
    'loose',
    {
      'in-place': 'bed.layer-organic',
      'settles-percent': 'bed.filling-settles',
    },
    filled,
  );
  const share = { 'organic-to-fill': 'bed.organic-to-fill', 'brown-parts': 'bed.brown-parts' };
  const greenL = organicL / (layers.brownParts + 1);
  add('bed.browns', litres(organicL - greenL), 'browns', share, filled);
  add('bed.greens', litres(greenL), 'greens', share, filled);
}

/** The ring is reached from outside only: beside the basket it is furthest. */
function addReach(made: FindingList, ring: Ring, fill: KeyholeFill): void {
  const reachMm = ring.radiusMm - ring.basketRadiusMm;
  made.add('bed.reach', length(reachMm), {
    method: 'keyhole.reach',
    inputs: made.from({
      'outside-diameter': 'bed.outside-diameter',
      'basket-diameter': 'bed.basket-diameter',
    }),
    sources: [keyholeSources.practice],
  });
  for (const who of reachers) made.add(...reachOfWho(made, who, reachMm, fill));
}

function reachOfWho(
  made: FindingList,
  who: Reacher,
  reachMm: number,
  { aboveMm }: KeyholeFill,
): readonly [string, FindingValue, Omit<Finding, 'id' | 'value'>] {
  const answer = reachOf(who, { widthMm: reachMm, heightMm: aboveMm });
  const across = answer === 'reach-from-both-sides' ? 'reach-too-wide' : answer;
  return [
    `bed.ring-reach-${who}`,
    choice(across.replace('reach-', 'ring-reach-')),
    {
      method: `keyhole.reach-${who}`,
      inputs: made.from({ reach: 'bed.reach', 'wall-height': 'bed.wall-height' }),
      sources: reachLimits[who].sources,
    },
  ];
}
