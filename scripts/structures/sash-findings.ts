/** How each sash lies on the frame and what it weighs. */
import { count, inputOf, none, quantity, type FindingValue } from '../findings/finding.ts';
import type { BaleColdFrame } from '../records/schemas/projects/bale-cold-frame.ts';
import { asValue, unique, type FindingList } from './finding-list.ts';
import type { PlacedSash } from './geometry.ts';
import { glassDensityGPerMm3, structureSources, woodDensityGPerMm3 } from './practice.ts';

/** Findings of one sash, `placed` in the frame. Needs those of the bed. */
export function addSash(
  made: FindingList,
  project: BaleColdFrame,
  sash: BaleColdFrame['sashes'][number],
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
export function addHeaviestSash(made: FindingList, project: BaleColdFrame): void {
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

/** `frame.sash-a.width` */
export function sashId(letter: string, what: string): string {
  return `frame.sash-${letter.toLowerCase()}.${what}`;
}

function heaviestEnd(value: FindingValue): number {
  return value.kind === 'range' ? value.high : value.kind === 'quantity' ? value.value : 0;
}
