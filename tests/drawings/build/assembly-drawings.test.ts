import { describe, expect, test } from 'vitest';
import { drawnMeasures } from '../../../scripts/drawings/build/assembly-drawings.ts';
import { boxSolid } from '../../../scripts/drawings/axonometric.ts';
import { membersAt } from '../../../scripts/drawings/build/bodies.ts';
import { segmentsMeet, type Segment } from '../../../scripts/drawings/build/clearances.ts';
import { linesOf } from '../../../scripts/drawings/build/measures.ts';
import type { Point } from '../../../scripts/drawings/path.ts';
import type { Scene } from '../../../scripts/drawings/scene.ts';
import type { Member } from '../../../scripts/structures/assembly.ts';
import type { Hemisphere } from '../../../scripts/structures/geometry.ts';
import { crossedTexts } from '../frame/ink.ts';
import { pathsOf, pointsOf, textsOf } from '../frame/scenes.ts';
import { balloonsOf, lettersOf, offPage, wordsOnWords } from './checks.ts';
import { raisedBed, samplesFor, tepee, type Sample } from './samples.ts';
import { allScenes, drawingsOf, exactWordsOf } from './scenes.ts';

const samples = (['north', 'south'] as const).flatMap((hemisphere) =>
  samplesFor(hemisphere).map((sample) => ({ sample, title: `${sample.name}, ${hemisphere}` })),
);

const sampleOf = (name: string, hemisphere: Hemisphere = 'north'): Sample =>
  samplesFor(hemisphere).find((sample) => sample.name === name)!;

