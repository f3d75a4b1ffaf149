import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import Type, { type TSchema } from 'typebox';
import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import type { Design } from '../document/design.ts';
import { designName, readLayoutFiles, type LayoutFiles } from './layout-files.ts';
import { oneOf, record } from './schemas/kit.ts';
import { suggestion } from './suggest.ts';
import { validate } from './validate.ts';
import { parseYaml, type YamlFile } from './yaml-file.ts';

export interface DesignReading {
  readonly design: Design;
  readonly diagnostics: readonly Diagnostic[];
}

/**
 * The look of the sheets: `layouts/design.json` that comes with Groundsheet, with whatever the guide's own file of
 * that name changes. A guide's file may hold one colour or all of it. What is wrong with the other files of the folder
 * is told too, before anything is made with them.
 */
export async function readDesign(root: string, builtInRoot: string): Promise<DesignReading> {
  const base = JSON.parse(await readFile(join(builtInRoot, designPath), 'utf8')) as Design;
  const own = await readLayoutFiles(join(root, 'layouts'));
  if (root === builtInRoot)
    return { design: base, diagnostics: [...own.diagnostics, ...contrastFaults(base)] };
  const known = await readLayoutFiles(join(builtInRoot, 'layouts'));
  const strays = [...own.diagnostics, ...strayLayouts(own, known)];
  const text = own.texts.get(designName);
  if (text === undefined) return { design: base, diagnostics: strays };
  // JSON is a part of YAML, and the YAML reader knows the place of every value.
  const { file, diagnostics } = parseYaml(designPath, text);
  if (!file) return { design: base, diagnostics: [...strays, ...diagnostics] };
  const faults = validate(DesignSchema, file.value, file);
  if (faults.length > 0) return { design: base, diagnostics: [...strays, ...faults] };
  const design = merged(base, file.value) as Design;
  return { design, diagnostics: [...strays, ...contrastFaults(design, file)] };
}

const designPath = `layouts/${designName}`;

const size = (atMost: number) => Type.Number({ exclusiveMinimum: 0, maximum: atMost });
const colour = Type.String({ pattern: '^#[0-9a-fA-F]{6}$' });
/** An object that knows all its keys and needs none of them. */
const part = (properties: Readonly<Record<string, TSchema>>) =>
  record(Object.fromEntries(Object.entries(properties).map(([key, schema]) => [key, Type.Optional(schema)])));
const style = part({
  /** No smaller than can be read at arm's length. */
  sizePt: Type.Number({ minimum: 8, maximum: 60 }),
  leadingPt: Type.Number({ minimum: 9, maximum: 80 }),
  face: oneOf(['regular', 'italic', 'semibold', 'title']),
});
const colours = part({
  ink: colour,
  paper: colour,
  green: colour,
  clay: colour,
  tint: colour,
  shade: colour,
  rule: colour,
});
const paper = part({
  widthPt: Type.Number({ minimum: 200, maximum: 2000 }),
  heightPt: Type.Number({ minimum: 200, maximum: 2000 }),
});

/** Every key is optional: what is left out stays as it is. */
const DesignSchema = part({
  paper: part({ letter: paper, a4: paper }),
  margin: part({ bindingPt: size(200), outerPt: size(200), topPt: size(200), bottomPt: size(200) }),
  grid: part({
    columns: Type.Integer({ minimum: 2, maximum: 12 }),
    gutterPt: size(60),
    textColumns: Type.Integer({ minimum: 1, maximum: 12 }),
    baselinePt: Type.Number({ minimum: 9, maximum: 40 }),
  }),
  type: part({
    text: style,
    lead: style,
    small: style,
    heading4: style,
    heading3: style,
    heading2: style,
    title: style,
    keyNumber: style,
  }),
  line: part({
    cutPt: size(6),
    seenPt: size(6),
    thinPt: size(6),
    hiddenDashPt: Type.Array(size(20), { minItems: 2, maxItems: 2 }),
  }),
  colour: part({ light: colours, dark: colours }),
  screen: part({
    textPx: Type.Number({ minimum: 12, maximum: 40 }),
    lineHeight: Type.Number({ minimum: 1, maximum: 3 }),
    measureCh: Type.Number({ minimum: 30, maximum: 120 }),
  }),
});

function merged(base: unknown, own: unknown): unknown {
  if (!isGroup(base) || !isGroup(own)) return own;
  const keys = [...new Set([...Object.keys(base), ...Object.keys(own)])];
  return Object.fromEntries(
    keys.map((key) => [key, key in own ? (key in base ? merged(base[key], own[key]) : own[key]) : base[key]]),
  );
}

function isGroup(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** Least contrast of text with its ground: WCAG 2.1, enhanced (1.4.6). */
const leastContrast = 7;

/** Colours of text that cannot be read well on their ground. */
function contrastFaults(design: Design, file?: YamlFile): Diagnostic[] {
  return (['light', 'dark'] as const).flatMap((scheme) => {
    const { paper: ground, tint, ...texts } = design.colour[scheme];
    const pairs = [
      ...(['ink', 'green', 'clay'] as const).map((name) => ({
        name,
        on: 'paper',
        ratio: contrast(texts[name], ground),
      })),
      { name: 'ink', on: 'tint', ratio: contrast(texts.ink, tint) },
    ];
    return pairs
      .filter(({ ratio }) => ratio < leastContrast)
      .map(({ name, on, ratio }): Diagnostic => ({
        code: 'design',
        severity: 'error',
        message: `In the ${scheme} colours, ${name} on ${on} has a contrast of ${ratio.toFixed(1)} to 1; text needs ${leastContrast} to 1.`,
        hint:
          scheme === 'light'
            ? 'Make the colour darker, or its ground lighter.'
            : 'Make the colour lighter, or its ground darker.',
        place: file ? file.placeOf(`/colour/${scheme}/${name}`) : { file: designPath, line: 1, column: 1 },
      }));
  });
}

/** Contrast ratio of two colours, 1 to 21, by WCAG 2.1. */
function contrast(a: string, b: string): number {
  const [high, low] = [luminance(a), luminance(b)].sort((one, other) => other - one) as [number, number];
  return (high + 0.05) / (low + 0.05);
}

function luminance(hex: string): number {
  const channel = (at: number): number => {
    const value = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
  };
  return 0.2126 * channel(1) + 0.7152 * channel(3) + 0.0722 * channel(5);
}

/** Files in the guide's layouts that take the place of nothing: a mistyped name would be passed over in silence. */
function strayLayouts(own: LayoutFiles, builtIn: LayoutFiles): Diagnostic[] {
  const known = concerned(builtIn);
  return concerned(own)
    .filter((name) => !known.includes(name))
    .map((name) => ({
      code: 'unread-file',
      severity: 'warning',
      message: `layouts/${name} takes the place of no layout that comes with Groundsheet.`,
      hint: suggestion(name, known, 'Remove it, or name it like the layout that it changes.'),
      place: { file: `layouts/${name}`, line: 1, column: 1 },
    }));
}

function concerned({ names }: LayoutFiles): readonly string[] {
  return names.filter((name) => !name.startsWith('partials/') || name.endsWith('.njk'));
}
