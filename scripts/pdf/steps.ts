import { plainText } from '../document/build.ts';
import type { Block, Step } from '../document/document.ts';
import { measureCautions } from './caution.ts';
import { measureDrawing, naturalSize } from './figure.ts';
import {
  columns,
  group,
  keptWithNext,
  naturalHeight,
  piece,
  withBefore,
  withMarksOnFirst,
  type Enlarging,
  type Item,
  type Mark,
} from './items.ts';
import {
  colour,
  inside,
  isFullWidth,
  measuredOnce,
  pageGrid,
  type Context,
  type Measured,
} from './measure.ts';
import { horizontalRule } from './rules.ts';
import { baseline, plainLine, setText, typeStyle } from './text.ts';
import { headingTag, leaf, list, tag, type Tag } from './tags.ts';

type Steps = Extract<Block, { kind: 'steps' }>;

/** Share of the whole width that drawings take. */
const drawingShare = 0.42;
const numberColumnPt = 34;
const ruleGapPt = 9;

/** A drawing is not enlarged beyond this: it would tell no more. */
const largestDrawing = 1.9;

/**
 * Numbered acts over the whole free width, each kept on one page, its drawing beside its words, or large and under them
 * where the page has room for that.
 */
export function measureSteps(block: Steps, context: Context): Measured {
  const level = context.levels.get(block) ?? 3;
  const measured = block.items.map((step) => measureStep(step, level, context));
  const gap = context.design.grid.baselinePt;
  const items = measured.flatMap(({ item }, index) => withBefore([item], index === 0 ? 0 : gap));
  return {
    items,
    tags: [
      list(
        'Decimal',
        measured.map(({ li }) => li),
      ),
    ],
  };
}

interface MeasuredStep {
  readonly item: Item;
  readonly li: Tag;
}

/**
 * The drawing stands beside the title, the cautions and the act. Where the cautions would make a long narrow
 * column, they take the whole width under the title instead and the drawing stands beside the act.
 */
function measureStep(step: Step, level: number, context: Context): MeasuredStep {
  const scale = context.drawnLarge.get(step);
  if (scale !== undefined) return stepWithDrawingUnder(step, level, context, scale);
  return measuredOnce(step, context, `step ${level}`, () => {
    const besideAll = arrangeStep(step, level, context, 'beside-all');
    if (!step.drawing || !isFullWidth(context, context.freeWidth)) return besideAll;
    const besideAct =
      step.cautions.length === 0 ? besideAll : arrangeStep(step, level, context, 'beside-act');
    const { item, li } =
      naturalHeight([besideAct.item]) < naturalHeight([besideAll.item]) ? besideAct : besideAll;
    return { item: group([item], { together: true, enlarging: enlarging(step, level, context) }), li };
  });
}

/** How the step would stand with its drawing under its words, for a page that has room for that. */
function enlarging(step: Step, level: number, context: Context): Enlarging {
  const natural = naturalSize(step.drawing!);
  return {
    step,
    wordsHeight: () =>
      measuredOnce(step, context, `words ${level}`, () => {
        const { number, title, cautions, body } = step;
        return naturalHeight([arrangeStep({ number, title, cautions, body }, level, context, 'under').item]);
      }),
    drawingHeight: natural.height,
    gap: context.design.grid.baselinePt,
    most: Math.min(largestDrawing, (context.freeWidth - numberColumnPt) / natural.width),
  };
}

function stepWithDrawingUnder(step: Step, level: number, context: Context, scale: number): MeasuredStep {
  const { item, li } = arrangeStep(step, level, context, 'under', scale);
  return { item: group([item], { together: true }), li };
}

