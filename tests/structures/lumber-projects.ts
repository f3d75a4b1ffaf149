import { readFileSync } from 'node:fs';
import type { TSchema } from 'typebox';
import type { FindingValue } from '../../scripts/findings/finding.ts';
import { fromHeld } from '../../scripts/quantities/units.ts';
import { collectSingles } from '../../scripts/records/collect.ts';
import type { Project } from '../../scripts/records/schemas/project.ts';
import {
  LumberColdFrameSchema,
  type LumberColdFrame,
} from '../../scripts/records/schemas/projects/lumber-cold-frame.ts';
import { RaisedBedSchema, type RaisedBed } from '../../scripts/records/schemas/projects/raised-bed.ts';
import { billOfMaterials, type Bill } from '../../scripts/structures/bill-of-materials.ts';
import type { Hemisphere } from '../../scripts/structures/geometry.ts';
import type { Structure } from '../../scripts/structures/structure.ts';
import { structureOf } from '../../scripts/structures/structures.ts';

function demo(schema: TSchema, name: string): unknown {
  const path = `content/projects/${name}.yaml`;
  const text = readFileSync(new URL(`../../${path}`, import.meta.url), 'utf8');
  const { records, diagnostics } = collectSingles(schema, [{ path, text }]);
  if (diagnostics.length > 0) throw new Error(JSON.stringify(diagnostics, null, 2));
  return records[0]!.value;
}

/** The projects of the demonstration guide, as its readers get them. */
export const demoBed = (): RaisedBed => demo(RaisedBedSchema, 'raised-bed') as RaisedBed;
export const demoFrame = (): LumberColdFrame =>
  demo(LumberColdFrameSchema, 'lumber-cold-frame') as LumberColdFrame;

/** Parts of a demonstration record with boards of every wall of other nominal sizes, all sold at 8 to 16 ft. */
export function soldAs<P extends RaisedBed | LumberColdFrame>(project: P, nominals: readonly string[]): P {
  const lengths = [8, 10, 12, 16].map((feet) => ({
    length: { dimension: 'length' as const, low: feet * 304.8, high: feet * 304.8, written: `${feet} ft` },
    price: { dimension: 'money' as const, low: feet, high: feet, written: `${feet} USD` },
  }));
  const others = project.parts.filter(({ count }) => count !== 'cut');
  const sample = project.parts.find(({ count }) => count === 'cut')!;
  const cut = nominals.map((nominal, index) => {
    return { ...sample, haveLengths: undefined, letter: 'TUVWXYZ'[index]!, nominal, stock: lengths };
  });
  return { ...project, parts: [...cut, ...others], steps: [] } as unknown as P;
}

export interface BuiltOf {
  readonly structure: Structure;
  readonly bill: Bill;
  /** The number of a finding; a quantity in the given unit. */
  readonly number: (id: string, unit?: string) => number;
  readonly value: (id: string) => FindingValue;
}

/** A project that has no fault, with its bill. What its steps say is not looked at. */
export function builtOf(project: Project, hemisphere: Hemisphere = 'north'): BuiltOf {
  const letters = project.parts.map(({ letter }) => `(${letter})`).join(' ');
  const materials = [...new Set(project.parts.map(({ material }) => material))];
  const step = { title: 'All', text: letters, drawing: 'ground', tools: [], materials, actions: [] };
  const built = structureOf({ ...project, steps: [step] } as Project, { hemisphere });
  if (built.kind === 'faults') throw new Error(JSON.stringify(built.faults, null, 2));
  const { structure } = built;
  let made: Bill | undefined;
  const bill = (): Bill => (made ??= billOfMaterials(project, structure));
  const value = (id: string): FindingValue => {
    const finding =
      structure.findings.find((other) => other.id === id) ?? bill().findings.find((other) => other.id === id);
    if (!finding) throw new Error(`no finding ${id}`);
    return finding.value;
  };
  return {
    structure,
    get bill() {
      return bill();
    },
    value,
    number: (id, unit) => {
      const found = value(id);
      if (found.kind === 'count') return found.value;
      if (found.kind !== 'quantity' || unit === undefined) throw new Error(`${id} is a ${found.kind}`);
      return fromHeld(found.value, unit);
    },
  };
}
