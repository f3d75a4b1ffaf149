/** Cautions put into words, at the step where the hazard arises and in the box at the top. No sheet can leave them out. */
import { cautionBox, checklist, inline, strong } from '../document/build.ts';
import { signalWords, type Audience, type CautionRecord } from '../records/schemas/hazard.ts';
import type { Publisher } from '../records/schemas/publisher.ts';
import type { Block, Caution, CautionGroup, Inline, SignalWord } from '../document/document.ts';
import type { LowestAge } from '../records/schemas/hazard.ts';
import type { Circumstances } from '../safety/circumstances.ts';
import { wordedFor } from '../safety/worded.ts';
import { gatherCautions, profileOf, type GatheredCautions, type StepHazards } from '../safety/gather.ts';
import { adultAge } from '../safety/youth.ts';
import { circumstancesOf } from './circumstances.ts';
import type { SheetContext } from './sheet-context.ts';

export interface SheetCautions {
  /** For each step, what is printed before its action. */
  readonly perStep: readonly (readonly Caution[])[];
  /** The box at the top; absent when nothing on the sheet can hurt. */
  readonly box?: Block;
}

/** How the box at the top calls the places at which cautions stand, where they are not the steps of a project. */
export interface CautionPlaces {
  /** Before the list: `At the beats:` */
  readonly lead: string;
  /** `beat 3`; counted from 0. */
  readonly nameOf: (index: number) => string;
}

/**
 * The cautions of some steps in the words for the audience. `circumstances` are those of the sheet unless a composer
 * knows more; it then adds to them, see `circumstancesOf`.
 */
export function sheetCautions(
  context: SheetContext,
  steps: readonly StepHazards[],
  circumstances: Circumstances = circumstancesOf(context),
  places: CautionPlaces = stepsByNumber(context),
): SheetCautions {
  const gathered = gatherCautions(steps, context.guide.hazards, circumstances);
  if (gathered.all.length === 0) return { perStep: gathered.perStep.map(() => []) };
  const { audience } = circumstances;
  const perStep = gathered.perStep.map((ids) => ids.map((id) => cautionInWords(context, id, audience)));
  return { perStep, box: box(context, gathered, { audience, places }) };
}

function stepsByNumber({ wording: { say } }: SheetContext): CautionPlaces {
  return {
    lead: say('cautions.at-steps'),
    nameOf: (index) => say('cautions.at-step', { step: index + 1 }),
  };
}

interface BoxWords {
  readonly audience: Audience | undefined;
  readonly places: CautionPlaces;
}

/** The tools to have at hand, each with what to wear for it and from what age it is; sources of ages are cited. */
export function toolChecklist(context: SheetContext, toolIds: readonly string[]): Block {
  return checklist(toolIds.map((id) => toolSafety(context, id)));
}

/** One tool of a list: its name, what to wear for it, and from what age it is. A harmless one is its name alone. */
export function toolSafety(context: SheetContext, toolId: string): readonly Inline[] {
  const {
    guide,
    printer,
    wording: { say },
  } = context;
  const { name, cautions, protection = [], age } = profileOf('tool', toolId, guide.hazards);
  if (cautions.length === 0) return inline(name);
  if (age) printer.cite(age.sources);
  const wear =
    protection.length > 0 ? ` ${say('cautions.wear', { items: listed(context, protection) })}` : '';
  return inline([strong(`${name}.`), `${wear} ${ageWords(context, age)}`]);
}

/** `From age 14, with an adult beside.` Nobody has judged what has no age: then it is for adults. */
export function ageWords({ wording: { say } }: SheetContext, age: LowestAge | undefined): string {
  if (!age || age.from >= adultAge) return say('cautions.age-adults');
  return say(`cautions.age-${age.supervision}`, { age: age.from });
}

/** `work gloves and safety glasses` */
function listed({ guide }: SheetContext, items: readonly string[]): string {
  return new Intl.ListFormat(guide.publisher.language, { type: 'conjunction' }).format(
    items.map((item) => uncapitalized(item)),
  );
}

