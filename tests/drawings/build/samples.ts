/** Rough invented builds, one of each kind that the drawings are made for, in the layout of an assembly. Millimetres. */
import { boxSolid, prism } from '../../../scripts/drawings/axonometric.ts';
import type { Assembly, Member, ShownMeasure, Solid, Surface } from '../../../scripts/structures/assembly.ts';
import type { Hemisphere, Spot } from '../../../scripts/structures/geometry.ts';

export interface Sample {
  readonly name: string;
  readonly assembly: Assembly;
  readonly letters: Readonly<Record<string, string>>;
  /** What each measured finding comes to, worked out apart from the spots. */
  readonly valuesMm: Readonly<Record<string, number>>;
}

export function samplesFor(hemisphere: Hemisphere): readonly Sample[] {
  return [raisedBed(hemisphere), coldFrame(hemisphere), keyholeBed(hemisphere), tepee(hemisphere)];
}

type Extra = Partial<Pick<Member, 'liftMm' | 'until' | 'smooth'>>;

function member(role: string, surface: Surface, stage: string, solid: Solid, extra: Extra = {}): Member {
  return { role, surface, stage, solid, ...extra };
}

const spot = (x: number, y: number, z: number): Spot => ({ x, y, z });

/** 8 by 4 ft of boards two courses high, on corner posts. */
export function raisedBed(
  hemisphere: Hemisphere,
  size: readonly [number, number, number] = [2438, 1219, 184],
): Sample {
  const [long, deep, board] = size;
  const [thick, post] = [38, 89];
  const high = 2 * board;
  const posts = [0, long - 2 * thick - post].flatMap((x) =>
    [0, deep - 2 * thick - post].map((y) =>
      member(
        'corner-post',
        'wood',
        'ends',
        boxSolid(spot(thick + x, thick + y, -300), spot(thick + x + post, thick + y + post, high)),
      ),
    ),
  );
  const boards = [0, 1].flatMap((course) => {
    const [low, top] = [course * board, (course + 1) * board];
    return [
      ...[0, long - thick].map((x) =>
        member(
          'end-board',
          'wood',
          'ends',
          boxSolid(spot(x, thick, low), spot(x + thick, deep - thick, top)),
        ),
      ),
      ...[0, deep - thick].map((y) =>
        member('side-board', 'wood', 'sides', boxSolid(spot(0, y, low), spot(long, y + thick, top)), {
          ...(course === 1 ? { liftMm: 300 } : {}),
        }),
      ),
    ];
  });
  const cloth = member('liner', 'cloth', 'liner', {
    faces: [
      [
        spot(thick, thick, 2),
        spot(long - thick, thick, 2),
        spot(long - thick, deep - thick, 2),
        spot(thick, deep - thick, 2),
      ],
    ],
  });
  const soil = member(
    'soil',
    'soil',
    'soil',
    boxSolid(spot(thick, thick, 4), spot(long - thick, deep - thick, high - 40)),
  );
  const plants = [0.2, 0.5, 0.8].flatMap((share) =>
    [0, 1, 2, 3, 4, 5].map((index) => {
      const [x, y] = [long * (0.1 + index * 0.16), thick + (deep - 2 * thick) * share];
      return member(
        'plant',
        'plant',
        'sow',
        boxSolid(spot(x - 40, y - 40, high - 40), spot(x + 40, y + 40, high + 110)),
      );
    }),
  );
  const measures: readonly ShownMeasure[] = [
    { finding: 'bed.length', from: spot(0, 0, high), to: spot(long, 0, high), in: 'plan', side: 'below' },
    { finding: 'bed.depth', from: spot(0, 0, high), to: spot(0, deep, high), in: 'plan', side: 'left' },
    {
      finding: 'bed.inside-depth',
      from: spot(long, thick, high),
      to: spot(long, deep - thick, high),
      in: 'plan',
      side: 'right',
    },
    {
      finding: 'bed.inside-length',
      from: spot(thick, deep, high),
      to: spot(long - thick, deep, high),
      in: 'plan',
      side: 'above',
    },
    {
      finding: 'bed.length',
      from: spot(0, 0, high),
      to: spot(long, 0, high),
      in: 'elevation',
      side: 'above',
    },
    { finding: 'bed.height', from: spot(0, 0, 0), to: spot(0, 0, high), in: 'elevation', side: 'left' },
    {
      finding: 'bed.height',
      from: spot(long / 2, 0, 0),
      to: spot(long / 2, 0, high),
      in: 'section',
      side: 'left',
    },
    {
      finding: 'bed.soil-depth',
      from: spot(long / 2, deep, 4),
      to: spot(long / 2, deep, high - 40),
      in: 'section',
      side: 'right',
    },
    {
      finding: 'bed.board',
      from: spot(long / 2, 0, high),
      to: spot(long / 2, thick, high),
      in: 'section',
      side: 'above',
    },
    {
      finding: 'bed.inside-depth',
      from: spot(long / 2, thick, 0),
      to: spot(long / 2, deep - thick, 0),
      in: 'section',
      side: 'below',
    },
  ];
  return {
    name: 'raised bed',
    assembly: {
      hemisphere,
      members: [...posts, ...boards, cloth, soil, ...plants],
      stages: ['ground', 'ends', 'sides', 'liner', 'soil', 'sow', 'water'],
      measures,
      sectionAtX: long / 2,
    },
    letters: { 'end-board': 'A', 'side-board': 'B', 'corner-post': 'C', liner: 'E', soil: 'F', plant: 'G' },
    valuesMm: {
      'bed.length': long,
      'bed.depth': deep,
      'bed.inside-depth': deep - 76,
      'bed.inside-length': long - 76,
      'bed.height': 2 * board,
      'bed.soil-depth': 2 * board - 44,
      'bed.board': 38,
    },
  };
}

