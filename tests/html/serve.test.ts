import { mkdir, mkdtemp, readFile, rename, rm, symlink, writeFile } from 'node:fs/promises';
import { createServer, request, type RequestOptions } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { NoFreePort, serve, type Served, type ServeOptions } from '../../scripts/serve.ts';

/** A busy computer may take its time; nothing here is measured. */
vi.setConfig({ testTimeout: 30_000 });

let folder: string;
let out: string;
let record: string;
let served: Served | undefined;

beforeEach(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'serve-test-'));
  out = path.join(folder, 'dist');
  record = path.join(folder, 'crops', 'carrot.yaml');
  await mkdir(path.dirname(record), { recursive: true });
  await writeFile(record, 'Carrot');
});
afterEach(async () => {
  await served?.close();
  served = undefined;
  await rm(folder, { recursive: true });
});

/** Writes the record into a page, as a build would. */
async function build(): Promise<boolean> {
  await mkdir(path.join(out, 'en'), { recursive: true });
  const page = `<html><body><h1>${await readFile(record, 'utf8')}</h1></body></html>`;
  await writeFile(path.join(out, 'index.html'), page);
  await writeFile(path.join(out, 'en', 'carrot.html'), page);
  await writeFile(path.join(out, 'style.css'), 'body {}');
  return true;
}

async function start(changes: Partial<ServeOptions> = {}): Promise<Served> {
  const lines: string[] = [];
  served = await serve({
    out,
    watch: [folder],
    build,
    port: 0,
    open: false,
    say: (line) => lines.push(line),
    ...changes,
  });
  return served;
}

/** Plain node:http, so that an address reaches the server as it is written. */
function get(
  url: string,
  address: string,
  asked: Pick<RequestOptions, 'method' | 'headers'> = {},
): Promise<{ status: number; body: string }> {
  return new Promise((resolve, reject) => {
    const { port } = new URL(url);
    request({ host: '127.0.0.1', port, path: address, ...asked }, (response) => {
      let body = '';
      response.setEncoding('utf8').on('data', (piece: string) => (body += piece));
      response.on('end', () => {
        resolve({ status: response.statusCode ?? 0, body });
      });
    })
      .on('error', reject)
      .end();
  });
}

/** Listens as a page does; `heard` grows with every word to reload. */
function listenForReload(url: string): Promise<readonly string[]> {
  const heard: string[] = [];
  return new Promise((resolve) => {
    request(`${url}.reload`, (response) => {
      response.setEncoding('utf8').on('data', (piece: string) => {
        if (piece.includes('data:')) heard.push(piece);
      });
      response.once('data', () => {
        resolve(heard);
      });
      response.on('error', () => undefined);
    }).end();
  });
}

