/** The raised bed as bodies, from the marked ground to the sown bed. */
import type { RaisedBed } from '../records/schemas/projects/raised-bed.ts';
import { raisedBedDrawings } from '../records/schemas/projects/raised-bed.ts';
import type { Assembly, Member, ShownMeasure } from './assembly.ts';
import type { Hemisphere, Spot } from './geometry.ts';
import { layOnGround, markedRectangle, plantRows } from './loose-pieces.ts';
import type { RaisedBedLayout } from './raised-bed-layout.ts';
import { boxBody, cordBody, sheetBody } from './solids.ts';

/** The origin is the outer corner at the west end of the equator side, on the ground. */
export function raisedBedAssembly(
  project: RaisedBed,
  layout: RaisedBedLayout,
  hemisphere: Hemisphere,
): Assembly {
  return {
    hemisphere,
    members: [
      ...markedGround(layout),
      ...loosePieces(layout),
      ...lyingPanels(layout),
      ...holes(layout),
      ...endPanels(layout),
      ...sideBoards(layout),
      ...middlePostsOf(layout),
      ...diagonals(layout),
      ...bottomSheet(project, layout),
      ...soil(layout),
      ...plants(project, layout),
    ],
    stages: raisedBedDrawings,
    measures: measuresOf(layout),
    sectionAtX: sectionX(layout),
  };
}

const spot = (x: number, y: number, z: number): Spot => ({ x, y, z });

/** Between the west corner and the next post, so that the section cuts no post. */
function sectionX({ spanMm }: RaisedBedLayout): number {
  return spanMm / 2;
}

function corners({ outsideLengthMm: l, outsideWidthMm: w }: RaisedBedLayout, z: number) {
  return [spot(0, 0, z), spot(l, 0, z), spot(l, w, z), spot(0, w, z)] as const;
}

function markedGround({ outsideLengthMm, outsideWidthMm }: RaisedBedLayout): readonly Member[] {
  return markedRectangle(outsideLengthMm, outsideWidthMm).map((member) => ({
    ...member,
    stage: 'ground',
    until: 'stand',
    leftOutAt: ['cut', 'ends'],
  }));
}

function loosePieces(layout: RaisedBedLayout): readonly Member[] {
  const { board, courses, outsideLengthMm, insideWidthMm, postMm, postLengthMm } = layout;
  const middle = 2 * (layout.middleAlong + layout.middleAcross);
  return layOnGround(
    [
      {
        role: 'side-board',
        lengthMm: outsideLengthMm,
        widthMm: board.widthMm,
        heightMm: board.thicknessMm,
        number: 2 * courses,
      },
      {
        role: 'end-board',
        lengthMm: insideWidthMm,
        widthMm: board.widthMm,
        heightMm: board.thicknessMm,
        number: 2 * courses,
      },
      { role: 'corner-post', lengthMm: postLengthMm, widthMm: postMm, heightMm: postMm, number: 4 },
      { role: 'middle-post', lengthMm: postLengthMm, widthMm: postMm, heightMm: postMm, number: middle },
    ],
    outsideLengthMm,
  ).map((member) => ({ ...member, stage: 'cut', until: 'ends' }));
}

/** Both end panels as they are screwed together, flat on the ground with the tops of the posts outward. */
function lyingPanels(layout: RaisedBedLayout): readonly Member[] {
  const { outsideLengthMm: l, postLengthMm } = layout;
  const apart = Math.max(l - postLengthMm, postLengthMm + 100);
  const at = { stage: 'ends', until: 'holes', surface: 'wood' as const };
  return (['west', 'east'] as const).flatMap((side) => {
    const x = (fromTop: number): number => (side === 'west' ? fromTop : apart + postLengthMm - fromTop);
    const box = (from: number, to: number, y: readonly [number, number], z: readonly [number, number]) =>
      boxBody(spot(Math.min(x(from), x(to)), y[0], z[0]), spot(Math.max(x(from), x(to)), y[1], z[1]));
    const { board, courses, postMm } = layout;
    const across = [board.thicknessMm, layout.outsideWidthMm - board.thicknessMm] as const;
    const posts = postSpans(layout).map((y): Member => ({
      role: 'corner-post',
      solid: box(0, postLengthMm, y, [0, postMm]),
      ...at,
    }));
    const boards = Array.from({ length: courses }, (_, course): Member => ({
      role: 'end-board',
      solid: box(course * board.widthMm, (course + 1) * board.widthMm, across, [
        postMm,
        postMm + board.thicknessMm,
      ]),
      ...at,
    }));
    return [...posts, ...boards];
  });
}

