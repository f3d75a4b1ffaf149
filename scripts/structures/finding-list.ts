/** Makes findings one after the other, each from those before it. */
import {
  inputOf,
  quantity,
  type Finding,
  type FindingInput,
  type FindingValue,
} from '../findings/finding.ts';
import type { Quantity } from '../quantities/quantity.ts';

/** Findings in the order they are made. A finding that is made twice or used too early is a mistake of the program. */
export class FindingList {
  readonly #byId = new Map<string, Finding>();

  add(id: string, value: FindingValue, from: Omit<Finding, 'id' | 'value'>): void {
    if (this.#byId.has(id)) throw new TypeError(`finding ${id} is made twice`);
    this.#byId.set(id, { id, value, ...from });
  }

  get(id: string): Finding {
    const finding = this.#byId.get(id);
    if (!finding) throw new TypeError(`finding ${id} is used before it is made`);
    return finding;
  }

  /** The inputs of a method, each `name: id of the finding`. */
  from(inputs: Readonly<Record<string, string>>): readonly FindingInput[] {
    return Object.entries(inputs).map(([name, id]) => inputOf(name, this.get(id)));
  }

  all(): readonly Finding[] {
    return [...this.#byId.values()];
  }
}

/** A quantity of a record as the value of a finding: a range when its ends differ. */
export function asValue({ dimension, low, high }: Quantity): FindingValue {
  return quantity(dimension, low, high);
}

/** For a list of source ids: keeps the first of each. */
export function unique<T>(value: T, index: number, list: readonly T[]): boolean {
  return list.indexOf(value) === index;
}
