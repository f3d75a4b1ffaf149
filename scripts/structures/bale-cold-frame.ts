/**
 * Works out a cold frame of straw bales under old window sashes: how big it gets, how many bales and stakes it takes,
 * what each sash weighs and how it lies, and what it costs.
 *
 * The rules (common practice of the trade, source `bale-frame-practice`): the shortest sash sets the depth, so that every
 * sash lies at least the bearing on the poleward and the equator wall, measured down the slope; the widths of all sashes less
 * one bearing at each end set the length; long walls run the whole outside length in whole bales, side walls stand between them.
 */
import {
  choice,
  count,
  inputOf,
  none,
  quantity,
  type Finding,
  type FindingInput,
  type FindingValue,
} from '../findings/finding.ts';
import type { Quantity } from '../quantities/quantity.ts';
import type { Dimension } from '../quantities/units.ts';
import type { Project } from '../records/schemas/project.ts';
import { billOfMaterials, type BillLine } from './bill-of-materials.ts';
import { checkProject, sizesOf } from './check-project.ts';
import type { StructureFault } from './faults.ts';
import { layFrame, type FrameGeometry, type Hemisphere, type PlacedSash, type WallName } from './geometry.ts';
import { glassDensityGPerMm3, structureSources, woodDensityGPerMm3 } from './practice.ts';
import { balesToCut, type BaleSize } from './wall-layout.ts';

export interface Frame {
  readonly findings: readonly Finding[];
  readonly bill: readonly BillLine[];
  readonly geometry: FrameGeometry;
}

/**
 * The frame of a project, or the list of everything that does not add up in its record; a project either has faults or a
 * frame. The hemisphere says only which way is poleward.
 */
export function baleColdFrame(
  project: Project,
  { hemisphere }: { readonly hemisphere: Hemisphere },
): Frame | readonly StructureFault[] {
  const faults = checkProject(project);
  if (faults.length > 0) return faults;
  const sizes = sizesOf(project);
  const geometry = layFrame(sizes, hemisphere);
  const made = new FindingList();
  addGiven(made, project);
  addBed(made, project, geometry);
  addBales(made, project, geometry, sizes.bale);
  addStakes(made, project, geometry);
  project.sashes.forEach((sash, index) => {
    addSash(made, project, sash, geometry.sashes[index]!);
  });
  addHeaviestSash(made, project);
  const { lines, total } = billOfMaterials(project, {
    bales: made.get('frame.bales-wall'),
    'loose-straw-bales': made.get('frame.bales-loose'),
    stakes: made.get('frame.stakes'),
    sashes: made.get('frame.sashes'),
    props: made.get('frame.props'),
    'soil-litres': made.get('frame.soil-volume'),
  });
  const bought = lines.flatMap(({ quantity: number, price, cost }) => [
    number,
    ...(price ? [price] : []),
    ...(cost ? [cost] : []),
  ]);
  return { findings: [...made.all(), ...bought, total], bill: lines, geometry };
}

export function isFrame(result: Frame | readonly StructureFault[]): result is Frame {
  return 'geometry' in result;
}

/** Findings in the order they are made; later ones take earlier ones as input. */
class FindingList {
  readonly #byId = new Map<string, Finding>();

