/** How many bales the walls take, whole and cut, and how much loose straw fills what they leave open. */
import { count, none, quantity, type FindingInput, type FindingValue } from '../findings/finding.ts';
import type { BaleColdFrame } from '../records/schemas/projects/bale-cold-frame.ts';
import { unique, type FindingList } from './finding-list.ts';
import type { FrameGeometry, WallName } from './geometry.ts';
import { structureSources } from './practice.ts';
import { balesToCut, type BaleSize } from './wall-layout.ts';

/** Findings of the walls. Needs those of the bed. */
export function addBales(
  made: FindingList,
  project: BaleColdFrame,
  geometry: FrameGeometry,
  bale: BaleSize,
): void {
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
  const sideCuts = geometry.bales
    .filter(({ wall, kind }) => wall === 'west' && kind === 'cut')
    .map(lengthAlongWall);
  add('frame.cut-pieces', count(cuts.length), 'frame.cut-pieces', made.from(lengths));
  add(
    'frame.cut-length',
    sideCuts.length === 0
      ? none('no-cut-bale')
      : quantity('length', Math.min(...sideCuts), Math.max(...sideCuts)),
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
  const ridgeL = ridgeVolumeL(geometry);
  const lowWallL = lowWallGapL(geometry);
  const needL = wedgesL + geometry.gapL + ridgeL + lowWallL;
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
      ...(ridgeL > 0 ? [{ name: 'ridge', value: quantity('volume', ridgeL) }] : []),
      ...(lowWallL > 0 ? [{ name: 'low-wall-gaps', value: quantity('volume', lowWallL) }] : []),
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

/** Packed straw under the board that raises the upper ends of the sashes. */
export function ridgeVolumeL({ ridge }: FrameGeometry): number {
  if (!ridge) return 0;
  return ((ridge.toX - ridge.fromX) * (ridge.toY - ridge.fromY) * ridge.heightMm) / 1e6;
}

/** Straw tucked under sashes that lie high at the inner edge of the low wall: a wedge that ends where they bear. */
function lowWallGapL({ sashes }: FrameGeometry): number {
  return sashes.reduce(
    (sum, { gapMm, bearingEquatorMm, widthMm }) => sum + (gapMm * bearingEquatorMm * widthMm) / 2 / 1e6,
    0,
  );
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

function total(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0);
}
