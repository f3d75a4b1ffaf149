import { readFile, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { publish, type PublishOptions } from '../../scripts/publish/publish.ts';
import { markBuildDead, put, snapshot, type Snapshot } from './folders.ts';

/** The sheets of a first build and of the one after it: one page is changed, one is new, one is gone. */
export const firstBuild = {
  'index.html': 'two guides',
  'en/marlow/chart.html': 'chart, first issue',
  'en/marlow/chart.pdf': 'the chart as a PDF',
  'en/marlow/card.html': 'card, first issue',
  'en/tarn/chart.html': 'a region that is given up',
  'style.css': 'body { color: black }',
};
export const secondBuild = {
  'index.html': 'three guides',
  'en/marlow/chart.html': 'chart, second issue',
  'en/marlow/chart.pdf': 'the chart as a PDF',
  'en/marlow/card.html': 'card, second issue',
  'es/marlow/chart.html': 'tabla de siembra',
  'style.css': 'body { color: black }',
};
/** What a person put into the output folder between the two builds. */
export const foreignThings: Snapshot = {
  CNAME: 'guides.example.org',
  '.nojekyll': 'as it is',
  'en/notes.txt': 'call the printer',
  'en/tarn/history.txt': 'in a folder that no build makes any more',
  'en/marlow/photos/bed.jpg': 'a picture',
  drafts: '(folder)',
  latest: '-> en/marlow',
};
/** Pages that the person changed by hand. */
export const editedPages: Snapshot = {
  'en/marlow/card.html': 'card, with a note in pencil',
  'en/tarn/chart.html': 'given up, but with a note',
};
export const editsAreKeptAs: Snapshot = {
  'en/marlow/card.yours-1.html': editedPages['en/marlow/card.html']!,
  'en/tarn/chart.yours-1.html': editedPages['en/tarn/chart.html']!,
};

export function options(guide: string, files: Snapshot): PublishOptions {
  return { out: join(guide, 'dist'), guide, files: new Map(Object.entries(files)), entries: [], writers: 1 };
}

/** The first build, then a person's changes. Gives the folder as it then is, but for the manifest. */
export async function setUp(guide: string): Promise<void> {
  await publish(options(guide, firstBuild));
  await put(join(guide, 'dist'), { ...foreignThings, ...editedPages });
}

/** What the output folder must hold after the second build, but for the manifest. */
export const afterSecondBuild: Snapshot = sorted({ ...secondBuild, ...foreignThings, ...editsAreKeptAs });
export const beforeSecondBuild: Snapshot = sorted({ ...firstBuild, ...foreignThings, ...editedPages });

export async function withoutManifest(out: string): Promise<Snapshot> {
  const found = Object.entries(await snapshot(out));
  return Object.fromEntries(found.filter(([path]) => path !== 'manifest.json'));
}

/** Every point that the second build passes, in order. */
export async function pointsOfSecondBuild(guide: string): Promise<readonly string[]> {
  await setUp(guide);
  const points: string[] = [];
  await publish({
    ...options(guide, secondBuild),
    checkpoint: (name, path) => void points.push(`${name} ${path ?? ''}`),
  });
  await rm(join(guide, 'dist'), { recursive: true });
  return points;
}

/**
 * Runs a build up to its point of the given number (the first is 0) and leaves it standing there for good, as
 * a killed one: nothing it would clean up is cleaned up, and its lock says that its process is gone. False if
 * the build has fewer points.
 */
export async function killAt(number: number, run: PublishOptions): Promise<boolean> {
  let count = 0;
  let reached: () => void;
  const killed = new Promise<true>((resolve) => {
    reached = () => {
      resolve(true);
    };
  });
  const checkpoint = (): Promise<void> | undefined => {
    if (count++ !== number) return undefined;
    reached();
    return new Promise(() => undefined);
  };
  const done = publish({ ...run, writers: 1, checkpoint }).then(() => false);
  const wasKilled = await Promise.race([killed, done]);
  if (wasKilled) await markBuildDead(run.out);
  return wasKilled;
}

export async function textAt(path: string): Promise<string | undefined> {
  return readFile(path, 'utf8').catch(() => undefined);
}

function sorted(things: Snapshot): Snapshot {
  return Object.fromEntries(Object.entries(things).sort(([a], [b]) => (a < b ? -1 : 1)));
}
