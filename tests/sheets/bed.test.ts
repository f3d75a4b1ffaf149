/** A bed without a build around it: what its exhibits say, for crops and covers of every sort. */
import { beforeAll, describe, expect, test } from 'vitest';
import { plainText } from '../../scripts/document/build.ts';
import type { Block } from '../../scripts/document/document.ts';
import { quantity } from '../../scripts/findings/finding.ts';
import { readGuide } from '../../scripts/records/read-guide.ts';
import { bedParts, canBeSown, sowingFault, type SowingBed } from '../../scripts/sheets/bed.ts';
import { regionFacts } from '../../scripts/sheets/facts.ts';
import { contextFor, wordingOf, type SheetContext } from '../../scripts/sheets/sheet-context.ts';
import { q } from '../agronomy/crop.ts';
import { repository } from '../demo/demo-guide.ts';

const inch = 25.4;
const plain: SowingBed = {
  insideLengthMm: 96 * inch,
  insideDepthMm: 48 * inch,
  lengthFinding: {
    id: 'bed.length',
    value: quantity('length', 96 * inch),
    method: 'frame.given',
    inputs: [],
    sources: [],
  },
  hemisphere: 'north',
  cover: 'open',
};
const drip = {
  lines: 2,
  emitterSpacing: q('12 in', 'length'),
  emitterFlow: q('0.5 gal', 'volume'),
  clearance: q('2 in', 'length'),
};

let regions: readonly SheetContext[];
let context: SheetContext;
beforeAll(async () => {
  const { guide } = await readGuide({ root: repository, builtInRoot: repository });
  regions = guide.regions.map((region) =>
    contextFor({
      guide,
      sheet: guide.sheets[0]!,
      facts: regionFacts(region, { crops: guide.crops, year: 2027 }),
      wording: wordingOf(guide),
      suggest: () => '',
    }),
  );
  context = regions[0]!;
});

type Sow = Parameters<typeof bedParts>[0]['sow'];

function exhibit(name: string, bed: SowingBed, sow: Sow): readonly Block[] {
  const parts = bedParts({ context, bed, sow });
  expect(parts.faults).toEqual([]);
  return parts.exhibits.find(([id]) => id === name)![1].blocks();
}

/** The words of paragraphs and lists, one after another. */
function said(blocks: readonly Block[]): string {
  return blocks
    .map((block): string => {
      if (block.kind === 'paragraph') return plainText(block.content);
      if (block.kind === 'list') return block.items.map(said).join('\n');
      return '';
    })
    .join('\n')
    .replaceAll('\u00a0', ' ');
}

function cells(blocks: readonly Block[], table: string): string[][] {
  const found = blocks.find((block) => block.kind === 'table' && block.id === table);
  if (found?.kind !== 'table') throw new TypeError(`no table ${table}`);
  return found.groups.flatMap(({ rows }) =>
    rows.map((row) => row.cells.map((cell) => plainText(cell).replaceAll('\u00a0', ' '))),
  );
}

describe('what to look out for', () => {
  const covered = { ...plain, clearHeightMm: 300 };
  test.each<[string, SowingBed, Sow, RegExp | undefined]>([
    [
      'corn in two rows',
      plain,
      [{ crop: 'sweet-corn', rows: 2 }],
      /Sweet corn is pollinated by wind\. Sow it in 3/,
    ],
    ['corn in a block', { ...plain, insideDepthMm: 3000 }, [{ crop: 'sweet-corn', rows: 3 }], undefined],
    [
      'cucumbers under glass',
      { ...plain, cover: 'frame' },
      [{ crop: 'cucumber', rows: 1 }],
      /Open the frame by day/,
    ],
    [
      'cucumbers under a screen',
      { ...plain, cover: 'screen' },
      [{ crop: 'cucumber', rows: 1 }],
      /Open the screen/,
    ],
    ['cucumbers in the open', plain, [{ crop: 'cucumber', rows: 1 }], undefined],
    [
      'peas under low glass',
      { ...covered, cover: 'frame' },
      [{ crop: 'snap-pea', rows: 1 }],
      /Take the sashes off/,
    ],
    ['peas in the open', covered, [{ crop: 'snap-pea', rows: 1 }], undefined],
    ['radishes under low glass', { ...covered, cover: 'frame' }, [{ crop: 'radish', rows: 1 }], undefined],
    [
      'tomatoes wanted on the sunny side',
      plain,
      [
        { crop: 'tomato', rows: 1, side: 'equator' },
        { crop: 'lettuce', rows: 1 },
      ],
      /Tomato would shade the lettuce at noon: its shadow reaches .+ toward the north .+° above the horizon/,
    ],
    [
      'tomatoes on the north side',
      plain,
      [
        { crop: 'tomato', rows: 1 },
        { crop: 'lettuce', rows: 1 },
      ],
      undefined,
    ],
  ])('%s', (_, bed, sow, words) => {
    const text = said(exhibit('bed-plan', bed, sow));
    if (words) expect(text).toMatch(words);
    else expect(text.trim()).toBe('');
  });
});

