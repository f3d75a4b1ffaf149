import type { AnswerRoom, Block, WorksheetItem } from '../document/document.ts';
import { pointsPerMm } from '../drawings/scene.ts';
import { group, keptWithNext, piece, withBefore, withMarksOnFirst, type Item, type Piece } from './items.ts';
import { inside, type Context, type Measured } from './measure.ts';
import { horizontalRule, strokedBox } from './rules.ts';
import { plainLine, setText } from './text.ts';
import { leaf, list, tag, type Tag } from './tags.ts';

/** Between ruled lines: wide for young hands, narrow as in a notebook. */
const rulingMm = { wide: 11, narrow: 8 } as const;
const boxHeightMm = { small: 38, medium: 62, large: 92 } as const;
const numberColumnPt = 22;

/** Numbered questions over room to answer, each on one page. Lines and boxes are artifacts: there is nothing in them to tell. */
export function measureWorksheet(block: Extract<Block, { kind: 'worksheet' }>, context: Context): Measured {
  const gap = context.design.grid.baselinePt;
  const measured = block.items.map((item, index) => measureQuestion(item, index + 1, context));
  const opening = block.opening && setText(block.opening, context, { style: 'text', owner: 'P' });
  const questions = measured.flatMap(({ item }, index) =>
    withBefore([item], index === 0 && !opening ? 0 : gap),
  );
  return {
    items: [...keptWithNext(opening?.pieces ?? []), ...questions],
    tags: [
      ...(opening ? [tag('P', opening.kids)] : []),
      list(
        'Decimal',
        measured.map(({ li }) => li),
      ),
    ],
  };
}

function measureQuestion(item: WorksheetItem, number: number, context: Context): { item: Item; li: Tag } {
  const inner = inside(context, context.x + numberColumnPt, context.width - numberColumnPt);
  const text = setText(item.question, inner, { style: 'text', owner: 'P', findings: 'semibold' });
  const place = leaf('Lbl');
  const label = plainLine(
    `${number}.`,
    { x: context.x, top: 0, width: numberColumnPt - 6, align: 'right' },
    context,
    { style: 'text', place },
  );
  const question = keptWithNext(withMarksOnFirst(text.pieces, label));
  return {
    item: group([...question, room(item.room, inner)], { together: true }),
    li: tag('LI', [tag('Lbl', [place]), tag('LBody', [tag('P', text.kids)])]),
  };
}

function room(answer: AnswerRoom, context: Context): Piece {
  if (answer.kind === 'box') {
    const height = boxHeightMm[answer.size] * pointsPerMm;
    const box = strokedBox(context.x, 0, context.width, height, context, { weight: 'seenPt', hue: 'ink' });
    return piece(height, [box], { before: context.design.grid.baselinePt / 2 });
  }
  const ruling = rulingMm[answer.ruling] * pointsPerMm;
  const lines = Array.from({ length: answer.count }, (_, index) =>
    horizontalRule(context.x, (index + 1) * ruling, context.width, context, { weight: 'thinPt' }),
  );
  return piece(answer.count * ruling + 2, lines);
}
