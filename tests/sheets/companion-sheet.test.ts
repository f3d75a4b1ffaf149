/** The segment companion sheet: when each beat starts, that no caution is left out, and what holds in other regions. */
import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import { plainText } from '../../scripts/document/build.ts';
import type { Block } from '../../scripts/document/document.ts';
import { printSheet } from '../../scripts/document/print.ts';
import { parseInlineProse } from '../../scripts/prose/parse.ts';
import type { Guide, SheetRecord } from '../../scripts/records/guide.ts';
import { readGuide } from '../../scripts/records/read-guide.ts';
import { airtime, secondsOf, type SegmentBeat } from '../../scripts/records/schemas/companion-sheet.ts';
import { gatherCautions } from '../../scripts/safety/gather.ts';
import { wordedFor } from '../../scripts/safety/worded.ts';
import { circumstancesOfProject } from '../../scripts/sheets/circumstances.ts';
import { captionLimit, captionLines, charactersTooMany } from '../../scripts/sheets/companion-captions.ts';
import { composeSheet, type ComposedSheet } from '../../scripts/sheets/compose.ts';
import { regionFacts } from '../../scripts/sheets/facts.ts';
import { wordingOf } from '../../scripts/sheets/sheet-context.ts';
import { repository } from '../demo/demo-guide.ts';

let guide: Guide;
beforeAll(async () => {
  ({ guide } = await readGuide({ root: repository, builtInRoot: repository }));
});

const prose = (text: string) => parseInlineProse(text, () => ({ file: '', line: 1, column: 1 })).content;

function composed(beats?: readonly SegmentBeat[], regionId = 'larkwether'): ComposedSheet {
  const base = guide.sheets.find(({ id }) => id === 'cold-frame-segment')!;
  const sheet: SheetRecord = beats
    ? {
        ...base,
        beats: [...beats],
        beatProse: beats.map(({ say, caption }) => ({
          say: prose(say),
          ...(caption === undefined ? {} : { caption: prose(caption) }),
        })),
      }
    : base;
  const region = guide.regions.find(({ id }) => id === regionId)!;
  const facts = regionFacts(region, { crops: guide.crops, year: guide.publisher.year });
  return composeSheet({ guide, sheet, facts, wording: wordingOf(guide), suggest: () => '' });
}

const allBlocks = (blocks: readonly Block[]): readonly Block[] =>
  blocks.flatMap((block) => (block.kind === 'wide' ? [block, ...allBlocks(block.content)] : [block]));
const blocksOf = ({ document }: ComposedSheet): readonly Block[] => allBlocks(document.blocks);
const beatsOf = (sheet: ComposedSheet) =>
  blocksOf(sheet).flatMap((block) => (block.kind === 'steps' ? block.items : []));
const beat = (more: Partial<SegmentBeat> = {}): SegmentBeat => ({
  length: '0:30',
  picture: 'A bed.',
  say: 'A bed.',
  ...more,
});

test.each([
  ['0:05', 5],
  ['1:00', 60],
  ['12:30', 750],
])('%s on air is %d seconds, and back', (text, seconds) => {
  expect(secondsOf(text)).toBe(seconds);
  expect(airtime(seconds)).toBe(text);
});

test.each([
  ['nothing', '', []],
  ['one short line', 'Bulb or flower?', ['Bulb or flower?']],
  [
    'a line that is just full',
    `${'x'.repeat(15)} ${'y'.repeat(16)}`,
    [`${'x'.repeat(15)} ${'y'.repeat(16)}`],
  ],
  ['one character more', `${'x'.repeat(15)} ${'y'.repeat(17)}`, ['x'.repeat(15), 'y'.repeat(17)]],
  [
    'a number at the end of a line, which keeps its unit',
    'Inside the whole frame there is 6\u00A0ft',
    ['Inside the whole frame there is', '6\u00A0ft'],
  ],
])('a caption in lines: %s', (_, text, lines) => {
  expect(captionLines(text)).toEqual(lines);
});

test('a caption in lines loses no word, and fits exactly when nothing is too many', () => {
  fc.assert(
    fc.property(fc.array(fc.stringMatching(/^[a-z]{1,40}$/), { maxLength: 14 }), (words) => {
      const lines = captionLines(words.join(' '));
      expect(lines.join(' ')).toBe(words.join(' '));
      const { lines: most, characters } = captionLimit;
      const fits = lines.length <= most && lines.every((line) => line.length <= characters);
      expect(charactersTooMany(words.join(' ')) === 0).toBe(fits);
    }),
  );
});