describe('water', () => {
  test('by the can, for a bed of 32 square feet', () => {
    const text = said(exhibit('bed-water', plain, [{ crop: 'carrot', rows: 1 }]));
    expect(text).toContain('20–30 gal');
    expect(text).toContain('10–15 watering cans');
  });
  test('by two lines that give half a gallon an hour each foot', () => {
    const text = said(exhibit('bed-water', { ...plain, irrigation: drip }, [{ crop: 'carrot', rows: 1 }]));
    // 20 to 30 gallons over 8 ft × 2 lines × 0.5 gal an hour.
    expect(text).toContain('The 2 drip lines run 2.5–3.7 h');
    expect(text).not.toContain('cans');
  });
});

test('sets are bought by the number, seed by number, weight and packet', () => {
  const rows = cells(
    exhibit('sow-table', plain, [
      { crop: 'onion', rows: 1 },
      { crop: 'carrot', rows: 1, packet: { seeds: 100 } },
    ]),
    'buying',
  );
  expect(rows[0]![1]).toMatch(/^\d+ sets$/);
  expect(rows[1]!.slice(1, 4)).toEqual([
    expect.stringMatching(/^\d+ seeds$/),
    expect.stringMatching(/oz \(.+ g\)$/),
    expect.stringMatching(/^\d packets$/),
  ]);
});

/** One for each region of the demonstration. */
const sorts = [
  ['rows', 'open'],
  ['square', 'frame'],
  ['offset', 'screen'],
] as const;

test.each(sorts)('every crop of the guide can be sown in %s under a cover that is: %s', (layout, cover) => {
  const region = regions[sorts.findIndex(([sort]) => sort === layout)]!;
  const bed = { ...plain, cover, clearHeightMm: 200, irrigation: drip, insideDepthMm: 6000 };
  for (const { id } of region.guide.crops) {
    const parts = bedParts({ context: region, bed, sow: [{ crop: id, rows: 2, layout }] });
    expect(parts.faults).toEqual([]);
    for (const [, { blocks }] of parts.exhibits) expect(blocks().length).toBeGreaterThan(0);
    const ids = parts.findings.map((finding) => finding.id);
    expect(new Set(ids).size).toBe(ids.length);
  }
  region.printer.finish([]);
});

test('rows that do not fit are told with what would, and leave no plan', () => {
  const sow = [{ crop: 'carrot', rows: 12 }];
  const wanted = { crops: context.guide.crops, insideDepthMm: 48 * inch, sow };
  expect(sowingFault(wanted)).toMatchObject({ hint: 'Sow fewer rows; 4 in all fit.' });
  expect(canBeSown(wanted)).toBe(false);
  expect(bedParts({ context, bed: plain, sow }).rows).toEqual([]);
  expect(canBeSown({ ...wanted, sow: [{ crop: 'no-such-crop', rows: 1 }] })).toBe(false);
  expect(sowingFault({ ...wanted, sow: [{ crop: 'no-such-crop', rows: 1 }] })).toBeUndefined();
  const drowned = { ...drip, lines: 12, clearance: q('2.5 in', 'length') };
  expect(sowingFault({ ...wanted, sow: [{ crop: 'carrot', rows: 4 }], irrigation: drowned })).toBeDefined();
});
