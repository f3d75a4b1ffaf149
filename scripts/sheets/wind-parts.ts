/** What the wind does to the sashes or the lid of a build, and what to do about it. */
import { column, inline, list, paragraph, table } from '../document/build.ts';
import type { Block, Inline, TableRow } from '../document/document.ts';
import type { Finding } from '../findings/finding.ts';
import type { CoverWord, WindCover } from '../structures/structure.ts';
import { sashWindFindings } from '../structures/wind/sash-wind-findings.ts';
import { regionWind } from '../structures/wind/velocity-pressure.ts';
import type { Exhibit } from './names.ts';
import { sayWith } from './say-with.ts';
import type { BuiltProject, SheetContext } from './sheet-context.ts';

export interface WindParts {
  /** `wind`, for a build with something that the wind can lift off. */
  readonly exhibits: readonly (readonly [string, Exhibit])[];
  readonly findings: readonly Finding[];
  readonly conditions: readonly string[];
}

export function windParts(context: SheetContext, { structure }: BuiltProject): WindParts {
  const { covers = [] } = structure;
  if (covers.length === 0) return { exhibits: [], findings: [], conditions: [] };
  const wind = regionWind(context.facts.region.wind);
  const sashes = covers.map((cover) => {
    const weight = structure.findings.find(({ id }) => id === cover.weight);
    return {
      cover,
      findings: sashWindFindings(cover.sash, {
        id: cover.id,
        wind,
        ...(weight ? { weight } : {}),
        ...(cover.frame ? { frame: cover.frame } : {}),
      }),
    };
  });
  const all = sashes.flatMap(({ findings }) => findings);
  const blownOff = all.some(({ value }) => value.kind === 'choice' && value.value === 'wind-not-held');
  return {
    exhibits: [
      [
        'wind',
        {
          wide: true,
          blocks: () =>
            windBlocks(context, {
              sashes,
              gust: wind.gust,
              given: structure.findings,
              word: structure.closedBy ?? 'sash',
            }),
        },
      ],
    ],
    findings: [wind.gust, wind.pressure, ...all],
    conditions: blownOff ? ['windy-site'] : [],
  };
}

interface SashInWind {
  readonly cover: WindCover;
  readonly findings: readonly Finding[];
}

interface WindOptions {
  readonly sashes: readonly SashInWind[];
  readonly gust: Finding;
  readonly given: readonly Finding[];
  /** What the card calls them. */
  readonly word: CoverWord;
}

function windBlocks(context: SheetContext, options: WindOptions): readonly Block[] {
  const {
    printer,
    facts: { region },
    wording: { say },
  } = context;
  const { gust, sashes, word } = options;
  const known = gust.value.kind !== 'none';
  const hinges = sashes.some(({ cover }) => cover.sash.hinged === 'none') ? 'loose' : 'hinged';
  const lead = known
    ? [
        ...sayWith(say, 'wind.gust', { gust: printer.print(gust), region: region.name }),
        ...inline(` ${say(standsClosed(sashes) ? 'wind.held' : 'wind.not-held', { cover: word })}`),
      ]
    : inline(say('wind.no-gust', { region: region.name, cover: word }));
  return [
    paragraph(lead),
    windTable(context, options),
    list(false, [
      ...['forecast', `take-off-${hinges}`, `where-${hinges}`].map((advice) => [
        paragraph(say(`wind.advice-${advice}`, { cover: word })),
      ]),
      ...frameStands(context, options),
    ]),
  ];
}

/** What keeps the frame itself on the ground, where lids are hinged to it. */
function frameStands({ printer, wording: { say } }: SheetContext, { sashes, word }: WindOptions): Block[][] {
  const stands = sashes.flatMap(({ findings }) => findingOf(findings, 'wind-frame-closed') ?? [])[0];
  if (!stands) return [];
  return [[paragraph(sayWith(say, 'wind.frame-stands', { cover: word, gust: printer.print(stands) }))]];
}

/** What a row tells of a sash, by the ends of its findings' ids; sashes that fare alike share a row. */
const limits = ['wind-limit-closed', 'wind-limit-open'] as const;
const needs = ['wind-weight-closed', 'wind-weight-open'] as const;

function windTable(context: SheetContext, { sashes, gust, given, word }: WindOptions): Block {
  const {
    printer,
    wording: { say },
  } = context;
  const withNeeds = gust.value.kind !== 'none';
  const columns = [...(withNeeds ? needs : []), ...limits];
  const holdsOf = ({ cover }: SashInWind): Finding | undefined =>
    given.find(({ id }) => id === `${cover.id}.hold-down-per-sash`) ??
    given.find(({ id }) => id === 'frame.hold-down-per-sash');
  const alike = given.some(({ id }) => id === 'frame.hold-down-per-sash');
  const holds = sashes.some((sash) => holdsOf(sash) !== undefined);
  const words = (sash: SashInWind): string =>
    [holdsOf(sash), ...columns.map((name) => findingOf(sash.findings, name))]
      .map((finding) => textOf(context, finding))
      .join('|');
  const kinds = sashes.map(words);
  const rows = sashes
    .filter((sash, index) => kinds.indexOf(words(sash)) === index)
    .map((sash): TableRow => {
      const alike = sashes.filter((_, index) => kinds[index] === words(sash));
      const cellOf = (finding: Finding | undefined): readonly Inline[] =>
        finding ? [printer.print(finding, { style: 'cell' })] : inline('–');
      const cell = (name: string): readonly Inline[] => {
        const finding = findingOf(sash.findings, name);
        if (!finding) return inline(say('wind.never-open'));
        if (finding.value.kind === 'none') return [printer.printAs(finding, say('wind.nothing'))];
        return [printer.print(finding, { style: 'cell' })];
      };
      return {
        cells: [
          inline(alike.map(({ cover }) => cover.letter ?? say('wind.each')).join(', ')),
          ...columns.slice(0, -limits.length).map(cell),
          ...(holds ? [cellOf(holdsOf(sash))] : []),
          ...limits.map(cell),
        ],
      };
    });
  return table({
    id: 'wind',
    caption: say('wind.caption', { cover: word }),
    columns: [
      column(say('wind.which', { cover: word }), { weight: 0.6 }),
      ...(withNeeds
        ? [column(say('wind.needs-closed'), { weight: 1.2 }), column(say('wind.needs-open'), { weight: 1.2 })]
        : []),
      ...(holds ? [column(say(alike ? 'wind.holds' : 'wind.holds-any'), { weight: 1.1 })] : []),
      column(say('wind.limit-closed'), { weight: 1.3 }),
      column(say('wind.limit-open'), { weight: 1.3 }),
    ],
    groups: [{ rows }],
  });
}

/** True when every sash, closed and with its weights, withstands the region's gust. */
function standsClosed(sashes: readonly SashInWind[]): boolean {
  return sashes.every(({ findings }) => {
    const value = findingOf(findings, 'wind-held-closed')?.value;
    return value?.kind === 'choice' && value.value === 'wind-held';
  });
}

function findingOf(findings: readonly Finding[], name: string): Finding | undefined {
  return findings.find(({ id }) => id.endsWith(`.${name}`));
}

function textOf({ printer }: SheetContext, finding: Finding | undefined): string {
  return finding ? printer.words(finding.value).first : '';
}
