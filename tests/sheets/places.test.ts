/**
 * Whole guides for places far from the demonstration regions: one with midnight sun, one without a freeze, one south of the
 * equator. Every sheet composes, and says in words what such a place does not have.
 */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { formatReport } from '../../scripts/diagnostics/diagnostic.ts';
import { printSheet } from '../../scripts/document/print.ts';
import { check, type CheckResult } from '../../scripts/pipeline.ts';
import { repository } from '../demo/demo-guide.ts';
import {
  guideOfPlaces,
  polarPlace,
  southernPlace,
  tropicalPlace,
  type PlacesGuide,
} from './invented-places.ts';

const places = [polarPlace, tropicalPlace, southernPlace];

describe.each([
  ['with temperatures and soil', []],
  ['with freeze dates alone', places],
])('%s', (_, bare) => {
  let guide: PlacesGuide;
  let result: CheckResult;
  beforeAll(async () => {
    guide = await guideOfPlaces(places, { bare });
    result = await check({ root: guide.root, builtInRoot: repository });
  });
  afterAll(() => guide.remove());

  const sheet = (place: { id: string }, id: string): string => {
    const found = result.sheets.find(
      ({ region, composed }) => region.id === place.id && composed.document.id === id,
    );
    return printSheet(found!.composed.document).replaceAll('\u00A0', ' ');
  };

  test('reads without a fault, and makes every sheet of every place', () => {
    expect(formatReport(result.diagnostics)).toBe('');
    const perPlace = new Set(result.sheets.map(({ composed }) => composed.document.id)).size;
    expect(perPlace).toBeGreaterThanOrEqual(4);
    expect(result.sheets).toHaveLength(perPlace * places.length);
  });

  test('no sheet prints what is no number, nor a whole year as a window', () => {
    for (const { region, composed } of result.sheets) {
      const text = printSheet(composed.document);
      const where = `${region.id} ${composed.document.id}`;
      expect(/\b(NaN|Infinity|undefined|null)\b|\[object/.exec(text)?.[0], where).toBeUndefined();
      expect(/Jan(uary)?.1–Dec(ember)?.31/.exec(text)?.[0], where).toBeUndefined();
    }
  });

  test('prose of no sheet puts “never” or a reason where a date belongs', () => {
    for (const { region, composed } of result.sheets) {
      const where = `${region.id} ${composed.document.id}`;
      const prose = printSheet(composed.document)
        .split('\n')
        .filter((line) => /^ *paragraph/.test(line))
        .join('\n');
      expect(
        /never in these records|no date, because|it is too hot all year|none, because/.exec(prose)?.[0],
        where,
      ).toBeUndefined();
    }
  });

  test('the planting chart of the frost-free place', () => {
    const chart = sheet(tropicalPlace, 'planting-chart');
    expect(chart).not.toContain('average last freeze');
    expect(chart).toContain('No date on this sheet counts from a freeze');
    if (bare.length > 0) {
      expect(chart).toContain('No planting dates can be told for Nearline County');
      expect(chart).not.toContain('figure #planting-chart');
      return;
    }
    expect(chart).toContain('Tomato | Set out plants | Any month | Any month | Any month');
    expect(chart).toMatch(/No dates for .*carrots.*: it is too hot all year\./);
    expect(chart).toContain('Every day of the year suits | ');
  });

  test('no sowing for fall before spring at the pole', () => {
    const carrots = sheet(polarPlace, 'carrots');
    expect(carrots).toMatch(/for fall \| None, because the season is too short/);
  });

  test('the climate sheet of the frost-free place has no freeze dates and says so', () => {
    const climate = sheet(tropicalPlace, 'climate');
    expect(climate).toContain('It did not freeze here in any year on record.');
    expect(climate).toMatch(/It comes( \| never on record){6}/);
    expect(climate).not.toContain('figure #freeze-curve');
    expect(climate).not.toContain('table #freeze-chances');
    expect(climate).not.toContain('average last freeze');
  });

  test('the polar climate sheet has midnight sun and polar night, a short season, and a warm threshold that comes in any month', () => {
    const climate = sheet(polarPlace, 'climate');
    expect(climate).toContain('The shortest day is 0 h long, the longest 24 h.');
    expect(climate).toMatch(/It comes \| in any month( \| in every year){5}/);
    expect(climate).toMatch(/ Dec \|.* 0 h \| no sun/);
    expect(climate).toMatch(/ Jul \|.* 24 h \| 3\d(\.\d)?°/);
    const season = /(\d+) days: without a freeze/.exec(climate);
    expect(Number(season?.[1])).toBeGreaterThan(40);
    expect(Number(season?.[1])).toBeLessThan(90);
    // 36 F has neither dates nor lengths, since between its freezes lies no season.
    expect(climate).not.toMatch(/^ +36 °F \| [A-Z][a-z]{2} \d/m);
    expect(climate).not.toMatch(/^ +36 °F \| \d/m);
  });

  test('the southern climate sheet has its freezes in the southern winter, and its longest day in December', () => {
    const climate = sheet(southernPlace, 'climate');
    expect(climate).toMatch(/(Aug|Sep|Oct) \d+: average last freeze/);
    expect(climate).toMatch(/(Apr|May|Jun) \d+: average first freeze/);
    expect(climate).toMatch(/in \d+ of 14 years/);
    expect(climate).toContain('the spring of 2015; the fall of 2015');
    const dayLength = (month: string): number =>
      Number(new RegExp(`^ +${month} \\|.*?(\\d+) h \\d+ min`, 'm').exec(climate)?.[1]);
    expect(dayLength('Dec')).toBe(14);
    expect(dayLength('Jun')).toBe(9);
  });

  test('warmth is told where it is known: none above 50 F at the pole, and every day in the tropics', () => {
    const [polar, tropical] = [sheet(polarPlace, 'climate'), sheet(tropicalPlace, 'climate')];
    if (bare.length > 0) {
      expect(polar + tropical).not.toMatch(/degree days above|Soil reaches/);
      return;
    }
    expect(polar).toContain('0: degree days above 50 °F');
    expect(polar).toMatch(/50 °F \(10 °C\) \| never/);
    expect(tropical).toMatch(/50 °F \(10 °C\) \| all year/);
  });
});
