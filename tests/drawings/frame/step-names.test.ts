import { expect, test } from 'vitest';
import { stepNames } from '../../../scripts/drawings/frame/step-drawing.ts';
import { baleDrawings } from '../../../scripts/records/schemas/projects/bale-cold-frame.ts';

test('a record may ask for the step drawings that there are, and no others', () => {
  expect(baleDrawings).toEqual(stepNames);
});
