/** The pole tepee as bodies, from the marked circle to the vines on the poles. */
import { middle } from '../quantities/quantity.ts';
import { tepeeDrawings, type PoleTepee } from '../records/schemas/projects/pole-tepee.ts';
import type { Assembly, Member, ShownMeasure } from './assembly.ts';
import type { Hemisphere, Spot } from './geometry.ts';
import { along, angles, drumBody, membersOf, plantBody, poleBody } from './round-bodies.ts';
import { cordBody, sheetBody } from './solids.ts';
import { feetOf, type TepeeLayout } from './tepee-layout.ts';

/** The origin is the middle of the circle, on the ground. */
export function tepeeAssembly(project: PoleTepee, layout: TepeeLayout, hemisphere: Hemisphere): Assembly {
  return {
    hemisphere,
    members: [
      ...markedGround(layout),
      ...holes(layout),
      ...lyingPoles(project, layout),
      ...standingPoles(layout),
      ...strings(layout),
      ...plants(layout),
      ...vines(layout),
    ],
    stages: tepeeDrawings,
    measures: measuresOf(layout),
    sectionAtX: 1,
  };
}

const spot = (x: number, y: number, z: number): Spot => ({ x, y, z });

/** A circle scratched round a peg with a string, and the loosened strip. */
function markedGround({ radiusMm }: TepeeLayout): readonly Member[] {
  const at = (angle: number, z: number): Spot =>
    spot(radiusMm * Math.sin(angle), -radiusMm * Math.cos(angle), z);
  const circle = angles(24).map((angle) => cordBody(at(angle, 8), at(angle + Math.PI / 12, 8), 12));
  const handAngle = Math.PI * 0.4;
  const far = at(handAngle, 0);
  return [
    ...membersOf(circle, { role: 'line', surface: 'cord', stage: 'ground', until: 'raise' }),
    ...membersOf([cordBody(spot(0, 0, 120), at(handAngle, 120), 8)], {
      role: 'string',
      surface: 'cord',
      stage: 'ground',
      until: 'holes',
    }),
    ...membersOf(
      [
        poleBody(spot(0, 0, -120), spot(0, 0, 220), 30),
        poleBody(spot(far.x, far.y, 0), spot(far.x, far.y, 220), 30),
      ],
      { role: 'peg', surface: 'wood', stage: 'ground', until: 'holes', smooth: true },
    ),
  ];
}

function holes(layout: TepeeLayout): readonly Member[] {
  const sizeMm = Math.max(40, 1.5 * layout.thicknessMm);
  const solids = feetOf(layout).map(({ x, y }) =>
    sheetBody(angles(8).map((angle) => spot(x + sizeMm * Math.cos(angle), y + sizeMm * Math.sin(angle), 3))),
  );
  return membersOf(solids, { role: 'hole', surface: 'soil', stage: 'holes', until: 'raise', smooth: true });
}

/** Side by side on the ground, the lashing on. */
function lyingPoles(project: PoleTepee, layout: TepeeLayout): readonly Member[] {
  const { poles, poleMm, thicknessMm } = layout;
  const tieMm = middle(project.tie);
  const [west, east] = [-poleMm / 2, poleMm / 2];
  const z = thicknessMm / 2;
  const pitchMm = thicknessMm * 1.3;
  const y = (index: number): number => (index - (poles - 1) / 2) * pitchMm;
  const lying = Array.from({ length: poles }, (_, index) =>
    poleBody(spot(west, y(index), z), spot(east, y(index), z), thicknessMm),
  );
  const turns = [-1.5, -0.5, 0.5, 1.5].map((turn) => {
    const x = east - tieMm + turn * 14;
    return cordBody(
      spot(x, y(0) - pitchMm, thicknessMm + 6),
      spot(x, y(poles - 1) + pitchMm, thicknessMm + 6),
      9,
    );
  });
  const until = { stage: 'lash', until: 'raise' } as const;
  return [
    ...membersOf(lying, { role: 'pole', surface: 'wood', smooth: true, ...until }),
    ...membersOf(turns, { role: 'twine', surface: 'cord', ...until }),
  ];
}