/** Back 15 in, front 8 in high, sides cut to the slope, a glazed lid on hinges. */
function coldFrame(hemisphere: Hemisphere): Sample {
  const [long, deep, thick, low, high] = [1219, 914, 19, 203, 381];
  const slope = (high - low) / deep;
  const at = (y: number): number => low + slope * y;
  const board = (role: string, stage: string, from: Spot, to: Spot): Member =>
    member(role, 'wood', stage, boxSolid(from, to));
  const side = (x: number): Member =>
    member(
      'side-board',
      'wood',
      'sides',
      prism(
        [
          spot(x, thick, 0),
          spot(x, deep - thick, 0),
          spot(x, deep - thick, at(deep - thick)),
          spot(x, thick, at(thick)),
        ],
        spot(thick, 0, 0),
      ),
    );
  const cleats = [thick, long - thick - 38].flatMap((x) => [
    board('cleat', 'sides', spot(x, thick, 0), spot(x + 38, thick + 38, low - 10)),
    board('cleat', 'sides', spot(x, deep - thick - 38, 0), spot(x + 38, deep - thick, high - 30)),
  ]);
  const lift = 330;
  const rail = 64;
  const lid = (
    role: string,
    surface: Surface,
    [x1, x2]: readonly [number, number],
    [y1, y2]: readonly [number, number],
  ): Member =>
    member(
      role,
      surface,
      'lid',
      prism(
        [spot(x1, y1, at(y1)), spot(x2, y1, at(y1)), spot(x2, y2, at(y2)), spot(x1, y2, at(y2))],
        spot(0, 0, surface === 'glass' ? 10 : 25),
      ),
      { liftMm: lift },
    );
  const frame = [
    lid('lid-rail', 'wood', [0, rail], [0, deep]),
    lid('lid-rail', 'wood', [long - rail, long], [0, deep]),
    lid('lid-rail', 'wood', [rail, long - rail], [0, rail]),
    lid('lid-rail', 'wood', [rail, long - rail], [deep - rail, deep]),
    lid('glazing', 'glass', [rail, long - rail], [rail, deep - rail]),
  ];
  const hinges = [0.2, 0.8].map((share) =>
    member(
      'hinge',
      'metal',
      'hinges',
      boxSolid(spot(long * share - 38, deep, high - 35), spot(long * share + 38, deep + 4, high + 20)),
    ),
  );
  const soil = member(
    'soil',
    'soil',
    'soil',
    boxSolid(spot(thick, thick, 0), spot(long - thick, deep - thick, 120)),
  );
  const measures: readonly ShownMeasure[] = [
    { finding: 'frame.length', from: spot(0, 0, 0), to: spot(long, 0, 0), in: 'plan', side: 'below' },
    { finding: 'frame.depth', from: spot(long, 0, 0), to: spot(long, deep, 0), in: 'plan', side: 'right' },
    { finding: 'frame.front', from: spot(0, 0, 0), to: spot(0, 0, low), in: 'elevation', side: 'left' },
    { finding: 'frame.length', from: spot(0, 0, 0), to: spot(long, 0, 0), in: 'elevation', side: 'below' },
    {
      finding: 'frame.front',
      from: spot(600, 0, 0),
      to: spot(600, 0, low),
      in: 'section',
      side: hemisphere === 'north' ? 'left' : 'right',
    },
    {
      finding: 'frame.back',
      from: spot(600, deep, 0),
      to: spot(600, deep, high),
      in: 'section',
      side: hemisphere === 'north' ? 'right' : 'left',
    },
    {
      finding: 'frame.slant',
      from: spot(600, 0, low + 25),
      to: spot(600, deep, high + 25),
      in: 'section',
      side: 'above',
    },
    {
      finding: 'frame.soil',
      from: spot(600, 0, 0),
      to: spot(600, 0, 120),
      in: 'section',
      side: hemisphere === 'north' ? 'left' : 'right',
    },
    { finding: 'frame.depth', from: spot(600, 0, 0), to: spot(600, deep, 0), in: 'section', side: 'below' },
  ];
  return {
    name: 'cold frame',
    assembly: {
      hemisphere,
      members: [
        board('back-board', 'back', spot(0, deep - thick, 0), spot(long, deep, high)),
        side(0),
        side(long - thick),
        ...cleats,
        board('front-board', 'front', spot(0, 0, 0), spot(long, thick, low)),
        soil,
        ...frame,
        ...hinges,
      ],
      stages: ['back', 'sides', 'front', 'soil', 'lid', 'hinges'],
      measures,
      sectionAtX: long / 2,
    },
    letters: {
      'back-board': 'A',
      'side-board': 'B',
      cleat: 'C',
      'front-board': 'A',
      soil: 'D',
      'lid-rail': 'E',
      glazing: 'F',
      hinge: 'H',
    },
    valuesMm: {
      'frame.length': 1219,
      'frame.depth': 914,
      'frame.front': 203,
      'frame.back': 381,
      // The square root of 914² + 178².
      'frame.slant': 931.1713,
      'frame.soil': 120,
    },
  };
}

