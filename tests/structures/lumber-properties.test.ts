import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { drawnMeasures } from '../../scripts/drawings/build/assembly-drawings.ts';
import type { Project } from '../../scripts/records/schemas/project.ts';
import type { LumberColdFrame } from '../../scripts/records/schemas/projects/lumber-cold-frame.ts';
import type { RaisedBed } from '../../scripts/records/schemas/projects/raised-bed.ts';
import { builtOf, demoBed, demoFrame, soldAs } from './lumber-projects.ts';
import { inches } from './project.ts';

const half = (from: number, to: number) => fc.integer({ min: from * 2, max: to * 2 }).map((n) => n / 2);

function bedOf(length: number, width: number, courses: number): RaisedBed {
  const bed = demoBed();
  return soldAs(
    {
      ...bed,
      length: inches(length),
      width: inches(width),
      boards: { nominal: '2x6', courses },
      soil: { ...bed.soil, depth: inches(4.5) },
      parts: bed.parts,
    },
    ['2x6', '4x4'],
  );
}

function frameOf(number: number, width: number, length: number): LumberColdFrame {
  const frame = demoFrame();
  return soldAs({ ...frame, lids: { ...frame.lids, number, width: inches(width), length: inches(length) } }, [
    '2x12',
    '2x10',
    '2x8',
    '2x2',
  ]);
}

const beds = fc.tuple(half(24, 192), half(24, 72), fc.integer({ min: 1, max: 3 }));
const frames = fc.tuple(fc.integer({ min: 1, max: 3 }), half(24, 48), half(30, 72));
const some = { numRuns: 15 };

/** What two more posts take of loose soil 4.5 in deep: 2 × 3.5² × 4.5 × 1.15 in³. */
const postsFt3 = 0.0734;

function boardsUsed(project: Project): number {
  return builtOf(project).bill.cuts.reduce((sum, { list }) => sum + list.boards.length, 0);
}

describe('lumber builds of any size', () => {
  test('pieces, saw cuts and what is left make up every board, and every piece is cut', () => {
    const check = (project: Project): void => {
      const { bill, structure } = builtOf(project);
      for (const { list } of bill.cuts)
        for (const board of list.boards) {
          const pieces = board.cuts.reduce((sum, { lengthMm }) => sum + lengthMm, 0);
          expect(pieces + board.kerfMm + board.offcutMm).toBeCloseTo(board.stockMm, 6);
          expect(board.kerfMm).toBeLessThanOrEqual(board.cuts.length * 3.175 + 1e-9);
        }
      const cut = bill.cuts.flatMap(({ list }) => list.boards.flatMap(({ cuts }) => cuts)).length;
      expect(cut).toBe(structure.pieces.reduce((sum, { number }) => sum + number, 0));
    };
    fc.assert(
      fc.property(beds, (sizes) => {
        check(bedOf(...sizes));
      }),
      some,
    );
    fc.assert(
      fc.property(frames, (sizes) => {
        check(frameOf(...sizes));
      }),
      some,
    );
  });

  test('a longer bed never needs less soil, fewer screws, fewer posts or fewer boards', () => {
    fc.assert(
      fc.property(beds, half(0.5, 60), ([length, width, courses], more) => {
        fc.pre(length + more <= 192);
        const [short, long] = [bedOf(length, width, courses), bedOf(length + more, width, courses)];
        const [one, other] = [builtOf(short), builtOf(long)];
        expect(other.number('bed.fill-volume', 'ft3')).toBeGreaterThan(
          one.number('bed.fill-volume', 'ft3') - postsFt3,
        );
        expect(other.number('bed.screws')).toBeGreaterThanOrEqual(one.number('bed.screws'));
        expect(other.number('bed.posts')).toBeGreaterThanOrEqual(one.number('bed.posts'));
        expect(boardsUsed(long)).toBeGreaterThanOrEqual(boardsUsed(short));
      }),
      some,
    );
  });

  test('what is drawn is what was computed, on both sides of the equator', () => {
    const check = (project: Project, south: boolean): void => {
      const { structure, value } = builtOf(project, south ? 'south' : 'north');
      const drawn = drawnMeasures(structure.assembly!);
      expect(drawn.length).toBeGreaterThan(5);
      for (const { finding, lengthMm } of drawn) {
        const computed = value(finding);
        expect(computed.kind === 'quantity' && Math.abs(computed.value - lengthMm) < 0.01, finding).toBe(
          true,
        );
      }
    };
    fc.assert(
      fc.property(beds, fc.boolean(), (sizes, south) => {
        check(bedOf(...sizes), south);
      }),
      some,
    );
    fc.assert(
      fc.property(frames, fc.boolean(), (sizes, south) => {
        check(frameOf(...sizes), south);
      }),
      some,
    );
  });

  test('bodies are as large as the pieces they are cut from', () => {
    const bodies = (project: Project): void => {
      const { structure } = builtOf(project);
      for (const { role, lengthMm } of structure.pieces) {
        const members = structure.assembly!.members.filter(
          (member) => member.role === role && member.until === undefined,
        );
        if (role === 'slope-pair' || role === 'bar' || role.startsWith('lid')) continue;
        expect(members.length, role).toBeGreaterThan(0);
        for (const { solid } of members) {
          const spans = (['x', 'y', 'z'] as const).map((axis) => {
            const values = solid.faces.flat().map((spot) => spot[axis]);
            return Math.max(...values) - Math.min(...values);
          });
          expect(Math.max(...spans), role).toBeCloseTo(lengthMm, 6);
        }
      }
    };
    bodies(bedOf(96, 48, 2));
    bodies(frameOf(2, 36, 48));
  });

  test('a closed lid lies on the outer edge of the front and the inner edge of the back, and nothing stands through it', () => {
    fc.assert(
      fc.property(frames, (sizes) => {
        const { structure, number } = builtOf(frameOf(...sizes));
        const { members } = structure.assembly!;
        const closed = members.filter(
          ({ role, stage }) => role.startsWith('lid-') && role !== 'lid-sheet' && stage === 'hang',
        );
        const spots = closed.flatMap(({ solid }) => solid.faces.flat());
        const tangent = Math.tan((number('frame.slope', 'deg') * Math.PI) / 180);
        const front = number('frame.equator-height', 'mm');
        const plane = (y: number): number => front + y * tangent;
        const under = Math.min(...spots.map(({ y, z }) => z - plane(y)));
        expect(Math.abs(under)).toBeLessThan(0.01);
        const t = number('frame.board-thickness', 'mm');
        expect(plane(number('frame.outside-depth', 'mm') - t)).toBeCloseTo(
          number('frame.poleward-height', 'mm'),
          6,
        );
        const box = members.filter(
          ({ role, until }) => until === undefined && /^(back|front|side|slope|bar)/.test(role),
        );
        const inside = number('frame.outside-depth', 'mm') - t;
        for (const { role, solid } of box)
          for (const { y, z } of solid.faces.flat())
            if (y <= inside + 0.01) expect(z - plane(y), role).toBeLessThan(0.02);
      }),
      some,
    );
  });
});
