import { describe, expect, it } from 'vitest';
import { catalogueOf } from '../../scripts/safety/catalogue.ts';
import { idleMentions, unlistedWords, type SpokenStep } from '../../scripts/safety/spoken.ts';

const profile = (id: string, name: string, words?: string[]) => ({
  ...{ id, name, cautions: [], harmless: 'For the test.' },
  ...(words ? { words } : {}),
});
const catalogue = catalogueOf({
  cautions: [],
  tools: [
    profile('handsaw', 'Handsaw', ['saw', 'sawing']),
    profile('power-saw', 'Power saw', ['power saw', 'saw']),
    profile('level', 'Level', ['the level']),
    profile('knife', 'Utility knife'),
  ],
  materials: [
    profile('straw', 'Straw bale', ['straw bale', 'straw']),
    profile('loose', 'Loose straw', ['loose straw']),
    profile('sash', 'Window sash', ['sash']),
    profile('glass', 'Glass'),
    profile('berry', 'Berry'),
  ],
  actions: [profile('dig', 'Dig'), profile('scrape', 'Scrape paint', ['scrape'])],
});
const step = (text: string, more: Partial<SpokenStep> = {}): SpokenStep => ({
  ...{ title: '', text, tools: [], materials: [], actions: [] },
  ...more,
});

describe('words for what a step does not list', () => {
  it.each<{ name: string; step: SpokenStep; words: string[] }>([
    { name: 'a saw', step: step('Cut it with a saw.'), words: ['saw'] },
    { name: 'a capital letter', step: step('Saw it.'), words: ['Saw'] },
    { name: 'another form of the word', step: step('Sawing is next.'), words: ['Sawing'] },
    { name: 'the title', step: step('Go on.', { title: 'Bring the sash' }), words: ['sash'] },
    { name: 'a plural in es', step: step('Carry the sashes.'), words: ['sashes'] },
    {
      name: 'a plural in ves of a name of two words',
      step: step('Take utility knives.'),
      words: ['utility knives'],
    },
    { name: 'a plural in ies', step: step('Pick berries.'), words: ['berries'] },
    { name: 'a hyphen between the words', step: step('The straw-bale wall.'), words: ['straw-bale'] },
    { name: 'a possessive', step: step("The sash's rail."), words: ['sash'] },
    { name: 'an action that has words', step: step('Scrape it.'), words: ['Scrape'] },
    { name: 'no action by its name alone', step: step('Dig here.'), words: [] },
    { name: 'no part of a longer word', step: step('A seesaw, a strawberry, sashimi.'), words: [] },
    { name: 'no glasses for glass', step: step('Wear safety glasses.'), words: [] },
    { name: 'no level where the words ask for the level', step: step('Rake it level.'), words: [] },
    {
      name: 'the longer of two words only',
      step: step('Push in loose straw.', { materials: ['loose'] }),
      words: [],
    },
    {
      name: 'a word that one of two listed things has',
      step: step('Saw it.', { tools: ['power-saw'] }),
      words: [],
    },
    { name: 'a name that a finding has', step: step('{{frame.saw}} and {{sash}}'), words: [] },
    { name: 'the address of a link', step: step('See [this](https://saw.example/sash).'), words: [] },
    { name: 'an allowed mention', step: step('Under the glass.', { mentions: ['glass'] }), words: [] },
  ])('$name', ({ step: one, words }) => {
    expect(unlistedWords(catalogue)(one).map(({ word }) => word)).toEqual(words);
  });

  it('counts the same letters before it, wherever they stand', () => {
    const [found] = unlistedWords(catalogue)(step('{{saw}} in a seesaw, then saw.'));
    expect(found).toMatchObject({ word: 'saw', occurrence: 2, pointer: '/text' });
  });

  it.each([
    ['is made', 'Under the glass.', []],
    ['is not made', 'Under the sun.', ['glass']],
  ])('tells a mention that %s', (_, text, idle) => {
    expect(idleMentions(catalogue)(step(text, { mentions: ['glass'] }))).toEqual(idle);
  });
});