test('each beat starts where the one before ends, and the last ends with the segment', () => {
  const titles = beatsOf(composed()).map(({ title }) => plainText(title));
  const times = titles.map((title) => /^(\d+:\d\d) to (\d+:\d\d) /.exec(title)!.slice(1));
  expect(times[0]![0]).toBe('0:00');
  times.slice(1).forEach(([start], index) => {
    expect(start).toBe(times[index]![1]);
  });
  expect(times.at(-1)![1]).toBe(guide.sheets.find(({ id }) => id === 'cold-frame-segment')!.runs);
});

describe('no caution of the build is left out', () => {
  const all = Array.from({ length: 12 }, (_, index) => index + 1);
  const cases: readonly { name: string; beats: readonly SegmentBeat[] }[] = [
    { name: 'of a segment that shows nothing of it', beats: [beat()] },
    {
      name: 'of one that shows each step in a beat of its own',
      beats: all.map((step) => beat({ steps: [step] })),
    },
    {
      name: 'of one that shows the first six',
      beats: all.slice(0, 6).map((step) => beat({ steps: [step] })),
    },
  ];
  test.each(cases)('$name', ({ beats }) => {
    const sheet = composed(beats);
    const project = guide.projects.find(({ id }) => id === 'straw-bale-cold-frame')!;
    const region = guide.regions.find(({ id }) => id === 'larkwether')!;
    const circumstances = circumstancesOfProject(guide, project.id, [region]);
    const { all: ids } = gatherCautions(project.steps, guide.hazards, {
      ...circumstances,
      // The gust of this county is one that can take a loose sash along.
      conditions: [...(circumstances.conditions ?? []), 'windy-site'],
      audience: 'viewers',
    });
    const text = printSheet(sheet.document);
    expect(ids.length).toBeGreaterThan(15);
    for (const id of ids) {
      const { hazard } = wordedFor(guide.hazards.cautions.get(id)!, 'viewers');
      expect(text, id).toContain(hazard);
    }
  });

  const offCamera = (sheet: ComposedSheet): string[] =>
    blocksOf(sheet)
      .flatMap((block) => (block.kind === 'heading' && block.level === 3 ? [plainText(block.content)] : []))
      .filter((text) => text.startsWith('Off camera'));

  test('what it leaves out stands off camera, by its number in the project', () => {
    const told = offCamera(composed([beat({ steps: [1] }), beat(), beat({ steps: [3, 4] })]));
    expect(told[0]).toBe('Off camera, step 2 of the project: Set up the tall wall');
    expect(told).toHaveLength(9);
  });

  test('a step left out whose hazards are all told before says at which beat', () => {
    const shown = all.filter((step) => step !== 9).map((step) => beat({ steps: [step] }));
    const sheet = composed(shown);
    expect(offCamera(sheet)).toEqual(['Off camera, step 9 of the project: Notch the props']);
    expect(printSheet(sheet.document)).toMatch(/told above: Sharp blades \(beat 3\)/);
  });

  test('the box names the beat, and off camera the step of the project', () => {
    const text = printSheet(composed([beat({ steps: [1] }), beat({ steps: [3] })]).document);
    expect(text).toContain('tools for digging and raking (beat 1)');
    expect(text).not.toMatch(/\(step \d+\)/);
  });

  test('a step off camera has its number in the project, not that of its place after the beats', () => {
    const last = guide.projects.find(({ id }) => id === 'straw-bale-cold-frame')!.steps.length;
    const text = printSheet(composed([beat({ steps: all.filter((step) => step < last) })]).document);
    expect(text).toContain(`pinched fingers (off camera, step ${last})`);
  });

  test('the table for the hand names every caution at the beat where it is told', () => {
    const sheet = composed();
    const clipboard = blocksOf(sheet).find((block) => block.kind === 'table' && block.id === 'clipboard');
    if (clipboard?.kind !== 'table') throw new TypeError('no table for the hand');
    const named = clipboard.groups[0]!.rows.map(({ cells }) => plainText(cells.at(-1)!).split('; ').length);
    expect(named).toEqual(beatsOf(sheet).map(({ cautions }) => cautions.length));
  });
});

