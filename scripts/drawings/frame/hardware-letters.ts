/** What letters of boards, hinges, screens, straps and hooks point at, by the step that brings them in. */
import { weightBoards } from '../../structures/frame-boards.ts';
import type { PlacedSash } from '../../structures/geometry.ts';
import type { Point } from '../path.ts';
import { cordFoot, onUpperSide, sashCorners } from './bodies.ts';
import type { Lettered } from './free-letters.ts';
import { boardMiddle, boardStrapSpot, hingeSpot, hookSpots, screenPlace, strapSpot } from './hardware.ts';
import { panesOf } from './panes.ts';
import { bagOnBoardTop, bagTop } from './sandbags.ts';
import { groundCorners, liftMm, sashesFromLeft, type Stage } from './stage.ts';

/** None for a frame of loose sashes, whose letters have places of their own. */
export function hardwareLetters(stage: Stage): readonly Lettered[] {
  switch (stage.step) {
    case 'ground':
      return groundLetters(stage);
    case 'gaps':
      return boardLetters(stage, 'rest-board');
    case 'sashes':
      return sashLetters(stage);
    case 'vent':
      return ventLetters(stage);
    case 'poleward-wall':
    case 'side-walls':
    case 'equator-wall':
    case 'stakes':
    case 'soil':
    case 'sow':
    case 'props':
      return [];
    case 'storm':
      return stormLetters(stage);
  }
}

function groundLetters({ geometry, view, letters }: Stage): readonly Lettered[] {
  const near = geometry.sashes
    .filter(({ holdDown }) => holdDown === 'strap')
    .map(({ x, widthMm }) => view.at(x + widthMm / 2, -geometry.sideThicknessMm - 240, 0));
  const far = geometry.boards
    .filter(({ role }) => role === 'hinge-board')
    .map(({ under }) =>
      view.at(under[0].x + 300, geometry.outsideDepthMm - geometry.sideThicknessMm + 100, 0),
    );
  const [nearWest, nearEast, farEast, farWest] = groundCorners(geometry);
  const edge = ({ x: ax, y: ay }: Point, { x: bx, y: by }: Point, share: number): Point =>
    view.at(ax + (bx - ax) * share, ay + (by - ay) * share, 0);
  const peg = [nearWest, farEast, nearEast].map(({ x, y }) => view.at(x, y, 60));
  return [
    { letter: letters.straps, spots: near.length > 0 ? near : far },
    { letter: letters.stakes, spots: peg },
    { letter: letters.twine, spots: [0.3, 0.6].map((share) => edge(farWest, farEast, share)) },
  ];
}

function boardLetters(
  { geometry, view, letters }: Stage,
  role: 'rest-board' | 'hinge-board' | 'filler-board',
): readonly Lettered[] {
  const letter = role === 'filler-board' ? letters['filler-boards'] : letters[role];
  const spots = geometry.boards
    .filter((board) => board.role === role)
    .map((board) => boardMiddle(board, view));
  return [{ letter, spots }];
}

function sashLetters(stage: Stage): readonly Lettered[] {
  const { geometry, view, letters } = stage;
  const list = sashesFromLeft(geometry);
  // The last one is still in the air, unless hinges hold it.
  const laid = list.filter(({ hinge }, index) => hinge !== 'none' || index < list.length - 1);
  const spots = (
    of: readonly PlacedSash[],
    belongs: (sash: PlacedSash) => boolean,
    place: (sash: PlacedSash) => readonly (Point | undefined)[],
  ): readonly Point[] =>
    of
      .filter(belongs)
      .flatMap(place)
      .filter((spot) => spot !== undefined);
  return [
    {
      letter: letters.screens,
      spots: spots(
        [...list].reverse(),
        ({ screenMm }) => screenMm > 0,
        (sash) => [lowCorner(sash, stage)],
      ),
    },
    {
      letter: letters.straps,
      spots: [
        ...spots(
          laid,
          ({ holdDown }) => holdDown === 'strap',
          (sash) => [strapSpot(sash, geometry, view)],
        ),
        ...geometry.boards
          .filter(({ role }) => role === 'hinge-board')
          .map((board) => boardStrapSpot(board, view)),
      ],
    },
    {
      letter: letters.hinges,
      spots: spots(
        laid,
        ({ hinge }) => hinge !== 'none',
        (sash) => [hingeSpot(sash, view, {})],
      ),
    },
    ...boardLetters(stage, 'hinge-board'),
    ...boardLetters(stage, 'filler-board'),
    {
      letter: letters.hooks,
      spots: spots(
        laid,
        ({ holdDown }) => holdDown === 'hook',
        (sash) => hookSpots(sash, view, {}),
      ),
    },
    {
      letter: letters['pane-covers'],
      spots: spots(
        list,
        ({ panes }) => panes.missing > 0,
        (sash) => [coverSpot(sash, stage, laid.includes(sash))],
      ),
    },
    {
      letter: letters['hold-downs'],
      spots: spots(
        laid,
        ({ holdDown }) => holdDown === 'weight',
        (sash) => [bagTop(sash, view)],
      ),
    },
  ];
}

/** The boards across the sashes and the weights on them. */
function stormLetters({ geometry, view, letters, bagsInGust }: Stage): readonly Lettered[] {
  if (bagsInGust === undefined) return [];
  const boards = weightBoards(geometry);
  return [
    {
      letter: letters['hold-downs'],
      spots: boards.map((board) => bagOnBoardTop(board, bagsInGust * board.sashes.length, view)),
    },
    {
      letter: letters['weight-boards'],
      spots: boards.toReversed().map(({ under, up }) => {
        const end = view.right(0, 1) === 1 ? under[1] : under[0];
        return view.at(end.x, end.y, end.z + up.z / 2);
      }),
    },
  ];
}

function ventLetters({ geometry, view, letters }: Stage): readonly Lettered[] {
  const list = sashesFromLeft(geometry).filter(({ screenMm }) => screenMm > 0);
  return [
    {
      letter: letters.screens,
      spots: list.map((sash) => {
        const { lower } = screenPlace(sash);
        return view.at(sash.x + sash.widthMm * 0.3, lower.y + 20, lower.z + sash.screenMm);
      }),
    },
    {
      letter: letters.twine,
      spots: sashesFromLeft(geometry)
        .filter(({ opens }) => opens === 'low-end')
        .toReversed()
        .map((sash) => cordFoot(sash, geometry, view)),
    },
  ];
}

/** The front of the screen at the low end of a sash. */
function lowCorner(sash: PlacedSash, { view }: Stage): Point {
  const { lower } = screenPlace(sash);
  return view.at(sash.x + sash.widthMm * 0.35, lower.y, lower.z + sash.screenMm / 2);
}

function coverSpot(sash: PlacedSash, { view }: Stage, isLaid: boolean): Point | undefined {
  const pane = panesOf(sash, onUpperSide(sashCorners(sash, isLaid ? {} : { liftMm }).over, view))[0];
  if (!pane) return undefined;
  const sum = pane.reduce((a, b) => ({ x: a.x + b.x, y: a.y + b.y }));
  return { x: sum.x / pane.length, y: sum.y / pane.length };
}