/** Where the posts of an end panel stand along y. */
function postSpans(layout: RaisedBedLayout): readonly (readonly [number, number])[] {
  const { board, postMm, outsideWidthMm } = layout;
  return [
    [board.thicknessMm, board.thicknessMm + postMm],
    [outsideWidthMm - board.thicknessMm - postMm, outsideWidthMm - board.thicknessMm],
  ];
}

/** Lower corners of all posts on the ground: those of the corners, then the others. */
function postPlaces(layout: RaisedBedLayout): {
  readonly corner: readonly { readonly x: number; readonly y: number }[];
  readonly middle: readonly { readonly x: number; readonly y: number }[];
} {
  const { board, postMm, outsideLengthMm, outsideWidthMm, middleAlong, middleAcross } = layout;
  const t = board.thicknessMm;
  const far = { x: outsideLengthMm - t - postMm, y: outsideWidthMm - t - postMm };
  const along = between(outsideLengthMm, middleAlong, postMm);
  const across = between(outsideWidthMm, middleAcross, postMm);
  return {
    corner: [t, far.x].flatMap((x) => [t, far.y].map((y) => ({ x, y }))),
    middle: [
      ...along.flatMap((x) => [t, far.y].map((y) => ({ x, y }))),
      ...across.flatMap((y) => [t, far.x].map((x) => ({ x, y }))),
    ],
  };
}

/** Near edges of posts that divide a wall into equal spans. */
function between(wallMm: number, number: number, postMm: number): readonly number[] {
  return Array.from({ length: number }, (_, index) => (wallMm * (index + 1)) / (number + 1) - postMm / 2);
}

function holes(layout: RaisedBedLayout): readonly Member[] {
  if (layout.inGroundMm === 0) return [];
  const { corner, middle } = postPlaces(layout);
  const spareMm = 50;
  return [...corner, ...middle].map(({ x, y }) => ({
    role: 'post-hole',
    solid: sheetBody([
      spot(x - spareMm, y - spareMm, 2),
      spot(x + layout.postMm + spareMm, y - spareMm, 2),
      spot(x + layout.postMm + spareMm, y + layout.postMm + spareMm, 2),
      spot(x - spareMm, y + layout.postMm + spareMm, 2),
    ]),
    surface: 'soil' as const,
    stage: 'holes',
    until: 'square',
  }));
}

function post({ postMm, inGroundMm, heightMm }: RaisedBedLayout, { x, y }: { x: number; y: number }) {
  return boxBody(spot(x, y, -inGroundMm), spot(x + postMm, y + postMm, heightMm));
}

function endPanels(layout: RaisedBedLayout): readonly Member[] {
  const { board, courses, outsideLengthMm, outsideWidthMm, inGroundMm } = layout;
  const lifted = { stage: 'stand', surface: 'wood' as const, liftMm: inGroundMm + 100 };
  const t = board.thicknessMm;
  return [
    ...postPlaces(layout).corner.map((place): Member => ({
      role: 'corner-post',
      solid: post(layout, place),
      ...lifted,
    })),
    ...[0, outsideLengthMm - t].flatMap((x) =>
      Array.from({ length: courses }, (_, course): Member => ({
        role: 'end-board',
        solid: boxBody(
          spot(x, t, course * board.widthMm),
          spot(x + t, outsideWidthMm - t, (course + 1) * board.widthMm),
        ),
        ...lifted,
      })),
    ),
  ];
}

function sideBoards({ board, courses, outsideLengthMm, outsideWidthMm }: RaisedBedLayout): readonly Member[] {
  return [0, outsideWidthMm - board.thicknessMm].flatMap((y) =>
    Array.from({ length: courses }, (_, course): Member => ({
      role: 'side-board',
      solid: boxBody(
        spot(0, y, course * board.widthMm),
        spot(outsideLengthMm, y + board.thicknessMm, (course + 1) * board.widthMm),
      ),
      surface: 'wood',
      stage: 'sides',
    })),
  );
}

