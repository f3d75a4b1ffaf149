/** Heat, wind, lifting and what is at hand on a build card: the demonstration regions, and places far from them. */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { plainText } from '../../scripts/document/build.ts';
import { printSheet } from '../../scripts/document/print.ts';
import { check, type CheckResult } from '../../scripts/pipeline.ts';
import { repository } from '../demo/demo-guide.ts';
import {
  guideOfPlaces,
  polarPlace,
  southernPlace,
  tropicalPlace,
  type InventedPlace,
  type PlacesGuide,
} from './invented-places.ts';

const card = 'straw-bale-cold-frame';
const demo = await check({ root: repository, builtInRoot: repository });

function cardOf({ sheets }: CheckResult, region: string) {
  const found = sheets.find((sheet) => sheet.region.id === region && sheet.sheet.id === card);
  if (!found) throw new Error(`no ${card} for ${region}`);
  return found;
}

function textOf(result: CheckResult, region: string): string {
  return printSheet(cardOf(result, region).composed.document).replaceAll('\u00A0', ' ');
}

function explained(result: CheckResult, region: string, id: string) {
  return cardOf(result, region).composed.explanations.find((explanation) => explanation.id === id);
}

describe('in a county with hard winters', () => {
  const text = textOf(demo, 'larkwether');

  test('the table has what the heat of the frame gives, and leaves the summer out', () => {
    const rows = text.split('\n').filter((line) => /^\s*(January|May|July|December) \|/.test(line));
    expect(rows.map((row) => row.trim().split(' | ')[0])).toEqual(['January', 'May', 'December']);
    const [january] = rows.map((row) => row.trim().split(' | '));
    const degrees = january!.slice(1, 4).map((cell) => Number(cell.replace('−', '-').replace(/ .*/, '')));
    // Colder outside than inside, and warmest under a cover.
    expect(degrees).toEqual(degrees.toSorted((a, b) => a - b));
    expect(january![8]).toBe('leave it closed');
  });

  test('the nights of all months share one entry of the workings', () => {
    const { document } = cardOf(demo, 'larkwether').composed;
    const entries = document.blocks
      .flatMap((block) => (block.kind === 'wide' ? block.content : [block]))
      .flatMap((block) => (block.kind === 'workings' ? block.items : []));
    const ofHeat = entries.filter(({ id }) => id.startsWith('frame-heat.month-'));
    expect(ofHeat.map(({ term }) => plainText(term)).toSorted()).toEqual([
      'Coldest inside',
      'Coldest night outside',
      'Freezing nights inside',
      'Freezing nights outside',
      'How far to prop the front end',
      'Open on a sunny day when it is warmer outside than',
    ]);
  });

  test('the windows under the frame are those of its own heat, with the published gain beside them', () => {
    const peas = explained(demo, 'larkwether', 'snap-pea.frame-sow.spring')!;
    expect(peas.method).toContain('by its heat');
    expect(peas.inputs.join('; ').replaceAll('\u00A0', ' ')).toContain(
      'published for any cold frame: 4–6 weeks',
    );
    expect(peas.inputs.some((input) => input.startsWith('time that a cold frame gains:'))).toBe(true);
  });

  test('findings have names that say the month', () => {
    expect(explained(demo, 'larkwether', 'frame-heat.month-1.lowest')?.name).toBe(
      'Coldest night inside, January',
    );
    expect(explained(demo, 'larkwether', 'frame-heat.month-11.freezing-nights-covered')?.name).toBe(
      'Freezing nights inside with a cover, November',
    );
  });

  test('who lifts what stands at the step where it is lifted first', () => {
    const step = (number: number): string =>
      text.slice(text.indexOf(`step ${number}:`), text.indexOf(`step ${number + 1}:`));
    expect(step(2)).toContain('heavy even for two');
    expect(step(7)).toContain('Two people lift the bag of planting mix (40 lb).');
    expect(step(10)).toContain('Two people lift the sash (21–24 lb).');
    expect(step(3)).not.toContain('heavy even for two');
  });

  test('what is at hand, what is still to buy, and the largest frame without buying more', () => {
    expect(text).toContain('Straw bale (A): 8 at hand, 1 still to buy.');
    expect(text).toMatch(
      /comes out of what is at hand, without buying more of it: 21 in inside, from east to west, .* 8 straw bales/,
    );
  });

  test('a gust that the weights of every day do not hold makes it a windy place', () => {
    expect(text).toContain('In Larkwether County, reckon with gusts of 55 mph (89 km/h).');
    expect(text).toContain('closed sashes stand them');
    expect(text).toMatch(/Every day \| 1 \| 40 mph \| 35 mph/);
    expect(text).toMatch(/Before a storm, on boards \| 3 \| 60 mph \| do not prop it/);
    expect(text).toContain('In a place as windy as this');
  });

  test('sowing for fall under glass is told of no crop that is always taller than the room under it', () => {
    expect(text).toMatch(/Snap pea \| Sow outdoors, for fall \| Jun .* \| Too tall for the glass by then/);
    expect(text).toMatch(/Snap pea \| Sow outdoors \| Apr .* \| Mar /);
    // Carrot tops, 10 in and more, just fit under the glass at the back, 10 in over the soil.
    expect(textOf(demo, 'gullhammock')).toMatch(/Carrot \| Sow outdoors, for fall \| Aug .* \| Sep /);
  });

  test('the sheet ends with the local rules, before its workings', () => {
    expect(text.indexOf('Local rules come first')).toBeGreaterThan(text.indexOf('Row labels'));
    expect(text.indexOf('Local rules come first')).toBeLessThan(text.indexOf('How we worked this out'));
  });
});

