import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import type { FaceName } from '../document/design.ts';

/**
 * Reads the files of the four faces: Source Sans 3 for text and Source Serif 4 for titles, both under the SIL
 * Open Font License, whole and without variations, as the PDF renderer needs them.
 */
export async function readFontFiles(): Promise<Record<FaceName, Uint8Array>> {
  const [regular, italic, semibold, title] = await Promise.all([
    readPackageFile('@expo-google-fonts/source-sans-3/400Regular/SourceSans3_400Regular.ttf'),
    readPackageFile('@expo-google-fonts/source-sans-3/400Regular_Italic/SourceSans3_400Regular_Italic.ttf'),
    readPackageFile('@expo-google-fonts/source-sans-3/600SemiBold/SourceSans3_600SemiBold.ttf'),
    readPackageFile('@expo-google-fonts/source-serif-4/600SemiBold/SourceSerif4_600SemiBold.ttf'),
  ]);
  return { regular, italic, semibold, title };
}

const require = createRequire(import.meta.url);

async function readPackageFile(path: string): Promise<Uint8Array> {
  return new Uint8Array(await readFile(require.resolve(path)));
}
