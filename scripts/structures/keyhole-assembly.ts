/** The keyhole bed as bodies, from the marked ground to the first scraps in the basket. */
import { middle } from '../quantities/quantity.ts';
import { keyholeDrawings, type KeyholeBed } from '../records/schemas/projects/keyhole-bed.ts';
import type { Assembly, Member, ShownMeasure, Solid } from './assembly.ts';
import type { Hemisphere, Spot } from './geometry.ts';
import { besideNotch, courseOutlines } from './keyhole-courses.ts';
import { placeAt, type KeyholeFill, type Ring } from './keyhole-layout.ts';
import { stakeInGroundMm } from './keyhole-practice.ts';
import { between, drumBody, membersOf, plantBody, poleBody, tubeSheets } from './round-bodies.ts';
import { cordBody, sheetBody } from './solids.ts';

/** The origin is the middle of the ring, on the ground; the notch opens toward the equator. */
export function keyholeAssembly(
  project: KeyholeBed,
  ring: Ring,
  fill: KeyholeFill,
  hemisphere: Hemisphere,
): Assembly {
  const buriedMm = fill.wallMm - fill.aboveMm;
  return {
    hemisphere,
    members: [
      ...markedGround(ring),
      ...base(project, ring, buriedMm),
      ...blocks(ring, fill, buriedMm),
      ...basket(project, ring, fill),
      ...lining(ring, fill),
      ...layers(project, ring, fill),
      ...plants(project, ring, fill),
      ...scraps(ring, fill),
    ],
    stages: keyholeDrawings,
    measures: measuresOf(project, ring, fill),
    sectionAtX: 1,
  };
}

/** A circle of twine round a peg, and the two sides of the notch. */
function markedGround(ring: Ring): readonly Member[] {
  const { radiusMm, notchAngle, basketRadiusMm } = ring;
  const z = 15;
  const parts = 24;
  const turn = (2 * Math.PI - 2 * notchAngle) / parts;
  const arc = Array.from({ length: parts }, (_, index) => {
    const from = notchAngle + index * turn;
    return cordBody(placeAt(radiusMm, from, z), placeAt(radiusMm, from + turn, z), 12);
  });
  const sides = [notchAngle, -notchAngle].map((angle) =>
    cordBody(placeAt(basketRadiusMm, angle, z), placeAt(radiusMm, angle, z), 12),
  );
  const reach = cordBody(placeAt(0, 0, 90), placeAt(radiusMm, Math.PI * 0.62, 90), 8);
  return [
    ...membersOf([...arc, ...sides], {
      role: 'line',
      surface: 'cord',
      stage: 'ground',
      until: 'first-course',
    }),
    ...membersOf([reach], { role: 'string', surface: 'cord', stage: 'ground', until: 'base' }),
    ...membersOf(
      [
        upright(0, 0, -150, 200, 30),
        upright(placeAt(radiusMm, Math.PI * 0.62, 0).x, placeAt(radiusMm, Math.PI * 0.62, 0).y, 0, 200, 30),
      ],
      {
        role: 'peg',
        surface: 'wood',
        stage: 'ground',
        until: 'base',
      },
    ),
  ];
}

function upright(x: number, y: number, from: number, to: number, thicknessMm: number): Solid {
  return poleBody({ x, y, z: from }, { x, y, z: to }, thicknessMm);
}

