import type { Crop } from '../../scripts/records/schemas/crop.ts';
import { parseQuantity, type Quantity } from '../../scripts/quantities/quantity.ts';
import type { Dimension } from '../../scripts/quantities/units.ts';

/** A quantity from its words; a slip in a test throws. */
export function q<D extends Dimension>(text: string, dimension: D): Quantity<D> {
  const quantity = parseQuantity(text, dimension);
  if ('fault' in quantity) throw new TypeError(`${text}: ${quantity.fault}`);
  return quantity;
}

/** A crop with plain round figures, changed where a case needs it. */
export function cropLike(changes: Partial<Crop> = {}): Crop {
  const sources = ['a-source'];
  return {
    id: 'testcrop',
    name: 'Test crop',
    plural: 'test crops',
    latin: 'Planta probans',
    part: 'root',
    season: 'cool',
    hardiness: { group: 'semi-hardy', sources },
    plantings: [{ method: 'direct-sow', fall: true }],
    depth: { value: q('1/2 in', 'length'), sources },
    spacing: {
      inRow: { value: q('2-3 in', 'length'), sources },
      betweenRows: { value: q('12 in', 'length'), sources },
    },
    emergence: { days: q('6 to 10 days', 'duration'), sources },
    maturity: { days: q('60 to 70 days', 'duration'), from: 'sowing', sources },
    harvestLasts: { value: q('3 weeks', 'duration'), sources },
    height: { value: q('12 in', 'length'), sources },
    ...changes,
  };
}
