/**
 * Works out a raised bed of boards: its pieces and screws, how much soil it takes loose and settled, in bags or in bulk, and
 * who reaches its middle from where.
 */
import { choice, count, quantity, type FindingValue } from '../findings/finding.ts';
import { middle } from '../quantities/quantity.ts';
import { fromHeld } from '../quantities/units.ts';
import type { ProjectPart } from '../records/schemas/project.ts';
import type { RaisedBed } from '../records/schemas/projects/raised-bed.ts';
import { soilBag } from './bale-loads.ts';
import { asValue, FindingList, unique } from './finding-list.ts';
import { lumberSource, woodMassG } from './lumber.ts';
import {
  carriedAtMm,
  cubicYardL,
  fromGroundMm,
  largestBagL,
  lumberSources,
  mixDensityGPerL,
  spanSource,
} from './lumber-practice.ts';
import { lumberFaults } from './part-faults.ts';
import { structureSources } from './practice.ts';
import { raisedBedAssembly } from './raised-bed-assembly.ts';
import { raisedBedFaults } from './raised-bed-faults.ts';
import { layRaisedBed, type RaisedBedLayout } from './raised-bed-layout.ts';
import { reachFindings } from './raised-bed-reach.ts';
import type { BuildPlace, Built, CutPiece, LiftedItem, Structure } from './structure.ts';

/** The bed of a record: built, or everything that does not add up. */
export function raisedBedStructure(project: RaisedBed, { hemisphere }: BuildPlace): Built {
  const faults = raisedBedFaults(project);
  if (faults.length > 0) return { kind: 'faults', faults };
  const layout = layRaisedBed(project);
  const pieces = piecesOf(project, layout);
  const missing = lumberFaults(project.parts, pieces);
  if (missing.length > 0) return { kind: 'faults', faults: missing };
  const made = new FindingList();
  addGiven(made, project, layout);
  addSizes(made, project, layout);
  addPieces(made, layout);
  addScrews(made, layout);
  addSoil(made, project, layout);
  addBottom(made, project, layout);
  addPlantStakes(made, project);
  const lifts = addLifts(made, project, layout);
  const reach = reachFindings(made.get('bed.outside-width'), made.get('bed.height'));
  const structure: Structure = {
    findings: [...made.all(), ...reach],
    counts: {
      screws: made.get('bed.screws'),
      'soil-litres': made.get('bed.fill-volume'),
      ...(layout.bottom ? { 'cloth-feet': made.get('bed.cloth-feet') } : {}),
      ...(project.plantStakes ? { 'plant-stakes': made.get('bed.plant-stakes') } : {}),
    },
    ...(project.plantStakes ? { lengths: { 'plant-stakes': made.get('bed.plant-stake-length') } } : {}),
    pieces,
    lifts,
    bed: {
      shape: 'rectangle',
      lengthMm: layout.insideLengthMm,
      length: 'bed.inside-length',
      depthMm: layout.insideWidthMm,
      soilDepthMm: layout.soilDepthMm,
      cover: 'open',
    },
    glance: ['bed.outside-length', 'bed.outside-width', 'bed.fill-volume'],
    assembly: raisedBedAssembly(project, layout, hemisphere),
    versions: () => shorterBeds(project),
  };
  return { kind: 'structure', structure };
}

/** Lengths go down by this much from version to version, half a foot. */
const versionStepMm = 152.4;
const shortestVersionMm = 4 * versionStepMm;

/**
 * Ever shorter beds down to two feet, half a foot at a time and on whole half feet; all else stays as it is. For what can be
 * built from what is at hand.
 */
export function* shorterBeds(project: RaisedBed): Generator<RaisedBed> {
  const lengthMm = middle(project.length);
  for (
    let mm = Math.ceil(lengthMm / versionStepMm - 1 - 1e-6) * versionStepMm;
    mm >= shortestVersionMm - 1e-6;
    mm -= versionStepMm
  ) {
    const written = `${Math.round(fromHeld(mm, 'in'))} in`;
    yield { ...project, length: { dimension: 'length', low: mm, high: mm, written } };
  }
}

function piecesOf({ boards, posts }: RaisedBed, layout: RaisedBedLayout): readonly CutPiece[] {
  const all: readonly CutPiece[] = [
    {
      role: 'side-board',
      nominal: boards.nominal,
      length: 'bed.side-board',
      lengthMm: layout.outsideLengthMm,
      number: 2 * layout.courses,
    },
    {
      role: 'end-board',
      nominal: boards.nominal,
      length: 'bed.end-board',
      lengthMm: layout.insideWidthMm,
      number: 2 * layout.courses,
    },
    {
      role: 'corner-post',
      nominal: posts.nominal,
      length: 'bed.post-length',
      lengthMm: layout.postLengthMm,
      number: 4,
    },
    {
      role: 'middle-post',
      nominal: posts.nominal,
      length: 'bed.post-length',
      lengthMm: layout.postLengthMm,
      number: 2 * (layout.middleAlong + layout.middleAcross),
    },
  ];
  return all.filter(({ number }) => number > 0);
}

