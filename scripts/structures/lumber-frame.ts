/**
 * Works out a cold frame of lumber under a sloped lid: its walls, the sloped cut of its sides, its lids, how they hang and open,
 * and the bed inside.
 */
import { choice, count, quantity, type FindingValue } from '../findings/finding.ts';
import { middle } from '../quantities/quantity.ts';
import { fromHeld } from '../quantities/units.ts';
import type { LumberColdFrame } from '../records/schemas/projects/lumber-cold-frame.ts';
import { asValue, FindingList, unique } from './finding-list.ts';
import type { Hemisphere } from './geometry.ts';
import { lumberSource, sizeOf, woodMassG } from './lumber.ts';
import { lumberFrameAssembly } from './lumber-frame-assembly.ts';
import { lumberFrameFaults } from './lumber-frame-faults.ts';
import { layLumberFrame, lidGapMm, type LumberFrameLayout } from './lumber-frame-layout.ts';
import { addLidHoldDowns, lidWeightLift, lumberCovers, lumberHeat } from './lumber-loads.ts';
import { carriedAtMm, fromGroundMm, handsAtBodyMm, lumberSources, spanSource } from './lumber-practice.ts';
import { lumberFaults } from './part-faults.ts';
import { structureSources } from './practice.ts';
import { addBag } from './raised-bed.ts';
import type { BuildPlace, Built, CutPiece, LiftedItem, Structure } from './structure.ts';

/** The frame of a record: built, or everything that does not add up. */
export function lumberFrameStructure(project: LumberColdFrame, { hemisphere }: BuildPlace): Built {
  const faults = lumberFrameFaults(project);
  if (faults.length > 0) return { kind: 'faults', faults };
  const layout = layLumberFrame(project);
  const pieces = piecesOf(project, layout);
  const missing = lumberFaults(project.parts, pieces);
  if (missing.length > 0) return { kind: 'faults', faults: missing };
  const made = new FindingList();
  addGiven(made, project, layout, hemisphere);
  addWalls(made, layout);
  addSlope(made, project, layout);
  addPieces(made, layout);
  addLids(made, project, layout);
  addScrews(made, layout);
  addBed(made, layout);
  addLidHoldDowns(made, project);
  const lifts = addLifts(made, project, layout);
  const structure: Structure = {
    findings: made.all(),
    counts: {
      screws: made.get('frame.screws'),
      lids: made.get('frame.lids'),
      hinges: made.get('frame.hinges'),
      props: made.get('frame.props'),
      'soil-litres': made.get('frame.soil-volume'),
      'hold-downs': made.get('frame.hold-downs'),
      ...(layout.lids.built
        ? {
            'glazing-sheets': made.get('frame.glazing-sheets'),
            'glazing-fasteners': made.get('frame.glazing-fasteners'),
            'lid-brackets': made.get('frame.lid-brackets'),
          }
        : {}),
    },
    pieces,
    lifts,
    bed: {
      shape: 'rectangle',
      lengthMm: layout.insideLengthMm,
      length: 'frame.inside-length',
      depthMm: layout.insideDepthMm,
      soilDepthMm: layout.soilDepthMm,
      cover: 'frame',
      clearMm: layout.frontHeightMm - layout.soilDepthMm,
    },
    glance: ['frame.inside-length', 'frame.inside-depth', 'frame.slope'],
    assembly: lumberFrameAssembly(project, layout, hemisphere),
    heat: lumberHeat(project, layout, middle(project.prop)),
    covers: lumberCovers(made, project, layout),
    closedBy: 'lid',
    versions: () => smallerLumberFrames(project),
  };
  return { kind: 'structure', structure };
}

const versionStepMm = 152.4;
const shortestLidMm = 4 * versionStepMm;

/**
 * Smaller frames, from the largest bed to the smallest: fewer lids, and where lids are built, shorter ones too, half a foot at a
 * time down to two feet. For what can be built from what is at hand.
 */
export function smallerLumberFrames(project: LumberColdFrame): readonly LumberColdFrame[] {
  const { lids } = project;
  const numbers = Array.from({ length: lids.number }, (_, index) => lids.number - index);
  const all = numbers.flatMap((number) =>
    lengthsDown(lids).map((length) => ({ ...project, lids: { ...lids, number, length } })),
  );
  const area = ({ lids: each }: LumberColdFrame): number => each.number * middle(each.length);
  return all.slice(1).sort((a, b) => area(b) - area(a));
}

