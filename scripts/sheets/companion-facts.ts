/** Every number that a segment says or shows, here and in each other region, and what of it goes out of date. */
import { column, heading, inline, list, paragraph, strong, table } from '../document/build.ts';
import type { Block, TableRow } from '../document/document.ts';
import type { Finding } from '../findings/finding.ts';
import type { RegionRecord } from '../records/guide.ts';
import { regionFacts } from './facts.ts';
import { findingName } from './finding-name.ts';
import { contextFor, type SheetContext } from './sheet-context.ts';

export interface SaidNumbers {
  /** The findings that are said or shown, each once, in the order of the segment. */
  readonly said: readonly Finding[];
  /** What another region makes of the same names. */
  readonly elsewhere: (context: SheetContext) => ReadonlyMap<string, Finding>;
}

/** The table of facts: the region that the segment is made for stands first and in bold. */
export function factsTable(context: SheetContext, { said, elsewhere }: SaidNumbers): readonly Block[] {
  const { facts, printer, wording } = context;
  const { say } = wording;
  if (said.length === 0) return [paragraph(say('companion.no-facts'))];
  const others = otherRegions(context).map((region) => ({
    region,
    findings: findingsElsewhere(context, region, elsewhere),
  }));
  const rows = said.map((finding): TableRow => ({
    cells: [
      inline(nameOf(context, finding)),
      [strong([printer.print(finding, { style: 'cell' })])],
      ...others.map(({ findings }) => {
        const other = findings.get(finding.id);
        return inline(other ? printer.cellWords(other.value).first : '–');
      }),
    ],
  }));
  return [
    table({
      id: 'facts',
      caption: say('companion.facts-caption', { region: facts.region.name }),
      columns: [
        column(say('companion.fact'), { weight: 2 }),
        column(facts.region.name, { weight: 1.2 }),
        ...others.map(({ region }) => column(region.name, { weight: 1.2 })),
      ],
      groups: [{ rows }],
      notes: [say('companion.facts-note', { region: facts.region.name })],
    }),
  ];
}

/** What to look at before the segment is shown again: the numbers by name that a season or another county changes. */
export function beforeItAirs(context: SheetContext, { said, elsewhere }: SaidNumbers): readonly Block[] {
  const { facts, guide, wording } = context;
  const { say, dates } = wording;
  const region = facts.region.name;
  const named = (findings: readonly Finding[]): string =>
    new Intl.ListFormat(guide.publisher.language, { type: 'unit' }).format(
      findings.map((finding) => nameOf(context, finding)),
    );
  const dated = said.filter(({ value: { kind } }) => kind === 'date' || kind === 'date-range');
  const priced = said.filter(({ value }) => 'dimension' in value && value.dimension === 'money');
  const local = said.filter((finding) => differsElsewhere(context, finding, elsewhere));
  const lines = [
    say('companion.again-review', { date: dates.full(guide.publisher.review), year: String(facts.year) }),
    ...(dated.length > 0 ? [say('companion.again-dates', { names: named(dated) })] : []),
    local.length > 0
      ? say('companion.again-county', { region, names: named(local) })
      : say('companion.again-any-county', { region }),
    ...(priced.length > 0 ? [say('companion.again-prices', { names: named(priced) })] : []),
    say('companion.again-cautions'),
  ];
  return [
    heading(2, 'before-it-airs-again', say('companion.again')),
    list(
      false,
      lines.map((line) => [paragraph(line)]),
    ),
  ];
}

function nameOf({ guide, wording }: SheetContext, finding: Finding): string {
  return findingName(finding, { ...wording, crops: guide.crops });
}

function otherRegions({ guide, facts }: SheetContext): readonly RegionRecord[] {
  return guide.regions.filter(({ id }) => id !== facts.region.id);
}

/** True where another region prints something else, or knows nothing of it. */
function differsElsewhere(
  context: SheetContext,
  finding: Finding,
  elsewhere: SaidNumbers['elsewhere'],
): boolean {
  const { printer } = context;
  const here = printer.words(finding.value).first;
  return otherRegions(context).some((region) => {
    const other = findingsElsewhere(context, region, elsewhere).get(finding.id);
    return !other || printer.words(other.value).first !== here;
  });
}

/** By region and subject; worked out once for all sheets of a guide. */
const knownElsewhere = new WeakMap<SheetContext['guide'], Map<string, ReadonlyMap<string, Finding>>>();

/** The same names in another region; nothing is printed there. */
function findingsElsewhere(
  context: SheetContext,
  region: RegionRecord,
  elsewhere: SaidNumbers['elsewhere'],
): ReadonlyMap<string, Finding> {
  const { guide, sheet } = context;
  const known = knownElsewhere.get(guide) ?? new Map<string, ReadonlyMap<string, Finding>>();
  knownElsewhere.set(guide, known);
  const key = [region.id, sheet.project ?? '', sheet.crop ?? ''].join(' ');
  const found = known.get(key);
  if (found) return found;
  const { crops, publisher } = guide;
  const facts = regionFacts(region, { crops, year: publisher.year });
  const findings = new Map([...facts.findings, ...elsewhere(contextFor({ ...context, facts }))]);
  known.set(key, findings);
  return findings;
}
