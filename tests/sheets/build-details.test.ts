/** What the cards of the tepee and the beds say for their region, and the drawings of how one thing is done. */
import { describe, expect, test } from 'vitest';
import type { Block } from '../../scripts/document/document.ts';
import { printSheet } from '../../scripts/document/print.ts';
import { check } from '../../scripts/pipeline.ts';
import { repository } from '../demo/demo-guide.ts';

const demo = await check({ root: repository, builtInRoot: repository });

function composedOf(card: string, region: string) {
  const found = demo.sheets.find((sheet) => sheet.region.id === region && sheet.sheet.id === card);
  if (!found) throw new Error(`no ${card} for ${region}`);
  return found.composed;
}

function textOf(card: string, region: string): string {
  return printSheet(composedOf(card, region).document).replaceAll('\u00A0', ' ');
}

function figuresOf(card: string): readonly string[] {
  const inside = (block: Block): readonly Block[] =>
    block.kind === 'wide' || block.kind === 'together' ? block.content.flatMap(inside) : [block];
  return composedOf(card, 'larkwether')
    .document.blocks.flatMap(inside)
    .flatMap((block) => (block.kind === 'figure' ? [block.scene.id] : []));
}

describe('the tepee is judged by the gust of its region', () => {
  test.each([
    ['hollowmarl', '50 mph (80 km/h)'],
    ['larkwether', '55 mph (89 km/h)'],
    ['gullhammock', '60 mph (97 km/h)'],
  ])('%s, %s', (region, gust) => {
    const text = textOf('pole-tepee', region);
    expect(text).toContain(gust);
    expect(text).toContain('So it stands here as it is');
    expect(text).not.toContain('45 mph');
  });

  test('the working of how it stands tells the region’s gust', () => {
    const [one, other] = ['hollowmarl', 'gullhammock'].map((region) =>
      composedOf('pole-tepee', region).explanations.find(({ id }) => id === 'tepee.wind-push'),
    );
    expect(one!.inputs.join()).not.toBe(other!.inputs.join());
  });
});

describe('drawings of how one thing is done', () => {
  test.each([
    ['pole-tepee', ['lashing']],
    ['raised-bed', ['corner', 'set-out']],
    ['keyhole-bed', ['first-course', 'second-course']],
    ['snap-peas', ['trellis']],
  ])('%s', (card, names) => {
    expect(figuresOf(card)).toEqual(expect.arrayContaining(names));
  });
});

describe('the list of parts says how long each stake, post and pole is', () => {
  test.each([
    ['pole-tepee', 'Bamboo pole, 1 in thick, 8 ft'],
    ['pole-tepee', 'Wooden stake for marking, 12 in'],
    ['raised-bed', 'Tomato stake, 6 ft'],
    ['raised-bed', 'lasts in the ground, 6 ft'],
    ['keyhole-bed', 'Wooden stake, 3 ft'],
  ])('%s: %s', (card, words) => {
    expect(textOf(card, 'larkwether').replaceAll('*', '')).toContain(words);
  });
});

describe('the raised bed', () => {
  const text = textOf('raised-bed', 'larkwether').replaceAll('*', '');

  test('a tomato is set to its lowest leaves, not as deep as its seed', () => {
    expect(text).toMatch(/Tomato \| 1 \| Up to its lowest leaves \|/);
    expect(text).toContain('Set up to its lowest leaves');
    expect(text).toMatch(/Lettuce \| 1 \| ¼–½ in/);
  });

  test('as many stakes as the bed plan has tomatoes', () => {
    const plants = /Tomato \| 1 \|.*\| (\d+)\n/.exec(text)![1];
    expect(text).toMatch(new RegExp(`M \\| Tomato stake, 6 ft \\| ${plants} \\|`));
  });

  test('the permit rule speaks of posts, since the bed has them', () => {
    expect(textOf('raised-bed', 'hollowmarl')).not.toContain('not fixed to the ground');
  });
});

test('the gravel of the keyhole bed is in the lifts, and too heavy for two', () => {
  const text = textOf('keyhole-bed', 'larkwether').replaceAll('*', '');
  expect(text).toMatch(/Bag of gravel \| 45–65 lb \| .* \| Too much even for two/);
});
