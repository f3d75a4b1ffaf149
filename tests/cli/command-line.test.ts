/** The command line as a person meets it, in a process of its own: what goes wrong is told in words. */
import { spawn } from 'node:child_process';
import { cp, mkdir, mkdtemp, readdir, realpath, rm, writeFile } from 'node:fs/promises';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

const root = fileURLToPath(new URL('../..', import.meta.url));
const base = join(root, 'tests/faults/base');
const script = join(root, 'scripts/groundsheet.ts');
const loader = import.meta.resolve('tsx');

let folder: string;
beforeAll(async () => {
  folder = await realpath(await mkdtemp(join(tmpdir(), 'command-line-')));
  await cp(base, join(folder, 'guide'), { recursive: true });
});
afterAll(async () => {
  await rm(folder, { recursive: true, force: true });
});

interface Ended {
  readonly code: number | null;
  readonly out: string;
  readonly error: string;
}

/** Runs the program in a folder, whatever the tests themselves are run with. */
function run(
  words: readonly string[],
  { cwd = folder, env = {} }: { cwd?: string; env?: Readonly<Record<string, string>> } = {},
): Promise<Ended> {
  return new Promise((resolve) => {
    const child = spawn(process.execPath, ['--import', loader, script, ...words], {
      cwd,
      env: { ...process.env, INIT_CWD: cwd, SOURCE_DATE_EPOCH: '', ...env },
    });
    let out = '';
    let error = '';
    child.stdout.on('data', (piece: Buffer) => (out += piece.toString()));
    child.stderr.on('data', (piece: Buffer) => (error += piece.toString()));
    child.on('close', (code) => {
      resolve({ code, out, error });
    });
  });
}

/** A line of a stack trace, which is no help to anyone but a programmer. */
const stackTrace = /^ {4}at /m;

describe('what goes wrong', () => {
  it.each<{ name: string; words: string[]; env?: Record<string, string>; message: RegExp }>([
    {
      name: 'an issue date that is no number',
      words: ['check', '--root', 'guide'],
      env: { SOURCE_DATE_EPOCH: 'garbage' },
      message: /SOURCE_DATE_EPOCH is not a whole number/,
    },
    {
      name: 'an issue date after the year 9999',
      words: ['check', '--root', 'guide'],
      env: { SOURCE_DATE_EPOCH: '999999999999' },
      message: /SOURCE_DATE_EPOCH is not a whole number/,
    },
    {
      name: 'a guide that is not there',
      words: ['build', '--root', 'no-such-guide'],
      message: /There is no folder .*no-such-guide/,
    },
    {
      name: 'an output folder whose name is too long',
      words: ['build', '--root', 'guide', '--out', 'd'.repeat(300)],
      message: /a path is too long for the disk/,
    },
    {
      name: 'a port that is none',
      words: ['serve', '--root', 'guide', '--no-open', '--port', '99999'],
      message: /A port is a whole number/,
    },
  ])('is told in words: $name', async ({ words, env = {}, message }) => {
    const { code, error } = await run(words, { env });
    expect(error).toMatch(message);
    expect(error).not.toMatch(stackTrace);
    expect(code).toBe(1);
  });

  it('is told in words: no free port', async () => {
    const other = createServer();
    await new Promise<void>((resolve) => {
      // Another program may have the port already, which is as good.
      other.once('error', () => {
        resolve();
      });
      other.listen(65_535, '127.0.0.1', resolve);
    });
    const { code, error } = await run([
      ...['serve', '--root', 'guide', '--out', 'served'],
      ...['--no-open', '--port', '65535'],
    ]);
    await new Promise((resolve) => other.close(resolve));
    expect(error).toMatch(/No port is free up to 65535/);
    expect(error).not.toMatch(stackTrace);
    expect(code).toBe(1);
  });
});

describe('a build', () => {
  it('is the same from any folder', async () => {
    await mkdir(join(folder, 'broken'));
    await writeFile(join(folder, 'broken', 'package.json'), '{');
    const out = join(folder, 'top');
    const fromTop = await run(['build', '--root', join(folder, 'guide'), '--out', out], { cwd: '/' });
    expect(fromTop).toMatchObject({ code: 0, error: '' });
    const fromBroken = await run(['build', '--root', '../guide', '--out', 'web'], {
      cwd: join(folder, 'broken'),
    });
    expect(fromBroken).toMatchObject({ code: 0, error: '' });
    const files = await readdir(out, { recursive: true });
    expect(files).toContain('index.html');
    expect((await readdir(join(folder, 'broken', 'web'), { recursive: true })).sort()).toEqual(files.sort());
  });

  it.each([
    { name: 'nothing', files: [null] },
    {
      name: 'a path above the folder',
      files: [{ path: '../keep', kind: 'chart', sha256: 'a'.repeat(64), bytes: 1 }],
    },
  ])('of one region is refused in words over a manifest that lists $name', async ({ files }) => {
    const out = await mkdtemp(join(folder, 'narrow-'));
    await writeFile(join(out, 'manifest.json'), JSON.stringify({ files, format: 1, madeBy: 'Groundsheet' }));
    const { code, error } = await run(['build', '--root', 'guide', '--out', out, '--region', 'north']);
    expect(error).toMatch(/The manifest in .* cannot be read by this version/);
    expect(error).not.toMatch(stackTrace);
    expect(code).toBe(1);
  });
});
