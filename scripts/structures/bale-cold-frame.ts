/**
 * Works out a cold frame of straw bales under old window sashes: how big it gets, how many bales and stakes it takes,
 * what each sash weighs and how it lies, and what it costs.
 *
 * The rules (common practice of the trade, source `bale-frame-practice`): the shortest sash sets the depth, so that every
 * sash lies at least the bearing on the poleward and the equator wall, measured down the slope; the widths of all sashes less
 * one bearing at each end set the length; long walls run the whole outside length in whole bales, side walls stand between them.
 */
import { choice, count, inputOf, quantity, type Finding, type FindingValue } from '../findings/finding.ts';
import type { BaleColdFrame } from '../records/schemas/projects/bale-cold-frame.ts';
import { addBales } from './bale-findings.ts';
import { baleCovers, baleHeat, baleLifts } from './bale-loads.ts';
import { addProps } from './bale-props.ts';
import { smallerBaleFrames } from './bale-versions.ts';
import { addHoldDowns } from './bale-weights.ts';
import { checkProject, sizesOf } from './check-project.ts';
import { describeStructureFault, type StructureFault } from './faults.ts';
import { asValue, FindingList, unique } from './finding-list.ts';
import { addHardware, hardwareCounts, hardwarePieces } from './bale-hardware.ts';
import { layFrame, type FrameGeometry, type Hemisphere } from './geometry.ts';
import { structureSources } from './practice.ts';
import { addHeaviestSash, addSash, sashId } from './sash-findings.ts';
import { sashPlans } from './sash-plan.ts';
import type { BuildPlace, Built, Structure } from './structure.ts';

export interface Frame extends Structure {
  readonly geometry: FrameGeometry;
}

/** The frame of a project as every kind is given: built, or what is wrong in words. */
export function baleStructure(project: BaleColdFrame, place: BuildPlace): Built<Frame> {
  const frame = baleColdFrame(project, place);
  if (isFrame(frame)) return { kind: 'structure', structure: frame };
  return {
    kind: 'faults',
    faults: frame.map((fault) => ({ path: fault.path, ...describeStructureFault(fault) })),
  };
}

/**
 * The frame of a project, or the list of everything that does not add up in its record; a project either has faults or a
 * frame. The hemisphere says only which way is poleward.
 */
export function baleColdFrame(
  project: BaleColdFrame,
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
  addHoldDowns(made, project, geometry);
  addProps(made, geometry);
  addHardware(made, project, geometry);
  const pieces = hardwarePieces(made, project, geometry);
  const lifts = baleLifts(made, project, geometry);
  return {
    findings: made.all(),
    counts: {
      bales: made.get('frame.bales-wall'),
      'loose-straw-bales': made.get('frame.bales-loose'),
      stakes: made.get('frame.stakes'),
      sashes: made.get('frame.sashes'),
      props: made.get('frame.props'),
      'hold-downs': made.get('frame.hold-downs'),
      'soil-litres': made.get('frame.soil-volume'),
      ...hardwareCounts(made),
    },
    lengths: partLengths(made),
    pieces,
    lifts,
    covers: baleCovers(made, geometry),
    heat: baleHeat(geometry),
    versions: () => smallerBaleFrames(project),
    bed: {
      shape: 'rectangle',
      lengthMm: geometry.insideLengthMm,
      length: 'frame.inside-length',
      depthMm: geometry.insideDepthMm,
      soilDepthMm: geometry.soilDepthMm,
      cover: geometry.sashes.every(({ screenMm }) => screenMm > 0) ? 'screen' : 'frame',
      clearMm: geometry.equatorHeightMm - geometry.soilDepthMm,
      mostClearMm: geometry.polewardHeightMm - geometry.soilDepthMm,
    },
    glance: ['frame.inside-length', 'frame.inside-depth', 'frame.bales'],
    geometry,
  };
}

/** How long stakes, props and the boards under weights are. */
function partLengths(made: FindingList): Readonly<Record<string, Finding>> {
  const of = {
    stakes: 'frame.stake-length',
    props: 'frame.prop-length',
    'weight-boards': 'frame.weight-board',
  };
  const known = new Map(made.all().map((finding) => [finding.id, finding]));
  return Object.fromEntries(
    Object.entries(of).flatMap(([part, id]) => {
      const finding = known.get(id);
      return finding ? [[part, finding]] : [];
    }),
  );
}

export function isFrame(result: Frame | readonly StructureFault[]): result is Frame {
  return 'geometry' in result;
}

/** What the record says itself, as findings, so that sheets can print it and other findings can name it. */
function addGiven(made: FindingList, project: BaleColdFrame): void {
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
  given(
    'frame.props',
    count(sashPlans(project).filter(({ opens }) => opens !== 'never').length),
    recordSource,
  );
  given('frame.people', count(project.helpers + 1), recordSource);
  given('frame.time', asValue(project.time), recordSource);
  for (const sash of project.sashes) {
    given(sashId(sash.id, 'width'), asValue(sash.width), recordSource);
    given(sashId(sash.id, 'length'), asValue(sash.length), recordSource);
  }
}

function addBed(made: FindingList, project: BaleColdFrame, geometry: FrameGeometry): void {
  const { bearing, bale } = project;
  const length = (mm: number): FindingValue => quantity('length', mm);
  const laid = [...bearing.sources, structureSources.practice].filter(unique);
  const [polewardSide, equatorSide] =
    geometry.hemisphere === 'north' ? ['north', 'south'] : ['south', 'north'];
  made.add('frame.poleward-side', choice(polewardSide), { method: 'frame.side', inputs: [], sources: laid });
  made.add('frame.equator-side', choice(equatorSide), { method: 'frame.side', inputs: [], sources: laid });
  made.add('frame.poleward-height', length(geometry.polewardHeightMm), wallHeight(made, project, 'poleward'));
  made.add('frame.equator-height', length(geometry.equatorHeightMm), wallHeight(made, project, 'others'));
  const shortest = project.sashes
    .filter(({ filler }) => filler === undefined)
    .reduce((a, b) => (b.length.low < a.length.low ? b : a));
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
  { walls, bale, slope }: BaleColdFrame,
  wall: 'poleward' | 'others',
): Omit<Finding, 'id' | 'value'> {
  const { courses, lay } = walls[wall];
  const face = lay === 'flat' ? 'bale-height' : 'bale-width';
  if (wall === 'poleward' && slope?.rise) {
    return {
      method: 'frame.height-ridge',
      inputs: [
        { name: 'courses', value: count(courses) },
        ...made.from({ [face]: `frame.${face}` }),
        { name: 'ridge-rise', value: asValue(slope.rise) },
      ],
      sources: bale.sources,
    };
  }
  return {
    method: lay === 'flat' ? 'frame.height-flat' : 'frame.height-on-edge',
    inputs: [{ name: 'courses', value: count(courses) }, ...made.from({ [face]: `frame.${face}` })],
    sources: bale.sources,
  };
}

function addStakes(made: FindingList, project: BaleColdFrame, geometry: FrameGeometry): void {
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
