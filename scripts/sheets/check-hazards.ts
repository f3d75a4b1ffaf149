/** What keeps the cautions of a guide from being complete, in words and at its place. */
import type { DiagnosticCode } from '../diagnostics/catalogue.ts';
import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import type { Guide } from '../records/guide.ts';
import { firstWord } from '../safety/spoken.ts';
import { hazardFaults, weakenedHazards, type HazardFault, type WeakenedHazard } from '../safety/faults.ts';

export function checkHazards(guide: Guide): readonly Diagnostic[] {
  const faults = hazardFaults({ catalogue: guide.hazards, projects: guide.projects });
  const weakened = weakenedHazards(guide.builtInHazards, guide.ownHazards);
  return [
    ...faults.flatMap((fault): Diagnostic[] => {
      const words = hazardWords(fault);
      if (!words) return [];
      const { kind, id } = fault.record;
      const place =
        fault.fault === 'unlisted-word'
          ? guide.placeOfText(kind, id, {
              pointer: fault.pointer,
              piece: firstWord(fault.word),
              occurrence: fault.occurrence,
            })
          : guide.placeOf(kind, id, fault.pointer);
      return [{ severity: 'error', ...words, place }];
    }),
    ...weakened.map((fault): Diagnostic => ({
      code: 'weakened-caution',
      severity: 'error',
      ...weakenedWords(fault),
      place: guide.placeOf(fault.record.kind, fault.record.id, fault.pointer),
    })),
  ];
}

interface FaultWords {
  readonly code: DiagnosticCode;
  readonly message: string;
  readonly hint: string;
}

/** Words for a hazard fault; a missing profile or caution is told already where the reference stands. */
function hazardWords(fault: HazardFault): FaultWords | undefined {
  switch (fault.fault) {
    case 'no-profile':
    case 'unknown-caution':
      return undefined;
    case 'in-no-step':
      return {
        code: 'no-hazard-profile',
        message: `The ${fault.kind} “${fault.id}” is listed, but no step uses it, so its cautions would stand nowhere.`,
        hint: `Add it to the ${fault.kind}s of the step that uses it, or take it off the list.`,
      };
    case 'silent-profile':
      return {
        code: 'no-hazard-profile',
        message: `“${fault.record.id}” brings no caution and does not say that it is harmless.`,
        hint: 'List its cautions, or add “harmless:” with the reason.',
      };
    case 'harmless-with-cautions':
      return {
        code: 'no-hazard-profile',
        message: `“${fault.record.id}” is said to be harmless, and yet it has cautions.`,
        hint: 'Keep one of the two.',
      };
    case 'silent-step':
      return {
        code: 'silent-step',
        message: `Nothing that step ${fault.step} uses or does brings a caution, and the step does not say that it is harmless.`,
        hint: 'List its tools, materials and actions, or add “harmless:” to the step with the reason.',
      };
    case 'harmless-step-with-cautions':
      return {
        code: 'silent-step',
        message: `Step ${fault.step} is said to be harmless, and yet “${fault.id}” brings cautions.`,
        hint: 'Take “harmless:” away.',
      };
    case 'unlisted-word':
      return {
        code: 'unlisted-hazard',
        message: `Step ${fault.step} speaks of “${fault.word}”, and lists ${notListed(fault.means)}, so cautions may be missing.`,
        hint: `Add it to the ${fault.means[0]!.kind}s of the step; if it is only spoken of, write “mentions: [${fault.means[0]!.id}]”.`,
      };
    case 'idle-mention':
      return {
        code: 'unlisted-hazard',
        message: `Step ${fault.step} allows for a mention of “${fault.id}”, and its words make none.`,
        hint: 'Take it off the list of mentions.',
      };
    case 'covers-stronger':
      return {
        code: 'hazard-record',
        message: `“${fault.record.id}” is said to cover “${fault.id}”, whose signal word is stronger, so both stand.`,
        hint: 'Make its own signal word as strong, or take the other off the list.',
      };
    case 'covers-itself':
      return {
        code: 'hazard-record',
        message: `“${fault.record.id}” is said to cover itself, at once or by way of the cautions that it covers.`,
        hint: 'A more specific caution covers a more general one, never the other way.',
      };
    case 'empty-group':
      return {
        code: 'hazard-record',
        message: `A part of “${fault.record.id}” lists nothing, so the combination would never come about.`,
        hint: 'List tools, materials, actions, conditions, crops or an audience, or take the part away.',
      };
  }
}

/** `neither “handsaw” nor “circular-saw”`; of many, the first two. */
function notListed(means: readonly { readonly id: string }[]): string {
  const [first, second] = means;
  return second
    ? `neither “${first!.id}” nor “${second.id}”${means.length > 2 ? ' or another' : ''}`
    : `no “${first!.id}”`;
}

function weakenedWords(fault: WeakenedHazard): { message: string; hint: string } {
  const { id } = fault.record;
  switch (fault.fault) {
    case 'weaker-signal':
      return {
        message: `The signal word of “${id}” is weaker than the one that comes with Groundsheet.`,
        hint: neverWeakened,
      };
    case 'said-harmless':
      return {
        message: `“${id}” is said to be harmless, but cautions for it come with Groundsheet.`,
        hint: neverWeakened,
      };
    case 'covers-built-in':
      return {
        message: `“${id}” is said to cover a caution that comes with Groundsheet, so that it would not be told.`,
        hint: 'A guide can add cautions beside those of Groundsheet. Take it off the list.',
      };
    case 'lower-age':
      return {
        message: `The age or the supervision for “${id}” is less strict than that which comes with Groundsheet.`,
        hint: 'An age can be raised, never lowered. Change it back or leave it out.',
      };
    case 'other-combination':
      return {
        message: `Groundsheet has a combination “${id}” that comes about at other times.`,
        hint: 'Give the combination of the guide another id; both then hold.',
      };
  }
}

const neverWeakened =
  'A caution can be reworded or made stronger, never weakened. Change it back or leave the record out.';