/** Gravel under the wall, a little wider than it on both sides. */
function base(project: KeyholeBed, ring: Ring, buriedMm: number): readonly Member[] {
  const { notchAngle, radiusMm, insideMm, basketRadiusMm, block } = ring;
  const widthMm = middle(project.base.width);
  const [low, high] = [-buriedMm - middle(project.base.depth), -buriedMm];
  const centreMm = radiusMm - block.depthMm / 2;
  const [inner, outer] = [Math.max(basketRadiusMm, centreMm - widthMm / 2), centreMm + widthMm / 2];
  const parts = 20;
  const turn = (2 * Math.PI - 2 * notchAngle) / parts;
  const flat = (z: number, corners: readonly (readonly [number, number])[]): readonly Spot[] =>
    corners.map(([r, angle]) => placeAt(r, angle, z));
  const round = Array.from({ length: parts }, (_, index) => {
    const [from, to] = [notchAngle + index * turn, notchAngle + (index + 1) * turn];
    const corners = [
      [inner, from],
      [outer, from],
      [outer, to],
      [inner, to],
    ] as const;
    return between(flat(low, corners), flat(high, corners));
  });
  const acrossMm = (widthMm - block.depthMm) / 2;
  const along = ([1, -1] as const).map((side) =>
    between(
      ...([low, high].map((z) =>
        wallOutline(
          ring,
          side,
          [Math.max(inner, basketRadiusMm), basketRadiusMm],
          [-acrossMm, block.depthMm + acrossMm],
          z,
        ),
      ) as [readonly Spot[], readonly Spot[]]),
    ),
  );
  const sides = insideMm > basketRadiusMm ? along : [];
  return membersOf([...round, ...sides], { role: 'base', surface: 'gravel', stage: 'base', smooth: true });
}

/** A rectangle beside the notch: from `outer` to `inner` along its side, and across from the side on. */
function wallOutline(
  { notchAngle }: Ring,
  side: 1 | -1,
  [outer, inner]: readonly [number, number],
  [near, far]: readonly [number, number],
  z: number,
): readonly Spot[] {
  const at = (alongMm: number, acrossMm: number): Spot => {
    const spot = besideNotch(notchAngle, alongMm, acrossMm, z);
    return { ...spot, x: side * spot.x };
  };
  return [at(outer, near), at(outer, far), at(inner, far), at(inner, near)];
}

function blocks(ring: Ring, fill: KeyholeFill, buriedMm: number): readonly Member[] {
  return Array.from({ length: fill.courses }, (_, index) => {
    const low = index * ring.block.heightMm - buriedMm;
    const at = (stage: 'first-course' | 'courses') => ({ role: 'block', surface: 'block' as const, stage });
    return membersOf(
      courseOutlines(ring, index).map(({ outline }) => {
        const at = (z: number): readonly Spot[] => outline.map(({ x, y }) => ({ x, y, z }));
        return between(at(low), at(low + ring.block.heightMm));
      }),
      at(index === 0 ? 'first-course' : 'courses'),
    );
  }).flat();
}

function basket({ basket: of }: KeyholeBed, { basketRadiusMm }: Ring, fill: KeyholeFill): readonly Member[] {
  const heightMm = middle(of.height);
  const stakeMm = middle(of.stakes.length);
  const inGround = Math.max(stakeInGroundMm, stakeMm - heightMm);
  const stakes = Array.from({ length: of.stakes.number }, (_, index) => {
    const { x, y } = placeAt(basketRadiusMm - 20, (2 * Math.PI * (index + 0.5)) / of.stakes.number, 0);
    return upright(x, y, -inGround, Math.min(heightMm, Math.max(fill.atBasketMm, stakeMm - inGround)), 28);
  });
  return [
    ...membersOf(stakes, { role: 'stake', surface: 'wood', stage: 'basket', smooth: true }),
    ...membersOf(tubeSheets({ x: 0, y: 0, z: 0 }, basketRadiusMm, heightMm), {
      role: 'basket',
      surface: 'mesh',
      stage: 'basket',
      smooth: true,
    }),
  ];
}

interface Sector {
  readonly from: number;
  readonly to: number;
  /** The inner radius at its two ends: the basket, or the wall of the notch. */
  readonly innerFrom: number;
  readonly innerTo: number;
}

