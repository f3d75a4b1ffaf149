/** What the sheets of the demonstration guide say of safety beyond the cautions themselves. */
import { beforeAll, describe, expect, it } from 'vitest';
import { plainText } from '../../scripts/document/build.ts';
import type { Block } from '../../scripts/document/document.ts';
import { check, type CheckResult } from '../../scripts/pipeline.ts';
import { coverageLine, coverageOfGuide, coverageText } from '../../scripts/coverage-words.ts';
import { toolChecklist, toolSafety } from '../../scripts/sheets/cautions.ts';
import { audienceOf, circumstancesOf } from '../../scripts/sheets/circumstances.ts';
import { contextFor, wordingOf, type SheetContext } from '../../scripts/sheets/sheet-context.ts';
import { repository } from '../demo/demo-guide.ts';

let result: CheckResult;
beforeAll(async () => {
  result = await check({ root: repository, builtInRoot: repository });
});

function contextOf(region: string, sheet: string): SheetContext {
  const found = result.sheets.find((one) => one.region.id === region && one.sheet.id === sheet)!;
  const { guide } = result;
  return contextFor({
    guide,
    sheet: found.sheet,
    facts: found.facts,
    wording: wordingOf(guide),
    suggest: () => '',
  });
}

function closingOf(region: string, sheet: string): string[] {
  const { document } = result.sheets.find(
    (one) => one.region.id === region && one.sheet.id === sheet,
  )!.composed;
  const at = document.blocks.findIndex((block) => block.kind === 'heading' && block.id === 'local-rules');
  const list = document.blocks[at + 1];
  return list?.kind === 'list' ? list.items.map(([first]) => wordsOf(first!)) : [];
}

const wordsOf = (block: Block): string => (block.kind === 'paragraph' ? plainText(block.content) : '');

describe('the end of a build sheet', () => {
  it.each([
    ['hollowmarl', /^Buried lines: call Hollowmarl Locate, 555-0142, at least 3 working days before you dig/],
    ['larkwether', /^Buried lines: call Larkwether One Call, 555-0187, at least 2 working days before/],
    ['gullhammock', /^Buried lines: in the US, call 811 three working days before/],
  ])('in %s says whom to call before digging', (region, call) => {
    expect(closingOf(region, 'straw-bale-cold-frame')[0]).toMatch(call);
  });

  it('defers to codes, licensed trades and makers, and tells the notes of the region', () => {
    const lines = closingOf('hollowmarl', 'straw-bale-cold-frame').join('\n');
    expect(lines).toMatch(/The county asks for no permit/);
    expect(lines).toMatch(/burn permit/);
    expect(lines).toMatch(/licensed or certified/);
    expect(lines).toMatch(/instructions that come with your tools/);
    expect(closingOf('gullhammock', 'straw-bale-cold-frame').join('\n')).toMatch(/local codes/);
  });

  it('stands on no other kind of sheet', () => {
    expect(closingOf('hollowmarl', 'planting-chart')).toEqual([]);
  });
});

describe('the list of tools', () => {
  it.each([
    [
      'sledge-hammer',
      'Sledge hammer. Wear safety glasses, sturdy closed shoes, and work gloves. From age 16, with an adult beside.',
    ],
    ['circular-saw', /Adults only\.$/],
    ['rake', /From age 8, with an adult near\.$/],
    ['tape-measure', 'Tape measure'],
  ])('%s', (id, words) => {
    expect(plainText(toolSafety(contextOf('hollowmarl', 'straw-bale-cold-frame'), id))).toEqual(
      typeof words === 'string' ? words : expect.stringMatching(words),
    );
  });

  it('is a checklist of them', () => {
    const list = toolChecklist(contextOf('hollowmarl', 'straw-bale-cold-frame'), ['rake', 'level']);
    expect(list).toMatchObject({ kind: 'checklist', items: [[{ kind: 'strong' }, {}], [{ text: 'Level' }]] });
  });
});

describe('the circumstances of a sheet', () => {
  it('hold the heat of the region, the bed and what is sown in it', () => {
    expect(circumstancesOf(contextOf('hollowmarl', 'straw-bale-cold-frame'))).toEqual({
      conditions: ['outdoors', expect.stringMatching(/^heat-/), 'food-bed'],
      crops: ['broadleaf'],
    });
  });

  it('of a fact sheet hold its crop: onions are no broadleaf crop', () => {
    expect(circumstancesOf(contextOf('hollowmarl', 'onions'))).toEqual({ crops: [] });
  });

  it.each([
    ['build-card', 'adults'],
    ['fact-sheet', 'adults'],
    ['planting-chart', 'adults'],
    ['class-handout', 'class'],
    ['companion-sheet', 'viewers'],
  ])('of a %s hold that it is for %s', (kind, audience) => {
    expect(audienceOf(kind)).toBe(audience);
  });

  it('of a class handout hold its audience beside the rest', () => {
    expect(circumstancesOf(contextOf('hollowmarl', 'tepee-class'))).toMatchObject({
      audience: 'class',
      conditions: ['outdoors', expect.stringMatching(/^heat-/), 'food-bed'],
    });
  });

  it('of other sheets hold nothing, so that no hazard is taken to be absent', () => {
    expect(circumstancesOf(contextOf('hollowmarl', 'planting-chart'))).toEqual({});
  });
});

describe('the coverage as text', () => {
  it('names each hazard with where its caution stands', () => {
    const text = coverageText(coverageOfGuide(result.guide));
    expect(text).toMatch(/^straw-bale-cold-frame$/m);
    expect(text).toMatch(/^ {4}combination weed-killer-and-broadleaf-crop: herbicide-carryover \(here\)$/m);
    expect(text).toMatch(/heat-illness \(said by heat-[a-z-]+, step 1\)/);
  });

  it.each([
    ['pole-tepee', 8, /step 2 \(.*sledge-hammer from 16.*\), step \d+ \(raise-pole from 12\)/],
    ['pole-tepee', 15, /^step 2 \(sledge-hammer from 16\)$/],
    ['raised-bed', 15, /^no step$/],
    ['straw-bale-cold-frame', 12, /step 2 \(lift-bale from 14\)/],
  ])('tells which steps of the %s are for adults where children are %i', (project, age, told) => {
    const text = coverageText(coverageOfGuide(result.guide));
    const ofProject = text.split('\n\n').find((one) => one.startsWith(`${project}\n`))!;
    expect(new RegExp(`^  adult-only at ${age}: (.*)$`, 'm').exec(ofProject)?.[1]).toMatch(told);
  });

  it('tells heat apart, since it is a matter of the month', () => {
    const text = coverageText(coverageOfGuide(result.guide));
    expect(text).toMatch(/^ {2}in the heat of the hottest month \(heat-danger\): no one under 14$/m);
    expect(text).not.toMatch(/adult-only.*heat/);
  });

  it('is one line in short, and none without projects', () => {
    expect(coverageLine(coverageOfGuide(result.guide))).toMatch(/^Every hazard has its caution: \d+ hazards/);
    expect(coverageLine([])).toBe('');
  });
});
