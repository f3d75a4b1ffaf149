/** The names that figures of a crop may not take are those that the program gives to findings of crops. */
import { readFile, readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { readGuide } from '../../scripts/records/read-guide.ts';
import { namesOfEveryCrop } from '../../scripts/sheets/check-names.ts';
import { repository } from '../demo/demo-guide.ts';

const scripts = fileURLToPath(new URL('../../scripts', import.meta.url));

/**
 * Names that the sheets read from the figures of records, which are the records' own; `bolting-` and the like, which go on
 * with a value, end in names with a dot in them.
 */
test('every plain name of a crop finding is one that figures may not take', async () => {
  const names = new Set<string>();
  for (const folder of ['agronomy', 'sheets']) {
    for (const file of await readdir(join(scripts, folder), { recursive: true })) {
      if (!file.endsWith('.ts')) continue;
      const text = await readFile(join(scripts, folder, file), 'utf8');
      for (const [, name] of text.matchAll(/`\$\{crop\.id\}\.([a-z][a-z-]*)(?!-?\$|[a-z-])/g))
        names.add(name!);
      const ofCrops = folder === 'agronomy' || /^(crop|onion)-/.test(file);
      if (!ofCrops) continue;
      for (const [, name] of text.matchAll(/(?:lookedUp\(crop, |finding\()'([a-z-]+)'/g)) names.add(name!);
    }
  }
  expect(names.size).toBeGreaterThan(30);
  const { guide } = await readGuide({ root: repository, builtInRoot: repository });
  const figures = new Set(guide.crops.flatMap((crop) => (crop.figures ?? []).map(({ id }) => id)));
  expect(figures.size).toBeGreaterThan(5);
  expect([...figures].filter((id) => namesOfEveryCrop.has(id))).toEqual([]);
  expect([...names].filter((name) => !namesOfEveryCrop.has(name) && !figures.has(name))).toEqual([]);
});
