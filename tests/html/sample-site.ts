/** A small site around the showcase, from an invented publisher. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import type { Design } from '../../scripts/document/design.ts';
import type { PdfFile, SiteIndex, SiteOptions, SitePage } from '../../scripts/html/site-model.ts';
import { makeDocument, showcase } from '../document/showcase.ts';

export const layoutsFolder = path.resolve(import.meta.dirname, '../../layouts');

export const design = JSON.parse(readFileSync(path.join(layoutsFolder, 'design.json'), 'utf8')) as Design;

export const showcasePath = 'en/example-county/showcase.html';

const pdf: PdfFile = { path: 'en/example-county/showcase.pdf', pages: 3, bytes: 184_320 };

export const showcasePage: SitePage = {
  path: showcasePath,
  pdf,
  region: 'Example County',
  document: showcase,
};

const index: SiteIndex = {
  language: 'en',
  title: 'Garden guides',
  description: 'Planting dates, crop facts and build plans for two invented counties.',
  office: 'Example County Office',
  address: 'guides.example.org',
  notice: 'Demonstration data: these counties and their figures are invented.',
  words: {
    skipToContent: 'Skip to content',
    pdfFacts: (pages, bytes) => `PDF, ${pages} pages, ${Math.round(bytes / 1024)} KB`,
  },
  regions: [
    {
      id: 'example-county',
      name: 'Example County',
      line: '45.2° N. Last freeze April 29, first freeze September 28, in half of the years.',
      sheets: [
        {
          path: showcasePath,
          pdf,
          title: 'Every part of a sheet',
          series: 'Fact sheet',
          number: 'MX-000',
          description: 'A sheet that holds every kind of block.',
        },
        {
          path: 'en/example-county/planting-chart.html',
          pdf: { path: 'en/example-county/planting-chart.pdf', pages: 2, bytes: 92_160 },
          title: 'Planting chart for Example County',
          series: 'Planting chart',
          number: 'MX-001',
          description: 'When to start, sow and set out every crop.',
        },
      ],
    },
    { id: 'warm-county', name: 'Warm County', line: '31.0° N. No freeze in half of the years.', sheets: [] },
  ],
};

/** Words that a template could take for its own, or a browser for markup. */
export const awkwardPage: SitePage = {
  ...showcasePage,
  path: 'en/example-county/awkward.html',
  document: makeDocument([], { title: 'Peas & <beans> {{ sheet.title }} {% if %}' }),
};

export function siteOptions(changes: Partial<SiteOptions> = {}): SiteOptions {
  return {
    documents: [showcasePage],
    index,
    design,
    layoutsFolder: path.join(layoutsFolder, 'none-of-its-own'),
    fallbackLayoutsFolder: layoutsFolder,
    ...changes,
  };
}
