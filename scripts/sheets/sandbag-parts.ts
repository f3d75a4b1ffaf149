/** How many sandbags a frame of loose sashes takes every day and before a storm, and up to which gusts they do. */
import { column, inline, list, paragraph, table } from '../document/build.ts';
import type { Block, Inline } from '../document/document.ts';
import type { Finding } from '../findings/finding.ts';
import type { Frame } from '../structures/bale-cold-frame.ts';
import { regionWind } from '../structures/wind/velocity-pressure.ts';
import { sayWith } from './say-with.ts';
import type { SheetContext } from './sheet-context.ts';

/** Nothing for a record that names no gust to hold its sashes in. */
export function sandbagBlocks(context: SheetContext, frame: Frame): readonly Block[] {
  const finding = (name: string): Finding | undefined =>
    frame.findings.find(({ id }) => id === `frame.${name}`);
  const found = {
    daily: finding('hold-downs-per-end'),
    dailyClosed: finding('daily-limit-closed'),
    dailyOpen: finding('daily-limit-open'),
    inGust: finding('hold-downs-in-gust'),
    gustClosed: finding('gust-limit-closed'),
  };
  const { daily, dailyClosed, dailyOpen, inGust, gustClosed } = found;
  if (!daily || !dailyClosed || !dailyOpen || !inGust || !gustClosed) return [];
  const {
    printer,
    wording: { say },
  } = context;
  const cell = (printed: Finding): readonly Inline[] => [printer.print(printed, { style: 'cell' })];
  return [
    paragraph(gustInWords(context, gustClosed)),
    table({
      id: 'sandbags',
      caption: say('sandbags.caption'),
      columns: [
        column(say('sandbags.when'), { weight: 1.4 }),
        column(say('sandbags.each-end'), { weight: 1 }),
        column(say('sandbags.closed'), { weight: 1.2 }),
        column(say('sandbags.open'), { weight: 1.2 }),
      ],
      groups: [
        {
          rows: [
            {
              cells: [inline(say('sandbags.every-day')), cell(daily), cell(dailyClosed), cell(dailyOpen)],
            },
            {
              cells: [
                inline(say('sandbags.storm')),
                cell(inGust),
                cell(gustClosed),
                inline(say('sandbags.not-open')),
              ],
            },
          ],
        },
      ],
    }),
    list(
      false,
      ['spare', 'forecast', 'take-off', 'not-counted'].map((advice) => [
        paragraph(say(`sandbags.advice-${advice}`)),
      ]),
    ),
  ];
}

/** The gust of the region, and whether all sandbags hold the closed sashes in it. */
function gustInWords(context: SheetContext, limit: Finding): readonly Inline[] {
  const {
    printer,
    facts: { region },
    wording: { say },
  } = context;
  const { gust } = regionWind(region.wind);
  if (gust.value.kind !== 'quantity') return inline(say('sandbags.no-gust', { region: region.name }));
  const held = limit.value.kind === 'quantity' && limit.value.value >= gust.value.value;
  return [
    ...sayWith(say, 'sandbags.gust', { gust: printer.print(gust), region: region.name }),
    ...inline(` ${say(held ? 'sandbags.held' : 'sandbags.not-held')}`),
  ];
}
