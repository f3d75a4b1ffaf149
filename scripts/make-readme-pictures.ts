/**
 * Makes the pictures of the README from the PDFs in dist/: a page of each kind of sheet, small and in few colours.
 * Needs pdftoppm of poppler-utils. Run it when a sheet has changed its looks: `npm run pictures`.
 */
import { execFileSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import sharp from 'sharp';

const root = fileURLToPath(new URL('..', import.meta.url));

/** Which page of which sheet stands for its kind. */
const pictures = [
  { name: 'climate-sheet', pdf: 'larkwether/climate.pdf', page: 2 },
  { name: 'planting-chart', pdf: 'larkwether/planting-chart.pdf', page: 2 },
  { name: 'build-card', pdf: 'hollowmarl/straw-bale-cold-frame.pdf', page: 3 },
  { name: 'fact-sheet', pdf: 'hollowmarl/onions.pdf', page: 2 },
];

for (const { name, pdf, page } of pictures) {
  const png = execFileSync(
    'pdftoppm',
    ['-r', '110', '-f', `${page}`, '-l', `${page}`, '-png', `${root}dist/en/${pdf}`],
    { maxBuffer: 50_000_000 },
  );
  await sharp(png)
    .resize({ width: 640 })
    .extend({ top: 1, bottom: 1, left: 1, right: 1, background: '#b9bdb0' })
    .png({ palette: true, colours: 24, compressionLevel: 9 })
    .toFile(`${root}content/pictures/${name}.png`);
}
