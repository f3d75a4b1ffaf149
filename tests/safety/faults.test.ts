import { describe, expect, it } from 'vitest';
import type { CautionRecord, HazardProfile } from '../../scripts/records/schemas/hazard.ts';
import { catalogueOf, type HazardRecords } from '../../scripts/safety/catalogue.ts';
import { hazardFaults, type HazardFault, type ProjectHazards } from '../../scripts/safety/faults.ts';

const cut: CautionRecord = {
  id: 'cut',
  signal: 'caution',
  title: 'Cuts',
  hazard: 'It can cut.',
  avoidance: 'Care.',
  sources: ['s'],
};
const knife: HazardProfile = { id: 'knife', name: 'Knife', cautions: ['cut'] };
const tape: HazardProfile = { id: 'tape', name: 'Tape', cautions: [], harmless: 'It is soft.' };
const catalogue = catalogueOf({
  cautions: [cut],
  tools: [knife, tape],
  materials: [{ ...tape, id: 'twine' }],
  actions: [{ ...knife, id: 'cut-twine' }],
});
const sound: ProjectHazards = {
  id: 'frame',
  tools: ['knife', 'tape'],
  parts: [{ material: 'twine' }],
  steps: [
    { tools: ['tape'], materials: [], actions: [], harmless: 'A tape is only laid down.' },
    { tools: ['knife'], materials: ['twine'], actions: ['cut-twine'] },
  ],
};
const record = { kind: 'project', id: 'frame' } as const;

describe('faults of a project', () => {
  it.each<{ name: string; project: ProjectHazards; faults: HazardFault[] }>([
    { name: 'a sound project has none', project: sound, faults: [] },
    {
      name: 'a step in which nothing can hurt must say so',
      project: { ...sound, steps: [{ ...sound.steps[0]!, harmless: undefined }, sound.steps[1]!] },
      faults: [{ fault: 'silent-step', record, pointer: '/steps/0', step: 1 }],
    },
    {
      name: 'a step that lists nothing must say so, too',
      project: { ...sound, steps: [...sound.steps, { tools: [], materials: [], actions: [] }] },
      faults: [{ fault: 'silent-step', record, pointer: '/steps/2', step: 3 }],
    },
    {
      name: 'a step with a knife cannot be called harmless',
      project: { ...sound, steps: [sound.steps[0]!, { ...sound.steps[1]!, harmless: 'It is quick.' }] },
      faults: [
        {
          fault: 'harmless-step-with-cautions',
          record,
          pointer: '/steps/1/harmless',
          step: 2,
          id: 'knife',
        },
      ],
    },
    {
      name: 'words for a knife that the step does not list, told once',
      project: {
        ...sound,
        steps: [
          { ...sound.steps[0]!, title: 'Measure', text: 'Lay knives down. No knife.' },
          sound.steps[1]!,
        ],
      },
      faults: [
        {
          fault: 'unlisted-word',
          record,
          pointer: '/steps/0/text',
          step: 1,
          word: 'knives',
          occurrence: 0,
          means: [{ kind: 'tool', id: 'knife' }],
        },
      ],
    },
    {
      name: 'a mention that the words do not make',
      project: { ...sound, steps: [{ ...sound.steps[0]!, mentions: ['knife'] }, sound.steps[1]!] },
      faults: [{ fault: 'idle-mention', record, pointer: '/steps/0/mentions/0', step: 1, id: 'knife' }],
    },
    {
      name: 'an unknown action is named with its place',
      project: {
        ...sound,
        steps: [...sound.steps, { tools: [], materials: [], actions: ['cut-twine', 'jump'] }],
      },
      faults: [
        { fault: 'no-profile', record, pointer: '/steps/2/actions/1', kind: 'action', id: 'jump', also: [] },
      ],
    },
    {
      name: 'one unknown tool in three places is one fault',
      project: {
        ...sound,
        tools: [...sound.tools, 'saw'],
        steps: [...sound.steps, ...[1, 2].map(() => ({ tools: ['saw'], materials: [], actions: [] }))],
      },
      faults: [
        {
          fault: 'no-profile',
          record,
          pointer: '/tools/2',
          kind: 'tool',
          id: 'saw',
          also: ['/steps/2/tools/0', '/steps/3/tools/0'],
        },
      ],
    },
    {
      name: 'a part of unknown material',
      project: { ...sound, parts: [...sound.parts, { material: 'glass' }] },
      faults: [
        {
          fault: 'no-profile',
          record,
          pointer: '/parts/1/material',
          kind: 'material',
          id: 'glass',
          also: [],
        },
      ],
    },
    {
      name: 'a listed tool that no step uses would lose its cautions',
      project: { ...sound, steps: [{ ...sound.steps[1]!, tools: ['tape'] }] },
      faults: [{ fault: 'in-no-step', record, pointer: '/tools/0', kind: 'tool', id: 'knife', also: [] }],
    },
    {
      name: 'an action is not a tool of the same id',
      project: { ...sound, steps: [...sound.steps, { tools: [], materials: [], actions: ['knife'] }] },
      faults: [
        { fault: 'no-profile', record, pointer: '/steps/2/actions/0', kind: 'action', id: 'knife', also: [] },
      ],
    },
  ])('$name', ({ project, faults }) => {
    expect(hazardFaults({ catalogue, projects: [project] })).toEqual(faults);
  });
});

