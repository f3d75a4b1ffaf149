/** The cold frame of lumber as bodies, from the marked ground to the propped lid. */
import type { LumberColdFrame } from '../records/schemas/projects/lumber-cold-frame.ts';
import { lumberFrameDrawings } from '../records/schemas/projects/lumber-cold-frame.ts';
import type { Assembly, Member, ShownMeasure, Solid } from './assembly.ts';
import type { Hemisphere, Spot } from './geometry.ts';
import { layOnGround, markedRectangle, plantRows } from './loose-pieces.ts';
import { sizeOf } from './lumber.ts';
import { lidGapMm, type LumberFrameLayout } from './lumber-frame-layout.ts';
import { boxBody, profileBody, sheetBody } from './solids.ts';

/** The origin is the outer corner at the west end of the front, on the ground. */
export function lumberFrameAssembly(
  project: LumberColdFrame,
  layout: LumberFrameLayout,
  hemisphere: Hemisphere,
): Assembly {
  const closed = lidMembers(layout, onPlane(layout), project);
  const open = lidMembers(layout, turnedUp(layout, layout.propOpensDeg), project);
  return {
    hemisphere,
    members: [
      ...markedGround(layout),
      ...loosePieces(project, layout),
      ...slopeBoardOnGround(layout),
      ...longWall(layout, 'back'),
      ...longWall(layout, 'front'),
      ...sideBoards(layout),
      ...slopes(layout),
      ...bars(layout),
      soil(layout),
      ...plants(project, layout),
      ...closed.map((member): Member => ({ ...member, stage: 'lids', until: 'hang', liftMm: 250 })),
      ...closed.map((member): Member => ({ ...member, stage: 'hang', until: 'vent' })),
      ...bags(project, layout, onPlane(layout)).map((member): Member => ({
        ...member,
        stage: 'hang',
        until: 'vent',
      })),
      ...hinges(layout),
      ...open.map((member): Member => ({ ...member, stage: 'vent' })),
      ...bags(project, layout, turnedUp(layout, layout.propOpensDeg)).map((member): Member => ({
        ...member,
        stage: 'vent',
      })),
      ...props(layout),
    ],
    stages: lumberFrameDrawings,
    measures: measuresOf(layout),
    sectionAtX: sectionX(layout),
  };
}

const spot = (x: number, y: number, z: number): Spot => ({ x, y, z });

/** East of the prop of the first lid, so that the section shows it. */
function sectionX({ lids }: LumberFrameLayout): number {
  return lids.widthMm * 0.7;
}

function markedGround({ outsideLengthMm: l, outsideDepthMm: d }: LumberFrameLayout): readonly Member[] {
  return markedRectangle(l, d).map((member) => ({ ...member, stage: 'ground', until: 'cut' }));
}

/** Everything that is sawn square, side by side; the pieces of the lids are left aside. */
function loosePieces({ walls, posts }: LumberColdFrame, layout: LumberFrameLayout): readonly Member[] {
  const { outsideLengthMm, insideDepthMm, thicknessMm, postMm, middleCleats } = layout;
  const boards = (role: string, widths: readonly number[], lengthMm: number, number: number) =>
    widths.map((widthMm) => ({ role, lengthMm, widthMm, heightMm: thicknessMm, number }));
  const sticks = (role: string, lengthMm: number, number: number) => ({
    role,
    lengthMm,
    widthMm: postMm,
    heightMm: sizeOf(posts).thicknessMm,
    number,
  });
  return layOnGround(
    [
      ...boards('back-board', layout.back, outsideLengthMm, 1),
      ...boards('front-board', layout.front, outsideLengthMm, 1),
      ...boards('side-board', layout.sides, insideDepthMm, 2),
      ...boards('slope-board', [sizeOf(walls.slope).widthMm], insideDepthMm, layout.slopeBoards),
      sticks('back-post', layout.backPostMm, 2 + middleCleats),
      sticks('front-post', layout.frontPostMm, 2 + middleCleats),
      sticks('bar', layout.barMm, layout.bars),
    ],
    outsideLengthMm,
  ).map((member) => ({ ...member, stage: 'cut', until: 'slope-cut' }));
}

