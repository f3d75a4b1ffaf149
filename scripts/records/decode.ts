import type { Static, TSchema } from 'typebox';
import { parseQuantity } from '../quantities/quantity.ts';
import { calendarDayNumber } from './dates.ts';
import type { LooseSchema } from './validate.ts';

/**
 * Turns a value that its schema has found right into what it means: quantities in held units, days as
 * numbers. Never call it on a value that was not validated.
 */
export function decode<S extends TSchema>(schema: S, value: unknown): Static<S> {
  return decodeBy(schema, value) as Static<S>;
}

function decodeBy(schema: LooseSchema, value: unknown): unknown {
  if (schema.quantity) return parseQuantity(String(value), schema.quantity);
  if (schema.calendarDay) return calendarDayNumber(String(value));
  if (schema.anyOf) return decodeBy(branchOf(schema.anyOf, value), value);
  if (schema.items && Array.isArray(value)) return value.map((item) => decodeBy(schema.items!, item));
  if (schema.properties && isGroup(value)) {
    return Object.fromEntries(
      Object.entries(value).map(([key, inner]) => [key, decodeBy(schema.properties![key] ?? {}, inner)]),
    );
  }
  return value;
}

export interface Reference {
  readonly kind: string;
  readonly id: string;
  readonly pointer: string;
}

/** Every id in a validated value that refers to another record, and every guide file it names. */
export function referencesIn(schema: TSchema, value: unknown): { records: Reference[]; files: Reference[] } {
  const records: Reference[] = [];
  const files: Reference[] = [];
  const walk = (at: LooseSchema, inner: unknown, pointer: string): void => {
    if (at.refersTo && typeof inner === 'string') records.push({ kind: at.refersTo, id: inner, pointer });
    if (at.guideFile && typeof inner === 'string') files.push({ kind: at.guideFile, id: inner, pointer });
    if (at.anyOf) walk(branchOf(at.anyOf, inner), inner, pointer);
    if (at.items && Array.isArray(inner))
      inner.forEach((item, index) => {
        walk(at.items!, item, `${pointer}/${index}`);
      });
    if (at.properties && isGroup(inner)) {
      for (const [key, item] of Object.entries(inner))
        walk(at.properties[key] ?? {}, item, `${pointer}/${key}`);
    }
  };
  walk(schema, value, '');
  return { records, files };
}

/** The shape that a validated value has: the one that knows all its keys. */
function branchOf(branches: readonly LooseSchema[], value: unknown): LooseSchema {
  if (!isGroup(value)) return branches[0] ?? {};
  const keys = Object.keys(value);
  return (
    branches.find(
      (branch) => branch.properties && keys.every((key) => Object.hasOwn(branch.properties!, key)),
    ) ?? {}
  );
}

function isGroup(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
