import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  signalWords,
  wordedAudiences,
  type CautionRecord,
  type Combination,
  type HazardProfile,
} from '../../scripts/records/schemas/hazard.ts';
import {
  catalogueOf,
  mergeCatalogues,
  strength,
  type HazardCatalogue,
} from '../../scripts/safety/catalogue.ts';
import { weakenedHazards } from '../../scripts/safety/faults.ts';
import { gatherCautions } from '../../scripts/safety/gather.ts';

const glass: CautionRecord = {
  id: 'glass',
  signal: 'warning',
  title: 'Glass',
  hazard: 'Glass can cut you.',
  avoidance: 'Wear gloves.',
  sources: ['built-in'],
};
const sash: HazardProfile = { id: 'sash', name: 'Sash', cautions: ['glass'], protection: ['Gloves'] };
const none = { cautions: [], tools: [], materials: [], actions: [] };
const builtIn = catalogueOf({ ...none, cautions: [glass], materials: [sash] });

describe('a guide with records of its own', () => {
  it('may reword a caution, and both sources are kept', () => {
    const own = catalogueOf({
      ...none,
      cautions: [{ ...glass, hazard: 'El vidrio puede cortar.', sources: ['own'] }],
    });
    expect(mergeCatalogues(builtIn, own).cautions.get('glass')).toEqual({
      ...glass,
      hazard: 'El vidrio puede cortar.',
      sources: ['own', 'built-in'],
    });
  });

  const child = { hazard: 'Glass can cut.', avoidance: 'Tell an adult.' };
  const ownChild = { hazard: 'Our glass can cut.', avoidance: 'Call your teacher.' };
  it.each<[string, CautionRecord['wordings'], CautionRecord['wordings'], CautionRecord['wordings']]>([
    ['keeps the words for a class when it rewords for adults', { class: child }, undefined, { class: child }],
    ['takes its own words for a class', { class: child }, { class: ownChild }, { class: ownChild }],
    [
      'keeps those for a class beside its own for viewers',
      { class: child },
      { viewers: ownChild },
      { class: child, viewers: ownChild },
    ],
    ['may add words where there were none', undefined, { class: ownChild }, { class: ownChild }],
  ])('%s', (_, base, mine, kept) => {
    const withWords = (wordings: CautionRecord['wordings'], hazard: string) =>
      catalogueOf({ ...none, cautions: [{ ...glass, hazard, ...(wordings ? { wordings } : {}) }] });
    const [first, second] = [withWords(base, 'Glass can cut you.'), withWords(mine, 'Our panes can cut.')];
    const merged = mergeCatalogues(first, second).cautions.get('glass')!;
    expect(merged).toEqual({ ...glass, hazard: 'Our panes can cut.', wordings: kept });
    expect(weakenedHazards(first, second)).toEqual([]);
  });

  it('that rewords for a class with a weaker signal word keeps the stronger one, and is told', () => {
    const first = catalogueOf({ ...none, cautions: [{ ...glass, wordings: { class: child } }] });
    const second = catalogueOf({
      ...none,
      cautions: [{ ...glass, signal: 'notice', wordings: { class: ownChild } }],
    });
    expect(mergeCatalogues(first, second).cautions.get('glass')).toMatchObject({
      signal: 'warning',
      wordings: { class: ownChild },
    });
    expect(weakenedHazards(first, second).map(({ fault }) => fault)).toEqual(['weaker-signal']);
  });

  it.each<[string, CautionRecord['signal'], CautionRecord['signal']]>([
    ['a stronger signal word stands', 'danger', 'danger'],
    ['the same signal word stands', 'warning', 'warning'],
    ['a weaker signal word is not taken', 'caution', 'warning'],
    ['the weakest signal word is not taken', 'notice', 'warning'],
  ])('%s', (_, signal, result) => {
    const own = catalogueOf({ ...none, cautions: [{ ...glass, signal }] });
    expect(mergeCatalogues(builtIn, own).cautions.get('glass')?.signal).toBe(result);
    expect(weakenedHazards(builtIn, own)).toEqual(
      signal === result
        ? []
        : [{ fault: 'weaker-signal', record: { kind: 'caution', id: 'glass' }, pointer: '/signal' }],
    );
  });

  it('adds to a profile what it does not name again', () => {
    const own = catalogueOf({
      ...none,
      cautions: [{ ...glass, id: 'weight' }],
      materials: [{ id: 'sash', name: 'Ventana', cautions: ['weight'] }],
    });
    expect(mergeCatalogues(builtIn, own).materials.get('sash')).toEqual({
      id: 'sash',
      name: 'Ventana',
      cautions: ['glass', 'weight'],
      protection: ['Gloves'],
    });
  });

  it('cannot call harmless what has cautions', () => {
    const own = catalogueOf({
      ...none,
      materials: [{ id: 'sash', name: 'Sash', cautions: [], harmless: 'Trust me.' }],
    });
    expect(mergeCatalogues(builtIn, own).materials.get('sash')).toEqual(sash);
    expect(weakenedHazards(builtIn, own)).toEqual([
      { fault: 'said-harmless', record: { kind: 'material', id: 'sash' }, pointer: '/harmless' },
    ]);
  });

  it('keeps the built-in order of cautions and adds its own after them', () => {
    const own = catalogueOf({ ...none, cautions: [{ ...glass, id: 'bees' }, glass] });
    expect([...mergeCatalogues(builtIn, own).cautions.keys()]).toEqual(['glass', 'bees']);
  });

  it('loses nothing when one of its own files has an id twice', () => {
    const twice = catalogueOf({
      ...none,
      materials: [sash, { id: 'sash', name: 'Sash', cautions: ['weight'] }],
    });
    expect(twice.materials.get('sash')?.cautions).toEqual(['glass', 'weight']);
  });
});

