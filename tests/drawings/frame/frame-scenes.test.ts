import { describe, expect, test } from 'vitest';
import { layFrame } from '../../../scripts/structures/geometry.ts';
import { sizesOf } from '../../../scripts/structures/check-project.ts';
import { demoProject, projectWith, type Choices } from '../../structures/project.ts';
import { frameOf } from '../../structures/read-frame.ts';
import { crossedTexts, inkBox } from './ink.ts';
import { allScenes, exactWords, pathsOf, pointsOf, textsOf } from './scenes.ts';

const demo = demoProject();
const north = frameOf(demo, 'north').geometry;
const south = frameOf(demo, 'south').geometry;

const frames = [
  { name: 'demonstration, north', geometry: north },
  { name: 'demonstration, south', geometry: south },
];

const odd: readonly { readonly name: string; readonly choices: Choices }[] = [
  { name: 'a single sash', choices: { sashes: [[34, 60]] } },
  { name: 'twelve sashes', choices: { sashes: Array.from({ length: 12 }, () => [30, 48] as const) } },
  {
    name: 'two courses',
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
  },
  {
    name: 'a sash that overhangs',
    choices: {
      sashes: [
        [30, 40],
        [30, 64],
      ],
    },
  },
];

describe.each(frames)('drawings of the $name', ({ geometry }) => {
  test.each(allScenes(geometry))('%s: no line runs through words', async (_, scene) => {
    expect(await crossedTexts(scene)).toEqual([]);
  });

  test.each(allScenes(geometry))('%s: all of it is on the page', (_, scene) => {
    for (const text of textsOf(scene)) {
      const { left, right, top, bottom } = inkBox(text);
      expect(Math.min(left, top), text.text).toBeGreaterThanOrEqual(0);
      expect(right, text.text).toBeLessThanOrEqual(scene.widthMm);
      expect(bottom, text.text).toBeLessThanOrEqual(scene.heightMm);
    }
    for (const { x, y } of pathsOf(scene).flatMap(pointsOf)) {
      expect(x).toBeGreaterThanOrEqual(0);
      expect(x).toBeLessThanOrEqual(scene.widthMm);
      expect(y).toBeGreaterThanOrEqual(0);
      expect(y).toBeLessThanOrEqual(scene.heightMm);
    }
  });

  test.each(allScenes(geometry))('%s: has one north arrow letter', (_, scene) => {
    expect(textsOf(scene).filter(({ text }) => text === 'N')).toHaveLength(1);
  });
});

describe.each(odd)('drawings of $name', ({ choices }) => {
  test.each(['north', 'south'] as const)('are made of finite numbers, on the page (%s)', (hemisphere) => {
    for (const [name, scene] of allScenes(frameOf(projectWith(choices), hemisphere).geometry)) {
      for (const { x, y } of [...pathsOf(scene).flatMap(pointsOf), ...textsOf(scene)]) {
        expect(Number.isFinite(x) && Number.isFinite(y), name).toBe(true);
        expect(x, name).toBeGreaterThanOrEqual(-1);
        expect(x, name).toBeLessThanOrEqual(scene.widthMm + 1);
        expect(y, name).toBeGreaterThanOrEqual(-1);
        expect(y, name).toBeLessThanOrEqual(scene.heightMm + 1);
      }
    }
  });
});