test('on a coast where frames do not freeze, no days are counted and the published gain stands', () => {
  expect(textOf(demo, 'gullhammock')).toContain('In most years it does not freeze in this frame at all.');
  expect(explained(demo, 'gullhammock', 'snap-pea.frame-sow.spring')?.method).not.toContain('by its heat');
});

describe('far from them', () => {
  const places: readonly InventedPlace[] = [polarPlace, tropicalPlace, southernPlace];
  const bare: InventedPlace = { ...southernPlace, id: 'bareplace' };
  let guide: PlacesGuide;
  let result: CheckResult;
  beforeAll(async () => {
    guide = await guideOfPlaces([...places, bare], { bare: [bare] });
    result = await check({ root: guide.root, builtInRoot: repository });
  });
  afterAll(() => guide.remove());

  test('without temperatures one sentence says that it cannot be told, and no table', () => {
    const text = textOf(result, bare.id);
    expect(text).toContain('cannot be told for Bareplace County, since no temperatures are on record');
    expect(text).not.toContain('table #frame-heat');
    expect(text).not.toContain('by its heat');
  });

  test('without a gust the card tells what the sashes stand, and nothing that it would need', () => {
    const text = textOf(result, southernPlace.id);
    expect(text).toContain('gusts to build for in Southvale County is not on record');
    expect(text).toContain('Propped, up to gusts of');
    expect(text).not.toContain('closed sashes stand them');
    expect(text).not.toContain('In a place as windy as this');
  });

  test('south of the equator the year of the table begins in July', () => {
    const months = textOf(result, southernPlace.id).match(
      /^\s*(\w+) \| .* \| (leave it closed|sashes off|prop .*)$/gm,
    );
    expect(months?.[0]).toMatch(/^\s*July/);
  });

  test('where it never freezes the sashes stay off', () => {
    expect(textOf(result, tropicalPlace.id)).toContain('leave the sashes off');
    expect(textOf(result, tropicalPlace.id)).not.toContain('table #frame-heat');
  });

  test('where the sun does not rise there is no noon to open at', () => {
    expect(textOf(result, polarPlace.id)).toMatch(/December \|.*no sun/);
  });
});
