/**
 * What every record schema is made of. The schemas are JSON Schema 2020-12 and the one source of truth for
 * what a record may hold; the TypeScript types are read off them, so the two cannot part.
 *
 * Three keywords of our own replace the written text by what it means once it is found right:
 * `quantity` (a value or range with its unit), `calendarDay` (`Apr 14`) and `isoDate` (`2026-11-02`). `printed` is for
 * text that people read.
 */
import Type, { type TSchema, type TUnsafe } from 'typebox';
import type { DayNumber } from '../../findings/finding.ts';
import type { Quantity } from '../../quantities/quantity.ts';
import type { Dimension } from '../../quantities/units.ts';

/** What a quantity may be beyond its dimension. Limits are in the held unit of the dimension. */
export interface QuantityLimits {
  readonly description?: string;
  /** What to write, for the hints of a fault. */
  readonly example?: string;
  /** True where a range makes no sense. */
  readonly single?: true;
  readonly atLeast?: number;
  readonly atMost?: number;
}

/** A quantity or a range of one dimension, written with its unit: `4 in`, `1/4 to 1/2 in`, `65 F`. */
export function quantityOf<D extends Dimension>(
  dimension: D,
  limits: QuantityLimits = {},
): TUnsafe<Quantity<D>> {
  const atLeast =
    dimension === 'temperature' || dimension === 'duration' || dimension === 'angle' ? {} : { atLeast: 0 };
  return Type.Unsafe<Quantity<D>>({ type: ['string', 'number'], quantity: dimension, ...atLeast, ...limits });
}

/** A day of the year without a year: `Apr 14`, `April 14`, `14 April`. Held as a day of a 365-day year, 1 to 365. */
export const CalendarDay = Type.Unsafe<DayNumber>({ type: 'string', calendarDay: true });

/** A calendar date, `2026-11-02`. Held as the same text, once it is known to be in the calendar. */
export const IsoDate = Type.Unsafe<string>({ type: 'string', isoDate: true });

/** Lower-case letters, digits and single hyphens: safe as a file name and in an address. */
export const idPattern = '^[a-z0-9]+(-[a-z0-9]+)*$';
export const Id = Type.String({ pattern: idPattern, maxLength: 60 });

/** A refers-to: the id of a record of the named kind. A missing record is a fault at this place. */
export function ref(kind: RecordKind): ReturnType<typeof Type.String> {
  return Type.String({ pattern: idPattern, maxLength: 60, refersTo: kind });
}

export type RecordKind =
  | 'source'
  | 'crop'
  | 'region'
  | 'project'
  | 'caution'
  | 'tool'
  | 'material'
  | 'action'
  | 'condition'
  | 'combination';

/** A line of words for people: something that can be seen, without control characters. */
export const Words = Type.String({ minLength: 1, maxLength: 300, printed: true });
/** A few sentences; inline Markdown is allowed where the schema says so. */
export const Prose = Type.String({ minLength: 1, maxLength: 3000, printed: true });

/** At least one source, the weightiest first. */
export const Sources = Type.Array(ref('source'), { minItems: 1, maxItems: 8 });

/** An object that knows all its keys: an unknown one is a fault. */
export function record<P extends Record<string, TSchema>>(properties: P, options: object = {}) {
  return Type.Object(properties, { additionalProperties: false, ...options });
}

/** A figure with the sources it was taken from. Where sources differ, the value is the range they span. */
export function sourced<S extends TSchema>(value: S) {
  return record({ value, sources: Sources });
}

export function oneOf<const V extends readonly string[]>(values: V) {
  return Type.Unsafe<V[number]>({ type: 'string', enum: [...values] });
}
