/** Sheets made of all kinds of blocks and inlines at random, for properties that every layout must have. */
import fc from 'fast-check';
import {
  abbreviation,
  beside,
  caution,
  cautionBox,
  checklist,
  column,
  emphasis,
  figure,
  findingWords,
  heading,
  inline,
  keyNumbers,
  labels,
  language,
  link,
  list,
  mark,
  pageBreak,
  paragraph,
  sources,
  steps,
  strong,
  table,
  together,
  wide,
  workings,
} from '../../scripts/document/build.ts';
import type { Block, Caution, Inline, SheetDocument, SignalWord } from '../../scripts/document/document.ts';
import type { Scene } from '../../scripts/drawings/scene.ts';
import { makeDocument } from '../document/showcase.ts';

/** Every block kind that a section can hold, once for each number given to it, so that ids differ. */
type Numbered = (number: number) => Block;

const word = fc.constantFrom(
  ...[
    'soil',
    'sow',
    'a',
    'the',
    'carrots',
    'in',
    'spring',
    'well-drained',
    'moisture',
    'Jalapeño',
    '½\u00a0in',
  ],
  ...[
    '12–18\u00a0in',
    'April\u00a029',
    '2 × 6',
    'thermometer',
    'of',
    'and',
    'until',
    'overwintering',
    '5′\u00a07⅜″',
  ],
);
const words = (from: number, to: number): fc.Arbitrary<string> =>
  fc.array(word, { minLength: from, maxLength: to }).map((list) => list.join(' '));

const plainInline = words(1, 6);
const richInline: fc.Arbitrary<string | Inline> = fc.oneof(
  { weight: 6, arbitrary: words(2, 12) },
  plainInline.map((text) => strong(text)),
  plainInline.map((text) => emphasis(text)),
  plainInline.map((text) => findingWords('carrot.depth', text)),
  plainInline.map((text) => language('la', text)),
  fc.constant(abbreviation('inches', 'in')),
  plainInline.map((text) => link('https://guides.example.org/freeze/table-of-dates', text)),
);
/** Pieces with spaces between them. */
const prose = (most: number): fc.Arbitrary<readonly Inline[]> =>
  fc
    .array(richInline, { minLength: 1, maxLength: most })
    .map((parts) => inline(parts.flatMap((part, index) => (index === 0 ? [part] : [' ', part]))));

const paragraphs: fc.Arbitrary<Numbered> = fc
  .tuple(prose(8), fc.constantFrom('body' as const, 'body' as const, 'lead' as const, 'small' as const))
  .map(
    ([content, role]) =>
      () =>
        paragraph(content, role),
  );

const nestedList = fc.array(prose(3), { minLength: 1, maxLength: 3 }).map((items) =>
  list(
    false,
    items.map((item) => [paragraph(item)]),
  ),
);
const lists: fc.Arbitrary<Numbered> = fc
  .tuple(
    fc.boolean(),
    fc.array(fc.tuple(prose(5), fc.option(nestedList, { nil: undefined, freq: 4 })), {
      minLength: 1,
      maxLength: 7,
    }),
  )
  .map(
    ([ordered, items]) =>
      () =>
        list(
          ordered,
          items.map(([content, inner]) => [paragraph(content), ...(inner ? [inner] : [])]),
        ),
  );

const checklists: fc.Arbitrary<Numbered> = fc
  .array(prose(3), { minLength: 1, maxLength: 8 })
  .map((items) => () => checklist(items));

