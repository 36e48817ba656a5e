import { sumGiven } from '../sum-given.ts';
import type { Draft } from './draft.ts';
import type { Fault } from './fault.ts';
import { massFaults } from './mass-checks.ts';

/** A quantity of the arrow and the one it cannot reach, each with the name that a message gives it. */
interface Order {
  readonly smaller: number | undefined;
  readonly larger: number | undefined;
  readonly fault: Fault;
}

const parts = ['arrow', 'parts'] as const;

/** What the parts of an arrow must agree on. */
export function arrowFaults(draft: Draft): readonly Fault[] {
  return [
    ...massFaults(draft),
    ...partFaults(draft),
    ...orderFaults(draft),
    ...headFaults(draft),
    ...vaneFaults(draft),
    ...dragFaults(draft),
  ];
}

/** What to write for a part that is missing. */
const SAMPLES = {
  shaft: 'shaft: { length: 28.5 in, mass_per_length: 9.5 gpi }',
  point: 'point: { mass: 125 gr }',
} as const;

/** Parts make an arrow only with a shaft and a point among them. */
function partFaults({ has, isSection }: Draft): readonly Fault[] {
  const named = ['shaft', 'insert', 'collar', 'point', 'nock', 'vanes', 'others'];
  if (!isSection(parts) || !named.some((part) => has([...parts, part]))) return [];
  return (['shaft', 'point'] as const)
    .filter((part) => !has([...parts, part]))
    .map((part) => ({
      path: [...parts, part],
      at: 'missing',
      reason: 'is missing: the other parts do not make an arrow without it',
      allowed: 'parts that include a shaft and a point, or no parts at all',
      write: `Add "${SAMPLES[part]}" under "parts:", or remove the parts`,
    }));
}

/** From the groove of the nock to the end of the shaft. */
function arrowLength(draft: Draft): number | undefined {
  const shaft = draft.quantity('arrow.parts.shaft.length');
  const given = draft.quantity('arrow.length');
  if (given !== undefined || shaft === undefined) return given;
  return sumGiven(shaft, draft.quantity('arrow.parts.nock.length'));
}

function orderFaults(draft: Draft): readonly Fault[] {
  const length = arrowLength(draft);
  const root = draft.quantity('arrow.parts.vanes.root_chord');
  const fromNock = draft.quantity('arrow.parts.vanes.from_nock');
  const orders: readonly Order[] = [
    {
      smaller: draft.quantity('arrow.balance'),
      larger: length,
      fault: tooLong(
        ['arrow', 'balance'],
        'the balance point is not on the arrow',
        'less than the length of the arrow',
      ),
    },
    {
      smaller: fromNock === undefined ? undefined : sumGiven(fromNock, root),
      larger: length,
      fault: tooLong(
        [...parts, 'vanes', 'from_nock'],
        'the vanes reach past the front end of the shaft',
        'a place on the shaft',
      ),
    },
    {
      smaller: draft.quantity('arrow.parts.shaft.inner_diameter'),
      larger: draft.quantity('arrow.diameter'),
      fault: tooLong(
        [...parts, 'shaft', 'inner_diameter'],
        'the bore is as wide as the shaft',
        'less than arrow.diameter',
      ),
    },
    {
      smaller: draft.quantity('arrow.diameter'),
      larger: draft.quantity('arrow.parts.point.blades.cutting_diameter'),
      fault: tooLong(
        [...parts, 'point', 'blades', 'cutting_diameter'],
        'the blades are no wider than the shaft',
        'more than arrow.diameter',
      ),
    },
    {
      smaller: draft.quantity('arrow.diameter'),
      larger: draft.quantity('arrow.parts.collar.diameter'),
      fault: tooLong(
        [...parts, 'collar', 'diameter'],
        'the collar is no wider than the shaft',
        'more than arrow.diameter',
      ),
    },
  ];
  return orders.flatMap(({ smaller, larger, fault }) =>
    smaller === undefined || larger === undefined || smaller < larger ? [] : [fault],
  );
}

const tooLong = (path: Fault['path'], reason: string, allowed: string): Fault => ({
  path,
  at: 'value',
  reason,
  allowed,
  write: 'Measure both again, and correct the one that is wrong',
});

function headFaults({ has, text }: Draft): readonly Fault[] {
  if (!has([...parts, 'point'])) return [];
  const fixed = text([...parts, 'point', 'shape']) === 'fixed_blade';
  const blades = has([...parts, 'point', 'blades']);
  if (fixed === blades) return [];
  return fixed
    ? [
        {
          path: [...parts, 'point', 'blades'],
          at: 'missing',
          reason: 'is missing for a head with fixed blades',
          allowed: 'blades: { count, length, cutting_diameter, thickness }',
          write:
            'Add "blades: { count: 3, length: 1.1 in, cutting_diameter: 1.125 in, thickness: 0.04 in }" under "point:"',
        },
      ]
    : [
        {
          path: [...parts, 'point', 'blades'],
          at: 'key',
          reason: 'blades belong only to a point with "shape: fixed_blade"',
          allowed: 'blades with fixed_blade only, because mechanical blades stay folded in flight',
          write: 'Remove them, or write "shape: fixed_blade"',
        },
      ];
}

function vaneFaults(draft: Draft): readonly Fault[] {
  const angle = draft.quantity('arrow.parts.vanes.angle');
  const turn = draft.text([...parts, 'vanes', 'turn']);
  const turned = angle !== undefined && angle > 0 && turn === undefined;
  const root = draft.quantity('arrow.parts.vanes.root_chord');
  const tip = draft.quantity('arrow.parts.vanes.tip_chord');
  const faults: Fault[] = [];
  if (turned)
    faults.push({
      path: [...parts, 'vanes', 'turn'],
      at: 'missing',
      reason: 'is missing for vanes at an angle',
      allowed: 'right, left or none',
      write:
        'Add "turn: right" under "vanes:" if the arrow spins clockwise seen from behind, or "turn: left"',
    });
  if (root !== undefined && tip !== undefined && tip > root)
    faults.push({
      path: [...parts, 'vanes', 'tip_chord'],
      at: 'value',
      reason: 'the upper edge is longer than the base',
      allowed: 'at most root_chord',
      write: 'Swap the two, or measure them again',
    });
  return faults;
}

function dragFaults(draft: Draft): readonly Fault[] {
  const path = ['arrow', 'drag_coefficient'] as const;
  const empty =
    draft.has(path) && draft.text(path) === undefined && !draft.isSection(path) && draft.count(path) === 0;
  if (empty)
    return [
      {
        path,
        at: 'value',
        reason: 'the table has no entries',
        allowed: 'a number, or entries with reynolds and value',
        write: 'Write "2.4", or remove the key',
      },
    ];
  const rows = Array.from({ length: draft.count(path) }, (_, row) =>
    draft.quantity('arrow.drag_coefficient.reynolds', [...path, row, 'reynolds']),
  );
  return rows.flatMap((reynolds, row) => {
    const before = rows[row - 1];
    if (reynolds === undefined || before === undefined || reynolds > before) return [];
    const fault: Fault = {
      path: [...path, row, 'reynolds'],
      at: 'value',
      reason: 'the Reynolds numbers of the table do not increase',
      allowed: 'more than in the entry before',
      write: 'Sort the entries by Reynolds number',
    };
    return [fault];
  });
}
