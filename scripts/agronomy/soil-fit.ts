/** Whether a crop suits a region's usual garden soil, and what to do where it does not. */
import { choice, none, quantity, type Finding, type FindingInput } from '../findings/finding.ts';
import type { Crop } from '../records/schemas/crop.ts';
import type { SoilRecord } from './depth-advice.ts';
import { merged } from './window-parts.ts';

/** From the best to the worst; the worst that any reason asks for is the answer. */
export const soilFits = ['fits', 'fits-with-work', 'shorter-types', 'raised-bed', 'container'] as const;
export type SoilFit = (typeof soilFits)[number];

export const soilReasons = [
  'soil-suits',
  'ph-too-low',
  'ph-too-high',
  'too-shallow',
  'few-inches-of-soil',
  'some-stones',
  'many-stones',
  'heavy-soil',
  'clay-soil',
] as const;
export type SoilReason = (typeof soilReasons)[number];

export interface SoilFinding {
  /** `<crop>.soil-fit`: a choice `soil-<fit>`. */
  readonly fit: Finding;
  /** Every reason with what it asks for, the gravest first; `soil-suits` alone where nothing speaks against it. */
  readonly reasons: readonly { readonly reason: SoilReason; readonly asks: SoilFit }[];
}

/** Published ranges of pH differ by this much, so a soil this far outside one still fits. */
export const phSlack = 0.3;

/** Beyond this, lime or sulfur takes years: bring other soil. Common practice. */
const phWithWork = 1;

/** With less soil than this over rock, hardpan or water nothing with a root to eat grows: 6 in. Common practice. */
export const leastDepthMm = 152.4;

/**
 * Judges acidity for every crop, and depth, stones and texture where the record says how deep the soil must be loose
 * (root crops): deep, loose, stone-free sandy loam grows straight roots, and clay and stones fork them. Where the
 * loose depth is at least half of what is asked, shorter types will do.
 *
 * Sources: ranges of pH and loose depth from the crop's record; the steps between the answers are common practice.
 */
export function soilFit(crop: Crop, soil: SoilRecord | undefined): SoilFinding {
  const record = crop.soil;
  const base = { id: `${crop.id}.soil-fit`, method: 'soil.fit' };
  if (!record || !soil) {
    const value = none(record ? 'no-soil-on-record' : 'no-soil-needs');
    return {
      fit: { ...base, value, inputs: [], sources: record?.sources ?? crop.depth.sources },
      reasons: [],
    };
  }
  const against = [
    ...phReasons(record.ph, soil.ph),
    ...(record.looseDepth ? rootReasons(record.looseDepth, soil) : []),
  ];
  const reasons = (against.length === 0 ? [{ reason: 'soil-suits', asks: 'fits' } as const] : against).sort(
    (a, b) => rank(b.asks) - rank(a.asks),
  );
  const inputs: FindingInput[] = [
    { name: 'soil-ph', value: tenths(soil.ph, soil.ph) },
    { name: 'ph-wanted', value: tenths(record.ph.low, record.ph.high) },
    { name: 'soil-texture', value: choice(soil.texture) },
    { name: 'soil-stones', value: choice(`stones-${soil.stones}`) },
    { name: 'soil-depth-here', value: quantity('length', soil.depth.low) },
    ...(record.looseDepth
      ? [
          {
            name: 'loose-depth-wanted',
            value: quantity('length', record.looseDepth.low, record.looseDepth.high),
          },
        ]
      : []),
    ...reasons.map(({ reason }): FindingInput => ({ name: 'because', value: choice(reason) })),
  ];
  return {
    fit: {
      ...base,
      value: choice(`soil-${reasons[0]!.asks}`),
      inputs,
      sources: merged(record.sources, [soil.source], ['common-practice-gardening']),
    },
    reasons,
  };
}

type Reason = SoilFinding['reasons'][number];

function phReasons(wanted: { low: number; high: number }, ph: number): Reason[] {
  const outside = Math.max(wanted.low - ph, ph - wanted.high);
  if (outside <= phSlack + 1e-9) return [];
  const reason = ph < wanted.low ? 'ph-too-low' : 'ph-too-high';
  return [{ reason, asks: outside <= phWithWork + 1e-9 ? 'fits-with-work' : 'raised-bed' }];
}

function rootReasons(wanted: { low: number }, soil: SoilRecord): Reason[] {
  const found: Reason[] = [];
  const depthMm = soil.depth.low;
  if (depthMm < leastDepthMm) found.push({ reason: 'few-inches-of-soil', asks: 'container' });
  else if (depthMm < wanted.low - 1e-6)
    found.push({ reason: 'too-shallow', asks: depthMm >= wanted.low / 2 ? 'shorter-types' : 'raised-bed' });
  if (soil.stones === 'some') found.push({ reason: 'some-stones', asks: 'fits-with-work' });
  if (soil.stones === 'many') found.push({ reason: 'many-stones', asks: 'raised-bed' });
  if (soil.texture === 'clay-loam') found.push({ reason: 'heavy-soil', asks: 'shorter-types' });
  if (soil.texture === 'clay') found.push({ reason: 'clay-soil', asks: 'raised-bed' });
  return found;
}

function rank(fit: SoilFit): number {
  return soilFits.indexOf(fit);
}

/** A pH has no unit of ours: it is told as a count, with its decimals. */
function tenths(low: number, high: number): FindingInput['value'] {
  return low === high ? { kind: 'count', value: low } : { kind: 'count-range', low, high };
}