describe('faults of a profile', () => {
  it.each<{ name: string; profile: HazardProfile; faults: HazardFault[] }>([
    { name: 'harmless for a reason', profile: tape, faults: [] },
    {
      name: 'no caution and no reason',
      profile: { id: 'rope', name: 'Rope', cautions: [] },
      faults: [{ fault: 'silent-profile', record: { kind: 'tool', id: 'rope' }, pointer: '/cautions' }],
    },
    {
      name: 'harmless and yet with a caution',
      profile: { ...knife, harmless: 'It is blunt.' },
      faults: [
        { fault: 'harmless-with-cautions', record: { kind: 'tool', id: 'knife' }, pointer: '/harmless' },
      ],
    },
    {
      name: 'a caution that is not in the catalogue',
      profile: { ...knife, cautions: ['cut', 'burn'] },
      faults: [
        {
          fault: 'unknown-caution',
          record: { kind: 'tool', id: 'knife' },
          pointer: '/cautions/1',
          id: 'burn',
        },
      ],
    },
  ])('$name', ({ profile, faults }) => {
    const one = catalogueOf({ cautions: [cut], tools: [profile], materials: [], actions: [] });
    expect(hazardFaults({ catalogue: one, projects: [] })).toEqual(faults);
  });
});

describe('faults of cautions and combinations', () => {
  const burn: CautionRecord = { ...cut, id: 'burn', signal: 'warning' };
  it.each<{ name: string; records: Partial<HazardRecords>; faults: HazardFault[] }>([
    {
      name: 'a specific caution may cover a general one of the same signal word',
      records: {
        cautions: [
          { ...cut, covers: ['nick'] },
          { ...cut, id: 'nick' },
        ],
      },
      faults: [],
    },
    {
      name: 'a caution cannot cover a stronger one',
      records: { cautions: [{ ...cut, covers: ['burn'] }, burn] },
      faults: [
        {
          fault: 'covers-stronger',
          record: { kind: 'caution', id: 'cut' },
          pointer: '/covers/0',
          id: 'burn',
        },
      ],
    },
    {
      name: 'two cautions cannot cover each other',
      records: {
        cautions: [
          { ...cut, covers: ['nick'] },
          { ...cut, id: 'nick', covers: ['cut'] },
        ],
      },
      faults: ['cut', 'nick'].map((id) => ({
        fault: 'covers-itself',
        record: { kind: 'caution', id },
        pointer: '/covers',
      })),
    },
    {
      name: 'a part of a combination that lists nothing, and a caution that is not there',
      records: {
        combinations: [
          {
            id: 'both',
            name: 'Both',
            when: [{ tools: ['knife'] }, {}],
            brings: ['cut', 'ache'],
            sources: ['s'],
          },
        ],
      },
      faults: [
        { fault: 'empty-group', record: { kind: 'combination', id: 'both' }, pointer: '/when/1' },
        {
          fault: 'unknown-caution',
          record: { kind: 'combination', id: 'both' },
          pointer: '/brings/1',
          id: 'ache',
        },
      ],
    },
  ])('$name', ({ records, faults }) => {
    const one = catalogueOf({ cautions: [cut], tools: [], materials: [], actions: [], ...records });
    expect(hazardFaults({ catalogue: one, projects: [] })).toEqual(faults);
  });
});