const length = (mm: number): FindingValue => quantity('length', mm);

function addGiven(made: FindingList, project: RaisedBed, layout: RaisedBedLayout): void {
  const given = (id: string, value: FindingValue, sources: readonly string[]): void => {
    made.add(id, value, { method: 'build.given', inputs: [], sources });
  };
  const own = [project.priceSource];
  given('bed.outside-length', asValue(project.length), own);
  given('bed.outside-width', asValue(project.width), own);
  given('bed.courses', count(project.boards.courses), own);
  given('bed.post-in-ground', asValue(project.posts.inGround), own);
  given('bed.soil-depth', asValue(project.soil.depth), own);
  given('bed.settles', count(project.soil.settlesPercent), project.soil.sources);
  given('bed.people', count(project.helpers + 1), own);
  given('bed.time', asValue(project.time), own);
  const dressed = (id: string, mm: number): void => {
    made.add(id, length(mm), { method: 'lumber.dressed', inputs: [], sources: [lumberSource] });
  };
  dressed('bed.board-thickness', layout.board.thicknessMm);
  dressed('bed.board-width', layout.board.widthMm);
  dressed('bed.post-size', layout.postMm);
}

function addSizes(made: FindingList, project: RaisedBed, layout: RaisedBedLayout): void {
  const thick = { 'board-thickness': 'bed.board-thickness' };
  made.add('bed.height', length(layout.heightMm), {
    method: 'raised-bed.height',
    inputs: made.from({ 'board-width': 'bed.board-width', courses: 'bed.courses' }),
    sources: [lumberSource],
  });
  made.add('bed.inside-length', length(layout.insideLengthMm), {
    method: 'raised-bed.inside',
    inputs: made.from({ outside: 'bed.outside-length', ...thick }),
    sources: [lumberSource],
  });
  made.add('bed.inside-width', length(layout.insideWidthMm), {
    method: 'raised-bed.inside',
    inputs: made.from({ outside: 'bed.outside-width', ...thick }),
    sources: [lumberSource],
  });
  made.add('bed.inside-area', quantity('area', (layout.insideLengthMm * layout.insideWidthMm) / 1e6), {
    method: 'raised-bed.area',
    inputs: made.from({ 'inside-length': 'bed.inside-length', 'inside-width': 'bed.inside-width' }),
    sources: [lumberSource],
  });
  made.add('bed.diagonal', length(Math.hypot(layout.outsideLengthMm, layout.outsideWidthMm)), {
    method: 'lumber.diagonal',
    inputs: made.from({ 'outside-length': 'bed.outside-length', 'outside-width': 'bed.outside-width' }),
    sources: [project.priceSource],
  });
}

function addPieces(made: FindingList, layout: RaisedBedLayout): void {
  const sources = [lumberSource, lumberSources.practice];
  made.add('bed.side-board', length(layout.outsideLengthMm), {
    method: 'raised-bed.side-board',
    inputs: made.from({ 'outside-length': 'bed.outside-length' }),
    sources,
  });
  made.add('bed.end-board', length(layout.insideWidthMm), {
    method: 'raised-bed.end-board',
    inputs: made.from({ 'outside-width': 'bed.outside-width', 'board-thickness': 'bed.board-thickness' }),
    sources,
  });
  made.add('bed.post-length', length(layout.postLengthMm), {
    method: 'raised-bed.post-length',
    inputs: made.from({ 'board-height': 'bed.height', 'post-in-ground': 'bed.post-in-ground' }),
    sources: [lumberSource],
  });
  made.add('bed.middle-posts', count(2 * (layout.middleAlong + layout.middleAcross)), {
    method: 'raised-bed.middle-posts',
    inputs: made.from({
      'outside-length': 'bed.outside-length',
      'outside-width': 'bed.outside-width',
      'board-thickness': 'bed.board-thickness',
    }),
    sources: [spanSource(layout.board.thicknessMm)],
  });
  made.add('bed.posts', count(4 + 2 * (layout.middleAlong + layout.middleAcross)), {
    method: 'raised-bed.posts',
    inputs: made.from({ 'middle-posts': 'bed.middle-posts' }),
    sources: [lumberSources.practice],
  });
  made.add('bed.post-spacing', length(layout.spanMm), {
    method: 'raised-bed.post-spacing',
    inputs: made.from({ 'outside-length': 'bed.outside-length', 'middle-posts': 'bed.middle-posts' }),
    sources: [spanSource(layout.board.thicknessMm)],
  });
}