describe('a guide that would leave cautions out', () => {
  const weight = { ...glass, id: 'weight' };
  const base = catalogueOf({ ...none, cautions: [{ ...glass, covers: ['weight'] }, weight] });

  it.each<[string, string[], string[] | undefined, string[]]>([
    ['cannot cover a built-in caution by one of its own', ['glass'], undefined, ['/covers/0']],
    ['can cover one of its own', ['draft'], ['draft'], []],
  ])('%s', (_, covers, kept, faults) => {
    const draft = { ...glass, id: 'draft' };
    const own = catalogueOf({ ...none, cautions: [{ ...glass, id: 'bees', covers }, draft] });
    expect(mergeCatalogues(base, own).cautions.get('bees')?.covers).toEqual(kept);
    expect(weakenedHazards(base, own).map(({ pointer }) => pointer)).toEqual(faults);
  });

  it('keeps what a built-in caution covers when it rewords it', () => {
    const own = catalogueOf({ ...none, cautions: [{ ...glass, hazard: 'It can cut.', covers: ['weight'] }] });
    expect(mergeCatalogues(base, own).cautions.get('glass')?.covers).toEqual(['weight']);
    expect(weakenedHazards(base, own)).toEqual([]);
  });

  const age = (from: number, supervision: 'adult-beside' | 'alone') => ({
    from,
    supervision,
    sources: ['s'],
  });
  it.each([
    ['a higher age stands', age(16, 'adult-beside'), 16, []],
    ['a lower age does not', age(10, 'adult-beside'), 14, ['/age']],
    ['a supervision less near does not', age(14, 'alone'), 14, ['/age']],
  ])('%s', (_, wanted, from, faults) => {
    const builtInSash = catalogueOf({ ...none, materials: [{ ...sash, age: age(14, 'adult-beside') }] });
    const own = catalogueOf({ ...none, materials: [{ ...sash, age: wanted }] });
    expect(mergeCatalogues(builtInSash, own).materials.get('sash')?.age).toMatchObject({
      from,
      supervision: 'adult-beside',
    });
    expect(weakenedHazards(builtInSash, own).map(({ pointer }) => pointer)).toEqual(faults);
  });

  it('keeps when a built-in combination comes about, and adds what its own brings', () => {
    const both: Combination = {
      ...{ id: 'both', name: 'Both', brings: ['glass'], sources: ['built-in'] },
      when: [{ tools: ['knife'] }, { materials: ['sash'] }],
    };
    const own: Combination = {
      ...both,
      when: [{ tools: ['knife'] }, { tools: ['axe'] }],
      brings: ['weight'],
    };
    const builtInRule = catalogueOf({ ...none, combinations: [both] });
    const ownRule = catalogueOf({ ...none, combinations: [own] });
    expect(mergeCatalogues(builtInRule, ownRule).combinations.get('both')).toEqual({
      ...both,
      brings: ['glass', 'weight'],
    });
    expect(weakenedHazards(builtInRule, ownRule)).toEqual([
      { fault: 'other-combination', record: { kind: 'combination', id: 'both' }, pointer: '/when' },
    ]);
  });
});

