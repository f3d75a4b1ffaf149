/**
 * A build in a process of its own that kills itself, without any chance to clean up, at a named point.
 * Usage: node --import tsx killed-build.ts <guide> <checkpoint>
 */
import { publish } from '../../scripts/publish/publish.ts';
import { options, secondBuild } from './scenario.ts';

const [guide, point] = process.argv.slice(2);
await publish({
  ...options(guide!, secondBuild),
  checkpoint: (name) => {
    if (name === point) process.kill(process.pid, 'SIGKILL');
    // A signal to oneself may take a moment; nothing more is done until it comes.
    return name === point ? new Promise(() => setInterval(() => undefined, 1000)) : undefined;
  },
});