function addScrews(made: FindingList, layout: RaisedBedLayout): void {
  const sources = [lumberSources.practice];
  made.add('bed.screws-per-joint', count(layout.screwsPerJoint), {
    method: 'lumber.screws-per-joint',
    inputs: made.from({ 'board-width': 'bed.board-width' }),
    sources,
  });
  made.add('bed.joints', count(layout.joints), {
    method: 'raised-bed.joints',
    inputs: made.from({ courses: 'bed.courses', 'middle-posts': 'bed.middle-posts' }),
    sources,
  });
  made.add('bed.screws', count(layout.joints * layout.screwsPerJoint), {
    method: 'lumber.screws',
    inputs: made.from({ joints: 'bed.joints', 'screws-per-joint': 'bed.screws-per-joint' }),
    sources,
  });
  made.add('bed.screw-length', length(layout.screwLengthMm), {
    method: 'lumber.screw-length',
    inputs: made.from({ 'board-thickness': 'bed.board-thickness', 'post-size': 'bed.post-size' }),
    sources,
  });
  addScrewPlan(made, layout);
}

/** Where screws sit in a corner, and where the holes of the posts lie. */
function addScrewPlan(made: FindingList, { screwPlan, holeFromStringMm }: RaisedBedLayout): void {
  const of = (id: string, mm: number, inputs: Readonly<Record<string, string>>, source: string): void => {
    made.add(`bed.${id}`, length(mm), {
      method: `raised-bed.${id}`,
      inputs: made.from(inputs),
      sources: [source],
    });
  };
  const board = { 'board-width': 'bed.board-width', 'screws-per-joint': 'bed.screws-per-joint' };
  of('screw-edge', screwPlan.edgeMm, {}, cornerScrewSource);
  of('screw-step', screwPlan.stepMm, { ...board, 'screw-edge': 'bed.screw-edge' }, cornerScrewSource);
  of('screw-pitch', screwPlan.pitchMm, { 'screw-step': 'bed.screw-step' }, cornerScrewSource);
  of('screw-aside', screwPlan.asideMm, { 'post-size': 'bed.post-size' }, cornerScrewSource);
  const wood = { 'board-thickness': 'bed.board-thickness', 'post-size': 'bed.post-size' };
  of('hole-from-string', holeFromStringMm, wood, lumberSource);
}

const cornerScrewSource = 'corner-screw-practice';

function addSoil(made: FindingList, project: RaisedBed, layout: RaisedBedLayout): void {
  const inside = {
    'inside-length': 'bed.inside-length',
    'inside-width': 'bed.inside-width',
    posts: 'bed.posts',
    'post-size': 'bed.post-size',
  };
  const { sources } = project.soil;
  made.add('bed.fill-depth', length(layout.fillDepthMm), {
    method: 'raised-bed.fill-depth',
    inputs: made.from({ 'soil-depth': 'bed.soil-depth', 'settles-percent': 'bed.settles' }),
    sources,
  });
  made.add('bed.soil-volume', quantity('volume', layout.soilL), {
    method: 'raised-bed.soil-volume',
    inputs: made.from({ ...inside, 'soil-depth': 'bed.soil-depth' }),
    sources: [lumberSource],
  });
  made.add('bed.fill-volume', quantity('volume', layout.fillL), {
    method: 'raised-bed.fill-volume',
    inputs: made.from({ 'soil-volume': 'bed.soil-volume', 'settles-percent': 'bed.settles' }),
    sources,
  });
  made.add('bed.bulk-yards', count(Math.ceil((2 * layout.fillL) / cubicYardL - 1e-6) / 2), {
    method: 'raised-bed.bulk-yards',
    inputs: made.from({ 'fill-volume': 'bed.fill-volume' }),
    sources: [lumberSources.bulk],
  });
  made.add('bed.soil-how', choice(layout.fillL >= cubicYardL ? 'soil-in-bulk' : 'soil-in-bags'), {
    method: 'raised-bed.soil-how',
    inputs: made.from({ 'fill-volume': 'bed.fill-volume' }),
    sources: [lumberSources.bulk],
  });
}

