import { describe, expect, it } from 'vitest';
import { hazardFaults } from '../../scripts/safety/faults.ts';
import { gradeLevel } from './readability.ts';
import { everySourceId, safetySources, shippedCatalogue, shippedLists, shippedRecords } from './shipped.ts';

describe('the cautions that come with Groundsheet', () => {
  it.each(Object.entries(shippedRecords))('has %s that the schema finds right', (_, collected) => {
    expect(collected.diagnostics).toEqual([]);
    expect(collected.records.length).toBeGreaterThan(0);
  });

  it('has no id twice', () => {
    for (const list of Object.values(shippedLists)) {
      const ids = list.map(({ id }) => id);
      expect(ids).toEqual([...new Set(ids)]);
    }
  });

  it('has profiles for every id that the straw bale frame uses', () => {
    const needed = {
      tools: 'spade mallet tape-measure utility-knife wheelbarrow rake watering-can level sledge-hammer',
      materials:
        'straw-bale old-painted-sash wooden-stake planting-mix baling-twine prop-stick vegetable-seed loose-straw',
      actions:
        'lift-bale cut-twine drive-stake dig-ground level-ground carry-glass set-sash prop-sash-open spread-soil sow-seed water-bed stuff-straw',
    };
    for (const kind of ['tools', 'materials', 'actions'] as const) {
      expect([...shippedCatalogue[kind].keys()]).toEqual(expect.arrayContaining(needed[kind].split(' ')));
    }
  });

  it('has no silent profile and no caution that is not there', () => {
    expect(hazardFaults({ catalogue: shippedCatalogue, projects: [] })).toEqual([]);
  });

  it('brings every caution to something', () => {
    const profiles = [...shippedLists.tools, ...shippedLists.materials, ...shippedLists.actions];
    const used = new Set(profiles.flatMap(({ cautions }) => cautions));
    expect(shippedLists.cautions.map(({ id }) => id).filter((id) => !used.has(id))).toEqual([]);
  });

  it('puts the signal words in order, strongest first', () => {
    const order = ['danger', 'warning', 'caution', 'notice'];
    const found = new Set(shippedLists.cautions.map(({ signal }) => signal));
    expect([...found]).toEqual(order);
  });
});

describe('sources of the cautions', () => {
  it('are valid, and each is used', () => {
    expect(safetySources.diagnostics).toEqual([]);
    const used = new Set(shippedLists.cautions.flatMap(({ sources }) => sources));
    expect(safetySources.records.map(({ value }) => value.id).filter((id) => !used.has(id))).toEqual([]);
  });

  it('are all there, and no id is that of another file', () => {
    const ids = everySourceId();
    for (const { sources } of shippedLists.cautions) expect(ids).toEqual(expect.arrayContaining(sources));
    expect(ids).toEqual([...new Set(ids)]);
  });

  it('say "not-applicable" only for common practice', () => {
    for (const { value } of safetySources.records) {
      expect(value.seen === 'not-applicable', value.id).toBe(value.kind === 'common-practice');
    }
  });
});

describe.each(shippedLists.cautions.map((caution) => [caution.id, caution] as const))(
  'caution %s',
  (_, caution) => {
    it.each(['hazard', 'avoidance'] as const)('says the %s in one sentence', (part) => {
      expect(caution[part]).toMatch(/^[A-Z][^.!?]*\.$/);
    });

    it('reads at the eighth grade or below', () => {
      // Half a grade is left for the syllable counter, which is out by one in some words.
      expect(gradeLevel(`${caution.hazard} ${caution.avoidance}`)).toBeLessThanOrEqual(8.5);
    });

    it('lets the verb match the signal word', () => {
      const { signal, hazard } = caution;
      if (signal === 'danger') expect(hazard).toMatch(/\bwill\b/);
      else expect(hazard).toMatch(/\b(can|may|could)\b/);
    });
  },
);

describe('what must be deferred to others', () => {
  const text = (id: string): string => shippedCatalogue.cautions.get(id)?.avoidance ?? '';
  it.each([
    ['digging waits for the locate service', 'buried-line', /811.*locate service/],
    ['lead work is for certified contractors', 'lead-paint-dust', /certified/],
    ['wiring faults are for licensed electricians', 'power-tool-shock', /licensed electrician/],
    ['tetanus shots are for a doctor or clinic', 'tetanus', /doctor or clinic/],
    ['fire is under local rules', 'straw-fire', /local fire rules/],
    ['scraps of treated wood are under local rules', 'treated-wood-smoke', /local waste office/],
  ])('%s', (_, id, words) => {
    expect(text(id)).toMatch(words);
  });

  it.each(['dig-ground', 'drive-stake', 'level-ground'])('%s always brings the buried lines', (action) => {
    expect(shippedCatalogue.actions.get(action)?.cautions).toContain('buried-line');
  });
});
