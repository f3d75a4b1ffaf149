/** Who lifts what: a table of everything that is lifted, and a line at the step where it is lifted first. */
import { column, inline, paragraph, table } from '../document/build.ts';
import type { Block, TableRow } from '../document/document.ts';
import type { Finding } from '../findings/finding.ts';
import { liftFindings } from '../structures/lifting/lift-findings.ts';
import type { LiftedItem } from '../structures/structure.ts';
import type { Exhibit } from './names.ts';
import { sayWith } from './say-with.ts';
import type { BuiltProject, SheetContext } from './sheet-context.ts';
import { capitalized } from './printer.ts';

export interface LiftParts {
  /** `lifting`, where anything is lifted. */
  readonly exhibits: readonly (readonly [string, Exhibit])[];
  readonly findings: readonly Finding[];
  readonly stepBlocks: (drawing: string) => readonly Block[];
}

/** One thing that is lifted, with its weight and who lifts it. */
interface Lift {
  readonly item: LiftedItem;
  readonly weight: Finding;
  readonly limit: Finding;
  readonly verdict: Finding;
  readonly findings: readonly Finding[];
}

export function liftParts(context: SheetContext, { structure }: BuiltProject): LiftParts {
  const lifts = structure.lifts.map((item) => liftOf(item, structure.findings));
  return {
    exhibits:
      lifts.length === 0 ? [] : [['lifting', { wide: true, blocks: () => [liftTable(context, lifts)] }]],
    findings: lifts.flatMap(({ findings }) => findings),
    stepBlocks: (drawing) =>
      lifts.filter(({ item }) => item.stage === drawing).flatMap((lift) => liftLine(context, lift)),
  };
}

function liftOf(item: LiftedItem, findings: readonly Finding[]): Lift {
  const weight = findings.find(({ id }) => id === item.mass);
  if (!weight) throw new TypeError(`no finding ${item.mass} for the weight of ${item.item}`);
  const { value } = weight;
  const lightestG = value.kind === 'range' ? value.low : item.massG;
  const id = `lift.${item.item}`;
  const made = liftFindings(
    {
      massKg: { low: lightestG / 1000, high: item.massG / 1000 },
      depthM: item.depthMm / 1000,
      fromM: item.fromMm / 1000,
      toM: item.toMm / 1000,
      grip: item.grip,
      ...(item.reachOfTwoMm === undefined ? {} : { reachOfTwoM: item.reachOfTwoMm / 1000 }),
    },
    { id, weight, sources: weight.sources },
  );
  const of = (what: string): Finding => made.find((finding) => finding.id === `${id}.${what}`)!;
  return { item, weight, limit: of('lift-limit'), verdict: of('lift-verdict'), findings: made };
}

/** One person's load needs no line. */
function liftLine({ printer, wording: { say } }: SheetContext, { item, weight, verdict }: Lift): Block[] {
  if (verdict.value.kind !== 'choice' || verdict.value.value === 'lift-one-person') return [];
  const line = sayWith(say, `lifting.${verdict.value.value}`, {
    item: say(`lifted.${item.item}`),
    weight: printer.printAs(weight, printer.words(weight.value).first),
  });
  return [paragraph(line)];
}

function liftTable({ printer, wording: { say } }: SheetContext, lifts: readonly Lift[]): Block {
  const rows = lifts.map(({ item, weight, limit, verdict }): TableRow => ({
    cells: [
      inline(capitalized(say(`lifted.${item.item}`))),
      [printer.print(weight, { style: 'cell' })],
      [printer.print(limit, { style: 'cell' })],
      [printer.print(verdict, { style: 'cell' })],
    ],
  }));
  return table({
    id: 'lifting',
    caption: say('lifting.caption'),
    columns: [
      column(say('lifting.what'), { weight: 1.4 }),
      column(say('build.weight'), { weight: 0.7 }),
      column(say('lifting.most'), { weight: 0.9 }),
      column(say('lifting.who'), { weight: 3.2 }),
    ],
    groups: [{ rows }],
    notes: [say('lifting.note')],
  });
}
