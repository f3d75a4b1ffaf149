/**
 * Checks PDFs against PDF/UA-1 (ISO 14289-1) with veraPDF, the validator of the PDF industry: `npm run check:pdf`, or
 * with a folder, `npm run check:pdf -- ../my-guides/dist`. It needs Java and the validator's jar; where one is
 * missing it says how to get it.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync } from 'node:fs';
import { homedir } from 'node:os';
import { join, resolve } from 'node:path';

const artifact = 'org.verapdf.apps:greenfield-apps:1.28.2';
const home = join(homedir(), '.cache', 'groundsheet');
const jar = process.env['VERAPDF_JAR'] ?? join(home, 'greenfield-apps-1.28.2.jar');
const folder = resolve(process.env['INIT_CWD'] ?? process.cwd(), process.argv[2] ?? 'dist');

process.exitCode = run();

function run(): number {
  if (spawnSync('java', ['-version']).status !== 0) {
    return refuse('Java is not installed. Get version 11 or later, for example from adoptium.net.');
  }
  if (!existsSync(jar)) {
    return refuse(
      `The validator is not at ${jar}. Fetch it with Maven:\n` +
        `  mvn dependency:copy -Dartifact=${artifact} -DoutputDirectory=${home}\n` +
        'or name another copy in the environment variable VERAPDF_JAR.',
    );
  }
  const pdfs = existsSync(folder) ? pdfsIn(folder) : [];
  if (pdfs.length === 0) return refuse(`There is no PDF in ${folder}. Make the guides first: npm run build.`);
  const lines = verdicts(pdfs);
  const failed = lines.filter((line) => !line.startsWith('PASS'));
  for (const line of failed) process.stdout.write(`${line}\n`);
  process.stdout.write(`${lines.length - failed.length} of ${pdfs.length} PDFs conform to PDF/UA-1.\n`);
  return failed.length === 0 && lines.length === pdfs.length ? 0 : 1;
}

/** One line a file, `PASS path` or `FAIL path`, with the broken rules below it. */
function verdicts(pdfs: readonly string[]): string[] {
  const options = [
    '-cp',
    jar,
    'org.verapdf.apps.GreenfieldCliWrapper',
    '--flavour',
    'ua1',
    '--format',
    'text',
    '-v',
  ];
  const { stdout } = spawnSync('java', [...options, ...pdfs], { encoding: 'utf8', maxBuffer: 50_000_000 });
  return stdout
    .split(/\n(?=PASS|FAIL)/)
    .map((entry) => entry.trim())
    .filter((entry) => /^(PASS|FAIL)/.test(entry));
}

function pdfsIn(at: string): string[] {
  return readdirSync(at, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.pdf'))
    .map((name) => join(at, name))
    .sort();
}

function refuse(why: string): number {
  process.stderr.write(`${why}\n`);
  return 2;
}
