/** Frames of very different sashes: what a builder may have found behind a barn. */
import {
  hingesOn2x6,
  inches,
  partOf,
  projectWith,
  quantityIn,
  thinScreen,
  type Choices,
  type SashExtras,
} from './project.ts';
import type { BaleColdFrame } from '../../scripts/records/schemas/projects/bale-cold-frame.ts';

type Count = BaleColdFrame['parts'][number]['count'];

/** Parts for the counts that a frame needs, lettered in their order. */
export function partsFor(...counts: readonly Count[]): BaleColdFrame['parts'] {
  const all: readonly Count[] = [
    'bales',
    'stakes',
    'sashes',
    'loose-straw-bales',
    'soil-litres',
    'props',
    ...counts,
  ];
  return all.map((count, index) =>
    partOf({
      letter: 'ABCDEFGHIJWXYZ'[index]!,
      count,
      ...(count === 'soil-litres' ? { pack: quantityIn('volume', 'ft3', 2) } : {}),
      ...(count === 'hold-downs' ? { mass: quantityIn('mass', 'lb', 20) } : {}),
      ...(count === 'cut'
        ? {
            nominal: '2x6',
            stock: [{ length: quantityIn('length', 'ft', 12), price: quantityIn('money', 'USD', 9) }],
          }
        : {}),
    }),
  );
}

const holdDowns = { perEnd: 1, sources: ['weight-source'] };
const weights = { holdDowns, parts: partsFor('hold-downs') };
const each = (number: number, extras: SashExtras): Readonly<Record<number, SashExtras>> =>
  Object.fromEntries(Array.from({ length: number }, (_, index) => [index, extras]));
const film: SashExtras = { panes: { kind: 'plastic-film' }, glass: quantityIn('length', 'mm', 0.15) };
const sheet: SashExtras = { panes: { kind: 'polycarbonate' }, glass: quantityIn('length', 'mm', 6) };

export interface OddFrame {
  readonly name: string;
  readonly choices: Choices;
}

export const oddFrames: readonly OddFrame[] = [
  { name: 'one tiny sash', choices: { sashes: [[22, 30]], ...weights } },
  {
    name: 'twelve sashes of mixed sizes',
    choices: {
      sashes: [
        [27, 54],
        [18, 60],
        [31, 54],
        [24, 57],
        [12, 54],
        [36, 62],
        [27, 54],
        [27, 54],
        [20, 70],
        [33, 55],
        [24, 54],
        [30, 66],
      ],
      ...weights,
    },
  },
  {
    name: 'one long sash on hinges at the top, with hooks',
    choices: {
      sashes: [[72, 48]],
      special: { 0: { hinge: 'top', holdDown: 'hook' } },
      hinges: hingesOn2x6,
      parts: partsFor('hinges', 'straps', 'hooks', 'cut'),
    },
  },
  {
    name: 'a pair on hinges at their outer sides, with screens and straps',
    choices: {
      sashes: [
        [34, 54],
        [34, 54],
      ],
      special: {
        0: { hinge: 'west', screen: thinScreen, holdDown: 'strap' },
        1: { hinge: 'east', screen: thinScreen, holdDown: 'strap' },
      },
      hinges: hingesOn2x6,
      parts: partsFor('hinges', 'straps', 'screens', 'cut'),
    },
  },
  {
    name: 'sashes of film and sheet on a ridge of straw, held by straps',
    choices: {
      sashes: [
        [30, 50],
        [30, 50],
        [30, 52],
      ],
      special: {
        0: { ...film, holdDown: 'strap' },
        1: { ...film, holdDown: 'strap' },
        2: { ...sheet, holdDown: 'strap' },
      },
      poleward: { courses: 1, lay: 'flat' },
      others: { courses: 1, lay: 'flat' },
      slope: { by: 'wedge', rise: inches(5), board: '2x6' },
      parts: partsFor('straps', 'cut'),
    },
  },
  {
    name: 'old sashes with panes missing, one short, two courses high',
    choices: {
      sashes: [
        [28, 70],
        [26, 66],
        [28, 84],
      ],
      special: {
        0: { panes: { kind: 'glass', number: 6, missing: 2, cover: 'plastic-film' } },
        1: { filler: 'board' },
        2: { panes: { kind: 'glass', number: 8 } },
      },
      poleward: { courses: 2, lay: 'on-edge' },
      others: { courses: 2, lay: 'flat' },
      stakes: { perBale: 2, length: 60 },
      holdDowns,
      parts: partsFor('hold-downs', 'pane-covers', 'filler-boards'),
    },
  },
  {
    name: 'a middle sash that carries the hinges of both beside it',
    choices: {
      sashes: [
        [30, 54],
        [24, 54],
        [30, 54],
      ],
      special: { 0: { hinge: 'east' }, 1: { holdDown: 'strap' }, 2: { hinge: 'west' } },
      hinges: hingesOn2x6,
      holdDowns,
      parts: partsFor('hold-downs', 'hinges', 'straps'),
    },
  },
  {
    name: 'seven hinged at the top, two courses behind and one in front',
    choices: {
      sashes: each7(),
      special: each(7, { hinge: 'top' }),
      poleward: { courses: 2, lay: 'flat' },
      stakes: { perBale: 2, length: 48 },
      hinges: { ...hingesOn2x6, perSash: 3 },
      holdDowns,
      parts: partsFor('hold-downs', 'hinges', 'straps', 'cut'),
    },
  },
];

function each7(): readonly (readonly [number, number])[] {
  return Array.from({ length: 7 }, () => [28, 64] as const);
}

export const oddProject = ({ choices }: OddFrame): BaleColdFrame => projectWith(choices);
