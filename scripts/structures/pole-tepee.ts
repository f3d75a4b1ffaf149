/**
 * Works out a tepee of poles for climbing crops: its height and spread, plants round it, twine, and the gust that it stands
 * when it is full of leaves.
 */
import { count, quantity, type FindingInput, type FindingValue } from '../findings/finding.ts';
import { middle } from '../quantities/quantity.ts';
import { fromHeld, toHeld } from '../quantities/units.ts';
import type { PoleTepee } from '../records/schemas/projects/pole-tepee.ts';
import { asValue, FindingList, unique } from './finding-list.ts';
import { carriedAtMm, fromGroundMm } from './lumber-practice.ts';
import type { BuildPlace, Built, Structure } from './structure.ts';
import { tepeeAssembly } from './tepee-assembly.ts';
import { tepeeFaults } from './tepee-faults.ts';
import { feetOf, layTepee, tepeeInWind, weightForGustG, type TepeeLayout } from './tepee-layout.ts';
import {
  frappingTurns,
  lashingTurns,
  lineClearanceMm,
  raisedReachMm,
  strongerByMps,
  tepeeSources,
  testedStake,
} from './tepee-practice.ts';
import { pressureSource } from './wind/velocity-pressure.ts';

/** The tepee of a record: built, or everything that does not add up. */
export function tepeeStructure(project: PoleTepee, { hemisphere }: BuildPlace): Built {
  const faults = tepeeFaults(project);
  if (faults.length > 0) return { kind: 'faults', faults };
  const layout = layTepee(project);
  const made = new FindingList();
  addGiven(made, project);
  addShape(made, project, layout);
  addPlants(made, project, layout);
  addTwine(made, project, layout);
  addWind(made, project, layout);
  made.add('tepee.line-distance', quantity('length', layout.poleMm + raisedReachMm + lineClearanceMm), {
    method: 'tepee.line-distance',
    inputs: made.from({ 'pole-length': 'tepee.pole-length' }),
    sources: [tepeeSources.lines, tepeeSources.practice],
  });
  const { mass } = project.poles;
  made.add('tepee.bundle-mass', quantity('mass', mass.low * layout.poles, mass.high * layout.poles), {
    method: 'tepee.bundle-mass',
    inputs: made.from({ poles: 'tepee.poles', 'pole-mass': 'tepee.pole-mass' }),
    sources: project.poles.sources,
  });
  const structure: Structure = {
    findings: made.all(),
    counts: { poles: made.get('tepee.poles'), balls: made.get('tepee.balls') },
    lengths: { poles: made.get('tepee.pole-length'), balls: made.get('tepee.ball') },
    pieces: [],
    lifts: [
      {
        item: 'pole-bundle',
        mass: 'tepee.bundle-mass',
        massG: mass.high * layout.poles,
        stage: 'raise',
        depthMm: layout.poles * layout.thicknessMm,
        widthMm: layout.poleMm,
        fromMm: fromGroundMm,
        toMm: carriedAtMm,
        grip: 'fair',
      },
    ],
    bed: {
      shape: 'ring',
      lengthMm: layout.circleMm,
      length: 'tepee.circle',
      depthMm: plantedStripMm,
      soilDepthMm: middle(project.loosened),
      ring: {
        innerRadiusMm: layout.radiusMm - plantedStripMm / 2,
        openAngleAt: () => 0,
        poles: feetOf(layout),
      },
      cover: 'open',
    },
    glance: ['tepee.height', 'tepee.spread', 'tepee.plants'],
    assembly: tepeeAssembly(project, layout, hemisphere),
    versions: () => smallerTepees(project),
  };
  return { kind: 'structure', structure };
}

/** The strip round the feet that is loosened and sown. */
const plantedStripMm = toHeld(12, 'in');

const versionStepMm = toHeld(1, 'ft');
const shortestVersionMm = toHeld(5, 'ft');