/** The ring of soil in sectors, beside the walls of the notch first and last. */
function soilSectors({ notchAngle, block, basketRadiusMm, insideMm }: Ring): readonly Sector[] {
  const wallAt = (radiusMm: number): number =>
    block.depthMm >= radiusMm ? Math.PI / 2 : Math.asin(block.depthMm / radiusMm);
  const [first, free] = [wallAt(insideMm), wallAt(basketRadiusMm)];
  const inner = (past: number): number => Math.max(basketRadiusMm, block.depthMm / Math.sin(past));
  const beside = spread(first, free, 4).map(([from, to]): Sector => ({
    from: notchAngle + from,
    to: notchAngle + to,
    innerFrom: inner(from),
    innerTo: inner(to),
  }));
  const around = spread(notchAngle + free, 2 * Math.PI - notchAngle - free, 16).map(([from, to]): Sector => ({
    from,
    to,
    innerFrom: basketRadiusMm,
    innerTo: basketRadiusMm,
  }));
  const mirrored = beside
    .map(({ from, to, innerFrom, innerTo }): Sector => ({
      from: 2 * Math.PI - to,
      to: 2 * Math.PI - from,
      innerFrom: innerTo,
      innerTo: innerFrom,
    }))
    .toReversed();
  return [...beside, ...around, ...mirrored];
}

function spread(from: number, to: number, parts: number): readonly (readonly [number, number])[] {
  const step = (to - from) / parts;
  return Array.from(
    { length: parts },
    (_, index) => [from + index * step, from + (index + 1) * step] as const,
  );
}

type HeightAt = (radiusMm: number) => number;

/** A layer over the whole ring, between two heights that hang on the distance from the middle. */
function layerBodies(ring: Ring, low: HeightAt, high: HeightAt): readonly Solid[] {
  const corner = (radiusMm: number, angle: number, height: HeightAt): Spot =>
    placeAt(radiusMm, angle, height(radiusMm));
  const prism = (corners: readonly (readonly [number, number])[]): Solid =>
    between(
      corners.map(([r, angle]) => corner(r, angle, low)),
      corners.map(([r, angle]) => corner(r, angle, high)),
    );
  const outer = ring.insideMm;
  return soilSectors(ring).flatMap(({ from, to, innerFrom, innerTo }) =>
    Math.abs(innerFrom - innerTo) < 0.01
      ? [
          prism([
            [innerFrom, from],
            [outer, from],
            [outer, to],
            [innerTo, to],
          ]),
        ]
      : [
          prism([
            [innerFrom, from],
            [outer, from],
            [outer, to],
          ]),
          prism([
            [innerFrom, from],
            [outer, to],
            [innerTo, to],
          ]),
        ],
  );
}

/** Cardboard against the wall, on the inside. */
function lining(ring: Ring, fill: KeyholeFill): readonly Member[] {
  const { notchAngle, insideMm, block } = ring;
  const start = notchAngle + Math.asin(block.depthMm / insideMm);
  const radiusMm = insideMm - 4;
  const sheets = spread(start, 2 * Math.PI - start, 18).map(([from, to]) =>
    sheetBody([
      placeAt(radiusMm, from, 0),
      placeAt(radiusMm, to, 0),
      placeAt(radiusMm, to, fill.atWallMm),
      placeAt(radiusMm, from, fill.atWallMm),
    ]),
  );
  return membersOf(sheets, { role: 'lining', surface: 'cloth', stage: 'lining', smooth: true });
}

function layers(project: KeyholeBed, ring: Ring, fill: KeyholeFill): readonly Member[] {
  const run = ring.insideMm - ring.basketRadiusMm;
  const riseMm = middle(project.layers.rise);
  const surface: HeightAt = (r) => fill.atWallMm + (riseMm * (ring.insideMm - r)) / run;
  const drainage: HeightAt = () => fill.drainageMm;
  const organic: HeightAt = (r) => surface(r) - fill.soilMm;
  const layer = (role: string, of: Member['surface'], stage: string, low: HeightAt, high: HeightAt) =>
    membersOf(layerBodies(ring, low, high), { role, surface: of, stage, smooth: true });
  return [
    ...(fill.drainageMm > 0 ? layer('drainage', 'gravel', 'drainage', () => 0, drainage) : []),
    ...(fill.organicAtWallMm + riseMm > 0 ? layer('organic', 'compost', 'layers', drainage, organic) : []),
    ...layer('mix', 'soil', 'soil', organic, surface),
  ];
}

