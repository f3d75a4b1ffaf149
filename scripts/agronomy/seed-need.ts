/** What to buy for so many plants: seed by number, weight and packet, or sets and transplants by the bundle. */
import { count, inputOf, none, quantity, type Finding, type FindingInput } from '../findings/finding.ts';
import { toHeld } from '../quantities/units.ts';
import type { Crop } from '../records/schemas/crop.ts';
import { merged } from './window-parts.ts';

export interface SeedWanted {
  readonly crop: Crop;
  /** Plants that shall stand in the end. */
  readonly plants: Finding;
  /** Percent of the seed that comes up; the crop's record where it is not given. Above 0 to 100. */
  readonly germinationPercent?: number;
  /** Percent of what comes up that lives to be a plant: common practice, 80 where it is not given. Above 0 to 100. */
  readonly survivalPercent?: number;
  /** Seeds sown for each plant kept; the others are thinned out. 1 where it is not given. */
  readonly sownPerPlace?: number;
  /** Seed kept for sowing gaps again, in percent. 0 where it is not given. */
  readonly sparePercent?: number;
  /** What a packet holds, by number or by weight. */
  readonly packet?: { readonly seeds: number } | { readonly massG: number };
}

export interface SeedToBuy {
  /** `<crop>.seeds-to-buy`: a count. */
  readonly seeds: Finding;
  /** `<crop>.seed-mass`: a weight, a range where published counts differ. */
  readonly mass: Finding;
  /** `<crop>.seed-packets`: whole packets. */
  readonly packets: Finding;
}

/** Of the seedlings that come up, those that live in garden soil. Common practice. */
export const usualSurvivalPercent = 80;

/**
 * Seeds are plants over the share of seed that ends as a plant, but never fewer than are sown to a place and thinned
 * there; the spare comes on top, and the whole is rounded up. Without a germination figure it is `none`.
 */
export function seedToBuy(wanted: SeedWanted): SeedToBuy {
  const { crop } = wanted;
  const germination = wanted.germinationPercent ?? crop.germination?.percent;
  const survival = wanted.survivalPercent ?? usualSurvivalPercent;
  const [perPlace, spare] = [wanted.sownPerPlace ?? 1, wanted.sparePercent ?? 0];
  if (!(survival > 0 && survival <= 100 && perPlace >= 1 && spare >= 0))
    throw new RangeError(`no such seed need: survival ${survival}, per place ${perPlace}, spare ${spare}`);
  const inputs: FindingInput[] = [
    inputOf('plants-wanted', wanted.plants),
    ...(germination === undefined ? [] : [{ name: 'germination-percent', value: count(germination) }]),
    { name: 'survival-percent', value: count(survival) },
    { name: 'sown-per-place', value: count(perPlace) },
    { name: 'spare-percent', value: count(spare) },
  ];
  const sources = merged(wanted.germinationPercent === undefined ? (crop.germination?.sources ?? []) : [], [
    'common-practice-gardening',
  ]);
  const base = { method: 'seed.to-buy', inputs, sources };
  const missing = germination === undefined || germination <= 0 ? none('no-germination-figure') : undefined;
  const plants = wanted.plants.value;
  if (missing || germination === undefined || plants.kind !== 'count') {
    const value = missing ?? (plants.kind === 'none' ? plants : none('no-plant-count'));
    return {
      seeds: { id: `${crop.id}.seeds-to-buy`, value, ...base },
      mass: { id: `${crop.id}.seed-mass`, value, ...base },
      packets: { id: `${crop.id}.seed-packets`, value, ...base },
    };
  }
  const perPlant = Math.max(perPlace, 1e4 / (germination * survival));
  const number = Math.ceil(plants.value * perPlant * (1 + spare / 100) - 1e-9);
  const seeds: Finding = { id: `${crop.id}.seeds-to-buy`, value: count(number), ...base };
  return { seeds, mass: massOf(crop, seeds, number), packets: packetsOf(wanted, seeds, number) };
}