function lengthsDown({
  length,
  built,
}: LumberColdFrame['lids']): readonly LumberColdFrame['lids']['length'][] {
  if (!built) return [length];
  const longest = middle(length);
  const steps = Math.max(0, Math.floor((longest - shortestLidMm) / versionStepMm + 1e-6));
  return Array.from({ length: steps + 1 }, (_, index) => {
    if (index === 0) return length;
    const mm = longest - index * versionStepMm;
    return { dimension: 'length', low: mm, high: mm, written: `${Math.round(fromHeld(mm, 'in'))} in` };
  });
}

const length = (mm: number): FindingValue => quantity('length', mm);

/** Boards of each nominal size by role, as many as the frame takes. */
function piecesOf({ walls, posts, lids }: LumberColdFrame, layout: LumberFrameLayout): readonly CutPiece[] {
  const long = (role: string, nominals: readonly string[]): CutPiece[] =>
    nominals.map((nominal) => ({
      role,
      nominal,
      length: 'frame.long-board',
      lengthMm: layout.outsideLengthMm,
      number: 1,
    }));
  const { built } = layout.lids;
  const lidPieces: CutPiece[] =
    lids.built && built
      ? [
          piece('lid-stile', lids.built.nominal, 'frame.lid-length', layout.lids.lengthMm, 2 * lids.number),
          piece('lid-rail', lids.built.nominal, 'frame.lid-rail', built.railMm, 2 * lids.number),
          piece('lid-bar', lids.built.nominal, 'frame.lid-bar', built.barMm, built.bars * lids.number),
        ]
      : [];
  return [
    ...long('back-board', walls.back),
    ...long('front-board', walls.front),
    ...walls.sides.map((nominal) =>
      piece('side-board', nominal, 'frame.side-board', layout.insideDepthMm, 2),
    ),
    piece(
      layout.slopeBoards === 1 ? 'slope-pair' : 'slope-board',
      walls.slope,
      'frame.side-board',
      layout.insideDepthMm,
      layout.slopeBoards,
    ),
    piece('back-post', posts, 'frame.back-post', layout.backPostMm, 2 + layout.middleCleats),
    piece('front-post', posts, 'frame.front-post', layout.frontPostMm, 2 + layout.middleCleats),
    piece('bar', posts, 'frame.bar', layout.barMm, layout.bars),
    ...lidPieces,
  ].filter(({ number }) => number > 0);
}

function piece(role: string, nominal: string, id: string, lengthMm: number, number: number): CutPiece {
  return { role, nominal, length: id, lengthMm, number };
}

function addGiven(
  made: FindingList,
  project: LumberColdFrame,
  layout: LumberFrameLayout,
  hemisphere: Hemisphere,
): void {
  const own = [project.priceSource];
  const given = (id: string, value: FindingValue): void => {
    made.add(id, value, { method: 'build.given', inputs: [], sources: own });
  };
  given('frame.lids', count(project.lids.number));
  given('frame.lid-width', asValue(project.lids.width));
  given('frame.lid-length', asValue(project.lids.length));
  given('frame.overhang', asValue(project.lids.overhang));
  given('frame.prop-length', asValue(project.prop));
  given('frame.props', count(project.lids.number));
  given('frame.soil-depth', asValue(project.soilDepth));
  given('frame.people', count(project.helpers + 1));
  given('frame.time', asValue(project.time));
  const dressed = (id: string, mm: number): void => {
    made.add(id, length(mm), { method: 'lumber.dressed', inputs: [], sources: [lumberSource] });
  };
  dressed('frame.board-thickness', layout.thicknessMm);
  dressed('frame.post-size', layout.postMm);
  dressed('frame.slope-board-width', sizeOf(project.walls.slope).widthMm);
  const [poleward, equator] = hemisphere === 'north' ? ['north', 'south'] : ['south', 'north'];
  made.add('frame.poleward-side', choice(poleward), {
    method: 'frame.side',
    inputs: [],
    sources: [lumberSources.practice],
  });
  made.add('frame.equator-side', choice(equator), {
    method: 'frame.side',
    inputs: [],
    sources: [lumberSources.practice],
  });
}