const ring = (radius: number, sides: number, z: number, turnDeg = 0): readonly Spot[] =>
  Array.from({ length: sides }, (_, index) => {
    const angle = ((index / sides) * 360 + turnDeg) * (Math.PI / 180);
    return spot(radius * Math.cos(angle), radius * Math.sin(angle), z);
  });

/** A part of a ring between two angles, with a surface that may slope. */
function sector(
  [inner, outer]: readonly [number, number],
  [fromDeg, toDeg]: readonly [number, number],
  z: { readonly from: number; readonly inner: number; readonly outer: number },
): Solid {
  const at = (radius: number, deg: number, height: number): Spot =>
    spot(radius * Math.cos((deg * Math.PI) / 180), radius * Math.sin((deg * Math.PI) / 180), height);
  const corner = (deg: number): readonly [Spot, Spot, Spot, Spot] => [
    at(inner, deg, z.from),
    at(outer, deg, z.from),
    at(outer, deg, z.outer),
    at(inner, deg, z.inner),
  ];
  const [a, b] = [corner(fromDeg), corner(toDeg)];
  return {
    faces: [
      a,
      b,
      ...[0, 1, 2, 3].map((side) => [a[side]!, a[(side + 1) % 4]!, b[(side + 1) % 4]!, b[side]!]),
    ],
  };
}