/** Tepees of fewer poles, and for each number shorter ones by a foot: many poles first, and long ones before short ones. */
export function* smallerTepees(project: PoleTepee): Generator<PoleTepee> {
  const { poles } = project;
  const longest = middle(poles.length);
  for (let number = poles.number; number >= 3; number -= 1) {
    for (
      let mm = longest;
      mm >= Math.min(longest, shortestVersionMm) - 1e-6;
      mm = Math.ceil(mm / versionStepMm - 1 - 1e-6) * versionStepMm
    ) {
      if (number === poles.number && mm === longest) continue;
      const length = {
        dimension: 'length' as const,
        low: mm,
        high: mm,
        written: `${Math.round(fromHeld(mm, 'in') * 1000) / 1000} in`,
      };
      yield { ...project, poles: { ...poles, number, length } };
    }
  }
}

const length = (mm: number): FindingValue => quantity('length', mm);

function addGiven(made: FindingList, project: PoleTepee): void {
  const { poles, priceSource } = project;
  const given = (id: string, value: FindingValue, sources: readonly string[]): void => {
    made.add(`tepee.${id}`, value, { method: 'build.given', inputs: [], sources });
  };
  const own = [priceSource];
  given('poles', count(poles.number), poles.sources);
  given('pole-length', asValue(poles.length), poles.sources);
  given('pole-thickness', asValue(poles.thickness), poles.sources);
  given('pole-buried', asValue(poles.buried), poles.sources);
  given('pole-mass', asValue(poles.mass), poles.sources);
  given('tie', asValue(project.tie), own);
  given('spread', asValue(project.spread), own);
  given('string-rings', count(project.rings), own);
  given('ball', asValue(project.ball), own);
  given('spacing', asValue(project.spacing.value), project.spacing.sources);
  given('loosened', asValue(project.loosened), own);
  given('least-gust', asValue(project.gust.value), project.gust.sources);
  given('people', count(project.helpers + 1), own);
  given('time', asValue(project.time), own);
}

function addShape(made: FindingList, project: PoleTepee, layout: TepeeLayout): void {
  const sources = project.poles.sources;
  const add = (id: string, value: FindingValue, inputs: Record<string, string>): void => {
    made.add(`tepee.${id}`, value, { method: `tepee.${id}`, inputs: made.from(inputs), sources });
  };
  add('leg', length(layout.legMm), {
    'pole-length': 'tepee.pole-length',
    'pole-buried': 'tepee.pole-buried',
    tie: 'tepee.tie',
  });
  const leg = { leg: 'tepee.leg', spread: 'tepee.spread' };
  add('height', length(layout.heightMm), leg);
  add('lean', quantity('angle', (layout.leanRad * 180) / Math.PI), leg);
  add('top', length(layout.topMm), { 'tepee-height': 'tepee.height', tie: 'tepee.tie', lean: 'tepee.lean' });
  add('in-ground', length(layout.inGroundMm), { 'pole-buried': 'tepee.pole-buried', lean: 'tepee.lean' });
  add('radius', length(layout.radiusMm), { spread: 'tepee.spread' });
  add('foot-spacing', length(layout.footSpacingMm), { spread: 'tepee.spread', poles: 'tepee.poles' });
  add('circle', length(layout.circleMm), { spread: 'tepee.spread' });
}

function addPlants(made: FindingList, project: PoleTepee, { plants, poles }: TepeeLayout): void {
  const { sources } = project.spacing;
  made.add('tepee.plants', count(plants), {
    method: 'tepee.plants',
    inputs: made.from({ circle: 'tepee.circle', spacing: 'tepee.spacing' }),
    sources,
  });
  const [low, high] = [Math.floor(plants / poles), Math.ceil(plants / poles)];
  made.add('tepee.plants-per-pole', low === high ? count(low) : { kind: 'count-range', low, high }, {
    method: 'tepee.plants-per-pole',
    inputs: made.from({ plants: 'tepee.plants', poles: 'tepee.poles' }),
    sources,
  });
}

