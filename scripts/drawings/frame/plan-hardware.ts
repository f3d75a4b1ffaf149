/** Boards, hinges and straps of the sashes from above. */
import { strapPlaces, type PlacedBoard } from '../../structures/frame-boards.ts';
import type { FrameGeometry, PlacedSash, Spot } from '../../structures/geometry.ts';
import { path, polygon, segment, type Point } from '../path.ts';
import type { SceneItem } from '../scene.ts';
import type { Lettered } from './free-letters.ts';
import { isAlongTallWall } from './hardware.ts';
import type { PartLetters } from './words.ts';

interface OnPage {
  readonly at: (x: number, y: number) => Point;
}

/** Size of the mark of a hinge, in millimetres of the real thing. */
const hinge = { alongMm: 90, acrossMm: 60 } as const;
const strapMm = 50;

export function hardwareFromAbove(geometry: FrameGeometry, page: OnPage): readonly SceneItem[] {
  return [
    ...geometry.boards.flatMap((board) => boardFromAbove(board, page)),
    ...geometry.boards
      .filter(({ role }) => role === 'hinge-board')
      .flatMap((board) => strapsAcross(board, page)),
    ...geometry.sashes
      .filter(({ holdDown }) => holdDown === 'strap')
      .flatMap((sash) => strapEnds(sash, geometry, page)),
    ...geometry.sashes.flatMap((sash) => hingesOf(sash).map((spots) => filled(spots, page))),
  ];
}

export function hardwareLettersFromAbove(
  geometry: FrameGeometry,
  page: OnPage,
  letters: PartLetters,
): readonly Lettered[] {
  const boards = (role: PlacedBoard['role']): readonly Point[] =>
    geometry.boards
      .filter((board) => board.role === role)
      .flatMap(({ under: [a, b, c, d] }) =>
        [0.5, 0.35, 0.65, 0.1, 0.9].flatMap((share) => {
          const [near, far] = [between(a, b, share), between(d, c, share)];
          return [0.5, 0.2, 0.8].map((deep) =>
            page.at(mixed(near.x, far.x, deep), mixed(near.y, far.y, deep)),
          );
        }),
      );
  const strapped = geometry.sashes.filter(({ holdDown }) => holdDown === 'strap');
  return [
    { letter: letters['hinge-board'], spots: boards('hinge-board') },
    { letter: letters['rest-board'], spots: boards('rest-board') },
    { letter: letters['filler-boards'], spots: boards('filler-board') },
    {
      letter: letters.hinges,
      spots: geometry.sashes.flatMap((sash) => hingesOf(sash).map((spots) => middle(spots, page))),
    },
    {
      letter: letters.straps,
      spots: strapped.map((sash) => page.at(middleX(sash), -geometry.sideThicknessMm * 0.8)),
    },
  ];
}

function boardFromAbove({ under, role }: PlacedBoard, page: OnPage): readonly SceneItem[] {
  const outline = polygon(under.map(({ x, y }) => page.at(x, y)));
  return [path(outline, { stroke: 'seen', fill: role === 'filler-board' ? 'tint' : 'paper' })];
}

function strapsAcross(board: PlacedBoard, page: OnPage): readonly SceneItem[] {
  const [a, b, c, d] = board.under;
  const half = strapMm / 2 / board.lengthMm;
  return strapPlaces(board).map((place) => {
    const share = place / board.lengthMm;
    const corners = isAlongTallWall(board)
      ? [
          between(a, b, share - half),
          between(a, b, share + half),
          between(d, c, share + half),
          between(d, c, share - half),
        ]
      : [
          between(a, d, share - half),
          between(a, d, share + half),
          between(b, c, share + half),
          between(b, c, share - half),
        ];
    return path(polygon(corners.map(({ x, y }) => page.at(x, y))), { stroke: 'thin', fill: 'shade' });
  });
}

/** A strap is seen on the walls; over the sash it would run through its letter. */
function strapEnds(sash: PlacedSash, geometry: FrameGeometry, page: OnPage): readonly SceneItem[] {
  const x = middleX(sash);
  const far = geometry.outsideDepthMm - geometry.sideThicknessMm;
  const spans = [
    [-geometry.sideThicknessMm, geometry.insideDepthMm * 0.12],
    [geometry.insideDepthMm * 0.88, far],
  ] as const;
  return spans.flatMap(([from, to]) =>
    [-strapMm / 2, strapMm / 2].map((shift) =>
      path(segment(page.at(x + shift, from), page.at(x + shift, to)), { stroke: 'seen' }),
    ),
  );
}

function hingesOf(sash: PlacedSash): readonly (readonly Pick<Spot, 'x' | 'y'>[])[] {
  const { x, widthMm, upper, lower } = sash;
  const mark = (middleAt: Pick<Spot, 'x' | 'y'>, halfX: number, halfY: number) => [
    { x: middleAt.x - halfX, y: middleAt.y - halfY },
    { x: middleAt.x + halfX, y: middleAt.y - halfY },
    { x: middleAt.x + halfX, y: middleAt.y + halfY },
    { x: middleAt.x - halfX, y: middleAt.y + halfY },
  ];
  if (sash.hinge === 'none') return [];
  return [0.2, 0.8].map((share) =>
    sash.hinge === 'top'
      ? mark({ x: x + widthMm * share, y: upper.y }, hinge.alongMm / 2, hinge.acrossMm / 2)
      : mark(
          { x: sash.hinge === 'west' ? x : x + widthMm, y: lower.y + (upper.y - lower.y) * share },
          hinge.acrossMm / 2,
          hinge.alongMm / 2,
        ),
  );
}

function filled(spots: readonly Pick<Spot, 'x' | 'y'>[], page: OnPage): SceneItem {
  return path(polygon(spots.map(({ x, y }) => page.at(x, y))), { fill: 'ink', stroke: 'thin' });
}

function middle(spots: readonly Pick<Spot, 'x' | 'y'>[], page: OnPage): Point {
  const sum = spots.reduce((a, b) => ({ x: a.x + b.x, y: a.y + b.y }), { x: 0, y: 0 });
  return page.at(sum.x / spots.length, sum.y / spots.length);
}

function middleX({ x, widthMm }: PlacedSash): number {
  return x + widthMm / 2;
}

function mixed(a: number, b: number, share: number): number {
  return a + (b - a) * share;
}

function between(a: Spot, b: Spot, share: number): Pick<Spot, 'x' | 'y'> {
  return { x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share };
}