describe('what is written is what is computed', () => {
  const said = Object.fromEntries(
    allScenes(north, exactWords).map(([name, scene]) => [
      name,
      textsOf(scene)
        .flatMap(({ text }) => (/^\d+\.\d{4}$/.test(text) ? [Number(text)] : []))
        .sort((a, b) => a - b),
    ]),
  );
  const sorted = (...values: number[]): readonly unknown[] =>
    values.sort((a, b) => a - b).map((value) => expect.closeTo(value, 3) as unknown);
  const sash = north.sashes[2]!;
  const stakes = ['equator', 'poleward'].map(
    (wall) => -north.stakes.find((stake) => stake.wall === wall)!.bottomMm,
  );

  test.each([
    ['ground', sorted(north.outsideLengthMm, north.outsideDepthMm)],
    ['side-walls', sorted(north.insideLengthMm, 11.83304 * 25.4)],
    ['equator-wall', sorted(north.insideDepthMm)],
    [
      'plan',
      sorted(
        ...north.sashes.map(({ widthMm }) => widthMm),
        north.insideLengthMm,
        north.insideDepthMm,
        north.outsideLengthMm,
        north.outsideDepthMm,
      ),
    ],
    [
      'section',
      sorted(
        north.equatorHeightMm,
        north.polewardHeightMm,
        ...stakes,
        north.insideDepthMm,
        north.soilDepthMm,
        sash.bearingPolewardMm,
        sash.bearingEquatorMm,
        sash.lengthMm,
      ),
    ],
  ])('%s', (name, expected) => {
    expect(said[name]).toEqual(expected);
  });
});

describe('what is drawn is to scale', () => {
  test.each([
    ['plan', (): number => north.outsideLengthMm],
    ['section', (): number => north.insideDepthMm],
  ] as const)('every length of the %s has a line as long as it says', (name, known) => {
    const [, scene] = allScenes(north, exactWords).find(([other]) => other === name)!;
    const lines = pathsOf(scene).flatMap(({ commands, stroke }) => {
      const [start, end] = commands;
      if (stroke !== 'thin' || commands.length !== 2 || start?.[0] !== 'M' || end?.[0] !== 'L') return [];
      return [Math.hypot(end[1] - start[1], end[2] - start[2])];
    });
    // The scale is read off one known length; all others must agree with it.
    const scales = lines.map((length) => length / known());
    const lengths = textsOf(scene).flatMap(({ text }) => (/^\d+\.\d{4}$/.test(text) ? [Number(text)] : []));
    const fits = (scale: number): boolean =>
      lengths.every((mm) => lines.some((line) => Math.abs(line - mm * scale) < 0.01));
    expect(scales.some(fits)).toBe(true);
  });

  test('the sash of the section lies at the computed slope', () => {
    const [, scene] = allScenes(north, exactWords).find(([name]) => name === 'section')!;
    const wood = pathsOf(scene).filter(
      ({ stroke, fill, commands }) => stroke === 'cut' && fill === 'paper' && commands.length === 5,
    );
    const slopes = wood.map((item) => {
      const [a, b] = pointsOf(item) as [{ x: number; y: number }, { x: number; y: number }];
      return (Math.atan2(b.y - a.y, a.x - b.x) * 180) / Math.PI;
    });
    expect(slopes).toHaveLength(3);
    for (const slope of slopes) expect(slope).toBeCloseTo(north.slopeDeg, 6);
  });
});

