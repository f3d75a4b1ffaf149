import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { create } from 'fontkit';
import type { FaceName } from '../document/design.ts';
import type { FontCoverage } from './characters.ts';

const regularPath = '@expo-google-fonts/source-sans-3/400Regular/SourceSans3_400Regular.ttf';

/**
 * Reads the files of the four faces: Source Sans 3 for text and Source Serif 4 for titles, both under the SIL
 * Open Font License, whole and without variations, as the PDF renderer needs them.
 */
export async function readFontFiles(): Promise<Record<FaceName, Uint8Array>> {
  const [regular, italic, semibold, title] = await Promise.all([
    readPackageFile(regularPath),
    readPackageFile('@expo-google-fonts/source-sans-3/400Regular_Italic/SourceSans3_400Regular_Italic.ttf'),
    readPackageFile('@expo-google-fonts/source-sans-3/600SemiBold/SourceSans3_600SemiBold.ttf'),
    readPackageFile('@expo-google-fonts/source-serif-4/600SemiBold/SourceSerif4_600SemiBold.ttf'),
  ]);
  return { regular, italic, semibold, title };
}

/** What every face can show, by itself or by the regular face, which stands in for a character that another lacks. */
export async function readFontCoverage(): Promise<FontCoverage> {
  coverage ??= readPackageFile(regularPath).then((bytes) => new Set(create(bytes).characterSet));
  const characters = await coverage;
  return (codePoint) => characters.has(codePoint);
}

/** The fonts do not change while the program runs. */
let coverage: Promise<ReadonlySet<number>> | undefined;

const require = createRequire(import.meta.url);

async function readPackageFile(path: string): Promise<Uint8Array> {
  return new Uint8Array(await readFile(require.resolve(path)));
}
