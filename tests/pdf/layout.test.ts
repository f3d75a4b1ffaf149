import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { SheetDocument } from '../../scripts/document/document.ts';
import {
  naturalHeight,
  type Area,
  type Group,
  type Item,
  type Mark,
  type Piece,
} from '../../scripts/pdf/items.ts';
import { layOut, pageHeights, type LaidOut } from '../../scripts/pdf/lay-out.ts';
import { pageGrid } from '../../scripts/pdf/measure.ts';
import { shortAddress } from '../../scripts/pdf/sources.ts';
import { isTag, type Leaf, type Tag } from '../../scripts/pdf/tags.ts';
import { wordsOfDocument } from '../html/reading.ts';
import { arbitraryDocument } from './random-documents.ts';
import { design, fonts } from './sheets.ts';

const runs = 500;
const documents = fc.sample(arbitraryDocument, { seed: 20_270_115, numRuns: runs });
const sheets = documents.map((document) => ({ document, laid: layOut(document, { design, fonts }) }));

/** What is wrong with which sheets; the first few are enough to tell. */
const faults = (check: (laid: LaidOut, document: SheetDocument) => readonly string[]): readonly string[] =>
  sheets
    .flatMap(({ laid, document }, index) => check(laid, document).map((fault) => `sheet ${index}: ${fault}`))
    .slice(0, 8);

