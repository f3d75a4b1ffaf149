/**
 * The freeze dates alone, without crops: one band over the year where there is room, and a panel for each season, one
 * over the other, in a narrow column.
 */
import type { DayNumber } from '../../findings/finding.ts';
import { text } from '../path.ts';
import type { Scene, SceneItem } from '../scene.ts';
import {
  dayScale,
  daysInYear,
  modulo,
  monthEnd,
  monthStart,
  type DayScale,
  type DayWindow,
} from './day-scale.ts';
import { freezeRisk } from './freeze-risk.ts';
import type { FreezeDate, FreezeDates } from './freeze-rows.ts';
import { innerMonthEdges, monthAxis, monthAxisMm, monthRules } from './month-axis.ts';
import { level, lines } from './shapes.ts';
import { estimateTextWidthMm, lineMm, wrapText } from './text-width.ts';

/** `from` and `to` are the days of the year-long band, as in the planting chart. */
export interface FreezeBandOptions extends DayWindow, FreezeDates {
  readonly id: string;
  /** From 100 mm the year is one band; from 45 mm each season has a panel. */
  readonly widthMm: number;
  /** Twelve names, January first. */
  readonly monthLabels: readonly string[];
  readonly lastHeading: string;
  readonly firstHeading: string;
  readonly alternative: string;
}

export function freezeBand(options: FreezeBandOptions): Scene {
  const { id, widthMm, alternative, last, first } = options;
  const inSeasons = widthMm < 100 && last.length + first.length > 0;
  const { items, footMm } = inSeasons ? seasonPanels(options) : yearPanel(options);
  return { id, widthMm, heightMm: footMm + edgeMm, alternative, items };
}

interface Part {
  readonly items: readonly SceneItem[];
  readonly footMm: number;
}

/** The headings at the two ends, the season that comes first in the window at the left. */
function yearPanel(options: FreezeBandOptions): Part {
  const { from, to, widthMm, last, first, lastHeading, firstHeading } = options;
  const scale = dayScale({ from, to, leftMm: edgeMm, widthMm: widthMm - 2 * edgeMm });
  const inOrder = meanPlace(last, scale) <= meanPlace(first, scale);
  const [left, right] = [last.length > 0 ? lastHeading : '', first.length > 0 ? firstHeading : ''];
  const [start, end] = inOrder ? [left, right] : [right, left];
  const oneLine = estimateTextWidthMm(start, 'strong') + estimateTextWidthMm(end, 'strong') + 5 <= widthMm;
  const headings: SceneItem[] = [];
  if (start !== '')
    headings.push(text({ x: edgeMm, y: headingDropMm }, start, { style: 'strong', hue: 'clay' }));
  const endLine = oneLine || start === '' ? 0 : 1;
  if (end !== '') {
    const place = { x: widthMm - edgeMm, y: headingDropMm + endLine * lineMm };
    headings.push(text(place, end, { anchor: 'end', style: 'strong', hue: 'clay' }));
  }
  const topMm = headings.length === 0 ? 0 : (endLine + 1) * lineMm + 0.8;
  const band = drawBand(options, options, scale, topMm);
  return { items: [...headings, ...band.items], footMm: band.footMm };
}

/** Where the dates lie in the window, as a share of a year; the middle when there are none. */
function meanPlace(dates: readonly FreezeDate[], { from }: DayWindow): number {
  if (dates.length === 0) return 0.5;
  const places = dates.map(({ day }) => modulo(day - from, daysInYear) / daysInYear);
  return places.reduce((sum, place) => sum + place, 0) / places.length;
}

function seasonPanels(options: FreezeBandOptions): Part {
  const { last, first, lastHeading, firstHeading } = options;
  const seasons = [
    { heading: lastHeading, dates: { last, first: [] }, window: seasonWindow(options, last, 'last') },
    { heading: firstHeading, dates: { last: [], first }, window: seasonWindow(options, first, 'first') },
  ].filter(({ dates }) => dates.last.length + dates.first.length > 0);
  const items: SceneItem[] = [];
  let footMm = 0;
  for (const { heading, dates, window } of seasons) {
    const topMm = footMm === 0 ? 0 : footMm + 4;
    const panel = seasonPanel(options, heading, dates, window, topMm);
    items.push(...panel.items);
    footMm = panel.footMm;
  }
  return { items, footMm };
}

function seasonPanel(
  options: FreezeBandOptions,
  heading: string,
  dates: FreezeDates,
  window: DayWindow,
  topMm: number,
): Part {
  const { widthMm } = options;
  const words = wrapText(heading, 'strong', widthMm);
  const headings = words.map((part, index) =>
    text({ x: edgeMm, y: topMm + headingDropMm + index * lineMm }, part, { style: 'strong', hue: 'clay' }),
  );
  const scale = dayScale({ ...window, leftMm: edgeMm, widthMm: widthMm - 2 * edgeMm });
  const band = drawBand(options, dates, scale, topMm + words.length * lineMm + 0.8);
  return { items: [...headings, ...band.items], footMm: band.footMm };
}

function drawBand(
  { monthLabels }: FreezeBandOptions,
  dates: FreezeDates,
  scale: DayScale,
  topMm: number,
): Part {
  const bandTop = topMm + monthAxisMm;
  const { items, heightMm } = freezeRisk({ dates, scale, topMm: bandTop });
  const footMm = bandTop + heightMm;
  return {
    items: [
      ...monthAxis({ scale, monthLabels, topMm, names: 'above' }),
      ...monthRules(innerMonthEdges(scale), bandTop, footMm),
      ...items,
      ...lines([level(footMm, scale.leftMm, scale.leftMm + scale.widthMm)], 'thin'),
    ],
    footMm,
  };
}

/**
 * Whole months around the dates of a season, with enough of the shaded side to write the dates on it, and not much more
 * than half a year for that. Dates that lie all over the year get the whole of it.
 */
function seasonWindow(
  { from, to, widthMm }: FreezeBandOptions,
  dates: readonly FreezeDate[],
  season: 'last' | 'first',
): DayWindow {
  const days = inOneSeason(dates.map(({ day }) => Math.round(day)));
  const earliest = Math.min(...days);
  const latest = Math.max(...days);
  let window = { from: monthStart(earliest - 12), to: monthEnd(latest + 12) };
  const labelMm = Math.max(...dates.map(({ label }) => estimateTextWidthMm(label, 'label'))) + 2;
  const isShort = ({ from, to }: DayWindow): boolean => {
    const shadedDays = season === 'last' ? earliest - from : to + 1 - latest;
    return to - from < 75 || (shadedDays / (to - from + 1)) * (widthMm - 2 * edgeMm) < labelMm;
  };
  while (dates.length > 0 && isShort(window) && window.to - window.from < 150) {
    window =
      season === 'last'
        ? { ...window, from: monthStart(window.from - 1) }
        : { ...window, to: monthEnd(window.to + 1) };
  }
  return window.to - window.from < daysInYear ? window : { from, to };
}

/** Days counted from the same year, so that December 31 and January 10 are ten days apart. */
function inOneSeason(days: readonly DayNumber[]): readonly DayNumber[] {
  const [reference = 1] = days;
  const halfYear = 182;
  return days.map((day) => reference - halfYear + modulo(day - reference + halfYear, daysInYear));
}

/** Keeps half a heavy line inside the scene. */
const edgeMm = 0.4;

/** Baseline of the first heading line under the top of its panel. */
const headingDropMm = 3.2;
