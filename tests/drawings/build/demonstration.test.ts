/** The builds of the demonstration guide, drawn as they are computed. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { drawnMeasures } from '../../../scripts/drawings/build/assembly-drawings.ts';
import { collectSingles } from '../../../scripts/records/collect.ts';
import { KeyholeBedSchema } from '../../../scripts/records/schemas/projects/keyhole-bed.ts';
import { LumberColdFrameSchema } from '../../../scripts/records/schemas/projects/lumber-cold-frame.ts';
import { PoleTepeeSchema } from '../../../scripts/records/schemas/projects/pole-tepee.ts';
import { RaisedBedSchema } from '../../../scripts/records/schemas/projects/raised-bed.ts';
import type { Hemisphere } from '../../../scripts/structures/geometry.ts';
import { structureOf } from '../../../scripts/structures/structures.ts';
import { crossedTexts } from '../frame/ink.ts';
import { lettersOf, offPage, wordsOnWords } from './checks.ts';
import type { Sample } from './samples.ts';
import { allScenes } from './scenes.ts';

const schemas = {
  'raised-bed': RaisedBedSchema,
  'lumber-cold-frame': LumberColdFrameSchema,
  'keyhole-bed': KeyholeBedSchema,
  'pole-tepee': PoleTepeeSchema,
} as const;

/** A letter for every role, so that every role has to find room. */
function sampleOf(name: keyof typeof schemas, hemisphere: Hemisphere): Sample {
  const path = `content/projects/${name}.yaml`;
  const text = readFileSync(new URL(`../../../${path}`, import.meta.url), 'utf8');
  const { records } = collectSingles(schemas[name], [{ path, text }]);
  const built = structureOf(records[0]!.value, { hemisphere });
  if (built.kind === 'faults') throw new Error(JSON.stringify(built.faults));
  const { assembly, findings } = built.structure;
  const roles = [...new Set(assembly!.members.map(({ role }) => role))];
  const lengths = findings.flatMap(({ id, value }) =>
    value.kind === 'quantity' && value.dimension === 'length' ? [[id, value.value] as const] : [],
  );
  return {
    name,
    assembly: assembly!,
    letters: Object.fromEntries(roles.map((role, index) => [role, 'ABCDEFGHJKLMNPQRSTUVWXYZ'[index % 24]!])),
    valuesMm: Object.fromEntries(lengths),
  };
}

const builds = (Object.keys(schemas) as (keyof typeof schemas)[]).flatMap((name) =>
  (['north', 'south'] as const).map((hemisphere) => ({ title: `${name}, ${hemisphere}`, name, hemisphere })),
);

describe.each(builds)('drawings of the demonstration $title', ({ name, hemisphere }) => {
  const sample = sampleOf(name, hemisphere);
  const scenes = allScenes(sample);

  test.each(scenes)('%s: on the page, without a line or words through words', async (_, scene) => {
    expect(offPage(scene)).toEqual([]);
    expect(wordsOnWords(scene)).toEqual([]);
    expect(await crossedTexts(scene)).toEqual([]);
  });

  test('what is drawn is as long as what was computed', () => {
    for (const { finding, lengthMm } of drawnMeasures(sample.assembly))
      expect(lengthMm, finding).toBeCloseTo(sample.valuesMm[finding]!, 1);
  });

  test('each step has a letter for each role that it adds', () => {
    const { members, stages } = sample.assembly;
    for (const stage of stages) {
      const roles = [...new Set(members.filter((member) => member.stage === stage).map(({ role }) => role))];
      const scene = scenes.find(([other]) => other === `step ${stage}`)![1];
      expect([...lettersOf(scene)].sort(), stage).toEqual(roles.map((role) => sample.letters[role]!).sort());
    }
  });
});