function middlePostsOf(layout: RaisedBedLayout): readonly Member[] {
  return postPlaces(layout).middle.map((place) => ({
    role: 'middle-post',
    solid: post(layout, place),
    surface: 'wood' as const,
    stage: 'middle-posts',
  }));
}

function diagonals(layout: RaisedBedLayout): readonly Member[] {
  const [a, b, c, d] = corners(layout, layout.heightMm + 5);
  return (
    [
      [a, c],
      [b, d],
    ] as const
  ).map(([from, to]) => ({
    role: 'diagonal',
    solid: cordBody(from, to),
    surface: 'cord' as const,
    stage: 'square',
    until: 'bottom',
  }));
}

function bottomSheet({ bottom }: RaisedBed, layout: RaisedBedLayout): readonly Member[] {
  if (!bottom) return [];
  const t = layout.board.thicknessMm;
  const [x, y] = [layout.outsideLengthMm - t, layout.outsideWidthMm - t];
  return [
    {
      role: 'bottom-cloth',
      solid: sheetBody([spot(t, t, 3), spot(x, t, 3), spot(x, y, 3), spot(t, y, 3)]),
      surface: bottom.sheet === 'wire-mesh' ? 'mesh' : 'cloth',
      stage: 'bottom',
    },
  ];
}

/** Posts that stand in it are drawn where they stand out of it. */
function soil({ board, outsideLengthMm, outsideWidthMm, soilDepthMm }: RaisedBedLayout): readonly Member[] {
  const t = board.thicknessMm;
  return [
    {
      role: 'soil',
      solid: boxBody(spot(t, t, 10), spot(outsideLengthMm - t, outsideWidthMm - t, soilDepthMm)),
      surface: 'soil',
      stage: 'fill',
    },
  ];
}

function plants({ sow }: RaisedBed, layout: RaisedBedLayout): readonly Member[] {
  const t = layout.board.thicknessMm;
  return plantRows({
    rows: sow.reduce((sum, { rows }) => sum + rows, 0),
    from: { x: t, y: t, z: layout.soilDepthMm },
    lengthMm: layout.insideLengthMm,
    depthMm: layout.insideWidthMm,
    heightMm: 90,
  }).map((member) => ({ ...member, stage: 'sow' }));
}

function measuresOf(layout: RaisedBedLayout): readonly ShownMeasure[] {
  const { outsideLengthMm: l, outsideWidthMm: w, heightMm: h, inGroundMm } = layout;
  const t = layout.board.thicknessMm;
  const x = sectionX(layout);
  return [
    { finding: 'bed.outside-length', from: spot(0, 0, h), to: spot(l, 0, h), in: 'plan', side: 'below' },
    { finding: 'bed.outside-width', from: spot(l, 0, h), to: spot(l, w, h), in: 'plan', side: 'right' },
    ...(layout.middleAlong > 0
      ? [
          {
            finding: 'bed.post-spacing',
            from: spot(0, w, h),
            to: spot(layout.spanMm, w, h),
            in: 'plan' as const,
            side: 'above' as const,
          },
        ]
      : []),
    { finding: 'bed.outside-length', from: spot(0, 0, 0), to: spot(l, 0, 0), in: 'elevation', side: 'below' },
    { finding: 'bed.height', from: spot(0, 0, 0), to: spot(0, 0, h), in: 'elevation', side: 'left' },
    { finding: 'bed.inside-width', from: spot(x, t, h), to: spot(x, w - t, h), in: 'section', side: 'above' },
    { finding: 'bed.height', from: spot(x, 0, 0), to: spot(x, 0, h), in: 'section', side: 'left' },
    {
      finding: 'bed.soil-depth',
      from: spot(x, w, 0),
      to: spot(x, w, layout.soilDepthMm),
      in: 'section',
      side: 'right',
    },
    ...(inGroundMm > 0
      ? [
          {
            finding: 'bed.post-in-ground',
            from: spot(x, 0, -inGroundMm),
            to: spot(x, 0, 0),
            in: 'section' as const,
            side: 'left' as const,
          },
        ]
      : []),
  ];
}
