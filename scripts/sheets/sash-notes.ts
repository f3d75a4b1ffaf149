/** What a builder has to know of sashes that do not simply lie loose on whole panes, a sentence or two for each thing. */
import { list, paragraph } from '../document/build.ts';
import type { Block, Inline } from '../document/document.ts';
import type { Finding } from '../findings/finding.ts';
import type { Frame } from '../structures/bale-cold-frame.ts';
import type { PlacedSash } from '../structures/geometry.ts';
import { sayWith } from './say-with.ts';
import type { SheetContext } from './sheet-context.ts';

type Values = Readonly<Record<string, string | number | Inline>>;

/** Nothing for a frame of loose sashes on walls that give slope enough. */
export function sashNotes(context: SheetContext, frame: Frame): readonly Block[] {
  const notes = new SashNotes(context, frame);
  const items = [...frame.geometry.sashes.flatMap((sash) => notes.ofSash(sash)), ...notes.ofFrame()];
  if (items.length === 0) return [];
  return [
    list(
      false,
      items.map((item) => [paragraph(item)]),
    ),
  ];
}

class SashNotes {
  readonly #context: SheetContext;
  readonly #frame: Frame;
  readonly #findings: ReadonlyMap<string, Finding>;

  constructor(context: SheetContext, frame: Frame) {
    this.#context = context;
    this.#frame = frame;
    this.#findings = new Map(frame.findings.map((finding) => [finding.id, finding]));
  }

  ofSash(sash: PlacedSash): readonly (readonly Inline[])[] {
    const id = (what: string): string => `frame.sash-${sash.id.toLowerCase()}.${what}`;
    const { panes } = sash;
    return [
      ...this.#hinge(sash, id('opens')),
      ...this.#told('panes', [['area', id('cover-area')]], {
        sash: sash.id,
        number: panes.number ?? panes.missing,
        missing: panes.missing,
        cover: panes.cover ? this.#context.wording.say(`build.about-sash.cover-${panes.cover}`) : '',
      }),
      ...this.#told('screen', [['weight', id('screen-weight')]], { sash: sash.id }),
      ...this.#told('gap', [['gap', id('gap')]], { sash: sash.id }),
      ...this.#told('filler', [['length', id('filler')]], { sash: sash.id }),
    ];
  }

  ofFrame(): readonly (readonly Inline[])[] {
    const { sashes } = this.#frame.geometry;
    return [
      ...this.#told('straps', [['length', 'frame.sash-strap']]),
      ...this.#told('board-straps', [['length', 'frame.board-strap']]),
      ...(sashes.some(({ holdDown }) => holdDown === 'hook') ? [this.#say('hooks', {})] : []),
      ...this.#told(
        'ridge',
        [
          ['straw', 'frame.ridge-straw'],
          ['rise', 'frame.ridge-rise'],
        ],
        { board: this.#boards('rest-board') },
      ),
      ...this.#told('flat', [['rise', 'frame.rise-for-usual-slope']]),
    ];
  }

  #hinge(sash: PlacedSash, opens: string): readonly (readonly Inline[])[] {
    const edge = this.#findings.get(opens);
    if (!edge) return [];
    if (sash.hinge === 'none') return [this.#say('never', { sash: sash.id })];
    const { hinge } = sash;
    const values = { sash: sash.id, edge: this.#context.printer.print(edge), side: this.#side(hinge) };
    const board = this.#findings.get(`frame.hinge-board-${this.#boardOf(sash)}`);
    if (!board) return [this.#say('hinged-beside', values)];
    const said = this.#context.wording.say('build.about-sash.a-board', {
      length: this.#context.printer.words(board.value).first,
    });
    const name = hinge === 'top' ? 'hinged-tall' : 'hinged-side';
    return [this.#say(name, { ...values, board: this.#context.printer.printAs(board, said) })];
  }

  #side(hinge: PlacedSash['hinge']): string {
    return hinge === 'west' || hinge === 'east' ? this.#context.wording.say(`choice.${hinge}`) : '';
  }

  /** The letter that the finding of a sash's hinge board ends with: that of the first sash on the board. */
  #boardOf({ id }: PlacedSash): string | undefined {
    return this.#frame.geometry.boards
      .find(({ role, sashes }) => role === 'hinge-board' && sashes.includes(id))
      ?.sashes[0]?.toLowerCase();
  }

  /** "a board 8 ft long", or each of several. */
  #boards(role: 'rest-board'): string {
    const lengths = this.#frame.geometry.boards
      .filter((board) => board.role === role)
      .flatMap(({ sashes }) => {
        const finding = this.#findings.get(`frame.${role}-${sashes[0]!.toLowerCase()}`);
        return finding ? [this.#context.printer.words(finding.value).first] : [];
      });
    return lengths
      .map((length) => this.#context.wording.say('build.about-sash.a-board', { length }))
      .join(', ');
  }

  /** A sentence with findings in it; none where one of them was not made. */
  #told(
    name: string,
    ids: readonly (readonly [string, string])[],
    values: Values = {},
  ): readonly (readonly Inline[])[] {
    const found = ids.map(([key, id]) => [key, this.#findings.get(id)] as const);
    if (found.some(([, finding]) => finding === undefined)) return [];
    const printed = found.map(([key, finding]) => [key, this.#context.printer.print(finding!)] as const);
    return [this.#say(name, { ...values, ...Object.fromEntries(printed) })];
  }

  #say(name: string, values: Values): readonly Inline[] {
    return sayWith(this.#context.wording.say, `build.about-sash.${name}`, values);
  }
}