const cell = fc.oneof({ weight: 5, arbitrary: words(1, 3) }, prose(2));
const tables: fc.Arbitrary<Numbered> = fc
  .record({
    columns: fc.integer({ min: 2, max: 5 }),
    groups: fc.array(
      fc.tuple(
        fc.boolean(),
        fc.array(fc.array(cell, { minLength: 5, maxLength: 5 }), { minLength: 1, maxLength: 14 }),
      ),
      { minLength: 1, maxLength: 3 },
    ),
    notes: fc.array(words(3, 30), { maxLength: 2 }),
    caption: words(1, 9),
  })
  .map(({ columns, groups, notes, caption }) => (number) => {
    const id = `table-${number}`;
    return table({
      id,
      caption,
      columns: Array.from({ length: columns }, (_, at) =>
        column(`Column ${at + 1}`, at > 0 && at % 2 === 0 ? { align: 'centre', unit: 'in' } : {}),
      ),
      groups: groups.map(([headed, rows], at) => ({
        ...(headed ? { header: inline(`Group ${at + 1}`) } : {}),
        rows: rows.map((cells, row) => ({
          cells: cells.slice(0, columns).map((content, place) => {
            const marked = notes.length > 0 && row === 0 && place === 1;
            return inline([
              ...inline(content),
              ...(marked ? [mark({ table: id, number: 1 }, 'noted', '*')] : []),
            ]);
          }),
        })),
      })),
      notes,
    });
  });

const scene = (number: number, widthMm: number, heightMm: number): Scene => ({
  id: `drawing-${number}`,
  widthMm,
  heightMm,
  alternative: 'A bed from above.',
  items: [
    {
      kind: 'path',
      commands: [['M', 0, 0], ['L', widthMm, 0], ['L', widthMm, heightMm], ['L', 0, heightMm], ['Z']],
      stroke: 'seen',
    },
  ],
});
const sizes = fc.record({
  width: fc.integer({ min: 20, max: 175 }),
  height: fc.integer({ min: 15, max: 140 }),
});
const figures: fc.Arbitrary<Numbered> = fc.tuple(sizes, fc.option(words(2, 20), { nil: undefined })).map(
  ([{ width, height }, caption]) =>
    (number) =>
      figure(scene(number, width, height), caption === undefined ? {} : { caption }),
);

const signals = ['danger', 'warning', 'caution', 'notice'] as const;
const signalText = (signal: SignalWord): string => signal[0]!.toUpperCase() + signal.slice(1);
const cautionOf: fc.Arbitrary<Caution> = fc
  .tuple(fc.constantFrom(...signals), words(5, 20), words(5, 20))
  .map(([signal, hazard, avoidance]) => ({
    signal,
    signalText: signalText(signal),
    hazard: inline(`${hazard}.`),
    avoidance: inline(`${avoidance}.`),
  }));
const cautions: fc.Arbitrary<Numbered> = cautionOf.map((item) => () => caution(item));

const cautionBoxes: fc.Arbitrary<Numbered> = fc
  .array(fc.array(words(8, 40), { minLength: 1, maxLength: 9 }), { minLength: 1, maxLength: 4 })
  .map(
    (groups) => (number) =>
      cautionBox({
        id: `box-${number}`,
        title: 'Before you start',
        groups: groups.map((items, at) => ({
          signal: signals[at]!,
          signalText: signalText(signals[at]!),
          items: items.map((item) => inline(item)),
        })),
        closing: 'Local codes and licensed trades come before this sheet.',
      }),
  );

const keys: fc.Arbitrary<Numbered> = fc
  .array(fc.tuple(words(1, 3), words(1, 6)), { minLength: 1, maxLength: 6 })
  .map((items) => () => keyNumbers(items.map(([value, label]) => ({ value, label }))));

const stepLists: fc.Arbitrary<Numbered> = fc
  .array(
    fc.record({
      title: words(2, 6),
      cautions: fc.array(cautionOf, { maxLength: 3 }),
      body: fc.array(prose(6), { minLength: 1, maxLength: 2 }),
      drawing: fc.option(sizes, { nil: undefined }),
    }),
    { minLength: 1, maxLength: 5 },
  )
  .map(
    (items) => (number) =>
      steps(
        items.map(({ title, cautions: given, body, drawing }, at) => ({
          number: at + 1,
          title: inline(title),
          cautions: given,
          body: body.map((content) => paragraph(content)),
          ...(drawing ? { drawing: scene(number * 100 + at, drawing.width / 2, drawing.height / 2) } : {}),
        })),
      ),
  );