/** Both sloped pieces as they lie on their board, thin end to thick end. */
function slopeBoardOnGround(layout: LumberFrameLayout): readonly Member[] {
  const { insideDepthMm: long, slopeLowMm: low, slopeHighMm: high, thicknessMm } = layout;
  const [x, y] = [layout.outsideLengthMm / 2 - long / 2, layout.outsideDepthMm * 0.35];
  const apart = layout.slopeBoards === 1 ? 20 : high + 60;
  const flat = (corners: readonly (readonly [number, number])[]): Solid => ({
    faces: bodyOver(
      corners.map(([a, b]) => spot(x + a, y + b, 0)),
      thicknessMm,
    ),
  });
  const far = low + high + apart;
  const pieces =
    layout.slopeBoards === 1
      ? [
          flat([
            [0, 0],
            [long, 0],
            [long, high],
            [0, low],
          ]),
          flat([
            [0, low + apart],
            [long, high + apart],
            [long, far],
            [0, far],
          ]),
        ]
      : [0, apart].map((up) =>
          flat([
            [0, up],
            [long, up],
            [long, up + high],
            [0, up + low],
          ]),
        );
  return pieces.map((solid) => ({
    role: 'slope-board',
    solid,
    surface: 'wood' as const,
    stage: 'slope-cut',
    until: 'back',
  }));
}

function bodyOver(base: readonly Spot[], upMm: number): Solid['faces'] {
  const top = base.map(({ x, y, z }) => spot(x, y, z + upMm));
  const sides = base.map((corner, index) => {
    const next = (index + 1) % base.length;
    return [corner, base[next]!, top[next]!, top[index]!];
  });
  return [base, top, ...sides];
}

/** The boards of the front or the back with the posts screwed on inside. */
function longWall(layout: LumberFrameLayout, wall: 'back' | 'front'): readonly Member[] {
  const { outsideLengthMm, outsideDepthMm, thicknessMm, postMm, middleCleats } = layout;
  const boards = layout[wall];
  const y = wall === 'back' ? outsideDepthMm - thicknessMm : 0;
  const postY = wall === 'back' ? y - postMm : thicknessMm;
  const postMmHigh = wall === 'back' ? layout.backPostMm : layout.frontPostMm;
  const last = outsideLengthMm - thicknessMm - postMm;
  const xs = [
    thicknessMm,
    ...Array.from(
      { length: middleCleats },
      (_, index) => (outsideLengthMm * (index + 1)) / (middleCleats + 1) - postMm / 2 + cleatAside(layout),
    ),
    last,
  ];
  return [
    ...stacked(boards).map(([from, to]): Member => ({
      role: `${wall}-board`,
      solid: boxBody(spot(0, y, from), spot(outsideLengthMm, y + thicknessMm, to)),
      surface: 'wood',
      stage: wall,
    })),
    ...xs.map((x): Member => ({
      role: `${wall}-post`,
      solid: boxBody(spot(x, postY, 0), spot(x + postMm, postY + postMm, postMmHigh)),
      surface: 'wood',
      stage: wall,
    })),
  ];
}

/** With two lids the bar meets the wall in the middle, so the cleat there stands beside it. */
function cleatAside({ bars, postMm }: LumberFrameLayout): number {
  return bars > 0 ? 1.5 * postMm : 0;
}

function stacked(widths: readonly number[]): readonly (readonly [number, number])[] {
  let top = 0;
  return widths.map((width) => {
    top += width;
    return [top - width, top] as const;
  });
}

function sideXs({ outsideLengthMm, thicknessMm }: LumberFrameLayout): readonly number[] {
  return [0, outsideLengthMm - thicknessMm];
}

