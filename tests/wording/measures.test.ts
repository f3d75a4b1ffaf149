import { describe, expect, test } from 'vitest';
import { dateWords } from '../../scripts/wording/dates.ts';
import { mixedFraction } from '../../scripts/wording/fractions.ts';
import { measuresFor } from '../../scripts/wording/measures.ts';
import type { Dimension } from '../../scripts/quantities/units.ts';

const phrases: Record<string, (values: Record<string, string | number>) => string> = {
  'unit.days': ({ count }) => (count === 1 ? 'day' : 'days'),
  'unit.weeks': ({ count }) => (count === 1 ? 'week' : 'weeks'),
  'unit.hours': () => 'h',
  'unit.gallons': () => 'gal',
  'unit.pounds-force': () => 'lb of force',
  'measure.hours-minutes': ({ hours, minutes }) => `${hours} h ${minutes} min`,
  'measure.less-than': ({ limit }) => `less than ${limit}`,
  'measure.latitude-north': ({ degrees }) => `${degrees}° N`,
  'measure.latitude-south': ({ degrees }) => `${degrees}° S`,
};
const say = (key: string, values: Record<string, string | number> = {}): string => phrases[key]!(values);
const measures = measuresFor({ language: 'en', order: 'customary-first', say });
const metric = measuresFor({ language: 'en', order: 'metric-first', say });
const plain = (text: string): string => text.replaceAll('\u00A0', ' ');

describe('quantities in both systems', () => {
  const cases: [string, Dimension, number, number, string][] = [
    ['seed depth', 'length', 6.35, 12.7, '¼–½ in (6–13 mm)'],
    ['one length under four inches', 'length', 76.2, 76.2, '3 in (8 cm)'],
    ['spacing in the row', 'length', 50.8, 76.2, '2–3 in (5–8 cm)'],
    ['row spacing', 'length', 304.8, 457.2, '12–18 in (30–46 cm)'],
    ['feet as they are written', 'length', 1219.2, 1828.8, '4–6 ft (1.2–1.8 m)'],
    ['a frame', 'length', 2387.6, 2387.6, '7 ft 10 in (2.39 m)'],
    ['just short of feet is not rounded to them', 'length', 1214.9, 1214.9, '47¾ in (1.21 m)'],
    ['exactly feet', 'length', 1828.8, 1828.8, '6 ft (1.83 m)'],
    ['just under a foot mark rounds up, never to 12 in', 'length', 1828.7, 1828.7, '6 ft (1.83 m)'],
    ['a thickness in sixteenths', 'length', 7.9375, 7.9375, '5⁄16 in (8 mm)'],
    ['soil temperature', 'temperature', 7.2222, 10, '45–50 °F (7–10 °C)'],
    ['frost', 'temperature', -6.6667, -6.6667, '20 °F (−7 °C)'],
    ['seed', 'mass', 3.5, 7, '0.12–0.25 oz (3.5–7 g)'],
    ['lettuce seed for a row, too light for ounces', 'mass', 0.3, 0.3, 'less than 1⁄16 oz (0.3 g)'],
    ['seed of just under a sixteenth', 'mass', 1.2, 1.77, 'less than 1⁄16 oz (1.2–1.8 g)'],
    ['seed of a sixteenth of an ounce', 'mass', 1.772, 1.772, '0.06 oz (1.8 g)'],
    ['nothing', 'mass', 0, 0, '0 oz (0 g)'],
    ['a bale', 'mass', 18143.7, 27215.5, '40–60 lb (18–27 kg)'],
    ['soil', 'volume', 400, 400, '14.1 ft³ (400 L)'],
    ['bed', 'area', 2.5, 2.5, '27 ft² (2.5 m²)'],
    ['a gust', 'speed', 17.8816, 17.8816, '40 mph (64 km/h)'],
    ['a hold-down', 'force', 169.03, 169.03, '38 lb of force (169 N)'],
    ['a push of the wind', 'pressure', 196.12, 196.12, '4.1 lb/ft² (196 Pa)'],
    ['days', 'duration', 10, 17, '10–17 days'],
    ['weeks', 'duration', 35, 49, '5–7 weeks'],
    ['weeks before', 'duration', -42, -7, '−6 to −1 weeks'],
    ['one day', 'duration', 1, 1, '1 day'],
    ['day length', 'day-length', 15.65, 15.65, '15 h 39 min'],
    ['day length that rounds up to the hour', 'day-length', 13.9999, 13.9999, '14 h 00 min'],
    ['price', 'money', 6.5, 6.5, '$6.50'],
  ];
  test.each(cases)('%s', (_, dimension, low, high, words) => {
    expect(plain(measures.both(dimension, low, high))).toBe(words);
  });

  test('metric first where the publisher wants it', () => {
    expect(plain(metric.both('length', 304.8))).toBe('30 cm (12 in)');
  });

  test('primes on a drawing', () => {
    expect(plain(measures.onDrawing(2387.6))).toBe('7′ 10″ (2.39 m)');
    expect(plain(measures.onDrawing(12.7))).toBe('½″ (13 mm)');
  });

  test('a latitude names its hemisphere and has no sign', () => {
    expect([measures.latitude(45.2), measures.latitude(-33.9)]).toEqual(['45.2° N', '33.9° S']);
  });

  test('a number and its unit never part', () => {
    expect(measures.both('length', 101.6)).not.toMatch(/\d (in|cm|mm)/);
  });
});

describe('fractions', () => {
  const cases: [number, number, string][] = [
    [0.5, 8, '½'],
    [1.375, 8, '1⅜'],
    [2, 8, '2'],
    [0.3125, 16, '5⁄16'],
    [1.9999, 8, '2'],
    [0, 8, '0'],
    [-0.25, 8, '−¼'],
  ];
  test.each(cases)('%f in 1/%i is %s', (value, parts, text) => {
    expect(mixedFraction(value, parts)).toBe(text);
  });
});

describe('dates', () => {
  const dates = dateWords('en');
  const cases: [string, string, string][] = [
    ['a day', plain(dates.long(104)), 'April 14'],
    ['a short day', plain(dates.short(104)), 'Apr 14'],
    ['a day of the year before', plain(dates.long(-3)), 'December 28'],
    ['a day of the year after', plain(dates.long(366)), 'January 1'],
    ['a range in one month', plain(dates.longRange(104, 118)), 'April 14–28'],
    ['a range over two months', plain(dates.longRange(104, 123)), 'April 14–May 3'],
    ['a range over New Year', plain(dates.shortRange(350, 380)), 'Dec 16–Jan 15'],
    ['a range of one day', plain(dates.longRange(104, 104)), 'April 14'],
    ['the same month a year on', plain(dates.shortRange(1, 370)), 'Jan 1–Jan 5'],
    ['a full date', plain(dates.full('2026-11-15')), 'November 15, 2026'],
  ];
  test.each(cases)('%s', (_, got, wanted) => {
    expect(got).toBe(wanted);
  });
});