function arrangeStep(
  step: Step,
  level: number,
  context: Context,
  drawingPlace: 'beside-all' | 'beside-act' | 'under',
  drawingScale = 1,
): MeasuredStep {
  const half = context.design.grid.baselinePt / 2;
  const { words, drawing: drawingContext } =
    drawingPlace === 'under' ? stackedColumn(context) : stepColumns(step, context);
  const cautionContext =
    drawingPlace === 'beside-all' ? words : { ...words, width: context.freeWidth - numberColumnPt };
  const title = measureTitle(step, level, context, words);
  const cautions = measureCautions(step.cautions, cautionContext);
  const act = context.measure(step.body, words);
  const drawing = step.drawing && measureDrawing(step.drawing, drawingContext, drawingScale);

  const before = [...title.items, ...keptWithNext(withBefore(cautions.items, half))];
  const after = withBefore(act.items, cautions.items.length > 0 ? half : context.design.grid.baselinePt / 6);
  const opening = piece(
    ruleGapPt,
    [horizontalRule(context.x, 0, context.freeWidth, context, { weight: 'thinPt' })],
    {
      keepWithNext: true,
    },
  );
  const flow = {
    'beside-all': () => withDrawing([...before, ...after], drawing?.item, context),
    'beside-act': () => [
      ...before,
      ...withBefore(withDrawing(withBefore(after, 0), drawing?.item, context), half),
    ],
    under: () => [
      ...before,
      ...after,
      ...(drawing ? withBefore([drawing.item], context.design.grid.baselinePt) : []),
    ],
  }[drawingPlace]();
  const body = tag('LBody', [title.tag, ...cautions.tags, ...act.tags, ...(drawing ? [drawing.tag] : [])]);
  return { item: group([opening, ...flow], { together: true }), li: tag('LI', [title.label, body]) };
}

/** Where the words and the drawing of a step stand: side by side where there is room, otherwise below each other. */
function stepColumns(step: Step, context: Context): { words: Context; drawing: Context } {
  const left = context.x + numberColumnPt;
  if (!isFullWidth(context, context.freeWidth)) {
    const column = inside(context, left, context.width - numberColumnPt);
    return { words: column, drawing: column };
  }
  const drawingWidth = context.freeWidth * drawingShare;
  const gap = context.design.grid.gutterPt * 1.5;
  const wordsWidth = step.drawing
    ? context.freeWidth - drawingWidth - gap
    : pageGrid(context.design, context.paper).textWidth;
  return {
    words: inside(context, left, wordsWidth - numberColumnPt),
    drawing: inside(context, context.x + context.freeWidth - drawingWidth, drawingWidth),
  };
}

/** The words as wide as text is elsewhere, and the drawing over the whole width under them. */
function stackedColumn(context: Context): { words: Context; drawing: Context } {
  const left = context.x + numberColumnPt;
  const whole = inside(context, left, context.freeWidth - numberColumnPt);
  const { textWidth } = pageGrid(context.design, context.paper);
  return { words: inside(context, left, textWidth - numberColumnPt), drawing: whole };
}

function withDrawing(words: readonly Item[], drawing: Item | undefined, context: Context): readonly Item[] {
  if (!drawing) return words;
  if (isFullWidth(context, context.freeWidth)) return [columns([words, [drawing]])];
  return [...words, ...withBefore([drawing], context.design.grid.baselinePt / 2)];
}

/** The number in the margin and the title, which stands never last on a page. */
function measureTitle(
  step: Step,
  level: number,
  context: Context,
  words: Context,
): { items: readonly Item[]; label: Tag; tag: Tag } {
  const type = headingTag(level);
  const title = setText(step.title, words, { style: 'heading3', owner: type });
  const place = leaf('Lbl');
  const spoken = context.furniture.step(step.number);
  const outline: Mark = { kind: 'outline', level, title: `${spoken}: ${plainText(step.title)}` };
  const lines = title.pieces.map((line) => ({ ...line, keepWithNext: true }));
  return {
    items: withMarksOnFirst(lines, [outline, ...stepNumber(step.number, context, place)]),
    label: tag('Lbl', [place], { actualText: spoken }),
    tag: tag(type, title.kids),
  };
}

/** A large number on the baseline of the step's title. */
function stepNumber(number: number, context: Context, place: ReturnType<typeof leaf>): Mark[] {
  const large = typeStyle(context, { style: 'keyNumber' });
  const title = typeStyle(context, { style: 'heading3' });
  const top = baseline(context, title) - baseline(context, large);
  return plainLine(String(number), { x: context.x, top, width: numberColumnPt }, context, {
    style: 'keyNumber',
    place,
  }).map((mark): Mark => (mark.kind === 'text' ? { ...mark, colour: colour(context, 'green') } : mark));
}
