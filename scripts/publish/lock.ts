import { randomUUID } from 'node:crypto';
import { link, readFile, rename, stat, unlink, writeFile } from 'node:fs/promises';
import { hostname } from 'node:os';
import { errorCode, ignoring } from './tree.ts';

/** The right to write an output folder, held by one build at a time. */
export interface Lock {
  /** False when someone removed the lock file or took it over. */
  readonly stillHeld: () => Promise<boolean>;
  readonly release: () => Promise<void>;
}

/** Who holds a lock, as the lock file says it. */
interface Holder {
  readonly pid: number;
  readonly host: string;
  /** Tells a process from a later one with the same number; empty where it cannot be known. */
  readonly mark: string;
  readonly token: string;
}

/** A lock file that cannot be read is being written, unless it is older than this. */
const unreadableIsStaleMs = 10_000;
/** How every lock file starts. */
const lockStart = '{"pid":';
/** Whether a process on another computer still runs cannot be known; no build takes this long. */
const otherHostIsStaleMs = 3_600_000;

/**
 * Takes the lock at a path, or gives undefined when a running build holds it. The lock of a build that was
 * killed is taken over.
 */
export async function takeLock(path: string): Promise<Lock | undefined> {
  const holder: Holder = {
    pid: process.pid,
    host: hostname(),
    mark: await processMark(process.pid),
    token: randomUUID(),
  };
  for (let attempt = 0; attempt < 5; attempt += 1) {
    if (await createOnce(path, JSON.stringify(holder))) return lockOf(path, holder.token);
    const found = await readFile(path, 'utf8').catch(ignoring('ENOENT'));
    if (found === undefined) continue;
    if (!(await isStale(path, found))) return undefined;
    if (!(await removeStale(path, found))) return undefined;
  }
  return undefined;
}

function lockOf(path: string, token: string): Lock {
  const stillHeld = async (): Promise<boolean> =>
    ((await readFile(path, 'utf8').catch(ignoring('ENOENT'))) ?? '').includes(token);
  return {
    stillHeld,
    release: async () => {
      if (await stillHeld()) await unlink(path).catch(ignoring('ENOENT'));
    },
  };
}

async function createOnce(path: string, text: string): Promise<boolean> {
  try {
    await writeFile(path, text, { flag: 'wx' });
    return true;
  } catch (error) {
    if (errorCode(error) === 'EEXIST') return false;
    throw error;
  }
}

async function isStale(path: string, text: string): Promise<boolean> {
  const stats = await stat(path).catch(ignoring('ENOENT'));
  const age = Date.now() - (stats?.mtimeMs ?? 0);
  const holder = readHolder(text);
  // A file of that name that no build began to write is somebody's own, and is never cleared away.
  if (!holder) return age > unreadableIsStaleMs && (text === '' || text.startsWith(lockStart));
  if (holder.host !== hostname()) return age > otherHostIsStaleMs;
  if (!isRunning(holder.pid)) return true;
  const mark = await processMark(holder.pid);
  return holder.mark !== '' && mark !== '' && holder.mark !== mark;
}

/**
 * Moves a stale lock out of the way. Two builds may find the same stale lock, and the slower one would then
 * move the lock of the faster: it sees that the text is another, puts it back and yields.
 */
export async function removeStale(path: string, stale: string): Promise<boolean> {
  const aside = `${path}.${randomUUID()}`;
  const moved = await rename(path, aside).then(() => true, ignoring('ENOENT'));
  if (!moved) return true;
  const wasStale = (await readFile(aside, 'utf8')) === stale;
  if (!wasStale) await link(aside, path).catch(ignoring('EEXIST', 'EPERM', 'ENOTSUP', 'ENOSYS'));
  await unlink(aside);
  return wasStale;
}

function readHolder(text: string): Holder | undefined {
  try {
    const value = JSON.parse(text) as Partial<Holder>;
    const { pid, host, mark, token } = value;
    if (typeof pid !== 'number' || pid <= 0 || typeof host !== 'string') return undefined;
    return { pid, host, mark: mark ?? '', token: token ?? '' };
  } catch {
    return undefined;
  }
}

function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    // A process of another user may not be signalled, but it runs.
    return errorCode(error) === 'EPERM';
  }
}

/** The boot of the computer and the start of the process within it, where the system tells (Linux). */
async function processMark(pid: number): Promise<string> {
  try {
    const [boot, status] = await Promise.all([
      readFile('/proc/sys/kernel/random/boot_id', 'utf8'),
      readFile(`/proc/${pid}/stat`, 'utf8'),
    ]);
    // The name of the program stands in brackets and may hold spaces; the start is the 20th field after it.
    const fields = status.slice(status.lastIndexOf(')') + 2).split(' ');
    return `${boot.trim()}/${fields[19] ?? ''}`;
  } catch {
    return '';
  }
}
