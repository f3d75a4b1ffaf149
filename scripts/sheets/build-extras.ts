/** What a build card tells beyond how it is built: heat, wind, lifting, and what comes of what is at hand. */
import type { Block } from '../document/document.ts';
import type { Finding } from '../findings/finding.ts';
import { handParts } from './hand-parts.ts';
import { heatParts } from './heat-parts.ts';
import { liftParts } from './lift-parts.ts';
import type { Exhibit } from './names.ts';
import type { BuiltProject, SheetContext } from './sheet-context.ts';
import { tepeeWindParts } from './tepee-wind-parts.ts';
import { windParts } from './wind-parts.ts';

export interface BuildExtras {
  readonly exhibits: readonly (readonly [string, Exhibit])[];
  readonly findings: readonly Finding[];
  /** Who lifts what is lifted first at the step with this drawing, for the end of its text. */
  readonly stepBlocks: (drawing: string) => readonly Block[];
  /** Conditions of the hazard catalogue that hold here. */
  readonly conditions: readonly string[];
}

export function buildExtras(context: SheetContext, built: BuiltProject): BuildExtras {
  const heat = heatParts(context, built);
  const wind = windParts(context, built);
  const lifts = liftParts(context, built);
  const hand = handParts(context, built);
  return {
    exhibits: [...heat.exhibits, ...wind.exhibits, ...lifts.exhibits, ...hand.exhibits],
    findings: [
      ...heat.findings,
      ...wind.findings,
      ...tepeeWindParts(context, built),
      ...lifts.findings,
      ...hand.findings,
    ],
    stepBlocks: lifts.stepBlocks,
    conditions: wind.conditions,
  };
}