describe.each(samples)('drawings of the $title', ({ sample }) => {
  const scenes = allScenes(sample);
  const exact = drawingsOf(sample, exactWordsOf(sample));

  test.each(scenes)('%s: no line runs through words', async (_, scene) => {
    expect(await crossedTexts(scene)).toEqual([]);
  });

  test.each(scenes)('%s: no words lie on words', (_, scene) => {
    expect(wordsOnWords(scene)).toEqual([]);
  });

  test.each(scenes)('%s: all of it is on the page', (_, scene) => {
    expect(offPage(scene)).toEqual([]);
  });

  test.each(scenes)('%s: says in words what it shows', (_, scene) => {
    expect(scene.alternative.trim()).not.toBe('');
    expect(scene.id).toMatch(/^[a-z0-9-]+$/);
  });

  test.each(scenes)('%s: balloons and their lines keep out of each other’s way', (_, scene) => {
    const balloons = balloonsOf(scene);
    for (const [index, one] of balloons.entries()) {
      for (const other of balloons.slice(index + 1)) {
        expect(Math.hypot(one.x - other.x, one.y - other.y)).toBeGreaterThan(2 * one.radius + 0.5);
      }
    }
    const leaders = leadersOf(scene);
    const crossing = leaders.filter((one, index) =>
      leaders.slice(index + 1).some((other) => segmentsMeet(one, other)),
    );
    expect(crossing).toEqual([]);
  });

  test('are the same every time', () => {
    expect(JSON.stringify(allScenes(sample))).toBe(JSON.stringify(scenes));
  });

  test('have ids of their own', () => {
    const ids = scenes.map(([, { id }]) => id);
    expect(new Set(ids).size).toBe(ids.length);
  });

  test('have the sizes that a sheet and a phone have room for', () => {
    for (const [name, { widthMm, heightMm }] of scenes) {
      if (name.startsWith('step')) expect([widthMm, heightMm], name).toEqual([74, 54]);
      else expect(widthMm, name).toBe(name.startsWith('narrow') ? 84 : 150);
      expect(heightMm, name).toBeLessThan(150);
    }
  });

  test('plan and steps have one north arrow, the section its two ends', () => {
    for (const [name, scene] of scenes) {
      const letters = textsOf(scene).filter(({ text, style }) => text === 'N' && style === 'strong');
      expect(letters, name).toHaveLength(name.endsWith('elevation') ? 0 : 1);
    }
  });

  test('every letter of the list is in some step, where its part comes in', () => {
    const told = new Set(
      scenes.filter(([name]) => name.startsWith('step')).flatMap(([, scene]) => lettersOf(scene)),
    );
    const used = new Set(sample.assembly.members.map(({ role }) => sample.letters[role]!));
    expect([...used].filter((letter) => !told.has(letter))).toEqual([]);
  });

  test('each step has a letter for each role that it adds', () => {
    const { members, stages } = sample.assembly;
    for (const [index, stage] of stages.entries()) {
      const roles = [...new Set(members.filter((member) => member.stage === stage).map(({ role }) => role))];
      const scene = scenes.find(([name]) => name === `step ${stage}`)![1];
      expect(lettersOf(scene), `${index} ${stage}`).toEqual(
        expect.arrayContaining(roles.map((role) => sample.letters[role]!)),
      );
      expect(lettersOf(scene), stage).toHaveLength(roles.length);
    }
  });

  test('what is drawn is as long as what was computed', () => {
    const drawn = drawnMeasures(sample.assembly);
    expect(drawn).toHaveLength(sample.assembly.measures.length);
    for (const { finding, lengthMm } of drawn)
      expect(lengthMm, finding).toBeCloseTo(sample.valuesMm[finding]!, 2);
  });

  test.each(['plan', 'elevation', 'section'] as const)(
    'every length of the %s has a line to scale',
    (name) => {
      const { [name]: scene } = exact;
      const said = textsOf(scene).flatMap(({ text }) => (/^\d+\.\d{4}$/.test(text) ? [Number(text)] : []));
      const expected = sample.assembly.measures
        .filter((measure) => measure.in === name)
        .map(({ finding }) => sample.valuesMm[finding]!);
      expect([...said].sort()).toEqual(expected.map((mm) => Number(mm.toFixed(4))).sort());
      const lines = pathsOf(scene).flatMap((item) => {
        if (item.stroke !== 'thin' || item.commands.length !== 2) return [];
        const [a, b] = pointsOf(item) as [Point, Point];
        return [Math.hypot(a.x - b.x, a.y - b.y)];
      });
      // The scale is read off the longest; all others must agree with it.
      const longest = Math.max(...said);
      const fits = (scale: number): boolean =>
        said.every((mm) => lines.some((line) => Math.abs(line - mm * scale) < 0.02));
      expect(lines.some((line) => fits(line / longest))).toBe(true);
    },
  );

  test('a step draws heavily only what it adds', () => {
    const { members, stages } = sample.assembly;
    for (const [index, stage] of stages.entries()) {
      if (index === 0) continue;
      const added = members.filter((member) => member.stage === stage);
      const scene = scenes.find(([name]) => name === `step ${stage}`)![1];
      const heavy = pathsOf(scene).filter(({ stroke, hue }) => stroke === 'cut' && hue !== 'clay');
      if (added.length === 0) expect(heavy, stage).toEqual([]);
      const tinted = pathsOf(scene).filter(({ fill }) => fill === 'tint' || fill === 'shade');
      if (added.length === 0) expect(tinted, stage).toEqual([]);
    }
  });

  test('what is lifted or poured in comes with an arrow', () => {
    const { members, stages } = sample.assembly;
    for (const stage of stages) {
      const moves = members.some(
        (member) =>
          member.stage === stage &&
          (member.liftMm !== undefined || ['soil', 'gravel', 'compost'].includes(member.surface)),
      );
      const scene = scenes.find(([name]) => name === `step ${stage}`)![1];
      const heads = pathsOf(scene).filter(({ fill, hue }) => fill === 'ink' && hue === 'clay');
      expect(heads.length > 0, stage).toBe(moves);
    }
  });
});