function sideBoards(layout: LumberFrameLayout): readonly Member[] {
  const { thicknessMm: t, insideDepthMm } = layout;
  return sideXs(layout).flatMap((x) =>
    stacked(layout.sides).map(([from, to]): Member => ({
      role: 'side-board',
      solid: boxBody(spot(x, t, from), spot(x + t, t + insideDepthMm, to)),
      surface: 'wood',
      stage: 'sides',
    })),
  );
}

function slopes(layout: LumberFrameLayout): readonly Member[] {
  const { thicknessMm: t, insideDepthMm, sideHeightMm } = layout;
  return sideXs(layout).map((x) => ({
    role: 'slope-board',
    solid: profileBody(
      [
        [t, sideHeightMm],
        [t + insideDepthMm, sideHeightMm],
        [t + insideDepthMm, sideHeightMm + layout.slopeHighMm],
        [t, sideHeightMm + layout.slopeLowMm],
      ],
      x,
      x + t,
    ),
    surface: 'wood' as const,
    stage: 'slopes',
  }));
}

/** Under each gap between two lids, its top in the plane of the lids. */
function bars(layout: LumberFrameLayout): readonly Member[] {
  const { lids, thicknessMm: t, insideDepthMm, postMm } = layout;
  const top = (y: number): number => planeAt(layout, y);
  return Array.from({ length: layout.bars }, (_, index) => {
    const gapMiddle = (index + 1) * (lids.widthMm + lidGapMm) - lidGapMm / 2;
    const [from, to] = [t, t + insideDepthMm];
    return {
      role: 'bar',
      solid: profileBody(
        [
          [from, top(from) - postMm],
          [to, top(to) - postMm],
          [to, top(to)],
          [from, top(from)],
        ],
        gapMiddle - postMm / 2,
        gapMiddle + postMm / 2,
      ),
      surface: 'wood' as const,
      stage: 'bars',
    };
  });
}

function soil({ outsideLengthMm, thicknessMm: t, insideDepthMm, soilDepthMm }: LumberFrameLayout): Member {
  return {
    role: 'soil',
    solid: boxBody(spot(t, t, 0), spot(outsideLengthMm - t, t + insideDepthMm, soilDepthMm)),
    surface: 'soil',
    stage: 'soil',
  };
}

function plants({ sow }: LumberColdFrame, layout: LumberFrameLayout): readonly Member[] {
  const t = layout.thicknessMm;
  return plantRows({
    rows: sow.reduce((sum, { rows }) => sum + rows, 0),
    from: spot(t, t, layout.soilDepthMm),
    lengthMm: layout.insideLengthMm,
    depthMm: layout.insideDepthMm,
    heightMm: 80,
  }).map((member) => ({ ...member, stage: 'sow' }));
}

/** Height of the underside of the closed lids over the ground. */
function planeAt({ frontHeightMm, backHeightMm, runMm }: LumberFrameLayout, y: number): number {
  return frontHeightMm + ((backHeightMm - frontHeightMm) * y) / runMm;
}

/** A place on a lid: how far down from its upper end, and how far over its underside. */
type OnLid = (downMm: number, overMm: number) => { readonly y: number; readonly z: number };

function onPlane(layout: LumberFrameLayout): OnLid {
  const slope = (layout.slopeDeg * Math.PI) / 180;
  const upper = upperEnd(layout);
  return (down, over) => ({
    y: upper.y - down * Math.cos(slope) - over * Math.sin(slope),
    z: upper.z - down * Math.sin(slope) + over * Math.cos(slope),
  });
}

/** The underside of the lid's upper end. */
function upperEnd(layout: LumberFrameLayout): { readonly y: number; readonly z: number } {
  const y = layout.runMm + layout.thicknessMm * Math.cos((layout.slopeDeg * Math.PI) / 180);
  return { y, z: planeAt(layout, y) };
}