/** A few plants in each row; how many there are is told by the bed plan. */
function plants(project: KeyholeBed, ring: Ring, fill: KeyholeFill): readonly Member[] {
  const rows = project.sow.reduce((sum, { rows: number }) => sum + number, 0);
  const run = ring.insideMm - ring.basketRadiusMm;
  const solids = Array.from({ length: rows }, (_, row) => {
    const radiusMm = ring.basketRadiusMm + (run * (row + 0.5)) / rows;
    const wall = ring.block.depthMm >= radiusMm ? Math.PI / 2 : Math.asin(ring.block.depthMm / radiusMm);
    const start = ring.notchAngle + wall + 0.12;
    const z = fill.atWallMm + (middle(project.layers.rise) * (ring.insideMm - radiusMm)) / run;
    return spread(start, 2 * Math.PI - start, 9).map(([from, to]) =>
      plantBody(placeAt(radiusMm, (from + to) / 2, z), 80),
    );
  }).flat();
  return membersOf(solids, { role: 'plant', surface: 'plant', stage: 'plant' });
}

/** Kitchen scraps, up to half the basket. */
function scraps({ basketRadiusMm }: Ring, { atBasketMm }: KeyholeFill): readonly Member[] {
  return membersOf([drumBody({ x: 0, y: 0, z: 0 }, basketRadiusMm - 40, atBasketMm * 0.6)], {
    role: 'scraps',
    surface: 'compost',
    stage: 'feed',
    smooth: true,
  });
}

function measuresOf(project: KeyholeBed, ring: Ring, fill: KeyholeFill): readonly ShownMeasure[] {
  const { radiusMm: r, basketRadiusMm: b, insideMm, notchAngle } = ring;
  const { aboveMm } = fill;
  const spot = (x: number, y: number, z: number): Spot => ({ x, y, z });
  const basketTop = middle(project.basket.height);
  const [west, east] = [placeAt(r, -notchAngle, aboveMm), placeAt(r, notchAngle, aboveMm)];
  const trench = fill.wallMm - aboveMm + middle(project.base.depth);
  return [
    {
      finding: 'bed.outside-diameter',
      from: spot(-r, 0, aboveMm),
      to: spot(r, 0, aboveMm),
      in: 'plan',
      side: 'above',
    },
    { finding: 'bed.notch-width', from: west, to: east, in: 'plan', side: 'below' },
    {
      finding: 'bed.outside-diameter',
      from: spot(-r, 0, 0),
      to: spot(r, 0, 0),
      in: 'elevation',
      side: 'below',
    },
    {
      finding: 'bed.wall-height',
      from: spot(-r, 0, 0),
      to: spot(-r, 0, aboveMm),
      in: 'elevation',
      side: 'left',
    },
    {
      finding: 'bed.basket-height',
      from: spot(r, 0, 0),
      to: spot(r, 0, basketTop),
      in: 'elevation',
      side: 'right',
    },
    {
      finding: 'bed.basket-diameter',
      from: spot(0, -b, basketTop),
      to: spot(0, b, basketTop),
      in: 'section',
      side: 'above',
    },
    {
      finding: 'bed.ring-width',
      from: spot(0, b, basketTop),
      to: spot(0, insideMm, basketTop),
      in: 'section',
      side: 'above',
    },
    {
      finding: 'bed.wall-height',
      from: spot(0, r, 0),
      to: spot(0, r, aboveMm),
      in: 'section',
      side: 'right',
    },
    ...(trench > 0
      ? [
          {
            finding: 'bed.trench-depth',
            from: spot(0, r, -trench),
            to: spot(0, r, 0),
            in: 'section' as const,
            side: 'right' as const,
          },
        ]
      : []),
  ];
}