/** Six feet across, three courses of block, a notch toward the equator, a wire basket in the middle. */
function keyholeBed(hemisphere: Hemisphere): Sample {
  const [radius, thick, course, basket] = [915, 200, 200, 180];
  const [notchFrom, notchTo] = [252, 288];
  const count = 13;
  const pitch = (360 - (notchTo - notchFrom)) / count;
  const blocks = (row: number): readonly Member[] =>
    Array.from({ length: count }, (_, index) => {
      const start = notchTo + index * pitch + (row % 2) * pitch * 0.5;
      const end = Math.min(start + pitch - 1, notchFrom + 360);
      return member(
        'block',
        'block',
        `course-${row + 1}`,
        sector([radius - thick, radius], [start, end], {
          from: row * course,
          inner: (row + 1) * course,
          outer: (row + 1) * course,
        }),
        row === 2 && index === 10 ? { liftMm: 350 } : {},
      );
    });
  const halves = member(
    'half-block',
    'block',
    'course-2',
    sector([radius - thick, radius], [notchTo, notchTo + pitch / 2 - 1], {
      from: course,
      inner: 2 * course,
      outer: 2 * course,
    }),
  );
  const sheets = Array.from({ length: 16 }, (_, index): Member => {
    const [low, high] = [ring(basket, 16, 0), ring(basket, 16, 900)];
    const next = (index + 1) % 16;
    return member(
      'basket',
      'mesh',
      'basket',
      { faces: [[low[index]!, low[next]!, high[next]!, high[index]!]] },
      { smooth: true },
    );
  });
  const stakes = [30, 150, 270].map((deg) => {
    const [x, y] = [195 * Math.cos((deg * Math.PI) / 180), 195 * Math.sin((deg * Math.PI) / 180)];
    return member('stake', 'wood', 'basket', boxSolid(spot(x - 12, y - 12, -250), spot(x + 12, y + 12, 950)));
  });
  const layer = (
    role: string,
    surface: Surface,
    from: number,
    inner: number,
    outer: number,
  ): readonly Member[] =>
    Array.from({ length: 18 }, (_, index) => {
      const pace = (360 - (notchTo - notchFrom)) / 18;
      const start = notchTo + index * pace;
      return member(
        role,
        surface,
        role,
        sector([basket + 25, radius - thick], [start, start + pace], { from, inner, outer }),
        { smooth: true },
      );
    });
  const top = (deg: number): Spot => spot(radius * Math.cos(deg), radius * Math.sin(deg), 3 * course);
  const measures: readonly ShownMeasure[] = [
    { finding: 'bed.across', from: spot(-radius, 0, 0), to: spot(radius, 0, 0), in: 'plan', side: 'above' },
    {
      finding: 'bed.notch',
      from: top((notchFrom * Math.PI) / 180),
      to: top((notchTo * Math.PI) / 180),
      in: 'plan',
      side: hemisphere === 'north' ? 'below' : 'above',
    },
    {
      finding: 'bed.basket',
      from: spot(-basket, 0, 900),
      to: spot(basket, 0, 900),
      in: 'plan',
      side: hemisphere === 'north' ? 'below' : 'above',
    },
    {
      finding: 'bed.height',
      from: spot(radius, 0, 0),
      to: spot(radius, 0, 3 * course),
      in: 'elevation',
      side: 'right',
    },
    {
      finding: 'bed.basket-height',
      from: spot(basket, 0, 0),
      to: spot(basket, 0, 900),
      in: 'elevation',
      side: 'left',
    },
    {
      finding: 'bed.height',
      from: spot(0, radius, 0),
      to: spot(0, radius, 3 * course),
      in: 'section',
      side: hemisphere === 'north' ? 'right' : 'left',
    },
    {
      finding: 'bed.gravel',
      from: spot(0, radius, 0),
      to: spot(0, radius, 150),
      in: 'section',
      side: hemisphere === 'north' ? 'right' : 'left',
    },
    {
      finding: 'bed.basket',
      from: spot(0, -basket, 900),
      to: spot(0, basket, 900),
      in: 'section',
      side: 'above',
    },
  ];
  return {
    name: 'keyhole bed',
    assembly: {
      hemisphere,
      members: [
        member('string', 'cord', 'mark', boxSolid(spot(0, -2, 100), spot(radius, 2, 104)), {
          until: 'course-1',
        }),
        ...blocks(0),
        ...sheets,
        ...stakes,
        ...blocks(1).slice(0, -1),
        halves,
        ...blocks(2),
        ...layer('gravel', 'gravel', 0, 150, 150),
        ...layer('compost', 'compost', 150, 380, 330),
        ...layer('soil', 'soil', 380, 660, 540),
      ],
      stages: ['mark', 'course-1', 'basket', 'course-2', 'course-3', 'gravel', 'compost', 'soil'],
      measures,
      sectionAtX: 0,
    },
    letters: {
      string: 'S',
      block: 'A',
      'half-block': 'A',
      basket: 'B',
      stake: 'C',
      gravel: 'D',
      compost: 'E',
      soil: 'F',
    },
    valuesMm: {
      'bed.across': 1830,
      // Twice the radius times the sine of half of 36 degrees.
      'bed.notch': 565.5011,
      'bed.basket': 360,
      'bed.height': 600,
      'bed.basket-height': 900,
      'bed.gravel': 150,
    },
  };
}