function addWalls(made: FindingList, layout: LumberFrameLayout): void {
  const wall = (id: string, mm: number, boards: readonly number[]): void => {
    made.add(id, length(mm), {
      method: 'lumber-frame.height',
      inputs: boards.map((width) => ({ name: 'board-width', value: length(width) })),
      sources: [lumberSource],
    });
  };
  wall('frame.poleward-height', layout.backHeightMm, layout.back);
  wall('frame.equator-height', layout.frontHeightMm, layout.front);
  wall('frame.side-height', layout.sideHeightMm, layout.sides);
  const thickness = { 'board-thickness': 'frame.board-thickness' };
  made.add('frame.outside-length', length(layout.outsideLengthMm), {
    method: 'lumber-frame.outside-length',
    inputs: [
      ...made.from({ lids: 'frame.lids', 'lid-width': 'frame.lid-width' }),
      { name: 'lid-gap', value: length(lidGapMm) },
    ],
    sources: [lumberSources.practice],
  });
  made.add('frame.inside-length', length(layout.insideLengthMm), {
    method: 'raised-bed.inside',
    inputs: made.from({ outside: 'frame.outside-length', ...thickness }),
    sources: [lumberSource],
  });
  const heights = { 'poleward-height': 'frame.poleward-height', 'equator-height': 'frame.equator-height' };
  made.add('frame.run', length(layout.runMm), {
    method: 'lumber-frame.run',
    inputs: made.from({
      'lid-length': 'frame.lid-length',
      overhang: 'frame.overhang',
      ...thickness,
      ...heights,
    }),
    sources: [lumberSources.practice],
  });
  made.add('frame.slope', quantity('angle', layout.slopeDeg), {
    method: 'lumber-frame.slope',
    inputs: made.from({ ...heights, run: 'frame.run' }),
    sources: [lumberSources.practice, 'frame-slope-practice'],
  });
  made.add('frame.outside-depth', length(layout.outsideDepthMm), {
    method: 'lumber-frame.outside-depth',
    inputs: made.from({ run: 'frame.run', ...thickness }),
    sources: [lumberSource],
  });
  made.add('frame.inside-depth', length(layout.insideDepthMm), {
    method: 'lumber-frame.inside-depth',
    inputs: made.from({ run: 'frame.run', ...thickness }),
    sources: [lumberSource],
  });
  made.add('frame.diagonal', length(Math.hypot(layout.outsideLengthMm, layout.outsideDepthMm)), {
    method: 'lumber.diagonal',
    inputs: made.from({ 'outside-length': 'frame.outside-length', 'outside-width': 'frame.outside-depth' }),
    sources: [lumberSources.practice],
  });
}

function addSlope(made: FindingList, project: LumberColdFrame, layout: LumberFrameLayout): void {
  const sources = [lumberSources.practice];
  made.add('frame.slope-low', length(layout.slopeLowMm), {
    method: 'lumber-frame.slope-low',
    inputs: made.from({
      'equator-height': 'frame.equator-height',
      'side-height': 'frame.side-height',
      'board-thickness': 'frame.board-thickness',
      slope: 'frame.slope',
    }),
    sources,
  });
  made.add('frame.slope-high', length(layout.slopeHighMm), {
    method: 'lumber-frame.slope-high',
    inputs: made.from({ 'poleward-height': 'frame.poleward-height', 'side-height': 'frame.side-height' }),
    sources,
  });
  made.add('frame.slope-cut', length(layout.slopeCutMm), {
    method: 'lumber-frame.slope-cut',
    inputs: made.from({ 'inside-depth': 'frame.inside-depth', slope: 'frame.slope' }),
    sources,
  });
  made.add('frame.slope-boards', count(layout.slopeBoards), {
    method: 'lumber-frame.slope-boards',
    inputs: [
      ...made.from({
        'slope-low': 'frame.slope-low',
        'slope-high': 'frame.slope-high',
        'board-width': 'frame.slope-board-width',
      }),
      ...(project.kerf ? [{ name: 'kerf', value: asValue(project.kerf) }] : []),
    ],
    sources: [...sources, 'saw-kerf-practice'],
  });
}

function addPieces(made: FindingList, layout: LumberFrameLayout): void {
  const sources = [lumberSources.practice];
  made.add('frame.long-board', length(layout.outsideLengthMm), {
    method: 'lumber-frame.long-board',
    inputs: made.from({ 'outside-length': 'frame.outside-length' }),
    sources,
  });
  made.add('frame.side-board', length(layout.insideDepthMm), {
    method: 'lumber-frame.side-board',
    inputs: made.from({ 'inside-depth': 'frame.inside-depth' }),
    sources,
  });
  made.add('frame.back-post', length(layout.backPostMm), {
    method: 'lumber-frame.back-post',
    inputs: made.from({
      'poleward-height': 'frame.poleward-height',
      'post-size': 'frame.post-size',
      slope: 'frame.slope',
    }),
    sources,
  });
  made.add('frame.front-post', length(layout.frontPostMm), {
    method: 'lumber-frame.front-post',
    inputs: made.from({ 'equator-height': 'frame.equator-height' }),
    sources,
  });
  made.add('frame.middle-cleats', count(2 * layout.middleCleats), {
    method: 'lumber-frame.middle-cleats',
    inputs: made.from({
      'outside-length': 'frame.outside-length',
      'board-thickness': 'frame.board-thickness',
    }),
    sources: [spanSource(layout.thicknessMm)],
  });
  made.add('frame.bars', count(layout.bars), {
    method: 'lumber-frame.bars',
    inputs: made.from({ lids: 'frame.lids' }),
    sources,
  });
  made.add('frame.bar', length(layout.barMm), {
    method: 'lumber-frame.bar',
    inputs: made.from({
      'inside-depth': 'frame.inside-depth',
      slope: 'frame.slope',
      'post-size': 'frame.post-size',
    }),
    sources,
  });
}