describe('serving', () => {
  it('builds once and shows pages with a script that reloads them, which no file has', async () => {
    const { url } = await start();
    for (const [address, file] of [
      ['/', 'index.html'],
      ['/en/carrot.html?a=b', 'en/carrot.html'],
    ] as const) {
      const { status, body } = await get(url, address);
      expect(status).toBe(200);
      expect(body).toMatch(/<h1>Carrot<\/h1><script>new EventSource.*<\/script>\s*<\/body>/);
      expect(await readFile(path.join(out, file), 'utf8')).not.toContain('script');
    }
    expect(await get(url, '/style.css')).toEqual({ status: 200, body: 'body {}' });
  });

  it.each([
    '/none.html',
    '/none',
    '/../crops/carrot.yaml',
    '/..%2fcrops%2fcarrot.yaml',
    '/%E0%A4%A',
    '/secret.html%00',
  ])('has nothing at %s', async (address) => {
    const { url } = await start();
    expect((await get(url, address)).status).toBe(404);
  });

  it('does not show a page outside of the output folder', async () => {
    await writeFile(path.join(folder, 'private.html'), '<body>private</body>');
    const { url } = await start();
    for (const address of ['/../private.html', '/%2e%2e/private.html', '/en/..%2f..%2fprivate.html']) {
      expect((await get(url, address)).body).not.toContain('private');
    }
  });

  it.each(['bytes=5-2', 'bytes=0-1', 'bytes=-1', 'bytes=99999999999-', 'bytes=x-y', 'lines=1-2'])(
    'sends a file whole to one that asks for the part %s, and stays',
    async (range) => {
      const { url } = await start();
      const whole = { status: 200, body: 'body {}' };
      expect(await get(url, '/style.css', { headers: { Range: range } })).toEqual(whole);
      expect(await get(url, '/style.css')).toEqual(whole);
    },
  );

  it('sends the head of a page alone to one that asks for it', async () => {
    const { url } = await start();
    expect(await get(url, '/', { method: 'HEAD' })).toEqual({ status: 200, body: '' });
    expect(await get(url, '/none', { method: 'HEAD' })).toEqual({ status: 404, body: '' });
  });

  it.each(['POST', 'PUT', 'DELETE', 'PATCH', 'OPTIONS'])('takes no %s', async (method) => {
    const { url } = await start();
    for (const address of ['/', '/style.css', '/.reload'])
      expect((await get(url, address, { method })).status).toBe(405);
  });

  it('has nothing at a folder without a slash, and stays', async () => {
    const { url } = await start();
    expect((await get(url, '/en')).status).toBe(404);
    expect((await get(url, '/')).status).toBe(200);
  });

  it.skipIf(process.platform === 'win32')('does not follow a link out of the output folder', async () => {
    const { url } = await start();
    await symlink('../crops', path.join(out, 'away'));
    await symlink('../crops/carrot.yaml', path.join(out, 'carrot.txt'));
    await symlink('../crops/carrot.yaml', path.join(out, 'carrot.html'));
    await symlink('en', path.join(out, 'latest'));
    for (const address of ['/away/carrot.yaml', '/carrot.txt', '/carrot', '/carrot.html'])
      expect((await get(url, address)).status).toBe(404);
    expect((await get(url, '/latest/carrot.html')).status).toBe(200);
  });

  it('notices saves in a folder that was moved away and put back, or made later', async () => {
    const builds = vi.fn(build);
    const crops = path.dirname(record);
    const { url } = await start({ build: builds, watch: [crops, path.join(folder, 'layouts')] });
    const heard = await listenForReload(url);
    const builtAgain = async (change: () => Promise<void>): Promise<void> => {
      const before = heard.length;
      await change();
      await vi.waitFor(() => {
        expect(heard.length).toBeGreaterThan(before);
      }, 5000);
      // Nothing more may be on its way when the next change is made, or it would be taken for that.
      await new Promise((resolve) => setTimeout(resolve, 500));
    };
    await rename(crops, `${crops}_`);
    await new Promise((resolve) => setTimeout(resolve, 500));
    await builtAgain(() => rename(`${crops}_`, crops));
    await builtAgain(() => writeFile(record, 'Beet'));
    expect((await get(url, '/')).body).toContain('Beet');
    await rename(crops, `${crops}_`);
    await builtAgain(() => rename(`${crops}_`, crops));
    await builtAgain(() => writeFile(record, 'Leek'));
    await builtAgain(() => mkdir(path.join(folder, 'layouts')));
    await builtAgain(() => writeFile(path.join(folder, 'layouts', 'sheet.njk'), 'mine'));
    const count = builds.mock.calls.length;
    await writeFile(path.join(folder, 'notes.txt'), 'beside what is watched');
    await new Promise((resolve) => setTimeout(resolve, 500));
    expect(builds).toHaveBeenCalledTimes(count);
  });

  it('builds again on a save, and then tells the pages', async () => {
    const { url } = await start();
    const heard = await listenForReload(url);
    await writeFile(record, 'Beet');
    await vi.waitFor(() => {
      expect(heard).toHaveLength(1);
    }, 5000);
    expect((await get(url, '/')).body).toContain('Beet');
  });

  it('keeps the last good pages, and stays, when a build has faults or throws', async () => {
    const outcomes = [
      (): boolean => false,
      (): never => {
        throw new Error('Cannot go on.');
      },
    ];
    const said: string[] = [];
    const builds = vi.fn(build);
    const { url } = await start({ build: builds, say: (line) => said.push(line) });
    const heard = await listenForReload(url);
    for (const [place, outcome] of outcomes.entries()) {
      builds.mockImplementationOnce(() => Promise.resolve().then(outcome));
      await writeFile(record, `Broken ${place}`);
      await vi.waitFor(() => {
        expect(builds).toHaveBeenCalledTimes(place + 2);
      }, 5000);
      expect((await get(url, '/')).body).toContain('<h1>Carrot</h1>');
    }
    expect(said).toContain('Cannot go on.');
    await writeFile(record, 'Beet');
    await vi.waitFor(() => {
      expect(heard).toHaveLength(1);
    }, 5000);
  });

  it('builds one at a time, and once more for all saves during a build', async () => {
    let running = 0;
    let most = 0;
    const release: (() => void)[] = [];
    const builds = vi.fn(async () => {
      running += 1;
      most = Math.max(most, running);
      const built = await build();
      if (builds.mock.calls.length === 2) await new Promise<void>((resolve) => release.push(resolve));
      running -= 1;
      return built;
    });
    const { url } = await start({ build: builds });
    const heard = await listenForReload(url);
    await writeFile(record, 'one');
    await vi.waitFor(() => {
      expect(release).toHaveLength(1);
    }, 5000);
    for (const word of ['two', 'three']) {
      await writeFile(record, word);
      await new Promise((resolve) => setTimeout(resolve, 300));
    }
    release[0]!();
    await vi.waitFor(() => {
      expect(heard).toHaveLength(2);
    }, 5000);
    expect(builds).toHaveBeenCalledTimes(3);
    expect(most).toBe(1);
    expect((await get(url, '/')).body).toContain('three');
  });

  it('does not take its own output for a save', async () => {
    const builds = vi.fn(async () => {
      await mkdir(path.join(folder, '.dist.next'), { recursive: true });
      await writeFile(path.join(folder, '.dist.next', 'index.html'), 'new');
      return build();
    });
    const { url } = await start({ build: builds });
    const heard = await listenForReload(url);
    await writeFile(record, 'Beet');
    await vi.waitFor(() => {
      expect(heard).toHaveLength(1);
    }, 5000);
    await new Promise((resolve) => setTimeout(resolve, 500));
    expect(builds).toHaveBeenCalledTimes(2);
  });

  it('takes the next port when the port is taken', async () => {
    const other = createServer();
    await new Promise<void>((resolve) => other.listen(0, '127.0.0.1', resolve));
    const { port } = other.address() as AddressInfo;
    const { url } = await start({ port });
    expect(Number(new URL(url).port)).toBeGreaterThan(port);
    await new Promise((resolve) => other.close(resolve));
  });

  it('says so in words when there is no further port', async () => {
    const other = createServer();
    const last = 65_535;
    await new Promise<void>((resolve) => {
      // Whether it is this test or another program that has the port makes no difference.
      other.once('error', () => {
        resolve();
      });
      other.listen(last, '127.0.0.1', resolve);
    });
    await expect(start({ port: last })).rejects.toThrow(NoFreePort);
    await new Promise((resolve) => other.close(resolve));
  });

  it('closes although pages are listening', async () => {
    const desk = await start();
    await listenForReload(desk.url);
    await desk.close();
    served = undefined;
    await expect(get(desk.url, '/')).rejects.toThrow('ECONNREFUSED');
  });
});
