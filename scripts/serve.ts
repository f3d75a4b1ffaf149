/**
 * The writer's desk: builds, shows the pages in a browser, builds again on every save and reloads the pages.
 * The script that reloads is added while serving; no file on disk ever has it. Reachable from this computer only.
 */
import { spawn } from 'node:child_process';
import { readFile, realpath } from 'node:fs/promises';
import { createServer, type RequestListener, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import path from 'node:path';
import { watch as watchFiles, type FSWatcher } from 'chokidar';

export interface ServeOptions {
  /** The folder that is built and shown. */
  readonly out: string;
  /** Files and folders whose changes start a build. The output folder is never watched, even inside these. */
  readonly watch: readonly string[];
  /** Builds into `out`; false when there were faults, which it has told already. */
  readonly build: () => Promise<boolean>;
  /** The first port to try; 0 takes any free one. */
  readonly port: number;
  readonly say: (line: string) => void;
  /** Opens the browser at the start. That it cannot be opened is no fault. */
  readonly open: boolean;
}

export interface Served {
  readonly url: string;
  close(): Promise<void>;
}

/**
 * Resolves after the first build, when the pages can be seen and saves are noticed. A build with faults leaves the
 * last good pages in place. Rejects with a sentence for people when no port of the twenty from `port` on is free.
 */
export async function serve(options: ServeOptions): Promise<Served> {
  const { out, watch, build, port, say, open } = options;
  const pages = new Set<ServerResponse>();
  const reload = (): void => {
    for (const page of pages) page.write('data: reload\n\n');
  };
  const rebuild = oneAtATime(async () => {
    if (await report(build, say)) reload();
  });

  await rebuild();
  const server = await listen(createServer(listener(out, pages)), port);
  const watcher = await watchSaves(watch, out, debounced(rebuild, quietMs));
  const url = `http://127.0.0.1:${(server.address() as AddressInfo).port}/`;
  say(url);
  if (open) openBrowser(url);
  return {
    url,
    close: async () => {
      await watcher.close();
      for (const page of pages) page.end();
      server.closeAllConnections();
      await new Promise((resolve) => server.close(resolve));
    },
  };
}

/** No port could be had; the message says so to the person who named the first. */
export class NoFreePort extends Error {}

/** How long nothing must have been saved before a build starts: editors save in several strokes. */
const quietMs = 100;

/** How many ports are tried, one after the other. */
const portsTried = 20;

/** Where pages listen for the word to reload. */
const reloadPath = '/.reload';

const reloadScript = `<script>new EventSource('${reloadPath}').onmessage = () => location.reload();</script>\n`;

/** A build that throws is told and counts as failed: the desk stays open. */
async function report(build: () => Promise<boolean>, say: (line: string) => void): Promise<boolean> {
  try {
    return await build();
  } catch (error) {
    say(error instanceof Error ? error.message : String(error));
    return false;
  }
}

/** Runs the work once at a time; any number of calls during a run make exactly one more run after it. */
function oneAtATime(work: () => Promise<void>): () => Promise<void> {
  let asked = 0;
  let running: Promise<void> | undefined;
  const run = async (): Promise<void> => {
    for (let answered = 0; answered < asked;) {
      answered = asked;
      await work();
    }
    asked = 0;
    running = undefined;
  };
  return () => {
    asked += 1;
    running ??= run();
    return running;
  };
}

function debounced(work: () => Promise<void>, ms: number): () => void {
  let timer: NodeJS.Timeout | undefined;
  return () => {
    clearTimeout(timer);
    timer = setTimeout(() => void work(), ms);
  };
}

/**
 * What is watched are the folders that hold the given ones, which alone can tell that one of those was moved away,
 * put back or made; nothing else in them is looked into.
 */
async function watchSaves(paths: readonly string[], out: string, changed: () => void): Promise<FSWatcher> {
  const output = path.resolve(out);
  const watched = paths.map((file) => path.resolve(file));
  const holders = [...new Set(watched.map((file) => path.dirname(file)))];
  const concerns = (file: string): boolean =>
    holders.includes(file) || watched.some((one) => file === one || file.startsWith(one + path.sep));
  const ignored = (file: string): boolean => {
    const absolute = path.resolve(file);
    return !concerns(absolute) || isOutput(absolute, output) || path.basename(file) === 'node_modules';
  };
  const watcher = watchFiles(holders, { ignoreInitial: true, ignored });
  watcher.on('all', changed);
  await new Promise<void>((resolve) => watcher.once('ready', resolve));
  return watcher;
}

/** The output folder, what is in it, and the dotted neighbours in which a new tree is built before it moves there. */
function isOutput(file: string, output: string): boolean {
  const isNeighbour = path.dirname(file) === path.dirname(output) && path.basename(file).startsWith('.');
  return file === output || file.startsWith(output + path.sep) || isNeighbour;
}

function listener(out: string, pages: Set<ServerResponse>): RequestListener {
  return ({ url = '/', method }, response) => {
    if (method !== 'GET' && method !== 'HEAD') {
      response.setHeader('Allow', 'GET, HEAD');
      send(response, { status: 405, type: plainText, body: '405\n' });
      return;
    }
    const address = addressOf(url);
    if (address === reloadPath) {
      keepOpen(response, pages);
      return;
    }
    void answerTo(out, address).then((answer) => {
      send(response, answer ?? { status: 404, type: plainText, body: '404\n' });
    });
  };
}

interface Answer {
  readonly status: number;
  readonly type: string;
  readonly body: string | Uint8Array;
}

/** Always the whole body, whatever part is asked for; node leaves it out by itself when only the head is. */
function send(response: ServerResponse, { status, type, body }: Answer): void {
  response.writeHead(status, {
    'Content-Type': type,
    'Content-Length': Buffer.byteLength(body),
    'Cache-Control': 'no-store',
  });
  response.end(body);
}

const plainText = 'text/plain; charset=utf-8';

/** Types of what a build makes, and of what people put beside it. */
const types: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json',
  '.pdf': 'application/pdf',
  '.woff2': 'font/woff2',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.jpg': 'image/jpeg',
  '.jpeg': 'image/jpeg',
  '.webp': 'image/webp',
  '.ico': 'image/x-icon',
  '.txt': plainText,
  '.md': plainText,
};