function addLids(made: FindingList, project: LumberColdFrame, layout: LumberFrameLayout): void {
  const { lids } = layout;
  const sources = [lumberSources.practice];
  made.add('frame.hinges', count(lids.hinges * lids.number), {
    method: 'lumber-frame.hinges',
    inputs: made.from({ lids: 'frame.lids', 'lid-width': 'frame.lid-width' }),
    sources,
  });
  made.add('frame.hinge-inset', length(lids.hingeInsetMm), {
    method: 'lumber-frame.hinge-inset',
    inputs: made.from({ 'lid-width': 'frame.lid-width' }),
    sources,
  });
  made.add('frame.prop-opens', quantity('angle', layout.propOpensDeg), {
    method: 'lumber-frame.prop-opens',
    inputs: made.from({
      'prop-length': 'frame.prop-length',
      'lid-length': 'frame.lid-length',
      overhang: 'frame.overhang',
    }),
    sources,
  });
  addLidWeight(made, project, layout);
  const recordLid = project.lids.built;
  if (!lids.built || !recordLid) return;
  const face = length(lids.built.faceMm);
  made.add('frame.lid-rail', length(lids.built.railMm), {
    method: 'lumber-frame.lid-rail',
    inputs: [...made.from({ 'lid-width': 'frame.lid-width' }), { name: 'stile', value: face }],
    sources: [lumberSource],
  });
  made.add('frame.lid-bar', length(lids.built.barMm), {
    method: 'lumber-frame.lid-bar',
    inputs: [...made.from({ 'lid-length': 'frame.lid-length' }), { name: 'rail', value: face }],
    sources: [lumberSource],
  });
  made.add('frame.glazing-sheets', count(lids.number), {
    method: 'lumber-frame.glazing-sheets',
    inputs: made.from({ lids: 'frame.lids' }),
    sources,
  });
  made.add('frame.glazing-fasteners', count(lids.built.fasteners * lids.number), {
    method: `lumber-frame.fasteners-${recordLid.sheet}`,
    inputs: made.from({
      lids: 'frame.lids',
      'lid-width': 'frame.lid-width',
      'lid-length': 'frame.lid-length',
    }),
    sources,
  });
  made.add('frame.lid-brackets', count(4 * lids.number), {
    method: 'lumber-frame.lid-brackets',
    inputs: made.from({ lids: 'frame.lids' }),
    sources,
  });
}

function addLidWeight(made: FindingList, { lids }: LumberColdFrame, layout: LumberFrameLayout): void {
  const { low, high } = layout.lids.massG;
  const size = made.from({ 'lid-width': 'frame.lid-width', 'lid-length': 'frame.lid-length' });
  if (lids.sash) {
    made.add('frame.lid-weight', quantity('mass', low, high), {
      method: 'frame.sash-weight',
      inputs: [
        ...size,
        { name: 'sash-thickness', value: asValue(lids.sash.thickness) },
        { name: 'glass-thickness', value: asValue(lids.sash.glass) },
        { name: 'glass-percent', value: count(Math.round(lids.sash.glassShare * 1000) / 10) },
      ],
      sources: [structureSources.glass, structureSources.wood],
    });
  } else if (lids.built) {
    made.add('frame.lid-weight', quantity('mass', low, high), {
      method: 'lumber-frame.lid-weight',
      inputs: [
        ...size,
        { name: 'lid-lumber', value: length(layout.lids.thicknessMm) },
        { name: 'sheet-mass', value: asValue(lids.built.sheetMass.value) },
      ],
      sources: [structureSources.wood, ...lids.built.sheetMass.sources].filter(unique),
    });
  }
}