describe('south of the equator', () => {
  const scene = (geometry: typeof north, name: string) =>
    allScenes(geometry).find(([other]) => other === name)![1];

  test('the plan keeps north up, so the tall wall is at the bottom', () => {
    // A bale on edge has no strings on top: the row of outlines without lines inside is the tall wall.
    const wallMiddle = (geometry: typeof north): number => {
      const outlines = pathsOf(scene(geometry, 'plan')).filter(
        ({ stroke, fill }) => stroke === 'seen' && fill === 'paper',
      );
      const heights = outlines.map((item) => {
        const ys = pointsOf(item).map(({ y }) => y);
        return { middle: (Math.min(...ys) + Math.max(...ys)) / 2, height: Math.max(...ys) - Math.min(...ys) };
      });
      // 14 in thick against 18 in: the tall wall has the thinnest outlines.
      const thinnest = Math.min(...heights.map(({ height }) => height));
      const own = heights.find(({ height }) => height < thinnest + 0.01)!;
      return own.middle / scene(geometry, 'plan').heightMm;
    };
    const cutPieces = layFrame(sizesOf(projectWith({ sashes: [[36, Math.sqrt(1312) + 6]] })), 'north');
    const cutPiecesSouth = layFrame(sizesOf(projectWith({ sashes: [[36, Math.sqrt(1312) + 6]] })), 'south');
    expect(wallMiddle(cutPieces)).toBeLessThan(0.4);
    expect(wallMiddle(cutPiecesSouth)).toBeGreaterThan(0.6);
  });

  test('the section keeps north on the right, so the tall wall is on the left', () => {
    const tallest = (geometry: typeof north): number => {
      const walls = pathsOf(scene(geometry, 'section')).filter(
        ({ stroke, fill }) => stroke === 'cut' && fill === 'tint',
      );
      const byHeight = walls.map((item) => {
        const points = pointsOf(item);
        const ys = points.map(({ y }) => y);
        return { x: points[0]!.x, height: Math.max(...ys) - Math.min(...ys) };
      });
      return byHeight.reduce((a, b) => (b.height > a.height ? b : a)).x;
    };
    expect(tallest(north)).toBeGreaterThan(75);
    expect(tallest(south)).toBeLessThan(75);
    const at = (geometry: typeof north, letter: string): number =>
      textsOf(scene(geometry, 'section')).find(({ text }) => text === letter)!.x;
    for (const geometry of [north, south]) expect(at(geometry, 'N')).toBeGreaterThan(at(geometry, 'S'));
  });

  test('steps are seen from the sun side, so their north arrow points at the viewer', () => {
    const letterAboveMiddle = (geometry: typeof north): boolean =>
      textsOf(scene(geometry, 'ground')).find(({ text }) => text === 'N')!.y < 9;
    expect(letterAboveMiddle(north)).toBe(true);
    expect(letterAboveMiddle(south)).toBe(false);
  });
});

describe('the steps in order', () => {
  const inkOf = (name: string) => pathsOf(allScenes(north).find(([other]) => other === name)![1]);

  test('what a step adds is heavy: every step but the last rows has cut lines', () => {
    for (const name of [
      'ground',
      'poleward-wall',
      'side-walls',
      'equator-wall',
      'gaps',
      'soil',
      'sashes',
      'vent',
    ]) {
      expect(
        inkOf(name).some(({ stroke, hue }) => stroke === 'cut' && hue !== 'clay'),
        name,
      ).toBe(true);
    }
  });

  test('what stands already is light: one more wall does not make the others heavy', () => {
    // Outlines of added bales: three of the tall wall, two and two cut pieces at the sides, three in front.
    const outlines = (name: string): number =>
      inkOf(name).filter(({ stroke, hue, fill }) => stroke === 'cut' && hue !== 'clay' && fill === undefined)
        .length;
    expect([
      outlines('poleward-wall'),
      outlines('side-walls'),
      outlines('equator-wall'),
      outlines('stakes'),
    ]).toEqual([3, 4, 3, 0]);
  });

  test('each step that moves something has an arrow', () => {
    for (const name of [
      'poleward-wall',
      'side-walls',
      'equator-wall',
      'stakes',
      'gaps',
      'soil',
      'sashes',
      'vent',
    ]) {
      expect(
        inkOf(name).some(({ fill, hue }) => fill === 'ink' && hue === 'clay'),
        name,
      ).toBe(true);
    }
  });

  test('parts carry their letter where they first come', () => {
    const firstWith: Readonly<Record<string, string>> = {
      'poleward-wall': 'A',
      stakes: 'B',
      gaps: 'D',
      soil: 'E',
      sow: 'H',
      sashes: 'C',
      vent: 'F',
    };
    for (const [name, letter] of Object.entries(firstWith)) {
      const [, scene] = allScenes(north).find(([other]) => other === name)!;
      expect(
        textsOf(scene).map(({ text }) => text),
        name,
      ).toContain(letter);
    }
  });
});