/**
 * The box at the top. Where the sheet has steps, each caution is told whole at its step, so the box says what must be
 * done before the work begins and names the rest with their steps; otherwise the box itself tells them whole.
 */
function box(context: SheetContext, gathered: GatheredCautions, words: BoxWords): Block {
  const {
    guide,
    wording: { say },
  } = context;
  const records = gathered.all.map((id) => guide.hazards.cautions.get(id)!);
  const inSteps = gathered.perStep.length > 1;
  const groups = signalWords.flatMap((signal): CautionGroup[] => {
    const ofSignal = records.filter((record) => record.signal === signal);
    if (ofSignal.length === 0) return [];
    return [
      {
        signal,
        signalText: signalText(context, signal),
        items: inSteps ? briefly(context, ofSignal, { ...words, gathered }) : whole(ofSignal, words.audience),
      },
    ];
  });
  records.forEach((record) => {
    context.printer.cite(record.sources);
  });
  const wear = listed(context, gathered.protection);
  return cautionBox({
    id: 'before-you-start',
    title: say('cautions.title'),
    groups,
    closing: `${gathered.protection.length > 0 ? `${say('cautions.wear', { items: wear })} ` : ''}${say(inSteps ? 'cautions.closing' : 'cautions.closing-brief')}`,
  });
}

function whole(
  records: readonly CautionRecord[],
  audience: Audience | undefined,
): readonly (readonly Inline[])[] {
  return records
    .map((record) => wordedFor(record, audience))
    .map(({ hazard, avoidance }) => inline([strong(hazard), ` ${avoidance}`]));
}

function briefly(
  { guide, wording: { say } }: SheetContext,
  records: readonly CautionRecord[],
  { gathered: { perStep }, audience, places }: BoxWords & { readonly gathered: GatheredCautions },
): readonly (readonly Inline[])[] {
  const placeOf = ({ id }: CautionRecord): string =>
    places.nameOf(perStep.findIndex((ids) => ids.includes(id)));
  const beforehand = records.filter((record) => record.beforehand === true);
  const atSteps = records.filter((record) => record.beforehand !== true);
  const told = beforehand
    .map((record) => wordedFor(record, audience))
    .map(({ title, avoidance }) => inline([strong(`${title}.`), ` ${avoidance}`]));
  if (atSteps.length === 0) return told;
  const named = atSteps.map((record) =>
    say('cautions.named-at', {
      title: uncapitalized(wordedFor(record, audience).title),
      place: placeOf(record),
    }),
  );
  const list = new Intl.ListFormat(guide.publisher.language, { type: 'unit' }).format(named);
  return [...told, inline([strong(places.lead), ` ${list}.`])];
}

/** `Work gloves` within a sentence; a name such as `N95 mask` keeps its capitals. */
function uncapitalized(words: string): string {
  return /^[A-Z][a-z ]/.test(words) ? words.charAt(0).toLowerCase() + words.slice(1) : words;
}

function cautionInWords(context: SheetContext, id: string, audience: Audience | undefined): Caution {
  const { guide, printer } = context;
  const record = guide.hazards.cautions.get(id);
  if (!record) throw new TypeError(`no caution “${id}”`);
  printer.cite(record.sources);
  const { hazard, avoidance } = wordedFor(record, audience);
  return {
    signal: record.signal,
    signalText: signalText(context, record.signal),
    hazard: inline(hazard),
    avoidance: inline(avoidance),
  };
}

/** The signal words of ANSI Z535.6 in each language. They are fixed: no record can make WARNING sound like less. */
const signalTexts: Readonly<Record<Publisher['language'], Readonly<Record<SignalWord, string>>>> = {
  en: { danger: 'DANGER', warning: 'WARNING', caution: 'CAUTION', notice: 'NOTICE' },
};

function signalText({ guide }: SheetContext, signal: SignalWord): string {
  return signalTexts[guide.publisher.language][signal];
}
