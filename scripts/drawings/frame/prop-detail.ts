/**
 * A notched prop from the side, at work: pushed into the straw of the low wall, with the end of a sash in its highest notch
 * and the cord that keeps the sash from being thrown over. Seen toward the west, as the section is.
 */
import { propSizes, type PropSizes } from '../../structures/bale-props.ts';
import type { FrameGeometry, PlacedSash } from '../../structures/geometry.ts';
import { practice } from '../../structures/practice.ts';
import { baselineFor, dimension } from '../dimension.ts';
import { circle, path, polygon, polyline, segment, text, type Point } from '../path.ts';
import type { Scene, SceneItem } from '../scene.ts';
import { callout, northArrow } from '../symbols.ts';
import { heightMm, widthMm, type StepDrawingOptions } from './stage.ts';
import { strawStrokes } from './straw.ts';

/** How wide the stick is, and how much of the sash and of the wall is seen, in millimetres of the real thing. */
const stickMm = 89;
const seen = { sashMm: 330, strawMm: 190, besideMm: 170 } as const;
/** Room above the stick and below the straw, and where the notched edge stands, in millimetres of the page. */
const margin = { top: 5, bottom: 2.5, edge: 38.5 } as const;

export function propDetail(geometry: FrameGeometry, options: StepDrawingOptions): Scene {
  const sizes = propSizes(geometry);
  const sash = geometry.sashes.find(({ opens }) => opens !== 'never');
  const items = sizes && sash ? detail(geometry, { ...options, sizes, sash }) : [];
  return { id: options.id, widthMm, heightMm, alternative: options.alternative, items };
}

interface Detail extends StepDrawingOptions {
  readonly sizes: PropSizes;
  readonly sash: PlacedSash;
}

/** `inward` is from the notched edge toward the bed, `up` from the lower end of the stick. */
type OnPage = (inward: number, up: number) => Point;

function detail({ hemisphere, slopeDeg }: FrameGeometry, stage: Detail): readonly SceneItem[] {
  const { sizes, words } = stage;
  const below = seen.strawMm - practice.prop.inStrawMm;
  const scale = (heightMm - margin.top - margin.bottom) / (sizes.lengthMm + below);
  const north = hemisphere === 'north';
  const page: OnPage = (inward, up) => {
    const x = margin.edge + inward * scale;
    return { x: north ? x : widthMm - x, y: heightMm - margin.bottom - (below + up) * scale };
  };
  return [
    ...straw(page, below),
    ...sashEnd(page, stage, slopeDeg),
    ...stick(page, sizes),
    ...cord(page, stage),
    ...sizesOnPage(page, stage, north),
    ...letters(page, stage, north),
    ...northArrow({ x: north ? widthMm - 9 : 9, y: 5 }, { x: north ? 1 : -1, y: 0 }, words.north, 7),
  ];
}

function straw(page: OnPage, belowMm: number): readonly SceneItem[] {
  const top = practice.prop.inStrawMm;
  const [out, inside] = [-stickMm - seen.besideMm, seen.besideMm * 1.5];
  const outline = [page(out, -belowMm), page(inside, -belowMm), page(inside, top), page(out, top)];
  return [
    path(polygon(outline), { fill: 'tint' }),
    path(strawStrokes(outline, 7, 1.6), { stroke: 'thin' }),
    path(segment(page(out, top), page(inside, top)), { stroke: 'cut' }),
    path(polyline([page(inside, top), page(inside, -belowMm)]), { stroke: 'seen' }),
  ];
}

/** Its lower edge on the ledge of the highest notch; the far end is left open. */
function sashEnd(page: OnPage, { sizes, sash }: Detail, slopeDeg: number): readonly SceneItem[] {
  const tilt = (Math.asin(sizes.openingMm / sash.lengthMm) * 180) / Math.PI - slopeDeg;
  const [fall, run] = [Math.sin((tilt * Math.PI) / 180), Math.cos((tilt * Math.PI) / 180)];
  const inNotch = endInNotch(sizes, sash);
  const at = (along: number, up: number): Point =>
    page(-inNotch + along * run + up * fall, ledge(sizes) - along * fall + up * run);
  const { sashMm } = seen;
  const { thicknessMm } = sash;
  const corners = [at(0, 0), at(sashMm, 0), at(sashMm, thicknessMm), at(0, thicknessMm)];
  return [
    path(polygon(corners), { fill: 'paper' }),
    path(polyline([corners[1]!, corners[0]!, corners[3]!, corners[2]!]), { stroke: 'cut' }),
    path(
      polyline([
        at(sashMm, -12),
        at(sashMm + 8, thicknessMm / 2),
        at(sashMm - 8, thicknessMm / 2),
        at(sashMm, thicknessMm + 12),
      ]),
      { stroke: 'thin' },
    ),
  ];
}