function addTwine(made: FindingList, project: PoleTepee, layout: TepeeLayout): void {
  const turns = (id: string, number: number): void => {
    made.add(`tepee.${id}`, count(number), {
      method: `tepee.${id}`,
      inputs: [],
      sources: [tepeeSources.lashing],
    });
  };
  turns('lashing-turns', lashingTurns);
  turns('frapping-turns', frappingTurns);
  const poles = { poles: 'tepee.poles', 'pole-thickness': 'tepee.pole-thickness' };
  made.add('tepee.lashing-twine', length(layout.lashingTwineMm), {
    method: 'tepee.lashing-twine',
    inputs: made.from(poles),
    sources: [tepeeSources.lashing, tepeeSources.practice],
  });
  const ringsMm = layout.rings.reduce((sum, { twineMm }) => sum + twineMm, 0);
  made.add('tepee.ring-twine', length(ringsMm), {
    method: 'tepee.ring-twine',
    inputs: made.from({ ...poles, spread: 'tepee.spread', 'string-rings': 'tepee.string-rings' }),
    sources: [tepeeSources.practice],
  });
  const twineMm = layout.lashingTwineMm + ringsMm;
  made.add('tepee.twine', length(twineMm), {
    method: 'tepee.twine',
    inputs: made.from({ 'lashing-twine': 'tepee.lashing-twine', 'ring-twine': 'tepee.ring-twine' }),
    sources: [tepeeSources.lashing, tepeeSources.practice],
  });
  made.add('tepee.balls', count(Math.ceil(twineMm / middle(project.ball) - 1e-9)), {
    method: 'tepee.balls',
    inputs: made.from({ twine: 'tepee.twine', ball: 'tepee.ball' }),
    sources: [project.priceSource],
  });
}

function addWind(made: FindingList, project: PoleTepee, layout: TepeeLayout): void {
  const { poles } = project;
  const wind = tepeeInWind(project, layout);
  const shape = { 'tepee-height': 'tepee.height', spread: 'tepee.spread' };
  const add = (
    id: string,
    value: FindingValue,
    inputs: readonly FindingInput[],
    sources: readonly string[],
  ): void => {
    made.add(`tepee.${id}`, value, { method: `tepee.${id}`, inputs, sources: sources.filter(unique) });
  };
  add('sail', quantity('area', wind.sailM2), made.from(shape), [tepeeSources.practice]);
  add(
    'leg-hold',
    quantity('force', wind.legHoldN),
    made.from({ 'pole-thickness': 'tepee.pole-thickness', 'in-ground': 'tepee.in-ground' }),
    [tepeeSources.pullOut, tepeeSources.practice],
  );
  const against = made.from({
    ...shape,
    poles: 'tepee.poles',
    'pole-mass': 'tepee.pole-mass',
    'leg-hold': 'tepee.leg-hold',
    sail: 'tepee.sail',
  });
  const sources = [pressureSource, tepeeSources.plate, tepeeSources.pullOut, ...poles.sources];
  add('tips-at', quantity('speed', wind.tipsMps), against, sources);
  add('stands-to', quantity('speed', wind.standsMps), made.from({ 'tips-at': 'tepee.tips-at' }), [
    'ubc-1997-overturning',
    ...sources,
  ]);
  const strongerMps = wind.standsMps + strongerByMps;
  add('stronger-gust', quantity('speed', strongerMps), made.from({ 'stands-to': 'tepee.stands-to' }), [
    tepeeSources.practice,
  ]);
  add(
    'bags',
    quantity('mass', weightForGustG(wind, strongerMps)),
    made.from({ gust: 'tepee.stronger-gust', ...shape, sail: 'tepee.sail', 'stands-to': 'tepee.stands-to' }),
    ['ubc-1997-overturning', ...sources],
  );
  const tested = (id: string, value: FindingValue): void => {
    add(id, value, [], [tepeeSources.pullOut]);
  };
  tested('tested-stake-length', length(testedStake.lengthMm));
  tested('tested-stake', quantity('force', testedStake.holdN));
  tested('tested-stake-wet', quantity('force', testedStake.wetHoldN));
}
