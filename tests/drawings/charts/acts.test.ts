import { describe, expect, it } from 'vitest';
import { actBar, plantingActs } from '../../../scripts/drawings/charts/acts.ts';
import type { SceneItem } from '../../../scripts/drawings/scene.ts';
import { boxOf } from './scene-reading.ts';

/** What is left of a bar in black and white: strokes, dots and solid fills, without hue and tint. */
function inBlackAndWhite(items: readonly SceneItem[]): string {
  return JSON.stringify(
    items
      .filter((item) => item.kind !== 'text' && (item.stroke !== undefined || item.fill === 'ink'))
      .map((item) => ({
        ...item,
        hue: undefined,
        fill: item.kind !== 'text' && item.fill === 'ink' ? 'ink' : undefined,
      })),
  );
}

const bar = { x: 10, y: 20, width: 12, height: 4 } as const;

describe('bars of the four acts', () => {
  it.each([
    ['a bar of full height', 4],
    ['one of two lanes', 2.45],
  ])('differ in pattern without any colour: %s', (_, height) => {
    const signatures = plantingActs.map((act) => inBlackAndWhite(actBar({ ...bar, height, act })));
    expect(new Set(signatures).size).toBe(4);
    for (const signature of signatures) expect(signature).not.toBe('[]');
  });

  it('differ in edge: none, fine, ordinary and heavy', () => {
    const weights = plantingActs.map((act) => {
      const outlines = actBar({ ...bar, act }).filter(
        (item) => item.kind === 'path' && item.stroke !== undefined && touchesTop(item),
      );
      return outlines.map((item) => (item.kind === 'path' ? item.stroke : '')).at(-1) ?? 'none';
    });
    expect(new Set(weights).size).toBeGreaterThanOrEqual(3);
    expect(weights[plantingActs.indexOf('set-out')]).toBe('cut');
  });

  it.each(plantingActs)('%s: the first item is the bar itself, from day to day', (act) => {
    expect(boxOf(actBar({ ...bar, act })[0]!)).toEqual({ left: 10, right: 22, top: 20, bottom: 24 });
  });

  it.each(plantingActs)('%s: the pattern stays in the bar, in bars of any width', (act) => {
    for (const width of [0.4, 1, 2.3, 7, 40]) {
      for (const item of actBar({ ...bar, width, act }).slice(1)) {
        const { left, right, top, bottom } = boxOf(item);
        expect(left).toBeGreaterThan(10 - 0.26);
        expect(right).toBeLessThan(10 + width + 0.26);
        expect(top).toBeGreaterThan(20 - 0.26);
        expect(bottom).toBeLessThan(24 + 0.26);
      }
    }
  });

  it.each(['start-indoors', 'set-out', 'harvest'] as const)('%s: an open end has no edge', (act) => {
    const uprightsAt = (x: number, open: { openStart?: boolean; openEnd?: boolean }): number =>
      actBar({ ...bar, act, ...open })
        .filter((item) => item.kind === 'path' && item.stroke !== undefined)
        .flatMap((item) => (item.kind === 'path' ? segments(item.commands) : []))
        .filter(([ax, ay, bx, by]) => ax === x && bx === x && Math.abs(ay - by) === 4).length;
    expect(uprightsAt(10, {})).toBe(1);
    expect(uprightsAt(10, { openStart: true })).toBe(0);
    expect(uprightsAt(22, { openStart: true })).toBe(1);
    expect(uprightsAt(22, { openEnd: true })).toBe(0);
    expect(uprightsAt(22, { openStart: true, openEnd: true })).toBe(0);
  });
});

function touchesTop(item: SceneItem): boolean {
  return item.kind === 'path' && segments(item.commands).some(([, ay, , by]) => ay === 20 && by === 20);
}

type Segment = readonly [ax: number, ay: number, bx: number, by: number];

function segments(commands: Extract<SceneItem, { kind: 'path' }>['commands']): readonly Segment[] {
  const result: Segment[] = [];
  let start: readonly [number, number] = [0, 0];
  let at: readonly [number, number] = [0, 0];
  for (const command of commands) {
    if (command[0] === 'M') start = at = [command[1], command[2]];
    if (command[0] === 'L') {
      result.push([...at, command[1], command[2]]);
      at = [command[1], command[2]];
    }
    if (command[0] === 'Z') result.push([...at, ...start]);
  }
  return result;
}