/** Builds of other sizes than a first look was taken at. */
const odd: readonly { readonly title: string; readonly sample: Sample }[] = [
  { title: 'a bed of 12 by 2 ft', sample: raisedBed('north', [3658, 610, 140]) },
  { title: 'a bed of 2 ft square, one narrow board high', sample: raisedBed('north', [610, 610, 44]) },
  {
    title: 'a high bed, longer from equator to pole than across',
    sample: raisedBed('south', [900, 2400, 286]),
  },
  { title: 'three poles', sample: tepee('north', 3) },
  { title: 'eight poles', sample: tepee('south', 8) },
  {
    title: 'a bed without letters and measures',
    sample: {
      ...raisedBed('north'),
      letters: {},
      assembly: { ...raisedBed('north').assembly, measures: [] },
    },
  },
  {
    title: 'one board',
    sample: {
      ...raisedBed('north'),
      assembly: { ...raisedBed('north').assembly, members: raisedBed('north').assembly.members.slice(4, 5) },
    },
  },
];

describe.each(odd)('drawings of $title', ({ sample }) => {
  const scenes = allScenes(sample);

  test.each(scenes)('%s: on the page, without a line or words through words', async (_, scene) => {
    expect(offPage(scene)).toEqual([]);
    expect(await crossedTexts(scene)).toEqual([]);
    expect(wordsOnWords(scene)).toEqual([]);
  });
});

describe('the sides of the world', () => {
  const middleOf = (scene: Scene, letter: string): Point => {
    const { x, y } = textsOf(scene).find(({ text }) => text === letter)!;
    return { x, y };
  };

  test.each(['north', 'south'] as const)(
    'north is up on the plan and right on the section (%s)',
    (hemisphere) => {
      const { plan, section } = drawingsOf(sampleOf('cold frame', hemisphere));
      expect(middleOf(plan, 'N').y).toBeLessThan(plan.heightMm / 4);
      expect(middleOf(section, 'N').x).toBeGreaterThan(middleOf(section, 'S').x);
    },
  );

  test.each([
    ['north', 'poleward', 'equator'],
    ['south', 'equator', 'poleward'],
  ] as const)('on the plan of the %s the %s side is up, and east is right', (hemisphere, up, down) => {
    const post = (role: string, x: number, y: number): Member => ({
      role,
      surface: 'wood',
      stage: 'posts',
      solid: boxSolid({ x, y, z: 0 }, { x: x + 300, y: y + 300, z: 500 }),
    });
    const sample: Sample = {
      ...sampleOf('raised bed'),
      letters: { poleward: 'P', equator: 'Q', east: 'E', west: 'W' },
      assembly: {
        hemisphere,
        members: [
          post('equator', 1000, 0),
          post('poleward', 1000, 2000),
          post('east', 2000, 1000),
          post('west', 0, 1000),
        ],
        stages: ['posts'],
        measures: [],
        sectionAtX: 500,
      },
    };
    const { plan } = drawingsOf(sample);
    const of = (role: string): Point => middleOf(plan, sample.letters[role]!);
    expect(of(up).y).toBeLessThan(of(down).y - 10);
    expect(of('west').x).toBeLessThan(of('east').x - 10);
  });

  test('the high back of a frame is on the right of the section in the north, on the left in the south', () => {
    const backX = (hemisphere: Hemisphere): number => {
      const sample = sampleOf('cold frame', hemisphere);
      return middleOf(drawingsOf(sample, exactWordsOf(sample)).section, '381.0000').x;
    };
    expect(backX('north')).toBeGreaterThan(120);
    expect(backX('south')).toBeLessThan(30);
  });

  test('a measure whose side is named as in the north stands at its own end in the south too', () => {
    const asInNorth = (name: string): Sample => {
      const [north, south] = [sampleOf(name), sampleOf(name, 'south')];
      const measures = south.assembly.measures.map((measure, index) => ({
        ...measure,
        side: north.assembly.measures[index]!.side,
      }));
      return { ...south, assembly: { ...south.assembly, measures } };
    };
    const [frame, bed] = [asInNorth('cold frame'), asInNorth('keyhole bed')];
    expect(middleOf(drawingsOf(frame, exactWordsOf(frame)).section, '381.0000').x).toBeLessThan(30);
    expect(middleOf(drawingsOf(bed, exactWordsOf(bed)).plan, '565.5011').y).toBeLessThan(25);
  });

  test('the sun stands on the side of the low front', () => {
    const sunX = (hemisphere: Hemisphere): number =>
      middleOf(drawingsOf(sampleOf('cold frame', hemisphere)).section, 'Sun').x;
    expect(sunX('north')).toBeLessThan(75);
    expect(sunX('south')).toBeGreaterThan(75);
  });

  test('steps are seen from the sun side: their arrow points away in the north, to the viewer in the south', () => {
    const tipToFoot = (hemisphere: Hemisphere): number => {
      const scene = drawingsOf(sampleOf('raised bed', hemisphere)).step('soil', 5);
      const letter = middleOf(scene, 'N');
      return letter.y - 9;
    };
    expect(tipToFoot('north')).toBeLessThan(0);
    expect(tipToFoot('south')).toBeGreaterThan(0);
  });

  test('east is on the right of an elevation from the south, on the left of one from the north', () => {
    // A stake at the east end alone.
    const sample = (hemisphere: Hemisphere): Sample => {
      const bed = sampleOf('raised bed', hemisphere);
      const members = bed.assembly.members.filter(
        ({ role, solid }) => role !== 'corner-post' || solid.faces.flat().every(({ x }) => x > 1000),
      );
      return { ...bed, assembly: { ...bed.assembly, members } };
    };
    const buriedX = (hemisphere: Hemisphere): number => {
      const dashed = pathsOf(drawingsOf(sample(hemisphere)).elevation).filter(
        ({ stroke }) => stroke === 'hidden',
      );
      return pointsOf(dashed[0]!)[0]!.x;
    };
    expect(buriedX('north')).toBeGreaterThan(75);
    expect(buriedX('south')).toBeLessThan(75);
  });
});

