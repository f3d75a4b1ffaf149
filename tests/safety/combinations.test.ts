import { describe, expect, it } from 'vitest';
import type { Combination } from '../../scripts/records/schemas/hazard.ts';
import { catalogueOf } from '../../scripts/safety/catalogue.ts';
import { traitsOf, worstHeat, type Circumstances } from '../../scripts/safety/circumstances.ts';
import { combinationsIn } from '../../scripts/safety/combinations.ts';
import { gatherCautions, type StepHazards } from '../../scripts/safety/gather.ts';
import { shippedCatalogue } from './shipped.ts';

const step = (hazards: Partial<StepHazards>): StepHazards => ({
  tools: [],
  materials: [],
  actions: [],
  ...hazards,
});
const nothing = step({});

describe('the step at which a combination becomes whole', () => {
  const rule: Combination = {
    id: 'dust',
    name: 'Dust',
    when: [{ materials: ['sash'] }, { tools: ['sander'], actions: ['scrape'] }],
    brings: ['lead'],
    sources: ['s'],
  };
  const sash = step({ materials: ['sash'] });
  const sanding = step({ tools: ['sander'] });

  it.each<{ name: string; steps: StepHazards[]; rule?: Partial<Combination>; at: number[] }>([
    { name: 'never, without the sash', steps: [sanding, sanding], at: [] },
    { name: 'never, without steps', steps: [], at: [] },
    { name: 'at once in one step', steps: [nothing, step({ ...sash, actions: ['scrape'] })], at: [1] },
    {
      name: 'when the sanding comes, three steps after the sash',
      steps: [nothing, sash, nothing, nothing, sanding],
      at: [4],
    },
    { name: 'when the sash comes to the sander', steps: [sanding, sash], at: [1] },
    {
      name: 'once, and held wherever a part of it is',
      steps: [sash, sanding, nothing, sanding, sash],
      at: [1, 3, 4],
    },
    {
      name: 'not across steps where it must meet in one',
      steps: [sash, sanding],
      rule: { inOneStep: true },
      at: [],
    },
    {
      name: 'in the one step where it meets',
      steps: [sash, sanding, step({ ...sash, ...sanding, materials: ['sash'] })],
      rule: { inOneStep: true },
      at: [2],
    },
  ])('$name', ({ steps, rule: more, at }) => {
    const catalogue = catalogueOf({
      cautions: [],
      tools: [],
      materials: [],
      actions: [],
      combinations: [{ ...rule, ...more }],
    });
    expect(combinationsIn(steps, catalogue).flatMap(({ heldAt }) => heldAt)).toEqual(at);
    expect(combinationsIn(steps, catalogue)[0]?.arisesAt).toBe(at[0]);
  });
});