describe(`${runs} sheets at random`, () => {
  it('are of every kind of block, of both papers, and of many lengths', () => {
    const kinds = new Set(documents.flatMap(({ blocks }) => blocks.map(({ kind }) => kind)));
    expect(kinds.size).toBeGreaterThan(13);
    expect(new Set(documents.map(({ paper }) => paper))).toEqual(new Set(['letter', 'a4']));
    const pages = sheets.map(({ laid }) => laid.pagination.pages);
    expect(Math.max(...pages)).toBeGreaterThan(10);
    expect(Math.min(...pages)).toBeLessThan(3);
    expect(sheets.every(({ laid }) => laid.pagination.overflowing.length === 0)).toBe(true);
  });

  it('lay no words and no drawing over others', () => {
    expect(faults((laid) => overlaps(boxesOf(laid)))).toEqual([]);
  });

  it('keep everything within the type area', () => {
    expect(
      faults((laid, document) => {
        const { left, fullWidth } = pageGrid(design, document.paper);
        const heights = pageHeights(document, design);
        return boxesOf(laid)
          .filter(
            ({ area, page }) =>
              area.x < left - slackPt ||
              area.x + area.width > left + fullWidth + slackPt ||
              area.y < -slackPt ||
              area.y + area.height > (page === 0 ? heights.first : heights.later) + slackPt,
          )
          .map(({ what, page }) => `${what} on page ${page + 1}`);
      }),
    ).toEqual([]);
  });

  it('place every word once and in its order', () => {
    expect(
      faults((laid, document) => {
        const [placed, meant] = [placedWords(laid), meantWords(document)];
        const at = meant.findIndex((word, index) => word !== placed[index]);
        if (at < 0 && placed.length === meant.length) return [];
        return [
          `“${placed.slice(at, at + 6).join(' ')}” where “${meant.slice(at, at + 6).join(' ')}” was meant`,
        ];
      }),
    ).toEqual([]);
  });

  it('draw no words that the tag tree does not hold', () => {
    expect(
      faults(({ measured, pagination }) => {
        const leaves = new Set(measured.tags.flatMap(leavesOf));
        return pagination.placements
          .flatMap(({ piece }) => piece.marks)
          .flatMap((mark) =>
            mark.kind === 'text' && typeof mark.place !== 'string' && !leaves.has(mark.place)
              ? [mark.text]
              : [],
          );
      }),
    ).toEqual([]);
  });

  it('end no page with a heading', () => {
    expect(
      faults(({ pagination }) => {
        const placed = pagination.placements.filter(({ repeated }) => !repeated);
        return placed.flatMap(({ page, piece }, index) => {
          const heads = piece.marks.some(({ kind }) => kind === 'outline');
          const next = placed[index + 1];
          return heads && next && next.page !== page ? [`a heading ends page ${page + 1}`] : [];
        });
      }),
    ).toEqual([]);
  });

  it('leave no single line of a paragraph at the foot or the head of a page', () => {
    expect(
      faults(({ measured, pagination }) => {
        const pagesOf = new Map<Leaf, number[]>();
        for (const { page, piece, left } of pagination.placements.filter(({ repeated }) => !repeated)) {
          const leaves = new Set(
            piece.marks.flatMap((mark) =>
              mark.kind === 'text' && typeof mark.place !== 'string' ? [mark.place] : [],
            ),
          );
          for (const leaf of leaves) pagesOf.set(leaf, [...(pagesOf.get(leaf) ?? []), page * 10_000 + left]);
        }
        const paragraphs = measured.tags.flatMap((tag) => tagsWithin(tag, 'P'));
        return paragraphs.flatMap((tag) => {
          const places = leavesOf(tag).flatMap((leaf) => pagesOf.get(leaf) ?? []);
          // Several leaves of one line count as several lines, which can only hide a fault of rich text, not of plain.
          const parts = [...new Set(places)].map((place) => places.filter((each) => each === place).length);
          return parts.length > 1 && parts.some((lines) => lines === 1) ? ['one line alone'] : [];
        });
      }),
    ).toEqual([]);
  });

  it('break no step, drawing or other group that fits on a page with the heading above it', () => {
    const headingPt = 80;
    expect(
      faults((laid, document) => {
        const most = pageHeights(document, design).later - headingPt;
        const kept = groupsWithin(laid.measured.items).filter(
          (item) => item.together && item.yields !== true && naturalHeight(item.items) < most,
        );
        const pageOf = pagesByMarks(laid);
        return kept.flatMap(({ items }) => {
          const pages = new Set(
            piecesWithin(items).flatMap(({ marks }) => (marks.length > 0 ? [pageOf.get(marks)] : [])),
          );
          return pages.size > 1 ? [`a group stands on pages ${[...pages].join(' and ')}`] : [];
        });
      }),
    ).toEqual([]);
  });

  it('break no step', () => {
    let steps = 0;
    expect(
      faults(({ measured, pagination }) => {
        const pageOf = new Map<Leaf, number>();
        for (const { page, piece } of pagination.placements)
          for (const mark of piece.marks)
            if (mark.kind === 'text' && typeof mark.place !== 'string') pageOf.set(mark.place, page);
        const items = measured.tags.flatMap((tag) => tagsWithin(tag, 'LI')).filter(isStep);
        steps += items.length;
        return items.flatMap((item) => {
          const pages = new Set(leavesOf(item).flatMap((leaf) => pageOf.get(leaf) ?? []));
          return pages.size > 1 ? [`a step stands on pages ${[...pages].join(' and ')}`] : [];
        });
      }),
    ).toEqual([]);
    expect(steps).toBeGreaterThan(300);
  });

  it('repeat the head of a table or box, with the word for continued, wherever it goes on', () => {
    let repeats = 0;
    expect(
      faults((laid) => {
        const pageOf = pagesByMarks(laid);
        const { placements } = laid.pagination;
        return groupsWithin(laid.measured.items).flatMap(({ items, repeatedHead }) => {
          if (!repeatedHead) return [];
          const pieces = piecesWithin(items).filter(({ withoutHead }) => withoutHead !== true);
          const [first, ...later] = new Set(pieces.map(({ marks }) => pageOf.get(marks)!));
          repeats += later.length;
          return later
            .filter((page) => !placements.some((each) => each.piece === repeatedHead && each.page === page))
            .map((page) => `what begins on page ${first} has no head on page ${page}`);
        });
      }),
    ).toEqual([]);
    expect(repeats).toBeGreaterThan(50);
  });

  it('begin a page only when the one before had no room', () => {
    // The space that falls away at the head of a page, a repeated head, and columns too short to begin.
    const allowance = 150;
    expect(
      faults(({ pagination, measured }, document) => {
        const breaks = document.blocks.filter(({ kind }) => kind === 'page-break').length;
        const used = Array.from({ length: pagination.pages }, (_, page) =>
          Math.max(
            ...pagination.placements
              .filter((each) => each.page === page)
              .map(({ top, piece }) => top + piece.height),
          ),
        );
        const wasted = used.filter(
          (height, page) =>
            page > 0 && used[page - 1]! + height < pageHeights(document, design).later - allowance,
        );
        return wasted.length > breaks && measured.items.length > 0
          ? [`pages used ${used.map(Math.round).join(', ')}`]
          : [];
      }),
    ).toEqual([]);
  });

  it('let text rise before a drawing or table that waits for the next page, and no further', () => {
    const risen = sheets.flatMap(({ laid }) => waitingOf(laid));
    expect(risen.length).toBeGreaterThan(3);
    expect(risen.filter(({ pagesLater }) => pagesLater !== 1)).toEqual([]);
    expect(risen.filter(({ top }) => top > 0)).toEqual([]);
  });

  it('come out the same again', () => {
    const places = ({ pagination }: LaidOut): string =>
      JSON.stringify(
        pagination.placements.map(({ page, top, left, piece }) => [page, top, left, piece.height]),
      );
    for (const { document, laid } of sheets.slice(0, 25))
      expect(places(layOut(document, { design, fonts }))).toBe(places(laid));
  });
});

