/** What a climbing crop is led up: a net on stakes, for a crop whose record has the figures of its trellis. */
import { figure } from '../document/build.ts';
import { netTrellis } from '../drawings/build/details/net-trellis.ts';
import type { LengthWords } from '../drawings/dimension.ts';
import type { Crop } from '../records/schemas/crop.ts';
import type { Exhibit } from './names.ts';
import type { SheetContext } from './sheet-context.ts';

const figuresOfTrellis = ['trellis-height', 'trellis-stake-spacing', 'trellis-stake-in-ground'] as const;

/** `trellis`, where the crop has `trellis-height`, `trellis-stake-spacing` and `trellis-stake-in-ground`. */
export function trellisExhibit(context: SheetContext, crop: Crop): readonly [string, Exhibit][] {
  const {
    facts,
    printer,
    wording: { say },
  } = context;
  const found = figuresOfTrellis.map((name) => facts.findings.get(`${crop.id}.${name}`));
  const words = found.flatMap((finding) => {
    if (finding?.value.kind !== 'quantity' && finding?.value.kind !== 'range') return [];
    const { first, second } = printer.words(finding.value);
    return [second === undefined ? { first } : { first, second }];
  });
  if (words.length < figuresOfTrellis.length) return [];
  const [height, spacing, inGround] = words as [LengthWords, LengthWords, LengthWords];
  const both = ({ first, second }: LengthWords): string =>
    second === undefined ? first : `${first} (${second})`;
  const options = {
    alternative: say('trellis.alternative', {
      height: both(height),
      spacing: both(spacing),
      ground: both(inGround),
    }),
    words: { height, spacing, inGround },
  };
  return [
    [
      'trellis',
      {
        wide: true,
        blocks: () => [
          figure(netTrellis({ ...options, id: 'trellis', widthMm: 150 }), {
            caption: say('trellis.caption'),
            narrow: netTrellis({ ...options, id: 'trellis-narrow', widthMm: 84 }),
          }),
        ],
      },
    ],
  ];
}