const labelSheets: fc.Arbitrary<Numbered> = fc
  .array(fc.tuple(words(1, 3), fc.array(words(2, 6), { maxLength: 3 })), { minLength: 1, maxLength: 9 })
  .map((items) => () => labels(items.map(([title, lines]) => ({ title, lines }))));

const workingLists: fc.Arbitrary<Numbered> = fc
  .array(fc.tuple(words(1, 5), words(1, 4), prose(14)), { minLength: 1, maxLength: 16 })
  .map(
    (items) => (number) =>
      workings(
        items.map(([term, value, explanation], at) => ({
          id: `w-${number}-${at}`,
          term: inline(term),
          value: inline(value),
          explanation,
        })),
      ),
  );

const sourceLists: fc.Arbitrary<Numbered> = fc
  .array(fc.tuple(words(3, 30), fc.boolean()), { minLength: 1, maxLength: 18 })
  .map(
    (items) => (number) =>
      sources(
        items.map(([content, linked], at) => ({
          id: `s-${number}-${at}`,
          content: inline(content),
          ...(linked ? { href: `https://archive.example.org/guides/crop-tables/${number}/${at}` } : {}),
        })),
      ),
  );

const simple = fc.oneof(
  { weight: 4, arbitrary: paragraphs },
  lists,
  checklists,
  tables,
  figures,
  cautions,
  keys,
);

const besides: fc.Arbitrary<Numbered> = fc
  .tuple(
    fc.oneof(figures, keys, paragraphs, tables),
    fc.array(fc.oneof(paragraphs, lists, tables), { minLength: 1, maxLength: 4 }),
  )
  .map(
    ([aside, main]) =>
      (number) =>
        beside(
          [aside(number * 100 + 50)],
          main.map((each, at) => each(number * 100 + 60 + at)),
        ),
  );
const within = (
  make: (content: readonly Block[]) => Block,
  inner: fc.Arbitrary<Numbered>,
): fc.Arbitrary<Numbered> =>
  fc
    .array(inner, { minLength: 1, maxLength: 3 })
    .map((content) => (number) => make(content.map((each, at) => each(number * 100 + 70 + at))));

const anyBlock: fc.Arbitrary<Numbered> = fc.oneof(
  { weight: 8, arbitrary: simple },
  { weight: 2, arbitrary: besides },
  { weight: 2, arbitrary: within(wide, fc.oneof(simple, cautionBoxes, labelSheets, stepLists)) },
  { weight: 1, arbitrary: within(together, simple) },
  { weight: 1, arbitrary: stepLists },
  { weight: 1, arbitrary: labelSheets },
  { weight: 1, arbitrary: cautionBoxes },
);

const sections = fc.array(
  fc.record({
    level: fc.constantFrom(2 as const, 3 as const, 4 as const),
    title: words(1, 9),
    blocks: fc.array(anyBlock, { minLength: 1, maxLength: 5 }),
    breakAfter: fc.integer({ min: 0, max: 9 }).map((chance) => chance === 0),
  }),
  { minLength: 1, maxLength: 4 },
);

export const arbitraryDocument: fc.Arbitrary<SheetDocument> = fc
  .record({
    paper: fc.constantFrom('letter' as const, 'a4' as const),
    title: words(2, 9),
    opening: paragraphs,
    sections,
    workings: workingLists,
    sources: sourceLists,
  })
  .map(({ paper, title, opening, sections: given, workings: worked, sources: listed }) => {
    const blocks = given.flatMap(
      ({ level, title: head, blocks: inner, breakAfter }, at): readonly Block[] => [
        heading(at === 0 ? 2 : level, `section-${at}`, head),
        ...inner.map((each, place) => each(at * 10 + place + 1)),
        ...(breakAfter ? [pageBreak()] : []),
      ],
    );
    const ends = [
      wide([heading(2, 'worked-out', 'How we worked this out'), worked(1)]),
      wide([heading(2, 'sources', 'Sources'), listed(1)]),
    ];
    return makeDocument([opening(0), ...blocks, ...ends], { paper, title });
  });
