/** What a sash is and how it is held, as far as its record says it: its hinge, its panes, what holds it down in the wind. */
import { middle } from '../quantities/quantity.ts';
import type { BaleColdFrame } from '../records/schemas/projects/bale-cold-frame.ts';

/** What panes are of. */
export type PaneKind = 'glass' | 'plastic-film' | 'polycarbonate';

/** The edge that hinges hold. */
export type SashHinge = 'none' | 'top' | 'west' | 'east';

/** The edge that comes up when the sash is opened; `never` for one that carries the hinges of another. */
export type SashOpens = 'low-end' | 'west-edge' | 'east-edge' | 'never';

/** What hinges are screwed to. */
export type HingedTo = 'nothing' | 'board-on-tall-wall' | 'board-on-side-wall' | 'sash-beside';

export type HoldDown = 'none' | 'weight' | 'strap' | 'hook';

export interface SashPanes {
  readonly kind: PaneKind;
  /** Panes that the sash has room for; undefined where the record does not count them. */
  readonly number: number | undefined;
  readonly missing: number;
  /** What covers the missing ones. */
  readonly cover: 'plastic-film' | 'polycarbonate' | undefined;
}

export interface SashPlan {
  readonly hinge: SashHinge;
  readonly hingedTo: HingedTo;
  readonly opens: SashOpens;
  readonly holdDown: HoldDown;
  readonly panes: SashPanes;
  /** Frame of the insect screen under it. */
  readonly screen: { readonly railMm: number; readonly thicknessMm: number } | undefined;
  /** True where a board on the low wall carries its low end. */
  readonly filler: boolean;
}

/** The plan of every sash, in the order of the record. */
export function sashPlans(project: BaleColdFrame): readonly SashPlan[] {
  const { sashes } = project;
  return sashes.map((sash, index): SashPlan => {
    const hinge = sash.hinge ?? 'none';
    return {
      hinge,
      hingedTo: hingedTo(hinge, index, sashes.length),
      opens: carriesAnother(sashes, index) ? 'never' : opensAt[hinge],
      holdDown: sash.holdDown ?? (project.holdDowns ? 'weight' : 'none'),
      panes: {
        kind: sash.panes?.kind ?? 'glass',
        number: sash.panes?.number,
        missing: sash.panes?.missing ?? 0,
        cover: sash.panes?.cover,
      },
      screen: sash.screen && {
        railMm: middle(sash.screen.rail),
        thicknessMm: middle(sash.screen.thickness),
      },
      filler: sash.filler === 'board',
    };
  });
}

/** A hinged sash comes up at the edge across from its hinges, a loose one at its low end. */
const opensAt: Readonly<Record<SashHinge, SashOpens>> = {
  none: 'low-end',
  top: 'low-end',
  west: 'east-edge',
  east: 'west-edge',
};

function hingedTo(hinge: SashHinge, index: number, number: number): HingedTo {
  if (hinge === 'none') return 'nothing';
  if (hinge === 'top') return 'board-on-tall-wall';
  const atEnd = hinge === 'west' ? index === 0 : index === number - 1;
  return atEnd ? 'board-on-side-wall' : 'sash-beside';
}

/** Whether the sash beside this one is hinged to it. */
export function carriesAnother(sashes: BaleColdFrame['sashes'], index: number): boolean {
  return sashes[index + 1]?.hinge === 'west' || sashes[index - 1]?.hinge === 'east';
}

/** True for a sash on hinges. */
export function isHinged({ hinge }: { readonly hinge: SashHinge }): boolean {
  return hinge !== 'none';
}
