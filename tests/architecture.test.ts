/** The rules of the map, held by reading every import: folders import down the list only, and computation is pure. */
import { readFileSync, readdirSync } from 'node:fs';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';

const scripts = fileURLToPath(new URL('../scripts', import.meta.url));

/** What each folder may import, and why the line is drawn there. */
const mayImport: Readonly<Record<string, readonly string[]>> = {
  quantities: [],
  diagnostics: [],
  findings: ['quantities'],
  prose: ['diagnostics'],
  /** A build is drawn from its geometry. */
  drawings: ['findings', 'structures'],
  document: ['drawings', 'diagnostics'],
  /** Types of the parts that a record feeds, never their computation. */
  records: ['quantities', 'diagnostics', 'findings', 'prose', 'climate', 'document', 'safety'],
  climate: ['quantities', 'findings', 'records'],
  agronomy: ['quantities', 'findings', 'records', 'climate'],
  structures: ['quantities', 'findings', 'records', 'climate'],
  safety: ['records'],
  wording: ['quantities', 'findings'],
  sheets: [
    'quantities',
    'diagnostics',
    'findings',
    'prose',
    'records',
    'climate',
    'agronomy',
    'structures',
    'safety',
    'wording',
    'document',
    'drawings',
  ],
  html: ['diagnostics', 'document', 'drawings'],
  pdf: ['diagnostics', 'document', 'drawings'],
  publish: ['diagnostics'],
};

const reasons: Readonly<Record<string, string>> = {
  html: 'a renderer knows no crop: it is given a document',
  pdf: 'a renderer knows no crop: it is given a document',
  climate: 'computation knows no words and no pages',
  agronomy: 'computation knows no words and no pages',
  structures: 'computation knows no words and no pages',
  publish: 'publishing knows bytes only',
};

const files = walk(scripts);

describe('imports run down the map', () => {
  for (const [folder, allowed] of Object.entries(mayImport)) {
    test(folder, () => {
      const wrong = files
        .filter((file) => file.startsWith(`${folder}/`))
        .flatMap((file) => importsOf(file).map((target) => ({ file, target })))
        .filter(({ target }) => target.includes('/') && !target.startsWith(`${folder}/`))
        .filter(({ target }) => !allowed.includes(target.split('/')[0]!));
      expect(wrong, reasons[folder] ?? 'see the map in DEVELOPERS.md').toEqual([]);
    });
  }
});

test('records take values from computation for its types only', () => {
  const wrong = files
    .filter((file) => file.startsWith('records/'))
    .flatMap((file) => valueImportsOf(file).map((target) => ({ file, target })))
    .filter(({ target }) => /^(agronomy|structures|document|html|pdf|sheets)\//.test(target));
  expect(wrong).toEqual([]);
});

test('only the edges touch files, the network, the clock or chance', () => {
  const edges =
    /^(records|publish)\/|^(groundsheet|serve|make-[a-z-]+|check-pdf|bench-pdf(-worker)?)\.ts$|^html\/site\.ts$/;
  const wrong = files
    .filter((file) => !edges.test(file))
    .filter((file) =>
      /from '(node:)?(fs|http|https|net|child_process|os)(\/promises)?'|Date\.now\(|new Date\(\)|Math\.random\(|\bfetch\(/.test(
        read(file),
      ),
    );
  expect(wrong, 'same records in, same bytes out: pass the value in').toEqual([]);
});

test('only one module knows pdfkit, so that the writer can be exchanged', () => {
  expect(files.filter((file) => /from 'pdfkit/.test(read(file)))).toEqual(['pdf/writer.ts']);
});

function walk(folder: string): string[] {
  return readdirSync(folder, { withFileTypes: true })
    .flatMap((entry) =>
      entry.isDirectory() ? walk(join(folder, entry.name)) : [relative(scripts, join(folder, entry.name))],
    )
    .filter((file) => file.endsWith('.ts'))
    .map((file) => file.split('\\').join('/'))
    .sort();
}

function read(file: string): string {
  return readFileSync(join(scripts, file), 'utf8');
}

function importsOf(file: string): string[] {
  return [...read(file).matchAll(/from '(\.{1,2}\/[^']+)'/g)].map((match) => resolved(file, match[1]!));
}

function valueImportsOf(file: string): string[] {
  return [...read(file).matchAll(/import (?!type )([^;]*?) from '(\.{1,2}\/[^']+)'/g)].map((match) =>
    resolved(file, match[2]!),
  );
}

function resolved(file: string, target: string): string {
  return relative(scripts, join(scripts, file, '..', target))
    .split('\\')
    .join('/');
}
