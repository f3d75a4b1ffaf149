import { describe, expect, it } from 'vitest';
import type { CautionRecord, HazardProfile } from '../../scripts/records/schemas/hazard.ts';
import { catalogueOf } from '../../scripts/safety/catalogue.ts';
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
    { tools: ['tape'], materials: [], actions: [] },
    { tools: ['knife'], materials: ['twine'], actions: ['cut-twine'] },
  ],
};
const record = { kind: 'project', id: 'frame' } as const;

describe('faults of a project', () => {
  it.each<{ name: string; project: ProjectHazards; faults: HazardFault[] }>([
    { name: 'a sound project has none', project: sound, faults: [] },
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