const isStep = ({ kids }: Tag): boolean =>
  kids.some((kid) => isTag(kid) && kid.type === 'Lbl' && kid.actualText?.startsWith('Step') === true);

const groupsWithin = (items: readonly Item[]): readonly Group[] =>
  items.flatMap((item): readonly Group[] => {
    if (item.kind === 'group') return [item, ...groupsWithin(item.items)];
    if (item.kind === 'columns') return item.columns.flatMap(groupsWithin);
    return item.kind === 'column-text' ? groupsWithin(item.items) : [];
  });

const piecesWithin = (items: readonly Item[]): readonly Piece[] =>
  items.flatMap((item): readonly Piece[] => {
    if (item.kind === 'piece') return [item];
    if (item.kind === 'columns') return item.columns.flatMap(piecesWithin);
    return item.kind === 'break' ? [] : piecesWithin(item.items);
  });

/** The page of every piece. A tightened sheet has other pieces with the same marks. */
const pagesByMarks = ({ pagination }: LaidOut): ReadonlyMap<readonly Mark[], number> =>
  new Map(
    pagination.placements
      .filter(({ repeated, piece }) => !repeated && piece.marks.length > 0)
      .map(({ piece, page }) => [piece.marks, page]),
  );

/** Pieces that stand on a later page than what comes after them in the sheet, at the place where they begin. */
function waitingOf({ pagination, measured }: LaidOut): readonly { pagesLater: number; top: number }[] {
  const places = new Map(
    pagination.placements.filter(({ repeated }) => !repeated).map((each) => [each.piece.marks, each]),
  );
  const waiting: { pagesLater: number; top: number }[] = [];
  measured.items.forEach((item, index) => {
    const next = measured.items[index + 1];
    if (item.kind !== 'group' || item.items[0]?.kind !== 'piece' || next?.kind !== 'piece') return;
    const [own, after] = [places.get(item.items[0].marks), places.get(next.marks)];
    if (own && after && own.page > after.page)
      waiting.push({ pagesLater: own.page - after.page, top: own.top });
  });
  return waiting;
}

/** Rounding, and letters that reach a little over their width. */
const slackPt = 0.3;

interface Box {
  readonly page: number;
  readonly area: Area;
  readonly what: string;
}

