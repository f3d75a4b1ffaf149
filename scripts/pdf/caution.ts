import { plainText } from '../document/build.ts';
import type { Block, Caution, CautionGroup, Inline } from '../document/document.ts';
import type { PathCommand } from '../drawings/scene.ts';
import { columnText, firstColumn } from './column-text.ts';
import {
  asArtifacts,
  group,
  keptWithNext,
  piece,
  shifted,
  stacked,
  withBefore,
  type Item,
  type Mark,
  type Piece,
} from './items.ts';
import { colour, inside, type Context, type Measured } from './measure.ts';
import { filledBox, horizontalRule, verticalRule } from './rules.ts';
import { circlePath } from './scene-marks.ts';
import { baseline, plainLine, setText } from './text.ts';
import { headingTag, list, tag, type Tag } from './tags.ts';

type BlockOf<K extends Block['kind']> = Extract<Block, { kind: K }>;

const barPt = 5;
const paddingPt = { across: 10, down: 8 };
/** Above each part of a box; a signal word stands close over its own words. */
const boxGapPt = 10;
const signalColumnPt = 84;
/** A box at least this wide inside has two columns. */
const widePt = 400;
const triangleWidthPt = 12.5;
const triangleGapPt = 5;

export function measureCaution(block: BlockOf<'caution'>, context: Context): Measured {
  return measureCautions([block.caution], context);
}

/**
 * A ruled box with a heavy bar at its left: for each caution the signal word, the hazard, what to do. A caution is
 * never broken over pages; a box may be broken between two of them.
 */
export function measureCautions(cautions: readonly Caution[], context: Context): Measured {
  const rows = cautions.map((caution) => measureRow(caution, context));
  const last = rows.length - 1;
  return {
    items: rows.map(({ row }, index) => framed(row, context, { top: index === 0, bottom: index === last })),
    tags: rows.map(({ cautionTag }) => cautionTag),
  };
}

/**
 * All cautions of a sheet in one box, by signal word. Where a page would be left much too empty, the box is broken
 * between two cautions; its title and the signal word stand again over what goes on.
 */
export function measureCautionBox(block: BlockOf<'caution-box'>, context: Context): Measured {
  const content = inside(
    context,
    context.x + barPt + paddingPt.across,
    context.width - barPt - 2 * paddingPt.across,
  );
  const level = context.levels.get(block) ?? 2;
  const title = setText(block.title, content, { style: 'heading3', owner: headingTag(level) });
  const closing = setText(block.closing, content, { style: 'small', owner: 'P', face: 'semibold' });
  const groups = block.groups.map((group) => measureGroup(group, content, context));
  const outline: Mark = { kind: 'outline', level, title: plainText(block.title) };
  const titleStack = stacked(title.pieces);
  const items: Item[] = [
    ...keptWithNext([
      framed({ ...titleStack, marks: [outline, ...titleStack.marks] }, context, {
        top: true,
        bottom: false,
        below: boxGapPt / 4,
      }),
    ]),
    ...groups.flatMap(({ items: parts }) => parts),
    framed(stacked(closing.pieces), context, { top: false, bottom: true, above: boxGapPt }),
  ];
  return {
    items: [
      group(items, { together: true, yields: true, repeatedHead: continuedTitle(block, content, context) }),
    ],
    tags: [
      tag('Cautions', [
        tag(headingTag(level), title.kids),
        ...groups.map(({ groupTag }) => groupTag),
        tag('P', closing.kids),
      ]),
    ],
  };
}

function continuedTitle(block: BlockOf<'caution-box'>, content: Context, context: Context): Piece {
  const words = `${plainText(block.title)} (${context.furniture.continued})`;
  const marks = plainLine(words, { x: content.x, top: 0, width: content.width }, context, {
    style: 'small',
    face: 'italic',
    place: 'pagination',
  });
  const { height, marks: framedMarks } = framed(
    { height: context.design.type.small.leadingPt, marks },
    context,
    { top: true, bottom: false, below: boxGapPt / 4 },
  );
  return piece(height, asArtifacts(framedMarks));
}

/** A caution's box so high or lower is held to the words that end the box. */
const lowGroupPt = 110;

/** A signal word, and under it what it stands over, in two columns where the box is wide. */
function measureGroup(
  cautions: CautionGroup,
  content: Context,
  box: Context,
): { items: readonly Item[]; groupTag: Tag } {
  const { stack, signalTag } = measureSignal(cautions, content);
  const signal = framed(stack, box, { top: false, bottom: false, above: boxGapPt, below: boxGapPt / 4 });
  const across = content.width > widePt && cautions.items.length > 1 ? 2 : 1;
  const column = firstColumn(content, across);
  const texts = cautions.items.map((item) => setText(item, column, { style: 'small', owner: 'P' }));
  const gap = box.design.grid.baselinePt / 3;
  const body = columnText(
    texts.flatMap(({ pieces }, index) => withBefore([asPiece(stacked(pieces))], index === 0 ? 0 : gap)),
    content,
    {
      across,
      leastStart: 3 * box.design.type.small.leadingPt,
      backing: (height) => boxSides(height, box),
      groupHead: piece(signal.height, asArtifacts(signal.marks)),
    },
  );
  return {
    items: [...keptWithNext([signal]), { ...body, keepWithNext: body.height < lowGroupPt }],
    groupTag: tag('Caution', [
      signalTag,
      list(
        'None',
        texts.map(({ kids }) => tag('LI', [tag('LBody', [tag('P', kids)])])),
      ),
    ]),
  };
}

