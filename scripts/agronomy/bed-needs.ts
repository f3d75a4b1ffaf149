/** What the rows of one crop in a bed come to: plants, row length, what to buy and what to expect. */
import { choice, count, inputOf, quantity, type Finding, type FindingInput } from '../findings/finding.ts';
import type { Crop, PlantingMethod } from '../records/schemas/crop.ts';
import type { BedLayoutKind, Sow } from '../records/schemas/projects/sow.ts';
import type { BedRow } from './bed-rows.ts';
import { plantsOfRow } from './bed-rows.ts';
import { bundlesToBuy, seedToBuy, type SeedToBuy } from './seed-need.ts';
import { inRowSpacing, plantsInRows, seedForRows } from './spacing.ts';
import { merged } from './window-parts.ts';
import { expectedYield } from './yield.ts';

export interface CropInBed {
  readonly crop: Crop;
  /** What the record says of it. */
  readonly sown: Sow[number];
  /** Its rows as laid out. */
  readonly rows: readonly BedRow[];
  readonly bedLengthMm: number;
  /** What the length of the bed was worked out as. */
  readonly bedLength: Finding;
}

export interface BedNeeds {
  readonly method: PlantingMethod;
  /** Seeds sown for each plant that stays; more than 1 are thinned. Only for what is sown. */
  readonly perPlace?: number;
  /** `<crop>.plants-in-bed`. */
  readonly plants: Finding;
  /** `<crop>.row-length-in-bed`: of all its rows together. */
  readonly rowLength: Finding;
  /** `<crop>.seed-for-bed`: by the published rate. */
  readonly seedByRate: Finding;
  /** `<crop>.seeds-to-buy`, `.seed-mass` and `.seed-packets`; only for what is sown. */
  readonly seed?: SeedToBuy;
  /** `<crop>.plants-to-buy` and, where the size of a bundle is on record, `<crop>.bundles`. */
  readonly bought?: { readonly number: Finding; readonly bundles?: Finding };
  /** `<crop>.yield-in-bed`. */
  readonly yield: Finding;
}

/** Fine seed has this many in an ounce or more. Our own line between what is placed by hand and what is strewn. */
export const fineSeedPerOunce = 5000;
/** Seeds of fine seed for each plant that stays: sown in a drill, three or four to the inch, and thinned. Common practice. */
export const finePerPlace = 8;

export function bedNeeds(wanted: CropInBed): BedNeeds {
  const { crop, sown, bedLengthMm, bedLength } = wanted;
  const method = sown.method ?? crop.plantings[0]!.method;
  const number = sown.rows;
  const inRows = { crop, rows: number, rowLengthMm: bedLengthMm, rowLength: bedLength };
  const plants =
    (sown.layout ?? 'rows') === 'rows' ? plantsInRows(inRows) : plantsInLayout(wanted, sown.layout!);
  const { rowLength, rowLengthMm } = lengthOfRows(wanted, plants);
  const base = {
    method,
    plants,
    rowLength,
    seedByRate: seedForRows(inRows),
    yield: { ...expectedYield(crop, { rowLength, rowLengthMm }), id: `${crop.id}.yield-in-bed` },
  };
  if (method !== 'direct-sow') return { ...base, bought: plantsToBuy(crop, plants, method) };
  const perPlace = sown.seedsPerPlace ?? usualPerPlace(crop);
  return {
    ...base,
    perPlace,
    seed: seedInPackets(wanted, { plants, perPlace }),
  };
}

/** In packets as the record of the bed gives them, or else that of the crop. */
function seedInPackets(
  { crop, sown: { packet } }: CropInBed,
  { plants, perPlace }: { readonly plants: Finding; readonly perPlace: number },
): SeedToBuy {
  const wanted = { crop, plants, sownPerPlace: perPlace };
  if (packet)
    return seedToBuy({ ...wanted, packet: 'seeds' in packet ? packet : { massG: packet.mass.low } });
  if (!crop.packet) return seedToBuy(wanted);
  const seed = seedToBuy({ ...wanted, packet: { massG: crop.packet.value.low } });
  return {
    ...seed,
    packets: { ...seed.packets, sources: merged(crop.packet.sources, seed.packets.sources) },
  };
}

/** One for seed that is placed by hand, more for fine seed that is strewn and thinned. */
function usualPerPlace({ seedsPerOunce }: Crop): number {
  return seedsPerOunce && seedsPerOunce.low >= fineSeedPerOunce ? finePerPlace : 1;
}

/** Plants in squares or offset rows, counted as they stand. */
function plantsInLayout(
  { crop, sown, rows, bedLengthMm, bedLength }: CropInBed,
  layout: BedLayoutKind,
): Finding {
  const places = rows.reduce((sum, row) => sum + plantsOfRow(row, bedLengthMm).length, 0);
  return {
    id: `${crop.id}.plants-in-bed`,
    value: count(places),
    method: `plants.layout-${layout}`,
    inputs: [
      inputOf('row-length', bedLength),
      { name: 'rows', value: count(sown.rows) },
      { name: 'layout', value: choice(`layout-${layout}`) },
      inputOf('in-row-spacing', inRowSpacing(crop)),
    ],
    sources: crop.spacing.inRow.sources,
  };
}

/** Rows as long as the bed; squares and offset rows as the row in which so many plants stand at their distance. */
function lengthOfRows(
  { crop, sown, bedLengthMm, bedLength }: CropInBed,
  plants: Finding,
): { readonly rowLength: Finding; readonly rowLengthMm: number } {
  const id = `${crop.id}.row-length-in-bed`;
  const sources = crop.spacing.inRow.sources;
  if ((sown.layout ?? 'rows') === 'rows' || plants.value.kind !== 'count') {
    const rowLengthMm = sown.rows * bedLengthMm;
    const inputs: FindingInput[] = [
      inputOf('row-length', bedLength),
      { name: 'rows', value: count(sown.rows) },
    ];
    return {
      rowLengthMm,
      rowLength: { id, value: quantity('length', rowLengthMm), method: 'bed.rows-length', inputs, sources },
    };
  }
  const rowLengthMm = plants.value.value * crop.spacing.inRow.value.high;
  return {
    rowLengthMm,
    rowLength: {
      id,
      value: quantity('length', rowLengthMm),
      method: 'bed.rows-length-by-plants',
      inputs: [inputOf('plants', plants), inputOf('in-row-spacing', inRowSpacing(crop))],
      sources,
    },
  };
}

/** Sets, slips, seed pieces or transplants; transplants by the bundle where the crop's record has the figure `bundle`. */
function plantsToBuy(crop: Crop, plants: Finding, method: PlantingMethod): NonNullable<BedNeeds['bought']> {
  const figure = method === 'transplant' ? crop.figures?.find(({ id }) => id === 'bundle') : undefined;
  const bundle = figure && 'low' in figure ? figure : undefined;
  const { number, bundles } = bundlesToBuy({
    crop,
    plants,
    bundle: bundle ?? { low: 1, high: 1, sources: [] },
  });
  return bundle ? { number, bundles } : { number };
}