describe('a segment about a crop, without a project', () => {
  const segment = (more: Partial<SheetRecord> = {}): string => {
    const base = guide.sheets.find(({ id }) => id === 'onion-segment')!;
    const region = guide.regions.find(({ id }) => id === 'larkwether')!;
    const facts = regionFacts(region, { crops: guide.crops, year: guide.publisher.year });
    const sheet = { ...base, ...more };
    const made = composeSheet({ guide, sheet, facts, wording: wordingOf(guide), suggest: () => '' });
    expect(made.diagnostics).toEqual([]);
    return printSheet(made.document);
  };

  test.each([
    ['a tool', { tools: ['utility-knife'] }, 'sharp blades'],
    ['a material', { materials: ['straw-bale'] }, 'tipping bales'],
    ['an action', { actions: ['lift-bale'] }, 'heavy loads'],
  ])('has the caution of %s at the beat that lists it', (_, own: Partial<SegmentBeat>, title) => {
    const beats = [beat(), beat(own)];
    const beatProse = beats.map(({ say }) => ({ say: prose(say) }));
    expect(segment({ beats, beatProse })).toContain(`${title} (beat 2)`);
  });

  test('tells dates, and nothing off camera where its beats list all that it does', () => {
    expect(segment()).toMatch(/^for: Dates for /m);
    expect(segment()).not.toContain('Off camera');
  });

  test('tells what its header lists and no beat shows', () => {
    const text = segment({ tools: ['utility-knife'] });
    expect(text).toContain('sharp blades (off camera)');
    expect(text).toContain('What viewers do at home');
  });
});

test('the table of facts gives each number here and in every other region', () => {
  const sheet = composed([beat({ say: 'It freezes until {{freeze.last.32f.50}}.' })]);
  const facts = blocksOf(sheet).find((block) => block.kind === 'table' && block.id === 'facts');
  if (facts?.kind !== 'table') throw new TypeError('no table of facts');
  const row = facts.groups[0]!.rows[0]!.cells.map((cell) => plainText(cell));
  const { dates } = wordingOf(guide);
  const lastFreeze = (id: string): string => {
    const region = guide.regions.find((each) => each.id === id)!;
    const { findings } = regionFacts(region, { crops: guide.crops, year: guide.publisher.year });
    const { value } = findings.get('freeze.last.32f.50')!;
    return value.kind === 'date' ? dates.short(value.day) : '';
  };
  expect(row.slice(1)).toEqual(['larkwether', 'gullhammock', 'hollowmarl'].map(lastFreeze));
  expect(new Set(row).size).toBe(4);
});

describe('what keeps it from going on air', () => {
  const cases: readonly { name: string; beats: readonly SegmentBeat[]; told: readonly RegExp[] }[] = [
    {
      name: 'a caption of two full lines is no fault',
      beats: [beat({ caption: `${'x'.repeat(32)} ${'y'.repeat(32)}` })],
      told: [],
    },
    {
      name: 'one whose words break into three lines is, though it has less than 64 characters',
      beats: [beat(), beat({ caption: `${'a'.repeat(20)} ${'b'.repeat(20)} ${'c'.repeat(20)}` })],
      told: [/caption of beat 2 is 20 characters too long for 2 lines of 32: “a+ \/ b+ \/ c+”/],
    },
    {
      name: 'and so is a word longer than a line',
      beats: [beat({ caption: 'x'.repeat(33) })],
      told: [/caption of beat 1 is 1 character too long/],
    },
    {
      name: 'a step that the project does not have',
      beats: [beat({ steps: [1, 40] })],
      told: [/Beat 1 shows step 40, and the project has 12 steps/],
    },
    {
      name: 'a name that nothing has',
      beats: [beat({ say: 'It is {{frame.no-such}}.' })],
      told: [/frame\.no-such/],
    },
  ];
  test.each(cases)('$name', ({ beats, told }) => {
    const { diagnostics } = composed(beats);
    expect(diagnostics).toHaveLength(told.length);
    told.forEach((pattern, index) => {
      expect(diagnostics[index]!.message).toMatch(pattern);
    });
  });
});
