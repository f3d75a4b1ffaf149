import type { Audience, CropTrait } from '../records/schemas/hazard.ts';
import type { Crop } from '../records/schemas/crop.ts';

/** What is so at a place and for its people, beyond what the steps themselves list. */
export interface Circumstances {
  /** Ids of conditions of the catalogue that hold from the first step on, such as `heat-danger` or `food-bed`. */
  readonly conditions?: readonly string[];
  /** Adults when absent. */
  readonly audience?: Audience;
  /**
   * Traits of what is sown or planted. Absent means that nobody has said what is sown, and then a hazard that follows
   * from a crop is taken to be there; an empty list means that nothing with such a trait is.
   */
  readonly crops?: readonly CropTrait[];
}

/**
 * Garden plants that are no broadleaf plants: grasses, onions and their kin, and asparagus (botany: one seed leaf).
 * Weed killers for hay fields are made to spare grasses; for the others of this list nothing is published that
 * says so, but they are not among the plants that are reported as harmed (UF/IFAS AG416; NC State Extension).
 */
const narrowLeaved: ReadonlySet<string> = new Set(['Zea', 'Allium', 'Asparagus']);

/** What follows from a crop for the cautions of the bed it grows in. */
export function traitsOf(crop: Pick<Crop, 'latin'>): readonly CropTrait[] {
  return narrowLeaved.has(crop.latin.split(' ')[0]!) ? [] : ['broadleaf'];
}

/** The traits of all crops of a bed, each once. */
export function traitsOfAll(crops: readonly Pick<Crop, 'latin'>[]): readonly CropTrait[] {
  return [...new Set(crops.flatMap(traitsOf))];
}

/** The conditions of heat, the mildest first: the bands of the heat index as `climate/heat-of-months.ts` names them. */
export const heatConditions = [
  'heat-caution',
  'heat-extreme-caution',
  'heat-danger',
  'heat-extreme-danger',
] as const;
export type HeatCondition = (typeof heatConditions)[number];

/** The worst of some bands of the heat index; undefined where none of them is a hazard. */
export function worstHeat(bands: readonly string[]): HeatCondition | undefined {
  return heatConditions.findLast((condition) => bands.includes(condition));
}
