/** The command line: build, check and serve a guide folder. */
import { resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Command, InvalidArgumentError } from 'commander';
import { coverageLine, coverageOfGuide, coverageText } from './coverage-words.ts';
import { formatReport, hasErrors, type Diagnostic } from './diagnostics/diagnostic.ts';
import { explain } from './explain.ts';
import { build, check, type BuildOptions } from './pipeline.ts';
import { NoFreePort, serve } from './serve.ts';

/** The folder in which the user typed the command; npm itself moves to the folder of package.json. */
const callerFolder = resolve(process.env['INIT_CWD'] ?? '');

const builtInRoot = fileURLToPath(new URL('..', import.meta.url)).replace(/[\\/]$/, '');

// The page maker reads settings from the folder it runs in, so that is never one of the user's.
process.chdir(builtInRoot);

/** Seconds since 1970; later years have more digits than the dates of the records. */
const endOfYear9999 = 253_402_300_799;

interface CommonFlags {
  readonly root: string;
  readonly region?: string;
  readonly sheet?: string;
}

const program = new Command('groundsheet')
  .description('Printable garden guides, right for each region, from a folder of records.')
  .showHelpAfterError('With npm, flags stand behind two hyphens: npm run build -- --root my-guides');

const common = (name: string, description: string): Command =>
  program
    .command(name)
    .description(description)
    .option('--root <folder>', 'the guide folder, with content/ and crops/ in it', builtInRoot)
    .option('--region <id>', 'only this region')
    .option('--sheet <id>', 'only this sheet');

common('build', 'check the records and make every sheet as a page and a PDF')
  .option('--out <folder>', 'the output folder (default: dist/ in the guide folder)')
  .action(async (flags: CommonFlags & { out?: string }) => {
    process.exitCode = (await buildAndReport(buildOptions(flags))) ? 0 : 1;
  });

common('check', 'check the records only; nothing is made')
  .option('--coverage', 'tell which hazard of each project led to which caution at which step')
  .action(async (flags: CommonFlags & { coverage?: true }) => {
    const { sheets, guide, diagnostics } = await check(buildOptions(flags));
    report(diagnostics, flags.root);
    if (hasErrors(diagnostics)) {
      process.exitCode = 1;
      return;
    }
    const coverage = coverageOfGuide(guide);
    process.stdout.write(`No faults: ${counted(sheets.length, 'sheet')} can be made.\n`);
    process.stdout.write(flags.coverage ? coverageText(coverage) : coverageLine(coverage));
  });

program
  .command('explain')
  .description('tell how every number of one sheet was worked out, and where it comes from')
  .argument('<region>', 'the region, such as larkwether')
  .argument('<sheet>', 'the sheet, such as planting-chart')
  .option('--root <folder>', 'the guide folder, with content/ and crops/ in it', builtInRoot)
  .action(async (region: string, sheet: string, flags: { root: string }) => {
    const { sheets, diagnostics } = await check(buildOptions({ ...flags, region, sheet }));
    report(diagnostics, flags.root);
    const found = sheets.find((made) => made.region.id === region && made.sheet.id === sheet);
    if (hasErrors(diagnostics) || !found) process.exitCode = 1;
    else process.stdout.write(explain(found));
  });

common('serve', 'make the sheets, open them in the browser, and make them again on every save')
  .option('--out <folder>', 'the output folder (default: dist/ in the guide folder)')
  .option('--port <number>', 'the first port to try', portNumber, 4870)
  .option('--no-open', 'do not open the browser')
  .action(async (flags: CommonFlags & { out?: string; port: number; open: boolean }) => {
    const options = buildOptions(flags);
    await serve({
      out: options.out,
      watch: ['content', 'crops', 'layouts'].map((folder) => resolve(options.root, folder)),
      build: () => buildAndReport(options),
      port: flags.port,
      say: (line) => process.stdout.write(`${line}\n`),
      open: flags.open,
    });
  });

await program.parseAsync().catch(tell);

/** Tells in a sentence what the user or the system is the cause of; anything else is a mistake of the program. */
function tell(error: unknown): void {
  if (error instanceof InvalidArgumentError || error instanceof NoFreePort)
    program.error(`error: ${error.message}`);
  if (error instanceof Error && 'syscall' in error)
    program.error(`error: The operating system does not allow it: ${error.message}`);
  throw error;
}

function buildOptions(flags: CommonFlags & { out?: string }): BuildOptions {
  const root = resolve(callerFolder, flags.root);
  return {
    root,
    builtInRoot,
    out: resolve(callerFolder, flags.out ?? resolve(root, 'dist')),
    region: flags.region,
    sheet: flags.sheet,
    issued: issueDate(process.env['SOURCE_DATE_EPOCH']),
  };
}

/** SOURCE_DATE_EPOCH (seconds since 1970) as a date; undefined when it is not set. */
function issueDate(epoch: string | undefined): string | undefined {
  if (epoch === undefined || epoch === '') return undefined;
  if (!/^\d{1,12}$/.test(epoch) || Number(epoch) > endOfYear9999)
    throw new InvalidArgumentError('SOURCE_DATE_EPOCH is not a whole number of seconds up to the year 9999.');
  return new Date(Number(epoch) * 1000).toISOString().slice(0, 10);
}

/** Every fault, under the folder that the file names are in. */
function report(diagnostics: readonly Diagnostic[], root: string): void {
  if (diagnostics.length > 0)
    process.stderr.write(`In ${resolve(callerFolder, root)}:\n${formatReport(diagnostics)}`);
}

function portNumber(text: string): number {
  const port = Number(text);
  if (!Number.isInteger(port) || port < 0 || port > 65535)
    throw new InvalidArgumentError('A port is a whole number up to 65535.');
  return port;
}

async function buildAndReport(options: BuildOptions): Promise<boolean> {
  const started = performance.now();
  const { made, diagnostics } = await build({ ...options, progress: progressLine() });
  report(diagnostics, options.root);
  if (!made) {
    process.stderr.write('Nothing was written; the last good guides are as they were.\n');
    return false;
  }
  const seconds = ((performance.now() - started) / 1000).toFixed(1);
  process.stdout.write(
    `Made ${counted(made.sheets, 'sheet')} for ${counted(made.regions, 'region')}, ${counted(made.pages, 'printed page')}, in ${seconds} seconds.\n` +
      `Open ${resolve(options.out, 'index.html')}\n`,
  );
  return true;
}

function counted(number: number, word: string): string {
  return `${number} ${word}${number === 1 ? '' : 's'}`;
}

/** One line that is written over on a terminal; a line each elsewhere. */
function progressLine(): (line: string) => void {
  const { stdout } = process;
  if (!stdout.isTTY) return (line) => void stdout.write(`${line}\n`);
  return (line) => {
    stdout.write(`\r\u001B[K${line.slice(0, stdout.columns - 1)}`);
    if (line === 'Publishing') stdout.write('\r\u001B[K');
  };
}