function addScrews(made: FindingList, layout: LumberFrameLayout): void {
  const sources = [lumberSources.practice];
  made.add('frame.screws', count(layout.screws), {
    method: 'lumber-frame.screws',
    inputs: [
      { name: 'joints', value: count(layout.joints) },
      ...made.from({ 'middle-cleats': 'frame.middle-cleats', bars: 'frame.bars', lids: 'frame.lids' }),
    ],
    sources,
  });
  made.add('frame.screw-length', length(layout.screwLengthMm), {
    method: 'lumber.screw-length',
    inputs: made.from({ 'board-thickness': 'frame.board-thickness', 'post-size': 'frame.post-size' }),
    sources,
  });
}

function addBed(made: FindingList, layout: LumberFrameLayout): void {
  const inside = { 'inside-length': 'frame.inside-length', 'inside-depth': 'frame.inside-depth' };
  made.add('frame.inside-area', quantity('area', (layout.insideLengthMm * layout.insideDepthMm) / 1e6), {
    method: 'frame.area',
    inputs: made.from(inside),
    sources: [lumberSource],
  });
  made.add('frame.soil-volume', quantity('volume', layout.soilL), {
    method: 'frame.soil-volume',
    inputs: made.from({ ...inside, 'soil-depth': 'frame.soil-depth' }),
    sources: [lumberSource],
  });
  made.add('frame.headroom', length(layout.frontHeightMm - layout.soilDepthMm), {
    method: 'frame.headroom',
    inputs: made.from({ 'equator-height': 'frame.equator-height', 'soil-depth': 'frame.soil-depth' }),
    sources: [lumberSource],
  });
}

function addLifts(
  made: FindingList,
  project: LumberColdFrame,
  layout: LumberFrameLayout,
): readonly LiftedItem[] {
  const { thicknessMm, outsideLengthMm, backHeightMm, postMm, backPostMm, middleCleats } = layout;
  const back = woodMassG(
    thicknessMm * backHeightMm * outsideLengthMm + (2 + middleCleats) * postMm ** 2 * backPostMm,
  );
  made.add('frame.back-weight', quantity('mass', back.low, back.high), {
    method: 'lumber.weight',
    inputs: made.from({
      'board-thickness': 'frame.board-thickness',
      'board-length': 'frame.long-board',
      'poleward-height': 'frame.poleward-height',
    }),
    sources: [structureSources.wood, lumberSource],
  });
  const all = woodMassG(boardsVolumeMm3(project, layout));
  made.add('frame.boards-weight', quantity('mass', all.low, all.high), {
    method: 'lumber.weight',
    inputs: made.from({
      'board-thickness': 'frame.board-thickness',
      'board-length': 'frame.long-board',
      'poleward-height': 'frame.poleward-height',
      'equator-height': 'frame.equator-height',
      'outside-width': 'frame.outside-depth',
    }),
    sources: [structureSources.wood, lumberSource],
  });
  const { lids } = layout;
  const bag = addBag(made, project.parts, 'frame.bag-weight');
  const sandbag = lidWeightLift(made, layout);
  return [
    {
      item: 'back-wall',
      mass: 'frame.back-weight',
      massG: back.high,
      stage: 'back',
      depthMm: thicknessMm + postMm,
      widthMm: outsideLengthMm,
      fromMm: fromGroundMm,
      toMm: carriedAtMm,
      grip: 'fair',
    },
    {
      item: 'lid',
      mass: 'frame.lid-weight',
      massG: lids.massG.high,
      stage: 'hang',
      depthMm: Math.min(lids.widthMm, lids.lengthMm),
      widthMm: Math.max(lids.widthMm, lids.lengthMm),
      fromMm: Math.min(lids.widthMm, lids.lengthMm) / 2,
      toMm: backHeightMm,
      grip: 'fair',
      reachOfTwoMm: handsAtBodyMm,
    },
    ...(bag ? [{ ...bag, stage: 'soil' }] : []),
    ...(sandbag ? [sandbag] : []),
  ];
}

/** Of walls, slopes, posts and bars, without the lids. */
function boardsVolumeMm3(project: LumberColdFrame, layout: LumberFrameLayout): number {
  const straight = piecesOf(project, layout)
    .filter(({ role }) => !role.startsWith('lid-') && !role.startsWith('slope-'))
    .reduce((sum, { nominal, lengthMm, number }) => {
      const { thicknessMm, widthMm } = sizeOf(nominal);
      return sum + thicknessMm * widthMm * lengthMm * number;
    }, 0);
  const { thicknessMm, insideDepthMm, slopeLowMm, slopeHighMm } = layout;
  return straight + thicknessMm * insideDepthMm * (slopeLowMm + slopeHighMm);
}