/** The lid turned up about its upper end. */
function turnedUp(layout: LumberFrameLayout, deg: number): OnLid {
  const angle = ((deg - layout.slopeDeg) * Math.PI) / 180;
  const upper = upperEnd(layout);
  return (down, over) => ({
    y: upper.y - down * Math.cos(angle) + over * Math.sin(angle),
    z: upper.z + down * Math.sin(angle) + over * Math.cos(angle),
  });
}

type Placed = Pick<Member, 'role' | 'solid' | 'surface'>;

function lidXs({ lids }: LumberFrameLayout): readonly number[] {
  return Array.from({ length: lids.number }, (_, index) => index * (lids.widthMm + lidGapMm));
}

function lidMembers(layout: LumberFrameLayout, place: OnLid, { lids }: LumberColdFrame): readonly Placed[] {
  const { widthMm, lengthMm, thicknessMm, built } = layout.lids;
  const slab = (
    x: readonly [number, number],
    down: readonly [number, number],
    over: readonly [number, number],
  ): Solid => {
    const profile = [
      place(down[0], over[0]),
      place(down[1], over[0]),
      place(down[1], over[1]),
      place(down[0], over[1]),
    ].map(({ y, z }) => [y, z] as const);
    return profileBody(profile, x[0], x[1]);
  };
  const sheet = (x: readonly [number, number], down: readonly [number, number], over: number): Solid => {
    const [upper, lower] = [place(down[0], over), place(down[1], over)];
    return sheetBody([
      spot(x[0], upper.y, upper.z),
      spot(x[1], upper.y, upper.z),
      spot(x[1], lower.y, lower.z),
      spot(x[0], lower.y, lower.z),
    ]);
  };
  return lidXs(layout).flatMap((x): readonly Placed[] => {
    const face = built?.faceMm ?? Math.min(60, widthMm / 8);
    const wood = (
      role: string,
      across: readonly [number, number],
      down: readonly [number, number],
    ): Placed => ({
      role,
      solid: slab(across, down, [0, thicknessMm]),
      surface: 'wood',
    });
    const [stile, rail, bar] = lids.sash ? ['lid', 'lid', 'lid'] : ['lid-stile', 'lid-rail', 'lid-bar'];
    const inner = [x + face, x + widthMm - face] as const;
    const barNumber = built?.bars ?? 0;
    const pane: Placed = {
      role: lids.sash ? 'lid' : 'lid-sheet',
      solid: built
        ? sheet([x, x + widthMm], [0, lengthMm], thicknessMm + 2)
        : sheet(inner, [face, lengthMm - face], thicknessMm / 2),
      surface: 'glass',
    };
    return [
      wood(stile, [x, x + face], [0, lengthMm]),
      wood(stile, [x + widthMm - face, x + widthMm], [0, lengthMm]),
      wood(rail, inner, [0, face]),
      wood(rail, inner, [lengthMm - face, lengthMm]),
      ...Array.from({ length: barNumber }, (_, index) => {
        const middle = inner[0] + ((inner[1] - inner[0]) * (index + 1)) / (barNumber + 1);
        return wood(bar, [middle - face / 2, middle + face / 2], [face, lengthMm - face]);
      }),
      pane,
    ];
  });
}

