/** What is lifted at a frame of bales, what the wind gets hold of, and how the heat sees it. */
import type { Finding } from '../findings/finding.ts';
import { middle } from '../quantities/quantity.ts';
import type { BaleColdFrame } from '../records/schemas/projects/bale-cold-frame.ts';
import { addMass, lowest, partMass, windSash } from './bale-weights.ts';
import type { FindingList } from './finding-list.ts';
import { baleFrameEnvelope } from './frame-heat/bale-envelope.ts';
import { glazingKinds, type GlazingKind } from './frame-heat/glazing.ts';
import { mixSoil, nightCovers } from './frame-heat/materials.ts';
import type { FrameGeometry, PlacedSash } from './geometry.ts';
import { missingShare, sashId } from './sash-findings.ts';
import type { LiftedItem, Structure, WindCover } from './structure.ts';
import { baleAsLaid } from './wall-layout.ts';
import { gravity } from './wind/sash-in-wind.ts';

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

/** Every sash with all that holds it. */
export function baleCovers(made: FindingList, geometry: FrameGeometry): readonly WindCover[] {
  const own = new Map(made.all().map((finding) => [finding.id, finding]));
  const same = own.get('frame.hold-down-per-sash');
  return geometry.sashes.map((sash): WindCover => {
    const { id } = sash;
    const holds = own.get(sashId(id, 'hold-down-per-sash')) ?? same;
    return {
      id: sashId(id, 'x').slice(0, -'.x'.length),
      letter: id,
      weight: sashId(id, 'weight'),
      sash: {
        ...windSash(made, geometry, sash),
        holdDownN: holds ? (lowest(holds) / 1000) * gravity : 0,
      },
    };
  });
}

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

function massOf({ id, value }: Finding): { readonly mass: string; readonly massG: number } {
  if (value.kind === 'range') return { mass: id, massG: value.high };
  if (value.kind === 'quantity') return { mass: id, massG: value.value };
  throw new TypeError(`${id} is no weight`);
}