/** Every word and drawing where it stands, words as high as their letters. */
function boxesOf({ pagination }: LaidOut): readonly Box[] {
  return pagination.placements.flatMap(({ page, top, left, piece }) =>
    piece.marks.flatMap((mark): readonly Box[] => {
      const area = areaOf(mark);
      if (!area) return [];
      const placed = { ...area, x: area.x + left, y: area.y + top };
      return [{ page, area: placed, what: mark.kind === 'text' ? mark.text : mark.kind }];
    }),
  );
}

function areaOf(mark: Mark): Area | undefined {
  if (mark.kind === 'bounds') return mark.area;
  if (mark.kind !== 'text') return undefined;
  const { face, sizePt, text, x, y } = mark;
  const width = fonts.width(face, text.trimEnd(), sizePt);
  return { x, y: y - sizePt * 0.72, width, height: sizePt * 0.92 };
}

function overlaps(boxes: readonly Box[]): readonly string[] {
  const faultsFound: string[] = [];
  const pages = byPage(boxes);
  for (const [page, onPage] of pages) {
    const sorted = [...onPage].sort((a, b) => a.area.y - b.area.y);
    sorted.forEach((a, index) => {
      for (let at = index + 1; at < sorted.length; at += 1) {
        const b = sorted[at]!;
        if (b.area.y >= a.area.y + a.area.height - slackPt) break;
        const across =
          Math.min(a.area.x + a.area.width, b.area.x + b.area.width) - Math.max(a.area.x, b.area.x);
        if (across > slackPt) faultsFound.push(`“${a.what}” and “${b.what}” on page ${page + 1}`);
      }
    });
  }
  return faultsFound;
}

function byPage(boxes: readonly Box[]): Map<number, Box[]> {
  const pages = new Map<number, Box[]>();
  for (const box of boxes) pages.set(box.page, [...(pages.get(box.page) ?? []), box]);
  return pages;
}

const leavesOf = (tag: Tag): readonly Leaf[] =>
  tag.kids.flatMap((kid) => (isTag(kid) ? leavesOf(kid) : [kid]));

const tagsWithin = (tag: Tag, type: Tag['type']): readonly Tag[] => [
  ...(tag.type === type ? [tag] : []),
  ...tag.kids.flatMap((kid) => (isTag(kid) ? tagsWithin(kid, type) : [])),
];

/** Words in the order of the tag tree, without bullets, numbers of entries and addresses that only paper has. */
function placedWords({ measured, pagination }: LaidOut): readonly string[] {
  const texts = new Map<Leaf, string>();
  for (const { piece, repeated } of pagination.placements) {
    if (repeated) continue;
    for (const mark of piece.marks)
      if (mark.kind === 'text' && typeof mark.place !== 'string')
        texts.set(mark.place, (texts.get(mark.place) ?? '') + mark.text);
  }
  const said = (tag: Tag): string => {
    if (tag.type === 'Figure') return ' ';
    const inner = tag.kids.map((kid) => (isTag(kid) ? said(kid) : (texts.get(kid) ?? ''))).join('');
    if (tag.type === 'Lbl' && /^\s*(?:[•–]|\d+\.)\s*$/.test(inner)) return ' ';
    if (tag.type === 'Link' && addresses.test(inner.trim())) return ' ';
    return ['Link', 'Span', 'Reference'].includes(tag.type) ? inner : ` ${inner} `;
  };
  return splitWords(measured.tags.map(said).join(' '));
}

const addresses = new RegExp(`^${shortAddress('https://archive.example.org/')}`);

function meantWords(document: SheetDocument): readonly string[] {
  const { series, number, title, datesFor, notice = '' } = document;
  const spoken = { ...document.furniture, step: String };
  return splitWords(
    [series, number, title, datesFor, notice, ...wordsOfDocument({ ...document, furniture: spoken })].join(
      ' ',
    ),
  );
}

/** Signal words are printed in capitals; a dot parts the words of the band. */
const splitWords = (text: string): readonly string[] =>
  text
    .toLowerCase()
    .split(/\s+/)
    .filter((word) => word !== '' && word !== '·');