/** Sandbags side by side across the ends of each lid, as bags of 20 lb lie: 12 by 6 by 3 in. */
function bags(
  { lids: { holdDowns } }: LumberColdFrame,
  layout: LumberFrameLayout,
  place: OnLid,
): readonly Placed[] {
  const { widthMm, lengthMm, thicknessMm } = layout.lids;
  const across = (perLid: number, down: readonly [number, number]): readonly Placed[] => {
    const over = [thicknessMm + 2, thicknessMm + 78] as const;
    const corners = [
      [down[0], over[0]],
      [down[1], over[0]],
      [down[1], over[1]],
      [down[0], over[1]],
    ] as const;
    const profile = corners.map(([d, o]) => {
      const { y, z } = place(d, o);
      return [y, z] as const;
    });
    const longMm = Math.min(305, (0.9 * widthMm) / Math.max(1, perLid));
    return lidXs(layout).flatMap((x) =>
      Array.from({ length: perLid }, (_, index): Placed => {
        const middle = x + (widthMm * (index + 0.5)) / perLid;
        return {
          role: 'sandbag',
          solid: profileBody(profile, middle - longMm / 2, middle + longMm / 2),
          surface: 'cloth',
        };
      }),
    );
  };
  return [
    ...across(holdDowns?.perLid ?? 0, [lengthMm - 152, lengthMm]),
    ...across(holdDowns?.atBack ?? 0, [0, 152]),
  ];
}

function hinges(layout: LumberFrameLayout): readonly Member[] {
  const { lids, outsideDepthMm, backHeightMm } = layout;
  const half = 35;
  return lidXs(layout).flatMap((x) => {
    const places =
      lids.hinges === 2
        ? [lids.hingeInsetMm, lids.widthMm - lids.hingeInsetMm]
        : [lids.hingeInsetMm, lids.widthMm / 2, lids.widthMm - lids.hingeInsetMm];
    return places.map((at): Member => ({
      role: 'hinge',
      solid: boxBody(
        spot(x + at - half, outsideDepthMm, backHeightMm - 50),
        spot(x + at + half, outsideDepthMm + 4, backHeightMm + lids.thicknessMm),
      ),
      surface: 'metal',
      stage: 'hang',
    }));
  });
}

/** A stick from the top of the front to the open lid. */
function props(layout: LumberFrameLayout): readonly Member[] {
  const { lids, frontHeightMm, thicknessMm } = layout;
  const top = turnedUp(layout, layout.propOpensDeg)(lids.lengthMm - lids.overhangMm, 0);
  const wide = 30;
  return lidXs(layout).map((x): Member => {
    const middle = x + lids.widthMm / 2;
    return {
      role: 'prop',
      solid: profileBody(
        [
          [0, frontHeightMm],
          [thicknessMm * 0.7, frontHeightMm],
          [top.y + thicknessMm * 0.7, top.z],
          [top.y, top.z],
        ],
        middle - wide / 2,
        middle + wide / 2,
      ),
      surface: 'wood',
      stage: 'vent',
    };
  });
}

function measuresOf(layout: LumberFrameLayout): readonly ShownMeasure[] {
  const { outsideLengthMm: l, outsideDepthMm: d, thicknessMm: t } = layout;
  const { backHeightMm: back, frontHeightMm: front, insideDepthMm } = layout;
  const x = sectionX(layout);
  return [
    { finding: 'frame.outside-length', from: spot(0, 0, 0), to: spot(l, 0, 0), in: 'plan', side: 'below' },
    { finding: 'frame.outside-depth', from: spot(l, 0, 0), to: spot(l, d, 0), in: 'plan', side: 'right' },
    {
      finding: 'frame.outside-length',
      from: spot(0, 0, 0),
      to: spot(l, 0, 0),
      in: 'elevation',
      side: 'below',
    },
    {
      finding: 'frame.equator-height',
      from: spot(0, 0, 0),
      to: spot(0, 0, front),
      in: 'elevation',
      side: 'left',
    },
    {
      finding: 'frame.equator-height',
      from: spot(x, 0, 0),
      to: spot(x, 0, front),
      in: 'section',
      side: 'left',
    },
    {
      finding: 'frame.poleward-height',
      from: spot(x, d, 0),
      to: spot(x, d, back),
      in: 'section',
      side: 'right',
    },
    {
      finding: 'frame.inside-depth',
      from: spot(x, t, 0),
      to: spot(x, t + insideDepthMm, 0),
      in: 'section',
      side: 'below',
    },
  ];
}
