import { describe, expect, test } from 'vitest';
import { projectWith, type Choices } from './project.ts';
import { frameOf, numberOf, valueOf } from './read-frame.ts';

interface Row {
  readonly name: string;
  readonly choices: Choices;
  /** Counts by the last part of the id, lengths in inches. */
  readonly counts: Readonly<Record<string, number>>;
  readonly lengths: Readonly<Record<string, number>>;
}

/**
 * Worked by hand on squared paper, in inches. Slant = shortest sash − 2 bearings; inside depth = √(slant² − rise²); inside
 * length = widths − 2 bearings; long walls = outside length less one flake (4 in), in whole bales of 36, rounded up.
 */
const rows: readonly Row[] = [
  {
    // Slant 48, rise 4: √(2304 − 16) = 47.8330. Outside 72 + 36 = 108: three bales. Side: one whole, 11.8330 cut.
    name: 'long walls that come out in whole bales',
    choices: {
      sashes: [
        [27, 54],
        [27, 54],
        [24, 57],
      ],
    },
    counts: {
      'bales-poleward': 3,
      'bales-equator': 3,
      'bales-side': 1,
      'bales-whole': 8,
      'cut-pieces': 2,
      'bales-cut': 1,
      'bales-wall': 9,
      stakes: 18,
    },
    lengths: {
      'inside-length': 72,
      'inside-depth': 47.83304,
      'outside-length': 108,
      'outside-depth': 79.83304,
      'cut-length': 11.83304,
    },
  },
  {
    // Outside 88 + 36 = 124: (124 − 4) / 36 = 3.33, so four bales, 144 in, 10 in past each corner. Stakes 10 × 2 + 2.
    name: 'long walls that run past the corners',
    choices: {
      sashes: [
        [32, 54],
        [32, 54],
        [30, 57],
      ],
    },
    counts: {
      'bales-poleward': 4,
      'bales-equator': 4,
      'bales-side': 1,
      'bales-whole': 10,
      'cut-pieces': 2,
      'bales-cut': 1,
      stakes: 22,
    },
    lengths: { 'inside-length': 88, 'outside-length': 144 },
  },
  {
    // Outside 112: one flake more than three bales.
    name: 'long walls one flake short of the corner',
    choices: {
      sashes: [
        [41, 54],
        [41, 54],
      ],
    },
    counts: { 'bales-poleward': 3 },
    lengths: { 'inside-length': 76, 'outside-length': 112 },
  },
  {
    // Slant² = 36² + 4² = 1312, so a sash of √1312 + 6 reaches over exactly one bale.
    name: 'side walls of exactly one bale',
    choices: { sashes: [[36, Math.sqrt(1312) + 6]] },
    counts: { 'bales-side': 1, 'cut-pieces': 0, 'bales-cut': 0, stakes: 12 },
    lengths: { 'inside-depth': 36 },
  },
  {
    // A depth of 35.2 in: the bale is pressed in rather than cut.
    name: 'side walls a little shorter than a bale',
    choices: { sashes: [[36, Math.hypot(35.2, 4) + 6]] },
    counts: { 'bales-side': 1, 'cut-pieces': 0 },
    lengths: { 'inside-depth': 35.2 },
  },
  {
    // A depth of 39 in leaves 3 in: less than a flake, so it is stuffed.
    name: 'side walls with a gap of less than a flake',
    choices: { sashes: [[36, Math.hypot(39, 4) + 6]] },
    counts: { 'bales-side': 1, 'cut-pieces': 0 },
    lengths: { 'inside-depth': 39 },
  },
  {
    // A depth of 30 in: each side wall is one cut piece, and two of 30 in take two bales.
    name: 'side walls shorter than a bale',
    choices: { sashes: [[36, Math.hypot(30, 4) + 6]] },
    counts: {
      'bales-side': 0,
      'cut-pieces': 2,
      'bales-cut': 2,
      'bales-whole': 4,
      'bales-wall': 6,
      stakes: 10,
    },
    lengths: { 'cut-length': 30 },
  },
  {
    // Rise 36 − 28 = 8, slant 74: √(5476 − 64) = 73.5663; sides of two bales and 1.5663 stuffed. Outside 132: four bales. The
    // upper course of a long wall is half + 3 + half, of a side wall half + 1 + cut 19.566 (55.566 less a bale). Whole: 2 × (4 + 3) +
    // 2 × (2 + 1) = 20. Cut: six halves and two of 19.566: a half does not fit beside 19.566 in 36, so 2 + 3 bales. Stakes in the
    // upper course: 2 × (2 × 3 + 2) + 2 × (2 × 1 + 2).
    name: 'two courses in running bond',
    choices: {
      sashes: [
        [36, 80],
        [36, 90],
        [30, 102],
      ],
      poleward: { courses: 2, lay: 'on-edge' },
      others: { courses: 2, lay: 'flat' },
      stakes: { perBale: 2, length: 60 },
    },
    counts: { 'bales-whole': 20, 'cut-pieces': 8, 'bales-cut': 5, 'bales-wall': 25, stakes: 24 },
    lengths: { 'inside-depth': 73.56629, 'poleward-height': 36, 'equator-height': 28 },
  },
  {
    // Flat against flat: two courses behind, one in front, so a rise of 14 in over a slant of 66.
    name: 'a tall wall of two courses laid flat',
    choices: {
      sashes: [[36, 72]],
      poleward: { courses: 2, lay: 'flat' },
      stakes: { perBale: 1, length: 48 },
    },
    counts: { 'bales-poleward': 3 },
    lengths: { 'inside-depth': Math.sqrt(66 ** 2 - 14 ** 2), 'poleward-height': 28, 'equator-height': 14 },
  },
];