/** The path that is asked for, decoded; empty, which names no page, when it cannot be decoded. */
function addressOf(url: string): string {
  try {
    return decodeURIComponent(url.replace(/[?#].*$/, ''));
  } catch {
    return '';
  }
}

/**
 * A file of the output folder, a page with the script that reloads it; undefined for no such file. What lies outside of
 * the folder, be it through a link, or cannot be read is no such file.
 */
async function answerTo(out: string, address: string): Promise<Answer | undefined> {
  const name = address.endsWith('/') ? `${address}index.html` : address;
  try {
    const [home, file] = await Promise.all([realpath(out), realpath(path.join(out, name))]);
    if (!file.startsWith(home + path.sep)) return undefined;
    const type = types[path.extname(name).toLowerCase()] ?? 'application/octet-stream';
    const bytes = await readFile(file);
    const isPage = name.endsWith('.html');
    return { status: 200, type, body: isPage ? withScript(bytes.toString('utf8')) : bytes };
  } catch {
    return undefined;
  }
}

function withScript(page: string): string {
  return page.replace(/<\/body>/i, (end) => reloadScript + end);
}

/** A page waits here until there is something new to see. */
function keepOpen(response: ServerResponse, pages: Set<ServerResponse>): void {
  response.writeHead(200, { 'Content-Type': 'text/event-stream', 'Cache-Control': 'no-store' });
  response.write('retry: 1000\n\n');
  pages.add(response);
  response.on('close', () => pages.delete(response));
}

/** Takes the first free port from `port` on. */
async function listen(server: Server, port: number, left: number = portsTried): Promise<Server> {
  try {
    await new Promise<void>((resolve, reject) => {
      server.once('error', reject);
      server.listen(port, '127.0.0.1', () => {
        server.off('error', reject);
        resolve();
      });
    });
    return server;
  } catch (error) {
    const taken = (error as NodeJS.ErrnoException).code === 'EADDRINUSE';
    if (!taken) throw error;
    if (left <= 1 || port >= 65_535) {
      throw new NoFreePort(`No port is free up to ${port}. Close another server, or name another port.`);
    }
    return listen(server, port + 1, left - 1);
  }
}

/** The platform's own way to open an address, without a shell in between. */
function openBrowser(url: string): void {
  const [command, ...words] = {
    darwin: ['open', url],
    win32: ['rundll32', 'url.dll,FileProtocolHandler', url],
  }[process.platform as string] ?? ['xdg-open', url];
  const opener = spawn(command!, words, { stdio: 'ignore', detached: true });
  opener.on('error', () => undefined);
  opener.unref();
}