/** A slanting round rod of eight sides. */
function rod(from: Spot, to: Spot, radius: number): Solid {
  const end = (at: Spot): readonly Spot[] =>
    ring(radius, 8, 0).map(({ x, y }) => spot(at.x + x, at.y + y, at.z));
  const [low, high] = [end(from), end(to)];
  return {
    faces: [
      low,
      high,
      ...low.map((_, index) => {
        const next = (index + 1) % 8;
        return [low[index]!, low[next]!, high[next]!, high[index]!];
      }),
    ],
  };
}

/** Five poles of 8 ft that lean together, lashed near the top, with strings round them and a ring of beans. */
export function tepee(hemisphere: Hemisphere, poles = 5): Sample {
  const [foot, lash, top] = [600, 1900, 2200];
  const at = (deg: number, z: number): Spot => {
    const away = foot * (1 - z / lash) + 30;
    return spot(away * Math.cos((deg * Math.PI) / 180), away * Math.sin((deg * Math.PI) / 180), z);
  };
  const degs = Array.from({ length: poles }, (_, index) => 90 + (index * 360) / poles);
  const pole = degs.map((deg) =>
    member('pole', 'wood', 'poles', rod(at(deg, -200), at(deg, top), 16), { smooth: true }),
  );
  const lashing = ring(75, 8, lash).map((from, index, list) => {
    const to = list[(index + 1) % 8]!;
    return member('twine', 'cord', 'lash', {
      faces: [[from, to, { ...to, z: to.z + 30 }, { ...from, z: from.z + 30 }]],
    });
  });
  const strings = [400, 800, 1200].flatMap((z) =>
    degs
      .slice(0, -1)
      .map((deg, index) =>
        member('string', 'cord', 'strings', { faces: [[at(deg, z), at(degs[index + 1]!, z)]] }),
      ),
  );
  const plants = degs.flatMap((deg) =>
    [-15, 15].map((off) => {
      const { x, y } = at(deg + off, 0);
      return member(
        'plant',
        'plant',
        'sow',
        boxSolid(spot(x * 1.08 - 30, y * 1.08 - 30, 0), spot(x * 1.08 + 30, y * 1.08 + 30, 150)),
      );
    }),
  );
  const measures: readonly ShownMeasure[] = [
    { finding: 'tepee.spread', from: spot(-630, 0, 0), to: spot(630, 0, 0), in: 'plan', side: 'below' },
    { finding: 'tepee.height', from: spot(0, 0, 0), to: spot(0, 0, top), in: 'elevation', side: 'right' },
    { finding: 'tepee.lashing', from: spot(0, 0, 0), to: spot(0, 0, lash), in: 'elevation', side: 'right' },
    { finding: 'tepee.buried', from: spot(0, 0, -200), to: spot(0, 0, 0), in: 'elevation', side: 'left' },
    { finding: 'tepee.spread', from: spot(-630, 0, 0), to: spot(630, 0, 0), in: 'elevation', side: 'below' },
    {
      finding: 'tepee.buried',
      from: spot(0, 630, -200),
      to: spot(0, 630, 0),
      in: 'section',
      side: hemisphere === 'north' ? 'right' : 'left',
    },
    { finding: 'tepee.height', from: spot(0, 0, 0), to: spot(0, 0, top), in: 'section', side: 'left' },
  ];
  return {
    name: 'tepee',
    assembly: {
      hemisphere,
      members: [
        member('string', 'cord', 'mark', boxSolid(spot(0, -2, 20), spot(630, 2, 24)), { until: 'poles' }),
        ...pole,
        ...lashing,
        ...strings,
        ...plants,
      ],
      stages: ['mark', 'poles', 'lash', 'strings', 'sow'],
      measures,
      sectionAtX: 0,
    },
    letters: { pole: 'A', twine: 'B', string: 'C', plant: 'D' },
    valuesMm: { 'tepee.spread': 1260, 'tepee.height': 2200, 'tepee.lashing': 1900, 'tepee.buried': 200 },
  };
}