describe('a bale cold frame worked by hand', () => {
  test.each(rows)('$name', ({ choices, counts, lengths }) => {
    const frame = frameOf(projectWith(choices));
    for (const [what, expected] of Object.entries(counts)) {
      expect(numberOf(frame, `frame.${what}`), what).toBe(expected);
    }
    for (const [what, expected] of Object.entries(lengths)) {
      expect(numberOf(frame, `frame.${what}`, 'in'), what).toBeCloseTo(expected, 4);
    }
  });
});

describe('what lies on the walls', () => {
  const frame = frameOf(
    projectWith({
      sashes: [
        [30, 40],
        [30, 52],
        [30, 64],
      ],
    }),
  );

  test('the shortest sash bears just enough at both ends', () => {
    expect(numberOf(frame, 'frame.sash-k.bearing-poleward', 'in')).toBeCloseTo(3, 9);
    expect(numberOf(frame, 'frame.sash-k.bearing-equator', 'in')).toBeCloseTo(3, 9);
  });

  test('a longer one lies further over the low wall', () => {
    expect(numberOf(frame, 'frame.sash-l.bearing-equator', 'in')).toBeCloseTo(15, 9);
    expect(valueOf(frame, 'frame.sash-l.overhang')).toEqual({ kind: 'none', reason: 'no-overhang' });
  });

  test('one longer than the wall is thick overhangs it by the rest', () => {
    // Slant 34, rise 4: cos = √(1156 − 16) / 34. 64 − 34 − 3 = 27 in past the edge, of which 18 / cos lie on the wall.
    const onWall = 18 / (Math.sqrt(34 ** 2 - 16) / 34);
    expect(numberOf(frame, 'frame.sash-m.bearing-equator', 'in')).toBeCloseTo(onWall, 9);
    expect(numberOf(frame, 'frame.sash-m.overhang', 'in')).toBeCloseTo(27 - onWall, 9);
  });

  test('the low end presses into the straw by the bearing times the sine of the slope', () => {
    expect(numberOf(frame, 'frame.sash-k.press', 'in')).toBeCloseTo((3 * 4) / 34, 9);
  });
});

describe('what fills the frame', () => {
  const frame = frameOf(
    projectWith({
      sashes: [
        [27, 54],
        [27, 54],
        [24, 57],
      ],
    }),
  );

  test('planting mix: length × depth × depth of soil', () => {
    expect(numberOf(frame, 'frame.soil-volume', 'ft3')).toBeCloseTo((72 * 47.83304 * 6) / 1728, 4);
  });

  test('loose straw: a wedge 18 in wide and 4 in high on each side wall', () => {
    expect(numberOf(frame, 'frame.loose-straw', 'ft3')).toBeCloseTo((2 * 18 * 47.83304 * 4) / 2 / 1728, 4);
  });

  test('what a cut bale leaves over is used first, and does not quite do', () => {
    // Left over (36 − 2 × 11.833) × 18 × 14 / 1728 = 1.80 ft3, needed 1.99 ft3.
    expect(numberOf(frame, 'frame.bales-loose')).toBe(1);
    expect(numberOf(frame, 'frame.bales')).toBe(10);
  });

  test('a gap of less than a flake is filled from a bale as well', () => {
    const gappy = frameOf(projectWith({ sashes: [[36, Math.hypot(39, 4) + 6]] }));
    const wedges = (2 * 18 * 39 * 4) / 2;
    expect(numberOf(gappy, 'frame.loose-straw', 'ft3')).toBeCloseTo((wedges + 2 * 3 * 18 * 14) / 1728, 6);
  });
});

describe('north and south of the equator', () => {
  const project = projectWith({
    sashes: [
      [27, 54],
      [24, 57],
    ],
  });
  const north = frameOf(project, 'north');
  const south = frameOf(project, 'south');

  test('the tall wall stands away from the sun', () => {
    expect(valueOf(north, 'frame.poleward-side')).toEqual({ kind: 'choice', value: 'north' });
    expect(valueOf(north, 'frame.equator-side')).toEqual({ kind: 'choice', value: 'south' });
    expect(valueOf(south, 'frame.poleward-side')).toEqual({ kind: 'choice', value: 'south' });
    expect(valueOf(south, 'frame.equator-side')).toEqual({ kind: 'choice', value: 'north' });
  });

  test('no size depends on it', () => {
    const sizes = (frame: typeof north): unknown =>
      frame.findings.filter(({ method }) => method !== 'frame.side').map(({ id, value }) => [id, value]);
    expect(sizes(south)).toEqual(sizes(north));
  });
});
