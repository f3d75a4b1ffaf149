/** What the page that lists every sheet says, from the sheets that were made. */
import type { IndexRegion, SiteIndex, SitePage } from './html/site-model.ts';
import type { DateFinding } from './findings/finding.ts';
import type { Guide, RegionRecord } from './records/guide.ts';
import { furniture } from './sheets/compose.ts';
import type { Wording } from './sheets/printer.ts';
import { wordingOf } from './sheets/sheet-context.ts';

export interface IndexedSheet {
  readonly region: RegionRecord;
  /** The average last and first freeze of the region. */
  readonly freeze: { readonly last: DateFinding | undefined; readonly first: DateFinding | undefined };
  readonly page: SitePage;
}

export function siteIndex(guide: Guide, sheets: readonly IndexedSheet[]): SiteIndex {
  const wording = wordingOf(guide);
  const { say } = wording;
  const { publisher } = guide;
  const regions = [...new Map(sheets.map((sheet) => [sheet.region.id, sheet])).values()];
  return {
    language: publisher.language,
    title: say('index.title'),
    description: say('index.description', { office: publisher.office }),
    office: publisher.office,
    ...(publisher.address === undefined ? {} : { address: publisher.address }),
    ...(publisher.notice === undefined ? {} : { notice: publisher.notice }),
    words: {
      skipToContent: furniture(wording).skipToContent,
      pdfFacts: (pages, bytes) => say('furniture.pdf-facts', { pages, size: fileSize(bytes, wording) }),
    },
    regions: regions.map((first) => indexRegion(first, sheets, wording)),
  };
}

function indexRegion(
  first: IndexedSheet,
  sheets: readonly IndexedSheet[],
  { say, measures, dates }: Wording,
): IndexRegion {
  const { region, freeze } = first;
  const dateOf = (finding: DateFinding | undefined): string => {
    if (!finding) return say('none.not-given');
    return finding.value.kind === 'date'
      ? dates.long(finding.value.day)
      : say(`none.${finding.value.reason}`);
  };
  return {
    id: region.id,
    name: region.name,
    line: say('index.region-line', {
      latitude: measures.latitude(region.latitude.low),
      last: dateOf(freeze.last),
      first: dateOf(freeze.first),
    }),
    sheets: sheets
      .filter((sheet) => sheet.region.id === region.id)
      .map(({ page }) => ({
        path: page.path,
        pdf: page.pdf,
        title: page.document.title,
        series: page.document.series,
        number: page.document.number,
        description: page.document.description,
      })),
  };
}

/** `84 KB`; whole kilobytes of 1,000 bytes. */
function fileSize(bytes: number, { measures }: Wording): string {
  return `${measures.number(Math.max(1, Math.round(bytes / 1000)))}\u00A0KB`;
}
