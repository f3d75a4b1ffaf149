/**
 * Checks PDFs against PDF/UA-1 (ISO 14289-1, for every reader) and PDF/A-2a (ISO 19005-2, for keeping) with veraPDF, the
 * validator of the PDF industry: `npm run check:pdf`, or with a folder, `npm run check:pdf -- ../my-guides/dist`. It
 * needs Java and the validator's jar; where one is missing it says how to get it.
 */
import { spawn, spawnSync } from 'node:child_process';
import { existsSync, readdirSync } from 'node:fs';
import { homedir } from 'node:os';
import { join, resolve } from 'node:path';

const artifact = 'org.verapdf.apps:greenfield-apps:1.28.2';
const home = join(homedir(), '.cache', 'groundsheet');
const jar = process.env['VERAPDF_JAR'] ?? join(home, 'greenfield-apps-1.28.2.jar');
const folder = resolve(process.env['INIT_CWD'] ?? process.cwd(), process.argv[2] ?? 'dist');

/** The standards that every sheet claims, by the names the validator has for them. */
const standards = [
  { flavour: 'ua1', name: 'PDF/UA-1' },
  { flavour: '2a', name: 'PDF/A-2a' },
] as const;

process.exitCode = await run();

async function run(): Promise<number> {
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
  // Starting Java takes as long as checking a sheet, so each standard has one start and both run at once.
  const reports = await Promise.all(standards.map((standard) => checked(pdfs, standard)));
  for (const { text } of reports) process.stdout.write(text);
  return reports.every(({ passed }) => passed) ? 0 : 1;
}

/** What to print of one standard: each file that breaks it with the rules it breaks, then a line that counts. */
async function checked(
  pdfs: readonly string[],
  { flavour, name }: (typeof standards)[number],
): Promise<{ readonly text: string; readonly passed: boolean }> {
  const verdicts = verdictsIn(await validatorOutput(pdfs, flavour));
  const failed = verdicts.filter((verdict) => !verdict.startsWith('PASS'));
  const passed = verdicts.length - failed.length;
  const lines = [...failed, `${passed} of ${pdfs.length} PDFs conform to ${name}.`];
  // A file that the validator says nothing of has not passed.
  return { text: lines.map((line) => `${line}\n`).join(''), passed: passed === pdfs.length };
}

function validatorOutput(pdfs: readonly string[], flavour: string): Promise<string> {
  const main = ['-cp', jar, 'org.verapdf.apps.GreenfieldCliWrapper'];
  const options = ['--flavour', flavour, '--format', 'text', '-v'];
  return new Promise((fulfil, reject) => {
    const validator = spawn('java', [...main, ...options, ...pdfs], { stdio: ['ignore', 'pipe', 'inherit'] });
    let output = '';
    validator.stdout.setEncoding('utf8').on('data', (chunk: string) => (output += chunk));
    validator.on('error', reject);
    validator.on('close', () => {
      fulfil(output);
    });
  });
}

/** One entry a file, `PASS path` or `FAIL path`, with the broken rules below it. */
function verdictsIn(output: string): string[] {
  return output
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