function addBottom(made: FindingList, { bottom, priceSource }: RaisedBed, layout: RaisedBedLayout): void {
  if (!bottom || !layout.bottom) return;
  const { strips, stripMm, lengthMm, areaM2 } = layout.bottom;
  const given = (id: string, value: FindingValue): void => {
    made.add(id, value, { method: 'build.given', inputs: [], sources: [priceSource] });
  };
  given('bed.roll-width', asValue(bottom.rollWidth));
  given('bed.turn-up', asValue(bottom.turnUp));
  given('bed.overlap', asValue(bottom.overlap));
  const sources = [priceSource];
  made.add('bed.cloth-strip', length(stripMm), {
    method: 'raised-bed.cloth-strip',
    inputs: made.from({ 'inside-length': 'bed.inside-length', 'turn-up': 'bed.turn-up' }),
    sources,
  });
  made.add('bed.cloth-strips', count(strips), {
    method: 'raised-bed.cloth-strips',
    inputs: made.from({
      'inside-width': 'bed.inside-width',
      'turn-up': 'bed.turn-up',
      'roll-width': 'bed.roll-width',
      overlap: 'bed.overlap',
    }),
    sources,
  });
  made.add('bed.cloth-area', quantity('area', areaM2), {
    method: 'raised-bed.cloth-area',
    inputs: made.from({
      'cloth-strips': 'bed.cloth-strips',
      'cloth-strip': 'bed.cloth-strip',
      'roll-width': 'bed.roll-width',
    }),
    sources,
  });
  made.add('bed.cloth-feet', count(Math.ceil(fromHeld(lengthMm, 'ft') - 1e-6)), {
    method: 'raised-bed.cloth-feet',
    inputs: made.from({ 'cloth-strips': 'bed.cloth-strips', 'cloth-strip': 'bed.cloth-strip' }),
    sources,
  });
}

/** Stakes that hold up plants; they stand outside the bed, where the ground was not dug. */
function addPlantStakes(made: FindingList, { plantStakes }: RaisedBed): void {
  if (!plantStakes) return;
  const { sources } = plantStakes;
  const given = (id: string, value: FindingValue): void => {
    made.add(`bed.${id}`, value, { method: 'build.given', inputs: [], sources });
  };
  given('plant-stakes', count(plantStakes.number));
  given('plant-stake-length', asValue(plantStakes.length));
  given('plant-stake-in-ground', asValue(plantStakes.inGround));
}

function addLifts(made: FindingList, project: RaisedBed, layout: RaisedBedLayout): readonly LiftedItem[] {
  const { board, courses, postMm, postLengthMm, outsideLengthMm, insideWidthMm } = layout;
  const sideBoard = woodMassG(board.thicknessMm * board.widthMm * outsideLengthMm);
  const endPanel = woodMassG(
    courses * board.thicknessMm * board.widthMm * insideWidthMm + 2 * postMm ** 2 * postLengthMm,
  );
  const sources = [structureSources.wood, lumberSource].filter(unique);
  const mass = ({ low, high }: { low: number; high: number }): FindingValue => quantity('mass', low, high);
  const section = { 'board-width': 'bed.board-width', 'board-thickness': 'bed.board-thickness' };
  made.add('bed.side-board-weight', mass(sideBoard), {
    method: 'lumber.weight',
    inputs: made.from({ ...section, 'board-length': 'bed.side-board' }),
    sources,
  });
  made.add('bed.end-panel-weight', mass(endPanel), {
    method: 'lumber.weight',
    inputs: made.from({
      ...section,
      'board-length': 'bed.end-board',
      courses: 'bed.courses',
      'post-size': 'bed.post-size',
      'post-length': 'bed.post-length',
    }),
    sources,
  });
  const lifts: LiftedItem[] = [
    {
      item: 'end-panel',
      mass: 'bed.end-panel-weight',
      massG: endPanel.high,
      stage: 'stand',
      depthMm: board.thicknessMm + postMm,
      widthMm: insideWidthMm,
      fromMm: fromGroundMm,
      toMm: carriedAtMm,
      grip: 'fair',
    },
    {
      item: 'side-board',
      mass: 'bed.side-board-weight',
      massG: sideBoard.high,
      stage: 'sides',
      depthMm: board.thicknessMm,
      widthMm: outsideLengthMm,
      fromMm: fromGroundMm,
      toMm: carriedAtMm,
      grip: 'fair',
    },
  ];
  const bag = addBag(made, project.parts, 'bed.bag-weight');
  return bag === undefined ? lifts : [...lifts, { ...bag, stage: 'fill' }];
}

/** The weight of one bag of mix, from its part or by its volume, and how it is lifted; undefined where mix comes in bulk or not at all. */
export function addBag(made: FindingList, parts: readonly ProjectPart[], id: string): LiftedItem | undefined {
  const bag = parts.find((part) => part.count === 'soil-litres');
  const pack = bag?.pack;
  if (!pack || pack.high > largestBagL) return undefined;
  const low = bag.mass?.low ?? pack.low * mixDensityGPerL.low;
  const high = bag.mass?.high ?? pack.high * mixDensityGPerL.high;
  made.add(id, quantity('mass', low, high), {
    method: bag.mass ? 'build.given' : 'lumber.bag-weight',
    inputs: bag.mass ? [] : [{ name: 'pack', value: asValue(pack) }],
    sources: [lumberSources.bagWeight],
  });
  return soilBag(made.get(id), middle(pack));
}
