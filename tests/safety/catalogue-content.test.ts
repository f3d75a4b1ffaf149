import { describe, expect, it } from 'vitest';
import { hazardFaults } from '../../scripts/safety/faults.ts';
import { gradeLevel } from './readability.ts';
import {
  everySourceId,
  safetySources,
  shippedCatalogue,
  shippedLists,
  shippedProfiles,
  shippedRecords,
} from './shipped.ts';

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
    const used = new Set([
      ...shippedProfiles.flatMap(({ profile }) => profile.cautions),
      ...shippedLists.combinations.flatMap(({ brings }) => brings),
    ]);
    expect(shippedLists.cautions.map(({ id }) => id).filter((id) => !used.has(id))).toEqual([]);
  });

  it('puts the signal words in order, strongest first', () => {
    const order = ['danger', 'warning', 'caution', 'notice'];
    const found = new Set(shippedLists.cautions.map(({ signal }) => signal));
    expect([...found]).toEqual(order);
  });
});

describe('what the build projects need', () => {
  it.each([
    [
      'tools',
      'drill-driver circular-saw handsaw screwdriver pruning-saw loppers wire-cutters step-ladder sandpaper',
    ],
    ['tools', 'paint-scraper putty-knife staple-gun carpenters-square clamp post-hole-digger paint-brush'],
    [
      'materials',
      'screws hinge untreated-lumber treated-lumber corner-post landscape-fabric bed-liner staples',
    ],
    [
      'materials',
      'concrete-block stone wire-mesh gravel compost manure bamboo-pole sapling-pole garden-twine',
    ],
    [
      'materials',
      'polycarbonate-sheet plastic-film window-screen glazing-points glazing-putty exterior-paint oil-finish',
    ],
    [
      'actions',
      'drive-screw join-boards hang-lid open-lid lay-block fill-bed raise-pole lash-poles cut-plastic',
    ],
    [
      'materials',
      'ratchet-strap ground-anchor light-chain hasp tomato-cage screw-eye polypropylene-cord kitchen-scraps',
    ],
    ['actions', 'tension-strap drive-anchor'],
  ] as const)('%s: %s', (kind, needed) => {
    expect([...shippedCatalogue[kind].keys()]).toEqual(expect.arrayContaining(needed.split(' ')));
  });
});

describe('ages', () => {
  it.each(shippedProfiles.map(({ kind, profile }) => [kind, profile.id, profile] as const))(
    '%s %s has one, with who must be by and a source',
    (_, __, { age }) => {
      expect(age).toBeDefined();
      expect(everySourceId()).toEqual(expect.arrayContaining(age!.sources));
    },
  );

  /** Published: 29 CFR 570.55 and 570.65; Guide to Safe Scouting, ages for tools and ladders; EPA, Renovate Lead-Safe. */
  it.each([
    ['tools', 'circular-saw', 18],
    ['tools', 'miter-saw', 18],
    ['tools', 'jigsaw', 18],
    ['actions', 'power-saw-wood', 18],
    ['tools', 'drill-driver', 14],
    ['tools', 'power-sander', 14],
    ['tools', 'post-hole-digger', 14],
    ['tools', 'wheelbarrow', 14],
    ['tools', 'step-ladder', 14],
    ['tools', 'ladder', 18],
    ['materials', 'old-painted-sash', 18],
    ['actions', 'scrape-paint', 18],
  ] as const)('%s %s: %i years', (kind, id, from) => {
    expect(shippedCatalogue[kind].get(id)?.age?.from).toBe(from);
  });
});

describe('signal words', () => {
  /** ANSI Z535.6, from memory: warning could result in death or serious injury. The loss of an eye or of hearing is serious. */
  it('are warnings or more where the words for adults tell of death, an eye or a lasting harm', () => {
    const grave = shippedLists.cautions.filter(({ hazard }) =>
      /\b(?:kill(?! the plants)|deadly|drown|strangle|suffocate|blind|for good|gravely|cancer|lead can|heat stroke)\b/.test(
        hazard,
      ),
    );
    expect(grave.length).toBeGreaterThan(25);
    expect(grave.filter(({ signal }) => signal !== 'danger' && signal !== 'warning')).toEqual([]);
  });

  it('are notices only where no one is hurt', () => {
    const notices = shippedLists.cautions.filter(({ signal }) => signal === 'notice');
    expect(notices.map(({ id }) => id)).toEqual(['herbicide-carryover', 'overheated-plants']);
    for (const { hazard } of notices) expect(hazard).not.toMatch(/\b(?:you|your|person|child|children)\b/);
  });
});

describe('sources of the cautions', () => {
  it('are valid, and each is used', () => {
    expect(safetySources.diagnostics).toEqual([]);
    const used = new Set([
      ...shippedLists.cautions.flatMap(({ sources }) => sources),
      ...shippedLists.combinations.flatMap(({ sources, age }) => [...sources, ...(age?.sources ?? [])]),
      ...shippedProfiles.flatMap(({ profile }) => profile.age?.sources ?? []),
      // The rules of the demonstration regions are cited by their own records.
      'invented-local-rules',
    ]);
    expect(safetySources.records.map(({ value }) => value.id).filter((id) => !used.has(id))).toEqual([]);
  });

  it('are all there, and no id is that of another file', () => {
    const ids = everySourceId();
    for (const { sources } of [...shippedLists.cautions, ...shippedLists.combinations])
      expect(ids).toEqual(expect.arrayContaining(sources));
    expect(ids).toEqual([...new Set(ids)]);
  });

  it('say "not-applicable" only for what was not read anywhere', () => {
    for (const { value } of safetySources.records) {
      expect(value.seen === 'not-applicable', value.id).toBe(value.kind !== 'published');
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
