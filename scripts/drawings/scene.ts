/**
 * A scene is one drawing as plain data, in millimetres of the printed page, origin at the top left, y down.
 * Geometry is worked out once, here; the SVG emitter and the PDF emitter loop over the same items in order.
 * Hatching is made of lines in the scene, never of a fill pattern that each output would draw its own way.
 */
export type PathCommand =
  | readonly ['M', number, number]
  | readonly ['L', number, number]
  | readonly ['C', number, number, number, number, number, number]
  | readonly ['Z'];

/**
 * Line weights have a meaning, as in any technical drawing: `cut` is what a section cuts or what a step adds,
 * `seen` is what stands there, `thin` is dimension lines, hatching and what lies beyond. `hidden` is thin, dashed.
 */
export type Stroke = 'cut' | 'seen' | 'thin' | 'hidden';

/** `paper` covers what lies behind; `tint` and `shade` are the two flat tints; `ink` is solid. */
export type Fill = 'paper' | 'tint' | 'shade' | 'ink';

/** Colour only ever repeats what shape and words say already. Default ink. */
export type Hue = 'ink' | 'green' | 'clay';

export type SceneItem =
  | {
      readonly kind: 'path';
      readonly commands: readonly PathCommand[];
      readonly stroke?: Stroke;
      readonly fill?: Fill;
      readonly hue?: Hue;
    }
  | {
      readonly kind: 'circle';
      readonly x: number;
      readonly y: number;
      readonly radius: number;
      readonly stroke?: Stroke;
      readonly fill?: Fill;
      readonly hue?: Hue;
    }
  | {
      readonly kind: 'text';
      /** Anchor point on the alphabetic baseline. */
      readonly x: number;
      readonly y: number;
      readonly text: string;
      readonly anchor: 'start' | 'middle' | 'end';
      /** `label` is the small text size, `strong` the same in semibold, `large` the size of running text in semibold. */
      readonly style: 'label' | 'strong' | 'large';
      readonly hue?: Hue;
    };

export interface Scene {
  /** Lower-case words and hyphens, unique in its sheet. */
  readonly id: string;
  readonly widthMm: number;
  readonly heightMm: number;
  /** What the drawing tells, for someone who does not see it. Never empty, never "image of". */
  readonly alternative: string;
  readonly items: readonly SceneItem[];
}

/** Millimetres to points of 1/72 inch. */
export const pointsPerMm = 72 / 25.4;
