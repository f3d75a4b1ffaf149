import type { FindingValue } from '../../scripts/findings/finding.ts';
import { fromHeld } from '../../scripts/quantities/units.ts';
import type { BaleColdFrame } from '../../scripts/records/schemas/projects/bale-cold-frame.ts';
import { baleColdFrame, isFrame, type Frame } from '../../scripts/structures/bale-cold-frame.ts';
import { billOfMaterials, type BillLine } from '../../scripts/structures/bill-of-materials.ts';

interface BuiltFrame extends Frame {
  readonly bill: readonly BillLine[];
}

/** The frame of a project that has no fault, with its bill. */
export function frameOf(project: BaleColdFrame, hemisphere: 'north' | 'south' = 'north'): BuiltFrame {
  const result = baleColdFrame(project, { hemisphere });
  if (!isFrame(result)) throw new Error(`not a frame: ${JSON.stringify(result)}`);
  const bill = billOfMaterials(project, result);
  return { ...result, bill: bill.lines, findings: [...result.findings, ...bill.findings] };
}

export function valueOf(frame: Frame, id: string): FindingValue {
  const finding = frame.findings.find((other) => other.id === id);
  if (!finding) throw new Error(`no finding ${id}`);
  return finding.value;
}

/** The number of a finding; a quantity in the given unit. */
export function numberOf(frame: Frame, id: string, unit?: string): number {
  const value = valueOf(frame, id);
  if (value.kind === 'count') return value.value;
  if (value.kind !== 'quantity' || unit === undefined) throw new Error(`${id} is a ${value.kind}`);
  return fromHeld(value.value, unit);
}
