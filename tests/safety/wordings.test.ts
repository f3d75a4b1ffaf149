/** The words of the cautions for a class and for viewers: as true and as whole as those for adults, only other words. */
import { describe, expect, it } from 'vitest';
import { wordedAudiences, type CautionRecord } from '../../scripts/records/schemas/hazard.ts';
import { catalogueOf } from '../../scripts/safety/catalogue.ts';
import { gatherCautions } from '../../scripts/safety/gather.ts';
import { wordedFor } from '../../scripts/safety/worded.ts';
import { adultAge } from '../../scripts/safety/youth.ts';
import { gradeLevel } from './readability.ts';
import { shippedLists, shippedProfiles } from './shipped.ts';

const cautions = shippedLists.cautions;
const everyWording = cautions.flatMap((caution) =>
  wordedAudiences.map((audience) => [caution.id, audience, caution] as const),
);

describe.each(everyWording)('caution %s for %s', (_, audience, caution) => {
  const words = caution.wordings?.[audience];
  const { hazard = '', avoidance = '' } = words ?? {};

  it('has words of its own', () => {
    expect(words).toBeDefined();
  });

  it('lets the verb of the hazard match the signal word', () => {
    expect(hazard).toMatch(caution.signal === 'danger' ? /\bwill\b/ : /\b(can|may|could)\b/);
  });

  it('names no figure that the words for adults do not have', () => {
    const figures = (text: string): string[] => text.match(/\d+/g) ?? [];
    const told = figures(`${caution.hazard} ${caution.avoidance}`);
    expect(figures(`${hazard} ${avoidance}`).filter((figure) => !told.includes(figure))).toEqual([]);
  });

  it('ends each part as a sentence', () => {
    for (const part of [hazard, avoidance]) expect(part).toMatch(/^[A-Z].*\.$/);
  });
});

describe.each(cautions.map((caution) => [caution.id, caution] as const))(
  'the class reads %s',
  (_, caution) => {
    it('at the fourth grade or below', () => {
      const { hazard, avoidance } = wordedFor(caution, 'class');
      // A child of nine is in the fourth grade. Half a grade is left for the syllable counter.
      expect(gradeLevel(`${hazard} ${avoidance}`)).toBeLessThanOrEqual(4.5);
    });
  },
);

describe.each(cautions.map((caution) => [caution.id, caution] as const))('viewers hear %s', (_, caution) => {
  it.each(['hazard', 'avoidance'] as const)('the %s in one sentence of three to six seconds', (part) => {
    const text = wordedFor(caution, 'viewers')[part];
    expect(text.match(/[.!?](\s|$)/g)).toHaveLength(1);
    // Some 160 words a minute, as subtitles run (figure of practice, from memory): 16 words are six seconds.
    const wordCount = text.split(/\s+/).length;
    expect(wordCount).toBeLessThanOrEqual(16);
    expect(wordCount).toBeGreaterThanOrEqual(6);
  });
});

describe('what only adults may do', () => {
  /** The lowest age of all that brings a caution: of a profile that nobody has judged, that of an adult. */
  const lowestAge = (id: string): number =>
    Math.min(
      ...shippedProfiles
        .filter(({ profile }) => profile.cautions.includes(id))
        .map(({ profile }) => profile.age?.from ?? adultAge),
      ...shippedLists.combinations
        .filter(({ brings }) => brings.includes(id))
        .map(({ age }) => age?.from ?? 0),
    );
  const forAdults = cautions.filter(({ id }) => lowestAge(id) >= 16);

  it('are the hazards that one would think of', () => {
    expect(forAdults.map(({ id }) => id)).toEqual(
      expect.arrayContaining(['power-saw-cut', 'lead-paint', 'lead-paint-dust', 'heat-extreme', 'creosote']),
    );
  });

  it.each(forAdults.map((caution) => [caution.id, caution] as const))(
    '%s: the child is told to leave it to an adult or to keep away',
    (_, caution) => {
      expect(wordedFor(caution, 'class').avoidance).toMatch(
        /\badults?\b|\b(?:Never|Do not|Stay)\b|\bNo one under 18\b/,
      );
    },
  );

  it.each([
    ['lead-paint-dust', /\b(?:never|not)\b.*scrape/i],
    ['buried-line', /\bnot dig\b/],
    ['straw-fire', /\bno matches\b/],
  ])('%s: the child is not told to do it', (id, words) => {
    expect(
      wordedFor(
        cautions.find((one) => one.id === id)!,
        'class',
      ).avoidance,
    ).toMatch(words);
  });
});

describe('choosing the words', () => {
  const glass: CautionRecord = {
    id: 'glass',
    signal: 'warning',
    title: 'Glass',
    hazard: 'Glass can cut you.',
    avoidance: 'Wear gloves.',
    sources: ['s'],
  };
  const forClass = { hazard: 'Glass can cut.', avoidance: 'Tell an adult.' };

  it.each([
    ['those of the record for adults', 'adults', 'Glass', 'Glass can cut you.'],
    ['those for a class for a class', 'class', 'Glass', 'Glass can cut.'],
    ['those for adults where there are none for viewers', 'viewers', 'Glass', 'Glass can cut you.'],
  ] as const)('takes %s', (_, audience, title, hazard) => {
    expect(wordedFor({ ...glass, wordings: { class: forClass } }, audience)).toMatchObject({ title, hazard });
  });

  it('takes a title of its own where there is one', () => {
    const wordings = { class: { ...forClass, title: 'Sharp glass' } };
    expect(wordedFor({ ...glass, wordings }, 'class').title).toBe('Sharp glass');
    expect(wordedFor({ ...glass, wordings }).title).toBe('Glass');
  });

  it('changes nothing in which cautions stand where', () => {
    const tool = { id: 'pane', name: 'Pane', cautions: ['glass'] };
    const step = { tools: ['pane'], materials: [], actions: [] };
    for (const audience of wordedAudiences)
      for (const wordings of [undefined, { class: forClass }]) {
        const caution = wordings ? { ...glass, wordings } : glass;
        const catalogue = catalogueOf({ cautions: [caution], tools: [tool], materials: [], actions: [] });
        expect(gatherCautions([step], catalogue, { audience }).perStep).toEqual([['glass']]);
      }
  });
});
