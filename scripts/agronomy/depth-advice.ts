/**
 * How deep to sow: the published depth, the old rule of two and a half seed diameters beside it, and the end of the
 * published range that suits the soil.
 */
import { choice, inputOf, none, quantity, type Finding, type FindingInput } from '../findings/finding.ts';
import { toHeld } from '../quantities/units.ts';
import type { Crop } from '../records/schemas/crop.ts';
import type { Region } from '../records/schemas/region.ts';
import { depth } from './spacing.ts';
import { merged } from './window-parts.ts';

export type SoilRecord = NonNullable<Region['soil']>;

export interface DepthAdvice {
  /** `<crop>.depth`: the published figure. */
  readonly published: Finding;
  /** `<crop>.depth-rule`: two and a half seed diameters, a lower bound for small seed. */
  readonly rule: Finding;
  /** `<crop>.depth-here`: what to sow at. */
  readonly printed: Finding;
  /** `<crop>.depth-why`: a choice of `depthReasons`. */
  readonly why: Finding;
  /** `<crop>.depth-rule-says`: a choice of `ruleVerdicts`, none where there is no rule. */
  readonly ruleSays: Finding;
}

export const depthReasons = [
  /** The soil is not known, or asks for neither end: the published figure. */
  'depth-published',
  /** Published as one figure, so that there is no end to choose. */
  'depth-published-single',
  'depth-shallow-heavy-soil',
  'depth-shallow-wet-soil',
  'depth-deep-light-soil',
  'depth-deep-dry-soil',
] as const;

export const ruleVerdicts = ['rule-shallower', 'rule-agrees', 'rule-deeper'] as const;

/** Seed diameters in a depth, by the rule. Common practice says two to three. */
export const ruleDiameters = 2.5;

/** Grams in a cubic millimetre of seed: 1.2 g/cm3, assumed, for no published densities were found. */
const seedDensity = 0.0012;

/**
 * The diameter in millimetres of a ball of the same mass as one seed: (6 m / (pi d))^(1/3), with the mass from the
 * number of seeds in an ounce and an assumed density of 1.2 g/cm3. A count that is not above 0 throws a RangeError.
 */
export function seedDiameterMm(seedsPerOunce: number): number {
  if (!(seedsPerOunce > 0)) throw new RangeError(`no such seed count: ${seedsPerOunce}`);
  return Math.cbrt((6 * (toHeld(1, 'oz') / seedsPerOunce)) / (Math.PI * seedDensity));
}

/**
 * The published depth is what is printed, for the rule lies below nearly every published depth. Where it is a range,
 * heavy or wet soil takes the shallow end and light or dry soil the deep end (common practice); where texture and
 * moisture pull apart, or neither pulls, the whole range stands.
 */
export function depthAdvice(crop: Crop, soil?: SoilRecord): DepthAdvice {
  const published = depth(crop);
  const rule = ruleFinding(crop);
  const { low, high } = crop.depth.value;
  const reason = reasonFor(crop, soil);
  const inputs: FindingInput[] = [inputOf('published-depth', published), ...soilInputs(soil)];
  const sources = merged(
    crop.depth.sources,
    soil ? [soil.source] : [],
    reason.startsWith('depth-published') ? [] : ['common-practice-gardening'],
  );
  const [from, to] = reason.startsWith('depth-shallow')
    ? [low, low]
    : reason.startsWith('depth-deep')
      ? [high, high]
      : [low, high];
  return {
    published,
    rule,
    printed: {
      id: `${crop.id}.depth-here`,
      value: quantity('length', from, to),
      method: 'depth.by-soil',
      inputs,
      sources,
    },
    why: { id: `${crop.id}.depth-why`, value: choice(reason), method: 'depth.by-soil', inputs, sources },
    ruleSays: verdict(crop, published, rule),
  };
}

function ruleFinding(crop: Crop): Finding {
  const record = crop.seedsPerOunce;
  const base = { id: `${crop.id}.depth-rule`, method: 'depth.seed-diameters' };
  if (!record || 'notSown' in crop.emergence)
    return {
      ...base,
      value: none(record ? 'not-sown' : 'no-seed-count'),
      inputs: [],
      sources: crop.depth.sources,
    };
  const [small, large] = [seedDiameterMm(record.high), seedDiameterMm(record.low)];
  return {
    ...base,
    value: quantity('length', ruleDiameters * small, ruleDiameters * large),
    inputs: [
      { name: 'seeds-per-ounce', value: { kind: 'count-range', low: record.low, high: record.high } },
      { name: 'seed-diameter', value: quantity('length', small, large) },
    ],
    sources: merged(record.sources, ['common-practice-gardening']),
  };
}

function verdict(crop: Crop, published: Finding, rule: Finding): Finding {
  const base = {
    id: `${crop.id}.depth-rule-says`,
    method: 'depth.rule-against-published',
    inputs: [inputOf('published-depth', published), inputOf('depth-rule', rule)],
    sources: merged(crop.depth.sources, rule.sources),
  };
  const ends =
    rule.value.kind === 'range'
      ? rule.value
      : rule.value.kind === 'quantity'
        ? { low: rule.value.value, high: rule.value.value }
        : undefined;
  if (!ends) return { ...base, value: rule.value };
  const { low, high } = crop.depth.value;
  const says = ends.high < low ? 'rule-shallower' : ends.low > high ? 'rule-deeper' : 'rule-agrees';
  return { ...base, value: choice(says) };
}

/** Which end a soil asks for: 1 the deep one, -1 the shallow one. Common practice. */
const textureAsks: Readonly<Record<SoilRecord['texture'], -1 | 0 | 1>> = {
  sand: 1,
  'sandy-loam': 1,
  loam: 0,
  'silt-loam': 0,
  'clay-loam': -1,
  clay: -1,
};
const moistureAsks: Readonly<Record<SoilRecord['moisture'], -1 | 0 | 1>> = { dry: 1, moist: 0, wet: -1 };

function reasonFor(crop: Crop, soil: SoilRecord | undefined): (typeof depthReasons)[number] {
  if (crop.depth.value.low === crop.depth.value.high) return 'depth-published-single';
  if (!soil) return 'depth-published';
  const [texture, moisture] = [textureAsks[soil.texture], moistureAsks[soil.moisture]];
  const asks = Math.sign(texture + moisture);
  if (asks > 0) return texture > 0 ? 'depth-deep-light-soil' : 'depth-deep-dry-soil';
  if (asks < 0) return texture < 0 ? 'depth-shallow-heavy-soil' : 'depth-shallow-wet-soil';
  return 'depth-published';
}

function soilInputs(soil: SoilRecord | undefined): FindingInput[] {
  return soil
    ? [
        { name: 'soil-texture', value: choice(soil.texture) },
        { name: 'soil-moisture', value: choice(soil.moisture) },
      ]
    : [];
}