function massOf(crop: Crop, seeds: Finding, number: number): Finding {
  const record = crop.seedsPerOunce;
  const base = { id: `${crop.id}.seed-mass`, method: 'seed.mass' };
  if (!record)
    return {
      ...base,
      value: none('no-seed-count'),
      inputs: [inputOf('seeds', seeds)],
      sources: seeds.sources,
    };
  const ounce = toHeld(1, 'oz');
  return {
    ...base,
    value: quantity('mass', (number / record.high) * ounce, (number / record.low) * ounce),
    inputs: [
      inputOf('seeds', seeds),
      { name: 'seeds-per-ounce', value: { kind: 'count-range', low: record.low, high: record.high } },
    ],
    sources: merged(record.sources, seeds.sources),
  };
}

function packetsOf({ crop, packet }: SeedWanted, seeds: Finding, number: number): Finding {
  const base = { id: `${crop.id}.seed-packets`, method: 'seed.packets', sources: seeds.sources };
  const inputs: FindingInput[] = [inputOf('seeds', seeds)];
  if (!packet) return { ...base, value: none('no-packet-size'), inputs };
  if ('seeds' in packet)
    return {
      ...base,
      value: count(Math.ceil(number / packet.seeds - 1e-9)),
      inputs: [...inputs, { name: 'seeds-in-packet', value: count(packet.seeds) }],
    };
  const record = crop.seedsPerOunce;
  if (!record) return { ...base, value: none('no-seed-count'), inputs };
  const heaviestG = (number / record.low) * toHeld(1, 'oz');
  return {
    ...base,
    value: count(Math.ceil(heaviestG / packet.massG - 1e-9)),
    inputs: [...inputs, { name: 'packet-mass', value: quantity('mass', packet.massG) }],
    sources: merged(record.sources, seeds.sources),
  };
}

export interface BundlesWanted {
  readonly crop: Crop;
  readonly plants: Finding;
  /** Sets or transplants in a bundle; the fewest is counted on. */
  readonly bundle: { readonly low: number; readonly high: number; readonly sources: readonly string[] };
  /** Percent that lives. 90 where it is not given: common practice for sets and well-rooted transplants. */
  readonly survivalPercent?: number;
}

export const usualPlantSurvivalPercent = 90;

/** Sets or transplants to buy and the whole bundles that hold them: `<crop>.plants-to-buy`, `<crop>.bundles`. */
export function bundlesToBuy({ crop, plants, bundle, survivalPercent }: BundlesWanted): {
  readonly number: Finding;
  readonly bundles: Finding;
} {
  const survival = survivalPercent ?? usualPlantSurvivalPercent;
  if (!(survival > 0 && survival <= 100 && bundle.low > 0))
    throw new RangeError(`no such bundle or survival: ${bundle.low}, ${survival}`);
  const wanted = plants.value.kind === 'count' ? plants.value.value : undefined;
  const lacking = plants.value.kind === 'none' ? plants.value : none('no-plant-count');
  const needed = wanted === undefined ? undefined : Math.ceil((wanted * 100) / survival - 1e-9);
  const number: Finding = {
    id: `${crop.id}.plants-to-buy`,
    value: needed === undefined ? lacking : count(needed),
    method: 'plants.to-buy',
    inputs: [inputOf('plants-wanted', plants), { name: 'survival-percent', value: count(survival) }],
    sources: ['common-practice-gardening'],
  };
  return {
    number,
    bundles: {
      id: `${crop.id}.bundles`,
      value: needed === undefined ? lacking : count(Math.ceil(needed / bundle.low - 1e-9)),
      method: 'plants.bundles',
      inputs: [
        inputOf('plants-to-buy', number),
        { name: 'plants-in-bundle', value: { kind: 'count-range', low: bundle.low, high: bundle.high } },
      ],
      sources: merged(bundle.sources, number.sources),
    },
  };
}