/** From the end in the ground through the lashing to the end above it. */
function standingPoles(layout: TepeeLayout): readonly Member[] {
  const { poles, heightMm, topMm, inGroundMm, thicknessMm, radiusMm } = layout;
  const over = topMm - heightMm;
  const share = heightMm === 0 ? 0 : 1 / heightMm;
  const solids = feetOf(layout).map(({ x, y }, index) => {
    const at = (z: number): Spot => {
      const left = 1 - z * share;
      return spot(x * left, y * left, z);
    };
    // Each pole passes the others a little to its side, as they do under a lashing.
    const aside = ((thicknessMm * 0.6) / Math.max(1, radiusMm)) * (index % 2 === 0 ? 1 : -1);
    const shifted = ({ x: px, y: py, z }: Spot, by: number): Spot => spot(px - y * by, py + x * by, z);
    return poleBody(at(-inGroundMm), shifted(at(heightMm + over), aside), thicknessMm, thicknessMm * 0.8);
  });
  return [
    ...membersOf(solids, { role: 'pole', surface: 'wood', stage: 'raise', smooth: true }),
    ...membersOf([drumBody(spot(0, 0, heightMm - 35), lashedMm(poles, thicknessMm), 70, 12)], {
      role: 'twine',
      surface: 'cord',
      stage: 'raise',
      smooth: true,
    }),
  ];
}

/** Half across the bundle of poles where they cross. */
function lashedMm(poles: number, thicknessMm: number): number {
  return thicknessMm * (0.5 + poles / 6);
}

function strings(layout: TepeeLayout): readonly Member[] {
  const feet = feetOf(layout);
  const solids = layout.rings.flatMap(({ heightMm, radiusMm }) => {
    const share = radiusMm / layout.radiusMm;
    const corners = feet.map(({ x, y }) => spot(x * share, y * share, heightMm));
    return corners.map((corner, index) => cordBody(corner, corners[(index + 1) % corners.length]!, 9));
  });
  return membersOf(solids, { role: 'twine', surface: 'cord', stage: 'strings' });
}

/** As many as are computed, evenly round the circle, a hand outside the feet. */
function plants({ plants: number, radiusMm }: TepeeLayout): readonly Member[] {
  const outMm = radiusMm + 60;
  const solids = angles(number).map((angle) =>
    plantBody(spot(outMm * Math.sin(angle), -outMm * Math.cos(angle), 0), 80),
  );
  return membersOf(solids, { role: 'plant', surface: 'plant', stage: 'sow' });
}

/** Leaves up each pole, now on its one side and now on the other. */
function vines(layout: TepeeLayout): readonly Member[] {
  const top = spot(0, 0, layout.heightMm);
  const solids = feetOf(layout).flatMap((foot) =>
    Array.from({ length: 7 }, (_, index) => {
      const at = along(foot, top, 0.12 + index * 0.11);
      const side = (index % 2 === 0 ? 1 : -1) * (50 / Math.max(1, layout.radiusMm));
      return plantBody(spot(at.x - foot.y * side, at.y + foot.x * side, at.z), 90);
    }),
  );
  return membersOf(solids, { role: 'vine', surface: 'plant', stage: 'train' });
}

function measuresOf({ radiusMm: r, heightMm, topMm, inGroundMm }: TepeeLayout): readonly ShownMeasure[] {
  return [
    { finding: 'tepee.spread', from: spot(-r, 0, 0), to: spot(r, 0, 0), in: 'plan', side: 'below' },
    { finding: 'tepee.spread', from: spot(-r, 0, 0), to: spot(r, 0, 0), in: 'elevation', side: 'below' },
    {
      finding: 'tepee.height',
      from: spot(-r, 0, 0),
      to: spot(-r, 0, heightMm),
      in: 'elevation',
      side: 'left',
    },
    { finding: 'tepee.top', from: spot(r, 0, 0), to: spot(r, 0, topMm), in: 'elevation', side: 'right' },
    { finding: 'tepee.height', from: spot(0, -r, 0), to: spot(0, -r, heightMm), in: 'section', side: 'left' },
    {
      finding: 'tepee.in-ground',
      from: spot(0, r, -inGroundMm),
      to: spot(0, r, 0),
      in: 'section',
      side: 'right',
    },
  ];
}