describe('what a builder has to see', () => {
  test('all steps share one view: what stands does not move', () => {
    const sample = sampleOf('keyhole bed');
    const { step } = drawingsOf(sample);
    // In two steps that both have all three courses, the light outlines are the same.
    const standing = (stage: string): readonly string[] =>
      pathsOf(step(stage, 1))
        .filter(({ stroke, commands }) => stroke === 'thin' && commands.at(-1)![0] === 'Z')
        .map(({ commands }) => JSON.stringify(commands));
    const later = new Set(standing('soil'));
    const blocks = standing('compost').filter((outline) => later.has(outline));
    expect(blocks.length).toBeGreaterThanOrEqual(3 * 13);
  });

  test('a guide string is there until its time is over', () => {
    const { assembly } = sampleOf('keyhole bed');
    const strings = assembly.stages.map(
      (_, step) => membersAt(assembly, step).filter(({ member }) => member.role === 'string').length,
    );
    expect(strings).toEqual([1, 0, 0, 0, 0, 0, 0, 0]);
  });

  test('the bare ground of a first step is marked with its sizes', () => {
    const sample = sampleOf('raised bed');
    const scene = drawingsOf(sample, exactWordsOf(sample)).step('ground', 1);
    expect(textsOf(scene).map(({ text }) => text)).toEqual(
      expect.arrayContaining(['2438.0000', '1219.0000']),
    );
    expect(pathsOf(scene).some(({ stroke, fill }) => stroke === 'cut' && fill === 'tint')).toBe(true);
  });

  test('what a step adds out of sight is dashed and still has its letter', () => {
    const scene = drawingsOf(sampleOf('cold frame')).step('hinges', 6);
    expect(pathsOf(scene).filter(({ stroke }) => stroke === 'hidden')).toHaveLength(2);
    expect(lettersOf(scene)).toEqual(['H']);
  });

  test('where a lid comes down is dashed before it lies there', () => {
    const scene = drawingsOf(sampleOf('cold frame')).step('lid', 5);
    expect(pathsOf(scene).some(({ stroke }) => stroke === 'hidden')).toBe(true);
  });

  test('poles in the ground are dashed there', () => {
    const { elevation } = drawingsOf(sampleOf('tepee'));
    expect(pathsOf(elevation).filter(({ stroke }) => stroke === 'hidden')).toHaveLength(5);
  });

  test('the section cuts heavily through boards and soil, and is thin beyond', () => {
    const { section } = drawingsOf(sampleOf('raised bed'));
    const cut = pathsOf(section).filter(({ stroke, fill }) => stroke === 'cut' && fill !== undefined);
    // Two courses on either side, and the soil.
    expect(cut).toHaveLength(5);
  });

  test('a joint that lies right on the plane of the section is cut once', () => {
    const sample = sampleOf('raised bed');
    const middle = sample.assembly.sectionAtX;
    const half = (member: Member, from: number, to: number): Member => {
      const corners = member.solid.faces.flat();
      const [low, high] = [Math.min, Math.max].map((pick) => ({
        x: 0,
        y: pick(...corners.map(({ y }) => y)),
        z: pick(...corners.map(({ z }) => z)),
      })) as [Point & { z: number }, Point & { z: number }];
      return { ...member, solid: boxSolid({ ...low, x: from }, { ...high, x: to }) };
    };
    const members = sample.assembly.members.flatMap((member) =>
      member.role === 'side-board' ? [half(member, 0, middle), half(member, middle, 2 * middle)] : [member],
    );
    const { section } = drawingsOf({ ...sample, assembly: { ...sample.assembly, members } });
    const cut = pathsOf(section).filter(({ stroke, fill }) => stroke === 'cut' && fill !== undefined);
    expect(cut).toHaveLength(5);
  });

  test('of a round bed the section cuts the wall away from the notch', () => {
    const { section } = drawingsOf(sampleOf('keyhole bed'));
    const blocks = pathsOf(section).filter(({ stroke, fill }) => stroke === 'cut' && fill === 'tint');
    // Three courses, and the compost.
    expect(blocks).toHaveLength(4);
  });

  test('a surface of many parts has no joints drawn in it', () => {
    const { plan } = drawingsOf(sampleOf('keyhole bed'));
    const lines = pathsOf(plan)
      .filter(({ stroke }) => stroke !== undefined)
      .flatMap((item) => linesOf([item]).map(([a, b]) => Math.hypot(a.x - b.x, a.y - b.y)));
    // The longest line is the dimension of 1830 mm; a joint would run from the basket to the blocks.
    const jointMm = ((715 - 205) * Math.max(...lines)) / 1830;
    // Only the two ends at the notch of gravel, compost and soil.
    expect(lines.filter((line) => Math.abs(line - jointMm) < 0.02)).toHaveLength(6);
  });

  test('a stage that the assembly does not have is refused', () => {
    expect(() => drawingsOf(sampleOf('tepee')).step('roof', 1)).toThrow('roof');
  });
});

test('a measure out of the plane of its drawing is found out', () => {
  const sample = sampleOf('cold frame');
  const slanting = {
    ...sample.assembly,
    measures: [
      {
        finding: 'frame.slant',
        from: { x: 0, y: 0, z: 203 },
        to: { x: 0, y: 914, z: 381 },
        in: 'plan',
        side: 'left',
      } as const,
    ],
  };
  expect(drawnMeasures(slanting)[0]!.lengthMm).toBeCloseTo(914, 6);
});

/** The line of each balloon: the item before the dot before the ring. */
function leadersOf(scene: Scene): readonly Segment[] {
  return scene.items.flatMap((item, index) => {
    const [line, dot] = [scene.items[index - 2], scene.items[index - 1]];
    const isRing = item.kind === 'circle' && item.radius > 2.3 && item.radius < 2.4;
    return isRing && dot?.kind === 'circle' && dot.radius === 0.55 && line ? linesOf([line]) : [];
  });
}
