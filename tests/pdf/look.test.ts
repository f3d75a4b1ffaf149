import { describe, expect, it } from 'vitest';
import type { ColourName } from '../../scripts/document/design.ts';
import type { Mark } from '../../scripts/pdf/items.ts';
import { layOut } from '../../scripts/pdf/lay-out.ts';
import { showcase } from '../document/showcase.ts';
import { contrast } from '../html/contrast.ts';
import { design, fonts } from './sheets.ts';

const laid = layOut(showcase, { design, fonts });
const marks = laid.pagination.placements.flatMap(({ piece }) => piece.marks);
const ofKind = <K extends Mark['kind']>(kind: K): Extract<Mark, { kind: K }>[] =>
  marks.filter((mark): mark is Extract<Mark, { kind: K }> => mark.kind === kind);

describe('the type of the sheets', () => {
  it('has a body of 11 to 12 points and nothing smaller than 9.5', () => {
    expect(design.type.text.sizePt).toBeGreaterThanOrEqual(11);
    expect(design.type.text.sizePt).toBeLessThanOrEqual(12);
    for (const [name, { sizePt, leadingPt }] of Object.entries(design.type)) {
      expect(sizePt, name).toBeGreaterThanOrEqual(9.5);
      // Large titles are set closer than text, but their lines never touch.
      expect(leadingPt / sizePt, name).toBeGreaterThanOrEqual(1.1);
    }
  });

  it('is drawn in no other size than those of the scale', () => {
    const scale = new Set(Object.values(design.type).map(({ sizePt }) => sizePt));
    expect(ofKind('text').filter(({ sizePt }) => !scale.has(sizePt))).toEqual([]);
  });

  it('has a line of text of 45 to 85 characters', () => {
    const { textColumns } = design.grid;
    const column = laid.context.width;
    const character =
      fonts.width('regular', 'the soil is warm enough for peas', design.type.text.sizePt) / 32;
    expect(textColumns).toBeLessThan(design.grid.columns);
    expect(column / character).toBeGreaterThan(45);
    expect(column / character).toBeLessThan(85);
  });

  it('has figures of one width, so that they stand below each other in tables', () => {
    for (const face of ['regular', 'semibold'] as const) {
      const figures = Array.from('0123456789', (figure) => fonts.width(face, figure, 10));
      expect(new Set(figures).size).toBe(1);
    }
  });
});

describe('the lines of the sheets', () => {
  it('are no thinner than half a point, in the design and on the page', () => {
    const { hiddenDashPt, ...weights } = design.line;
    expect(hiddenDashPt.length).toBe(2);
    for (const weight of Object.values(weights)) expect(weight).toBeGreaterThanOrEqual(0.5);
    const drawn = ofKind('path').flatMap(({ stroke }) => (stroke ? [stroke.widthPt] : []));
    expect(drawn.length).toBeGreaterThan(20);
    expect(Math.min(...drawn)).toBeGreaterThanOrEqual(0.5);
  });

  it('have the weights of the design, in drawings as around them', () => {
    const { hiddenDashPt, ...weights } = design.line;
    const known = new Set<number>(Object.values(weights));
    expect(hiddenDashPt.length).toBe(2);
    const others = ofKind('path').filter(({ stroke }) => stroke && !known.has(stroke.widthPt));
    expect(others).toEqual([]);
  });
});

describe('the colours of the sheets', () => {
  const texts: readonly ColourName[] = ['ink', 'green', 'clay'];
  const grounds: readonly ColourName[] = ['paper', 'tint'];
  const pairs = (['light', 'dark'] as const).flatMap((scheme) =>
    texts.flatMap((text) => grounds.map((ground) => ({ scheme, text, ground }))),
  );
  it.each(pairs)(
    '$text on $ground, $scheme, has a contrast of 7 to 1 at least',
    ({ scheme, text, ground }) => {
      const colours = design.colour[scheme];
      expect(contrast(colours[text], colours[ground])).toBeGreaterThanOrEqual(7);
    },
  );

  it('are, for words on paper, none but these', () => {
    const { ink, green, clay } = design.colour.light;
    expect(ofKind('text').filter(({ colour }) => ![ink, green, clay].includes(colour))).toEqual([]);
  });

  it('let rules be seen at 3 to 1', () => {
    const { paper } = design.colour.light;
    const strokes = new Set(ofKind('path').flatMap(({ stroke }) => (stroke ? [stroke.colour] : [])));
    for (const stroke of strokes) expect(contrast(stroke, paper)).toBeGreaterThanOrEqual(3);
  });
});
