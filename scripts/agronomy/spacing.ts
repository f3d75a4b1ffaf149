/** Depth, spacing, plants and seed for one crop: what a gardener measures out with a rule and a scale. */
import { choice, count, inputOf, none, quantity, type Finding } from '../findings/finding.ts';
import type { Crop } from '../records/schemas/crop.ts';

/** The published planting depth. */
export function depth(crop: Crop): Finding {
  return lookedUp(crop, 'depth', crop.depth);
}

/**
 * How deep a young plant is set: `set-out-as-in-pot`, or `set-out-to-first-leaves` for a crop that roots from its stem. The
 * depth of the seed says nothing of it.
 */
export function setOutDepth(crop: Crop): Finding {
  return {
    id: `${crop.id}.set-out-depth`,
    value: choice(`set-out-${crop.setOutDepth?.value ?? 'as-in-pot'}`),
    method: 'set-out-depth',
    inputs: [],
    sources: crop.setOutDepth?.sources ?? ['set-out-depth-practice'],
  };
}

export function inRowSpacing(crop: Crop): Finding {
  return lookedUp(crop, 'in-row', crop.spacing.inRow);
}

export function rowSpacing(crop: Crop): Finding {
  return lookedUp(crop, 'between-rows', crop.spacing.betweenRows);
}

/** The published height of the grown crop. */
export function cropHeight(crop: Crop): Finding {
  return lookedUp(crop, 'height', crop.height);
}

export function maturity(crop: Crop): Finding {
  return {
    id: `${crop.id}.maturity`,
    value: quantity('duration', crop.maturity.days.low, crop.maturity.days.high),
    method: `maturity.from-${crop.maturity.from}`,
    inputs: [],
    sources: crop.maturity.sources,
  };
}

/** Each figure that only this crop has, as a finding `crop.figure`. */
export function cropFigures(crop: Crop): readonly Finding[] {
  return (crop.figures ?? []).map((figure) => {
    const base = { id: `${crop.id}.${figure.id}`, method: 'published', inputs: [], sources: figure.sources };
    if ('length' in figure)
      return { ...base, value: quantity('length', figure.length.low, figure.length.high) };
    if ('temperature' in figure)
      return { ...base, value: quantity('temperature', figure.temperature.low, figure.temperature.high) };
    if ('duration' in figure)
      return { ...base, value: quantity('duration', figure.duration.low, figure.duration.high) };
    if ('mass' in figure) return { ...base, value: quantity('mass', figure.mass.low, figure.mass.high) };
    return {
      ...base,
      value:
        figure.low === figure.high
          ? count(figure.low)
          : { kind: 'count-range', low: figure.low, high: figure.high },
    };
  });
}

export interface SownRows {
  readonly crop: Crop;
  readonly rows: number;
  readonly rowLengthMm: number;
  /** What the row length was worked out as: the input of the need. */
  readonly rowLength: Finding;
}

/**
 * Plants that stand in the rows once thinned: one each (widest published) in-row spacing, none past the end.
 * At least one plant a row.
 */
export function plantsInRows({ crop, rows, rowLengthMm, rowLength }: SownRows): Finding {
  const spacing = inRowSpacing(crop);
  const spacingMm = crop.spacing.inRow.value.high;
  return {
    id: `${crop.id}.plants-in-bed`,
    value: count(rows * Math.max(1, Math.floor(rowLengthMm / spacingMm + 1e-6))),
    method: 'plants.rows-by-spacing',
    inputs: [
      inputOf('row-length', rowLength),
      { name: 'rows', value: count(rows) },
      inputOf('in-row-spacing', spacing),
    ],
    sources: crop.spacing.inRow.sources,
  };
}

const hundredFeetMm = 100 * 304.8;

/** Seed for the rows by the published rate for 100 ft of row; none where no rate was found. */
export function seedForRows({ crop, rows, rowLengthMm, rowLength }: SownRows): Finding {
  const id = `${crop.id}.seed-for-bed`;
  const rate = crop.seedPer100Ft;
  if (!rate)
    return { id, value: none('no-seed-rate'), method: 'seed.rate', inputs: [], sources: crop.depth.sources };
  const share = (rows * rowLengthMm) / hundredFeetMm;
  return {
    id,
    value: quantity('mass', rate.value.low * share, rate.value.high * share),
    method: 'seed.rate',
    inputs: [
      inputOf('row-length', rowLength),
      { name: 'rows', value: count(rows) },
      { name: 'seed-per-100-ft', value: quantity('mass', rate.value.low, rate.value.high) },
    ],
    sources: rate.sources,
  };
}

function lookedUp(
  crop: Crop,
  name: string,
  figure: {
    readonly value: { readonly low: number; readonly high: number };
    readonly sources: readonly string[];
  },
): Finding {
  return {
    id: `${crop.id}.${name}`,
    value: quantity('length', figure.value.low, figure.value.high),
    method: 'published',
    inputs: [],
    sources: figure.sources,
  };
}