describe('what combinations bring', () => {
  it.each<{ name: string; steps: StepHazards[]; circumstances?: Circumstances; caution: string; at: number }>(
    [
      {
        name: 'an old painted sash in step 2, sandpaper in step 5: lead dust',
        steps: [
          nothing,
          step({ materials: ['old-painted-sash'] }),
          nothing,
          nothing,
          step({ tools: ['sandpaper'] }),
        ],
        caution: 'lead-paint-dust',
        at: 4,
      },
      {
        name: 'sandpaper on new lumber: none',
        steps: [step({ tools: ['sandpaper'], materials: ['untreated-lumber'] })],
        caution: 'lead-paint-dust',
        at: -1,
      },
      {
        name: 'window glass that is lifted: wind under it',
        steps: [step({ materials: ['window-glass'] }), step({ actions: ['lift-load'] })],
        caution: 'wind-on-sash',
        at: 1,
      },
      {
        name: 'a plastic sheet in a windy place',
        steps: [step({ materials: ['polycarbonate-sheet'] })],
        circumstances: { conditions: ['windy-site'] },
        caution: 'windy-place',
        at: 0,
      },
      {
        name: 'a stake and a mallet: buried lines, though no one wrote that it is driven',
        steps: [step({ materials: ['wooden-stake'] }), step({ tools: ['mallet'] })],
        caution: 'buried-line',
        at: 1,
      },
      {
        name: 'straw under beans: weed killer',
        steps: [nothing, step({ materials: ['straw-bale'] })],
        circumstances: { crops: ['broadleaf'] },
        caution: 'herbicide-carryover',
        at: 1,
      },
      {
        name: 'straw under onions only: none',
        steps: [step({ materials: ['straw-bale'] })],
        circumstances: { crops: [] },
        caution: 'herbicide-carryover',
        at: -1,
      },
      {
        name: 'straw under nobody knows what: weed killer',
        steps: [step({ materials: ['straw-bale'] })],
        caution: 'herbicide-carryover',
        at: 0,
      },
      {
        name: 'straw and a flame: danger',
        steps: [step({ materials: ['loose-straw'] }), step({ actions: ['use-flame'] })],
        caution: 'flame-at-straw',
        at: 1,
      },
      {
        name: 'a bamboo pole that is raised: power lines',
        steps: [step({ materials: ['bamboo-pole'] }), step({ actions: ['raise-pole'] })],
        caution: 'overhead-line',
        at: 1,
      },
      {
        name: 'treated lumber around food',
        steps: [step({ materials: ['treated-lumber'] })],
        circumstances: { conditions: ['food-bed'] },
        caution: 'treated-wood-bed',
        at: 0,
      },
      {
        name: 'treated lumber around flowers: none',
        steps: [step({ materials: ['treated-lumber'] })],
        caution: 'treated-wood-bed',
        at: -1,
      },
      {
        name: 'a power saw in a class',
        steps: [step({ tools: ['circular-saw'] })],
        circumstances: { audience: 'class' },
        caution: 'power-saw-youth',
        at: 0,
      },
      {
        name: 'a power saw among adults: none',
        steps: [step({ tools: ['circular-saw'] })],
        caution: 'power-saw-youth',
        at: -1,
      },
      {
        name: 'a ladder on a slope',
        steps: [nothing, step({ tools: ['step-ladder'] })],
        circumstances: { conditions: ['steep-ground'] },
        caution: 'soft-ladder-ground',
        at: 1,
      },
      {
        name: 'digging where a line runs to the shed',
        steps: [step({ tools: ['spade'] })],
        circumstances: { conditions: ['private-lines'] },
        caution: 'private-line',
        at: 0,
      },
      {
        name: 'a prop stick that is only cut to length: no falling sash',
        steps: [step({ materials: ['prop-stick'] })],
        caution: 'falling-sash',
        at: -1,
      },
      {
        name: 'a prop stick in step 1 and a lid in step 3: a falling lid',
        steps: [step({ materials: ['prop-stick'] }), nothing, step({ materials: ['cold-frame-lid'] })],
        caution: 'falling-sash',
        at: 2,
      },
      {
        name: 'an anchor that is screwed in: buried lines',
        steps: [step({ materials: ['ground-anchor'] }), step({ actions: ['drive-anchor'] })],
        caution: 'buried-line',
        at: 1,
      },
      {
        name: 'a string around stakes: the caution of the stakes says that it trips',
        steps: [step({ materials: ['wooden-stake'], actions: ['mark-out'] })],
        caution: 'string-trip',
        at: -1,
      },
      {
        name: 'a string around pegs that no one listed: it trips',
        steps: [step({ actions: ['mark-out'] })],
        caution: 'string-trip',
        at: 0,
      },
      {
        name: 'strings around poles: cords at the height of a small neck, for adults too',
        steps: [nothing, step({ actions: ['lash-poles'] })],
        caution: 'cords-and-nets',
        at: 1,
      },
      {
        name: 'a project in the open: sun, ticks and stings',
        steps: [nothing, step({ tools: ['tape-measure'] })],
        circumstances: { conditions: ['outdoors'] },
        caution: 'sun-and-stings',
        at: 0,
      },
      {
        name: 'a block that is cut with a hammer',
        steps: [step({ materials: ['concrete-block'], tools: ['hammer'] })],
        caution: 'silica-dust',
        at: 0,
      },
    ],
  )('$name', ({ steps, circumstances = {}, caution, at }) => {
    const { perStep } = gatherCautions(steps, shippedCatalogue, circumstances);
    expect(perStep.findIndex((ids) => ids.includes(caution))).toBe(at);
  });

  it('tells the worst of the heat once, at the first step, and leaves the general caution out', () => {
    const steps = [nothing, step({ actions: ['lift-bale'] })];
    const { perStep, all } = gatherCautions(steps, shippedCatalogue, {
      conditions: ['heat-extreme-caution', 'heat-danger'],
    });
    expect(perStep[0]).toEqual(['heat-danger']);
    expect(all.filter((id) => id.startsWith('heat'))).toEqual(['heat-danger']);
  });

  it('keeps the general caution of heat where no band is known', () => {
    const { all } = gatherCautions([step({ actions: ['lift-bale'] })], shippedCatalogue);
    expect(all.filter((id) => id.startsWith('heat'))).toEqual(['heat-illness']);
  });

  it('refuses a condition that the catalogue does not hold', () => {
    expect(() => gatherCautions([nothing], shippedCatalogue, { conditions: ['hail'] })).toThrow(
      /condition "hail" has no hazard profile/,
    );
  });
});

describe('what covers what', () => {
  const caution = (id: string, signal: 'danger' | 'caution', covers: string[]) => ({
    ...{ id, signal, title: id, hazard: 'It can.', avoidance: 'Care.', sources: ['s'] },
    ...(covers.length > 0 ? { covers } : {}),
  });
  const told = (cautions: ReturnType<typeof caution>[]): readonly string[] => {
    const tool = { id: 'tool', name: 'Tool', cautions: cautions.map(({ id }) => id) };
    const catalogue = catalogueOf({ cautions, tools: [tool], materials: [], actions: [] });
    return gatherCautions([step({ tools: ['tool'] })], catalogue).all;
  };
  it.each([
    ['a general one goes', [caution('a', 'caution', ['b']), caution('b', 'caution', [])], ['a']],
    [
      'by way of one that goes itself',
      [caution('a', 'caution', ['b']), caution('b', 'caution', ['c']), caution('c', 'caution', [])],
      ['a'],
    ],
    ['a stronger one stays', [caution('a', 'caution', ['b']), caution('b', 'danger', [])], ['b', 'a']],
    ['of a ring both stay', [caution('a', 'caution', ['b']), caution('b', 'caution', ['a'])], ['a', 'b']],
  ])('%s', (_, cautions, left) => {
    expect(told(cautions)).toEqual(left);
  });
});

describe('circumstances', () => {
  it.each([
    ['Phaseolus vulgaris', ['broadleaf']],
    ['Daucus carota subsp. sativus', ['broadleaf']],
    ['Zea mays', []],
    ['Allium cepa', []],
  ])('%s: %s', (latin, traits) => {
    expect(traitsOf({ latin })).toEqual(traits);
  });

  it.each([
    [['heat-none', 'heat-none'], undefined],
    [['heat-none', 'heat-danger', 'heat-caution'], 'heat-danger'],
    [[], undefined],
  ])('the worst of %j is %s', (bands, worst) => {
    expect(worstHeat(bands)).toBe(worst);
  });
});