interface Stack {
  readonly height: number;
  readonly marks: readonly Mark[];
}

/** One caution inside its box: the signal word beside the words where there is room, otherwise above them. */
function measureRow(caution: Caution, context: Context): { row: Stack; cautionTag: Tag } {
  const left = context.x + barPt + paddingPt.across;
  const width = context.width - barPt - 2 * paddingPt.across;
  const besideWords = width - signalColumnPt > 180;
  const words = besideWords
    ? inside(context, left + signalColumnPt, width - signalColumnPt)
    : inside(context, left, width);
  const runIn: readonly Inline[] = [
    { kind: 'strong', content: caution.hazard },
    { kind: 'text', text: ' ' },
    ...caution.avoidance,
  ];
  const text = setText(runIn, words, { style: 'small', owner: 'P' });
  const signal = measureSignal(caution, inside(context, left, width));
  const body = stacked(text.pieces);
  const row = besideWords
    ? { height: Math.max(body.height, signal.stack.height), marks: [...signal.stack.marks, ...body.marks] }
    : stacked([asPiece(signal.stack), asPiece(body)]);
  return {
    row,
    cautionTag: tag('Caution', [signal.signalTag, tag('P', text.kids)]),
  };
}

/** The signal word in capitals; the alert triangle stands before it unless only property is at stake. */
function measureSignal(
  caution: Pick<Caution, 'signal' | 'signalText'>,
  context: Context,
): { stack: Stack; signalTag: Tag } {
  const alert = caution.signal !== 'notice';
  const indent = alert ? triangleWidthPt + triangleGapPt : 0;
  const text = setText(
    [{ kind: 'text', text: caution.signalText.toLocaleUpperCase(context.language) }],
    inside(context, context.x + indent, context.width - indent),
    { style: 'text', owner: 'P', face: 'semibold', colour: colour(context, alert ? 'clay' : 'ink') },
  );
  const { height, marks } = stacked(text.pieces);
  return {
    stack: { height, marks: alert ? [...alertTriangle(context), ...marks] : marks },
    signalTag: tag('P', text.kids),
  };
}

const asPiece = (stack: Stack): Item => piece(stack.height, stack.marks);

interface FrameEdges {
  readonly top: boolean;
  readonly bottom: boolean;
  /** Space inside the frame. */
  readonly above?: number;
  readonly below?: number;
}

/** Rules and bar around one part of a box. A part in the middle has no rule above or below, only at its sides. */
function framed(part: Stack, context: Context, edges: FrameEdges): Piece {
  const above = edges.above ?? (edges.top ? paddingPt.down : paddingPt.down * 0.75);
  const below = edges.below ?? (edges.bottom ? paddingPt.down : paddingPt.down * 0.25);
  const height = part.height + above + below;
  const { x, width } = context;
  const marks: Mark[] = [
    ...boxSides(height, context),
    ...(edges.top ? [horizontalRule(x, 0, width, context, boxRule)] : []),
    ...(edges.bottom ? [horizontalRule(x, height, width, context, boxRule)] : []),
    ...shifted(part.marks, above),
  ];
  return piece(height, marks);
}

const boxRule = { weight: 'thinPt', hue: 'ink' } as const;

/** The heavy bar at the left and the rule at the right. */
function boxSides(height: number, context: Context): Mark[] {
  const { x, width } = context;
  return [
    filledBox(x, 0, barPt, height, colour(context, 'clay')),
    verticalRule(x + width, 0, height, context, boxRule),
  ];
}

/** The safety alert symbol of ANSI Z535.6: a solid triangle with an exclamation mark. */
function alertTriangle(context: Context): Mark[] {
  const style = context.design.type.text;
  const foot = baseline(context, { ...style, face: 'semibold' }) + 0.6;
  const top = foot - triangleWidthPt * 0.87;
  const { x } = context;
  const middle = x + triangleWidthPt / 2;
  const solid = (commands: readonly PathCommand[], fill: string): Mark => ({
    kind: 'path',
    place: 'layout',
    commands,
    fill,
  });
  const paper = colour(context, 'paper');
  return [
    solid(
      [['M', middle, top], ['L', x + triangleWidthPt, foot], ['L', x, foot], ['Z']],
      colour(context, 'clay'),
    ),
    solid(
      [
        ['M', middle - 0.95, top + 3.6],
        ['L', middle + 0.95, top + 3.6],
        ['L', middle + 0.5, foot - 3.4],
        ['L', middle - 0.5, foot - 3.4],
        ['Z'],
      ],
      paper,
    ),
    solid(circlePath(middle, foot - 1.9, 0.85), paper),
  ];
}