describe('for any two catalogues', () => {
  const ids = ['a', 'b', 'c', 'd', 'e'];
  const anyId = fc.constantFrom(...ids);
  const anyWording = fc.record({
    hazard: fc.constantFrom('One.', 'Two.'),
    avoidance: fc.constantFrom('Tell an adult.', 'Step back.'),
  });
  const anyCaution: fc.Arbitrary<CautionRecord> = fc.record(
    {
      id: anyId,
      signal: fc.constantFrom(...signalWords),
      title: fc.constant('Harm'),
      hazard: fc.constantFrom('One.', 'Two.'),
      avoidance: fc.constant('Take care.'),
      wordings: fc.record({ class: anyWording, viewers: anyWording }, { requiredKeys: [] }),
      sources: fc.subarray(['s', 't', 'u'], { minLength: 1 }),
    },
    { requiredKeys: ['id', 'signal', 'title', 'hazard', 'avoidance', 'sources'] },
  );
  const everyCaution = fc.tuple(...ids.map((id) => anyCaution.map((caution) => ({ ...caution, id }))));
  const anyProfiles: fc.Arbitrary<HazardProfile[]> = fc.array(
    fc.record({
      id: anyId,
      name: fc.constant('Name'),
      cautions: fc.subarray(ids),
      protection: fc.subarray(['Gloves', 'Mask'], { minLength: 1 }),
    }),
    { maxLength: 4 },
  );
  const anyCatalogue: fc.Arbitrary<HazardCatalogue> = fc
    .record({ cautions: everyCaution, tools: anyProfiles, materials: anyProfiles, actions: anyProfiles })
    .map(catalogueOf);

  it('the merged one never loses a caution and never weakens a signal word', () => {
    fc.assert(
      fc.property(anyCatalogue, anyCatalogue, (base, own) => {
        const merged = mergeCatalogues(base, own);
        for (const part of [base, own]) {
          for (const caution of part.cautions.values()) {
            const kept = merged.cautions.get(caution.id)!;
            expect(strength(kept)).toBeLessThanOrEqual(strength(caution));
            expect(kept.sources).toEqual(expect.arrayContaining(caution.sources));
            const [mine, first] = [own, base].map((one) => one.cautions.get(caution.id)?.wordings);
            for (const audience of wordedAudiences)
              expect(kept.wordings?.[audience]).toEqual(mine?.[audience] ?? first?.[audience]);
          }
          for (const kind of ['tools', 'materials', 'actions'] as const) {
            for (const profile of part[kind].values()) {
              const kept = merged[kind].get(profile.id)!;
              expect(kept.cautions).toEqual(expect.arrayContaining(profile.cautions));
              expect(kept.protection).toEqual(expect.arrayContaining(profile.protection ?? []));
            }
          }
        }
      }),
    );
  });

  it('a step gathers at least what it gathered before the merge', () => {
    fc.assert(
      fc.property(anyCatalogue, anyCatalogue, (base, own) => {
        const step = { tools: [...base.tools.keys()], materials: [...base.materials.keys()], actions: [] };
        const before = gatherCautions([step], base).all;
        expect(gatherCautions([step], mergeCatalogues(base, own)).all).toEqual(
          expect.arrayContaining([...before]),
        );
      }),
    );
  });

  it('merging a catalogue with itself or with an empty one changes nothing', () => {
    fc.assert(
      fc.property(anyCatalogue, (catalogue) => {
        expect(mergeCatalogues(catalogue, catalogue)).toEqual(catalogue);
        expect(mergeCatalogues(catalogue, catalogueOf(none))).toEqual(catalogue);
        expect(mergeCatalogues(catalogueOf(none), catalogue)).toEqual(catalogue);
      }),
    );
  });
});