  add(id: string, value: FindingValue, from: Omit<Finding, 'id' | 'value'>): void {
    if (this.#byId.has(id)) throw new TypeError(`finding ${id} is made twice`);
    this.#byId.set(id, { id, value, ...from });
  }

  get(id: string): Finding {
    const finding = this.#byId.get(id);
    if (!finding) throw new TypeError(`finding ${id} is used before it is made`);
    return finding;
  }

  /** The inputs of a method, each `name: id of the finding`. */
  from(inputs: Readonly<Record<string, string>>): readonly FindingInput[] {
    return Object.entries(inputs).map(([name, id]) => inputOf(name, this.get(id)));
  }

  all(): readonly Finding[] {
    return [...this.#byId.values()];
  }
}

/** What the record says itself, as findings, so that sheets can print it and other findings can name it. */
function addGiven(made: FindingList, project: Project): void {
  const given = (id: string, value: FindingValue, sources: readonly string[]): void => {
    made.add(id, value, { method: 'frame.given', inputs: [], sources });
  };
  const { bale, bearing, stakes } = project;
  const recordSource = [project.priceSource];
  given('frame.bale-length', asValue(bale.length), bale.sources);
  given('frame.bale-width', asValue(bale.width), bale.sources);
  given('frame.bale-height', asValue(bale.height), bale.sources);
  given('frame.bale-mass', asValue(bale.mass), bale.sources);
  given('frame.bearing', asValue(bearing.value), bearing.sources);
  given('frame.stakes-per-bale', count(stakes.perBale), stakes.sources);
  given('frame.stake-length', asValue(stakes.length), stakes.sources);
  given('frame.soil-depth', asValue(project.soilDepth), recordSource);
  given('frame.sashes', count(project.sashes.length), recordSource);
  given('frame.props', count(project.sashes.length), recordSource);
  given('frame.people', count(project.helpers + 1), recordSource);
  given('frame.time', asValue(project.time), recordSource);
  for (const sash of project.sashes) {
    given(sashId(sash.id, 'width'), asValue(sash.width), recordSource);
    given(sashId(sash.id, 'length'), asValue(sash.length), recordSource);
  }
}

function addBed(made: FindingList, project: Project, geometry: FrameGeometry): void {
  const { bearing, bale } = project;
  const length = (mm: number): FindingValue => quantity('length', mm);
  const laid = [...bearing.sources, structureSources.practice].filter(unique);
  const [polewardSide, equatorSide] =
    geometry.hemisphere === 'north' ? ['north', 'south'] : ['south', 'north'];
  made.add('frame.poleward-side', choice(polewardSide), { method: 'frame.side', inputs: [], sources: laid });
  made.add('frame.equator-side', choice(equatorSide), { method: 'frame.side', inputs: [], sources: laid });
  made.add('frame.poleward-height', length(geometry.polewardHeightMm), wallHeight(made, project, 'poleward'));
  made.add('frame.equator-height', length(geometry.equatorHeightMm), wallHeight(made, project, 'others'));
  const shortest = project.sashes.reduce((a, b) => (b.length.low < a.length.low ? b : a));
  const heights = { 'poleward-height': 'frame.poleward-height', 'equator-height': 'frame.equator-height' };
  made.add('frame.inside-depth', length(geometry.insideDepthMm), {
    method: 'frame.inside-depth',
    inputs: made.from({
      'shortest-sash': sashId(shortest.id, 'length'),
      bearing: 'frame.bearing',
      ...heights,
    }),
    sources: laid,
  });
  made.add('frame.inside-length', length(geometry.insideLengthMm), {
    method: 'frame.inside-length',
    inputs: [
      ...project.sashes.map(({ id }) => inputOf('sash-width', made.get(sashId(id, 'width')))),
      ...made.from({ bearing: 'frame.bearing' }),
    ],
    sources: laid,
  });
  const inside = { 'inside-length': 'frame.inside-length', 'inside-depth': 'frame.inside-depth' };
  made.add('frame.inside-area', quantity('area', (geometry.insideLengthMm * geometry.insideDepthMm) / 1e6), {
    method: 'frame.area',
    inputs: made.from(inside),
    sources: laid,
  });
  made.add('frame.slope', quantity('angle', geometry.slopeDeg), {
    method: 'frame.slope',
    inputs: made.from({ ...heights, 'inside-depth': 'frame.inside-depth' }),
    sources: laid,
  });
  made.add(
    'frame.soil-volume',
    quantity('volume', (geometry.insideLengthMm * geometry.insideDepthMm * geometry.soilDepthMm) / 1e6),
    {
      method: 'frame.soil-volume',
      inputs: made.from({ ...inside, 'soil-depth': 'frame.soil-depth' }),
      sources: laid,
    },
  );
  made.add('frame.headroom', length(geometry.equatorHeightMm - geometry.soilDepthMm), {
    method: 'frame.headroom',
    inputs: made.from({ 'equator-height': 'frame.equator-height', 'soil-depth': 'frame.soil-depth' }),
    sources: laid,
  });
  made.add('frame.outside-length', length(geometry.outsideLengthMm), {
    method: 'frame.outside-length',
    inputs: made.from({ 'inside-length': 'frame.inside-length', 'bale-length': 'frame.bale-length' }),
    sources: [...bale.sources, structureSources.practice].filter(unique),
  });
  made.add('frame.outside-depth', length(geometry.outsideDepthMm), {
    method: 'frame.outside-depth',
    inputs: made.from({ 'inside-depth': 'frame.inside-depth', ...baleFaces }),
    sources: [...bale.sources, structureSources.practice].filter(unique),
  });
}

const baleFaces = { 'bale-width': 'frame.bale-width', 'bale-height': 'frame.bale-height' } as const;

function wallHeight(
  made: FindingList,
  { walls, bale }: Project,
  wall: 'poleward' | 'others',
): Omit<Finding, 'id' | 'value'> {
  const { courses, lay } = walls[wall];
  const face = lay === 'flat' ? 'bale-height' : 'bale-width';
  return {
    method: lay === 'flat' ? 'frame.height-flat' : 'frame.height-on-edge',
    inputs: [{ name: 'courses', value: count(courses) }, ...made.from({ [face]: `frame.${face}` })],
    sources: bale.sources,
  };
}

function addBales(made: FindingList, project: Project, geometry: FrameGeometry, bale: BaleSize): void {
  const sources = [...project.bale.sources, structureSources.practice].filter(unique);
  const lengths = {
    'outside-length': 'frame.outside-length',
    'inside-depth': 'frame.inside-depth',
    'bale-length': 'frame.bale-length',
  };
  const whole = (wall: WallName): number =>
    geometry.bales.filter((placed) => placed.wall === wall && placed.kind === 'whole').length;
  const add = (id: string, value: FindingValue, method: string, inputs: readonly FindingInput[]): void => {
    made.add(id, value, { method, inputs, sources });
  };
  add('frame.bales-poleward', count(whole('poleward')), 'frame.bales-in-wall', made.from(lengths));
  add('frame.bales-equator', count(whole('equator')), 'frame.bales-in-wall', made.from(lengths));
  add('frame.bales-side', count(whole('west')), 'frame.bales-in-wall', made.from(lengths));
  const wholeBales = geometry.bales.filter(({ kind }) => kind === 'whole').length;
  add('frame.bales-whole', count(wholeBales), 'frame.bales-whole', [
    ...made.from({
      'bales-poleward': 'frame.bales-poleward',
      'bales-equator': 'frame.bales-equator',
      'bales-side': 'frame.bales-side',
    }),
  ]);
  const cuts = geometry.bales.filter(({ kind }) => kind === 'cut').map(lengthAlongWall);
  const sideCut = geometry.bales.find(({ wall, kind }) => wall === 'west' && kind === 'cut');
  add('frame.cut-pieces', count(cuts.length), 'frame.cut-pieces', made.from(lengths));
  add(
    'frame.cut-length',
    sideCut ? quantity('length', lengthAlongWall(sideCut)) : none('no-cut-bale'),
    'frame.cut-length',
    made.from({
      'inside-depth': 'frame.inside-depth',
      'bale-length': 'frame.bale-length',
      'bales-side': 'frame.bales-side',
    }),
  );
  const toCut = balesToCut(cuts, bale.lengthMm);
  add(
    'frame.bales-cut',
    count(toCut),
    'frame.bales-cut',
    made.from({ 'cut-pieces': 'frame.cut-pieces', 'bale-length': 'frame.bale-length' }),
  );
  const wallInputs = { 'bales-whole': 'frame.bales-whole', 'bales-cut': 'frame.bales-cut' };
  add('frame.bales-wall', count(wholeBales + toCut), 'frame.bales-wall', made.from(wallInputs));
  addLooseStraw(made, sources, geometry, {
    bale,
    leftOverL: toCut === 0 ? 0 : volumeL(bale, toCut * bale.lengthMm - total(cuts)),
  });
  add(
    'frame.bales',
    count(wholeBales + toCut + looseBales(made)),
    'frame.bale-count',
    made.from({ ...wallInputs, 'bales-loose': 'frame.bales-loose' }),
  );
}

/** Loose straw fills the wedges under the sashes and the gaps; what cut bales leave over is used first. */
function addLooseStraw(
  made: FindingList,
  sources: readonly string[],
  geometry: FrameGeometry,
  { bale, leftOverL }: { readonly bale: BaleSize; readonly leftOverL: number },
): void {
  const wedgesL = geometry.wedges.reduce(
    (sum, { fromX, toX, depthMm, riseMm }) => sum + ((toX - fromX) * depthMm * riseMm) / 2 / 1e6,
    0,
  );
  const needL = wedgesL + geometry.gapL;
  made.add('frame.loose-straw', quantity('volume', needL), {
    method: 'frame.loose-straw',
    inputs: [
      ...made.from({
        'inside-depth': 'frame.inside-depth',
        'poleward-height': 'frame.poleward-height',
        'equator-height': 'frame.equator-height',
      }),
      { name: 'wall-thickness', value: quantity('length', geometry.sideThicknessMm) },
      { name: 'gaps', value: quantity('volume', geometry.gapL) },
    ],
    sources,
  });
  const missingL = Math.max(0, needL - leftOverL);
  made.add('frame.bales-loose', count(Math.ceil(missingL / volumeL(bale, bale.lengthMm) - 1e-9)), {
    method: 'frame.bales-loose',
    inputs: [
      ...made.from({ 'loose-straw': 'frame.loose-straw' }),
      { name: 'left-over', value: quantity('volume', leftOverL) },
    ],
    sources,
  });
}

function addStakes(made: FindingList, project: Project, geometry: FrameGeometry): void {
  const { sources } = project.stakes;
  made.add('frame.stakes', count(geometry.stakes.length), {
    method: 'frame.stakes',
    inputs: made.from({
      'stakes-per-bale': 'frame.stakes-per-bale',
      'bales-whole': 'frame.bales-whole',
      'cut-pieces': 'frame.cut-pieces',
    }),
    sources,
  });
  const depths = geometry.stakes.map((stake) => -stake.bottomMm);
  made.add('frame.stake-in-ground', quantity('length', Math.min(...depths), Math.max(...depths)), {
    method: 'frame.stake-in-ground',
    inputs: made.from({
      'stake-length': 'frame.stake-length',
      'poleward-height': 'frame.poleward-height',
      'equator-height': 'frame.equator-height',
    }),
    sources: [...sources, structureSources.practice].filter(unique),
  });
}

function addSash(
  made: FindingList,
  project: Project,
  sash: Project['sashes'][number],
  placed: PlacedSash,
): void {
  const sources = [...project.bearing.sources, structureSources.practice].filter(unique);
  const size = { 'sash-length': sashId(sash.id, 'length') };
  const lies = {
    ...size,
    'inside-depth': 'frame.inside-depth',
    slope: 'frame.slope',
    bearing: 'frame.bearing',
  };
  const add = (what: string, value: FindingValue, method: string): void => {
    made.add(sashId(sash.id, what), value, { method, inputs: made.from(lies), sources });
  };
  add('bearing-poleward', quantity('length', placed.bearingPolewardMm), 'frame.bearing-poleward');
  add('bearing-equator', quantity('length', placed.bearingEquatorMm), 'frame.bearing-equator');
  add(
    'overhang',
    placed.overhangMm > 0.5 ? quantity('length', placed.overhangMm) : none('no-overhang'),
    'frame.overhang',
  );
  add('press', quantity('length', placed.pressMm), 'frame.press');
  const { low, high } = sashMassG({
    areaMm2: placed.widthMm * placed.lengthMm,
    thicknessMm: placed.thicknessMm,
    glassShare: sash.glassShare,
    glassMm: sash.glass.low,
  });
  made.add(sashId(sash.id, 'weight'), quantity('mass', low, high), {
    method: 'frame.sash-weight',
    inputs: [
      ...made.from({ 'sash-width': sashId(sash.id, 'width'), ...size }),
      { name: 'sash-thickness', value: asValue(sash.thickness) },
      { name: 'glass-thickness', value: asValue(sash.glass) },
      { name: 'glass-percent', value: count(Math.round(sash.glassShare * 1000) / 10) },
    ],
    sources: [structureSources.glass, structureSources.wood],
  });
}

/** The weight that whoever carries the sashes must reckon with. */
function addHeaviestSash(made: FindingList, project: Project): void {
  const weights = project.sashes.map(({ id }) => made.get(sashId(id, 'weight')));
  const heaviest = weights.reduce((a, b) => (heaviestEnd(b.value) > heaviestEnd(a.value) ? b : a));
  made.add('frame.heaviest-sash', heaviest.value, {
    method: 'frame.heaviest-sash',
    inputs: weights.map((weight) => inputOf('sash-weight', weight)),
    sources: heaviest.sources,
  });
}

/**
 * Mass of a glazed wooden sash in grams, lightest to heaviest wood: panes by the density of float glass, the rest of the area
 * as solid softwood of the sash's full thickness. Putty, paint and hardware are left out; mouldings make up for them.
 */
export function sashMassG(sash: {
  readonly areaMm2: number;
  readonly thicknessMm: number;
  /** 0 to 1. */
  readonly glassShare: number;
  readonly glassMm: number;
}): { readonly low: number; readonly high: number } {
  const glassG = sash.areaMm2 * sash.glassShare * sash.glassMm * glassDensityGPerMm3;
  const woodMm3 = sash.areaMm2 * (1 - sash.glassShare) * sash.thicknessMm;
  return { low: glassG + woodMm3 * woodDensityGPerMm3.low, high: glassG + woodMm3 * woodDensityGPerMm3.high };
}

function lengthAlongWall({ wall, box: { from, to } }: FrameGeometry['bales'][number]): number {
  return wall === 'poleward' || wall === 'equator' ? to.x - from.x : to.y - from.y;
}

function volumeL({ widthMm, heightMm }: BaleSize, lengthMm: number): number {
  return (widthMm * heightMm * lengthMm) / 1e6;
}

function looseBales(made: FindingList): number {
  const { value } = made.get('frame.bales-loose');
  return value.kind === 'count' ? value.value : 0;
}

function heaviestEnd(value: FindingValue): number {
  return value.kind === 'range' ? value.high : value.kind === 'quantity' ? value.value : 0;
}

function total(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0);
}

function sashId(letter: string, what: string): string {
  return `frame.sash-${letter.toLowerCase()}.${what}`;
}

function asValue<D extends Dimension>({ dimension, low, high }: Quantity<D>): FindingValue {
  return quantity(dimension, low, high);
}

function unique<T>(value: T, index: number, list: readonly T[]): boolean {
  return list.indexOf(value) === index;
}
