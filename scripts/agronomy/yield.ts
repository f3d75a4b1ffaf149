/** What a length of row gives, as the published range, with the unit it is counted in. */
import {
  choice,
  count,
  inputOf,
  none,
  quantity,
  type Finding,
  type FindingValue,
} from '../findings/finding.ts';
import { toHeld } from '../quantities/units.ts';
import type { Crop } from '../records/schemas/crop.ts';

type YieldUnit = NonNullable<Crop['yieldPer100Ft']>['unit'];

/** What the number of a yield finding is, for a unit: its words are the phrase `choice.yield-<unit>`. */
export const yieldUnits: Readonly<Record<YieldUnit, string>> = {
  lb: 'yield-whole',
  'lb-pods': 'yield-pods',
  'lb-shelled': 'yield-shelled',
  'dozen-ears': 'yield-ears',
  heads: 'yield-heads',
  bunches: 'yield-bunches',
};

const hundredFeetMm = toHeld(100, 'ft');

/**
 * The yield of so much row, as `<crop>.yield`: a weight for what is weighed, a count for ears (dozens are told as
 * ears), heads and bunches, always a range. Published yields differ by a factor of 2, so this is no promise. The unit
 * is an input: pods are not shelled peas.
 */
export function expectedYield(
  crop: Crop,
  row: { readonly rowLength: Finding; readonly rowLengthMm: number },
): Finding {
  const record = crop.yieldPer100Ft;
  const base = { id: `${crop.id}.yield`, method: 'yield.per-100-ft' };
  if (!record)
    return {
      ...base,
      value: none('no-yield-figure'),
      inputs: [inputOf('row-length', row.rowLength)],
      sources: crop.spacing.inRow.sources,
    };
  const share = row.rowLengthMm / hundredFeetMm;
  return {
    ...base,
    value: valueOf(record.unit, record.low * share, record.high * share),
    inputs: [
      inputOf('row-length', row.rowLength),
      { name: 'yield-unit', value: choice(yieldUnits[record.unit]) },
      { name: 'yield-per-100-ft', value: valueOf(record.unit, record.low, record.high) },
    ],
    sources: record.sources,
  };
}

function valueOf(unit: YieldUnit, low: number, high: number): FindingValue {
  switch (unit) {
    case 'lb':
    case 'lb-pods':
    case 'lb-shelled':
      return quantity('mass', toHeld(low, 'lb'), toHeld(high, 'lb'));
    case 'dozen-ears':
      return countRange(12 * low, 12 * high);
    case 'heads':
    case 'bunches':
      return countRange(low, high);
  }
}

function countRange(low: number, high: number): FindingValue {
  const [from, to] = [Math.floor(low + 1e-9), Math.floor(high + 1e-9)];
  return from === to ? count(from) : { kind: 'count-range', low: from, high: to };
}