function ledge({ notchesMm }: PropSizes): number {
  return notchesMm.at(-1)!;
}

/** How far the end of a sash goes into a notch, which narrows toward its depth. */
function endInNotch({ notchDeepMm, notchHighMm }: PropSizes, { thicknessMm }: PlacedSash): number {
  return notchDeepMm * (1 - thicknessMm / notchHighMm);
}

/** A board on edge; each notch has a level ledge below and is cut slanting from above. */
function stick(
  page: OnPage,
  { lengthMm, notchesMm, notchDeepMm, notchHighMm }: PropSizes,
): readonly SceneItem[] {
  const notched = notchesMm.flatMap((mm) => [
    page(0, mm),
    page(-notchDeepMm, mm),
    page(0, Math.min(mm + notchHighMm, lengthMm)),
  ]);
  const outline = [
    page(-stickMm * 0.5, 0),
    page(0, 45),
    ...notched,
    page(0, lengthMm),
    page(-stickMm, lengthMm),
    page(-stickMm, 45),
  ];
  return [path(polygon(outline), { stroke: 'cut', fill: 'shade' })];
}

/** Round the end of the sash and down to the string of the bale. */
function cord(page: OnPage, { sizes, sash, letters: named }: Detail): readonly SceneItem[] {
  if (named.twine === undefined) return [];
  const from = cordAt(page, sizes);
  return [
    path(segment(from, stringAt(page)), { stroke: 'seen' }),
    path(segment(from, page(cordInMm, ledge(sizes) + sash.thicknessMm)), { stroke: 'seen' }),
    circle(stringAt(page), 0.8, { fill: 'ink' }),
  ];
}

/** How far from the end of the sash the cord is tied. */
const cordInMm = 45;

function cordAt(page: OnPage, sizes: PropSizes): Point {
  return page(cordInMm, ledge(sizes) - 8);
}

function stringAt(page: OnPage): Point {
  return page(cordInMm, practice.prop.inStrawMm);
}

/** The whole stick, and how far up its notches are. */
function sizesOnPage(page: OnPage, { sizes, words }: Detail, north: boolean): readonly SceneItem[] {
  const out = north ? -1 : 1;
  const [from, to] = [page(-stickMm, 0), page(-stickMm, sizes.lengthMm)];
  const x = from.x + out * 17;
  return [
    ...dimension({
      from: { x, y: from.y },
      to: { x, y: to.y },
      corners: [from, to],
      words: words.length(sizes.lengthMm),
      toward: { x: out, y: 0 },
      share: 0.5,
    }),
    ...sizes.notchesMm.flatMap((mm) => {
      const edge = page(-stickMm, mm);
      const said = words.length(mm);
      return [
        path(segment({ x: edge.x + out * 3.5, y: edge.y }, page(-sizes.notchDeepMm, mm)), { stroke: 'thin' }),
        text({ x: edge.x + out * 4.5, y: baselineFor(edge.y) }, said.first, {
          anchor: north ? 'end' : 'start',
          style: 'strong',
        }),
      ];
    }),
  ];
}

function letters(page: OnPage, { sizes, letters: named }: Detail, north: boolean): readonly SceneItem[] {
  const inward = north ? 1 : -1;
  const cordMiddle = page(cordInMm, (practice.prop.inStrawMm + ledge(sizes)) / 2);
  return [
    ...(named.props
      ? callout(page(-stickMm * 0.6, practice.prop.inStrawMm + 45), { x: -inward * 9, y: 0 }, named.props)
      : []),
    ...(named.sashes
      ? callout(page(seen.sashMm * 0.72, ledge(sizes) - 20), { x: inward * 2, y: 10 }, named.sashes)
      : []),
    ...(named.twine ? callout(cordMiddle, { x: inward * 8, y: 4 }, named.twine) : []),
    ...(named.bales
      ? callout(
          page(seen.besideMm * 0.9, practice.prop.inStrawMm - 40),
          { x: inward * 13, y: 0 },
          named.bales,
        )
      : []),
  ];
}
