/**
 * The sheets of the demonstration guide as text, reviewed by eye: one golden a kind and region. `vitest -u` writes
 * them anew. What is true of every sheet is tested as such below.
 */
import { describe, expect, test } from 'vitest';
import { plainText } from '../../scripts/document/build.ts';
import type { Block, Inline } from '../../scripts/document/document.ts';
import { printSheet } from '../../scripts/document/print.ts';
import { formatReport } from '../../scripts/diagnostics/diagnostic.ts';
import { check } from '../../scripts/pipeline.ts';
import { repository } from '../demo/demo-guide.ts';
import { wordsOfDocument } from '../html/reading.ts';
import { readPdf, wordsOfPdf } from '../pdf/read-pdf.ts';
import { render } from '../pdf/sheets.ts';

const { sheets, guide, diagnostics } = await check({ root: repository, builtInRoot: repository });

test('the demonstration guide has no faults', () => {
  expect(formatReport(diagnostics)).toBe('');
  expect(sheets).toHaveLength(3 * guide.sheets.length);
});

describe.each(sheets.map((sheet) => [`${sheet.region.id} ${sheet.sheet.id}`, sheet] as const))(
  '%s',
  (name, { composed, facts }) => {
    const { document } = composed;

    test('reads as reviewed', async () => {
      await expect(printSheet(document)).toMatchFileSnapshot(`golden/${name.replace(' ', '.')}.txt`);
    });

    test('nothing is picked within eighteen days of planting it out', () => {
      const early = facts.crops.flatMap(({ crop, windows }) =>
        windows
          .filter(
            ({ plant, harvest }) =>
              plant.value.kind !== 'none' &&
              harvest.value.kind !== 'none' &&
              harvest.value.from - plant.value.from < 18,
          )
          .map(({ method, season }) => `${crop.id} ${method} ${season}`),
      );
      expect(early).toEqual([]);
    });

    test('every number it prints leads to how it was worked out', () => {
      const entries = new Set(
        blocksOf(document.blocks, 'workings').flatMap(({ items }) => items.map(({ id }) => id)),
      );
      const targets = inlinesIn(document.blocks).flatMap((node) =>
        node.kind === 'finding' ? [node.target] : [],
      );
      expect(targets.length).toBeGreaterThan(5);
      expect(targets.filter((target) => !entries.has(target))).toEqual([]);
    });

    test('its sources are records, and none is cited that is not listed', () => {
      const listed = blocksOf(document.blocks, 'sources').flatMap(({ items }) => items);
      expect(listed.length).toBeGreaterThan(0);
      expect(listed.every(({ id }) => guide.sources.has(id))).toBe(true);
      const cited = blocksOf(document.blocks, 'workings')
        .flatMap(({ items }) => items)
        .flatMap(({ explanation }) =>
          [...(/\[([\d, –]+)\]/.exec(plainText(explanation))?.[1]?.matchAll(/\d+/g) ?? [])].map(Number),
        );
      expect(Math.max(...cited)).toBeLessThanOrEqual(listed.length);
    });

    test('says that the region is invented', () => {
      expect(document.notice).toContain('invented');
      expect(facts.region.invented).toBe(true);
    });

    // A drawing may stand on the page after words that follow it; tests/demo/heard.test.ts holds the order of the tags.
    test('another reader finds every word on the pages of the PDF, as often as it is told', async () => {
      const pdf = await readPdf((await render(document)).bytes);
      // A step's number stands in the margin of the print, without the word; a line may end after a hyphen.
      const wanted = wordsOfDocument({ ...document, furniture: { ...document.furniture, step: String } });
      const counted = (words: readonly string[]): ReadonlyMap<string, number> => {
        const counts = new Map<string, number>();
        for (const word of words.join(' ').replaceAll('- ', '-').split(' '))
          counts.set(word, (counts.get(word) ?? 0) + 1);
        return counts;
      };
      const printed = counted(wordsOfPdf(pdf));
      const missing = [...counted(wanted)].filter(([word, times]) => (printed.get(word) ?? 0) < times);
      expect(missing).toEqual([]);
    });
  },
);

/** Every block of a kind that lies at the top or over the full width. */
function blocksOf<K extends Block['kind']>(
  blocks: readonly Block[],
  kind: K,
): readonly Extract<Block, { kind: K }>[] {
  return blocks.flatMap((block) => {
    if (block.kind === kind) return [block as Extract<Block, { kind: K }>];
    return block.kind === 'wide' ? blocksOf(block.content, kind) : [];
  });
}

function inlinesIn(data: unknown): Inline[] {
  if (Array.isArray(data)) return data.flatMap(inlinesIn);
  if (typeof data !== 'object' || data === null) return [];
  const node = data as { kind?: string };
  const own = node.kind === 'finding' ? [node as Inline] : [];
  return [...own, ...Object.values(node).flatMap(inlinesIn)];
}
