import { isRecord } from '../key-path.ts';
import type { BuildEntry, SetupFile } from '../schema/schema.ts';

/** Sections of the second over those of the first, down to single keys; lists are replaced whole. */
function merged(base: unknown, change: unknown): unknown {
  if (change === undefined) return base;
  if (!isRecord(base) || !isRecord(change)) return change;
  const keys = new Set([...Object.keys(base), ...Object.keys(change)]);
  return Object.fromEntries([...keys].map((key) => [key, merged(base[key], change[key])]));
}

/**
 * The setup as it would be written with a build's arrow: what the build names replaces what the file has. Where a build
 * turns to another head, the blades of the old one go.
 */
export function mergeBuild(setup: SetupFile, { arrow, launch }: BuildEntry): SetupFile {
  const head = arrow?.parts?.point?.shape;
  const sameHead = head === undefined || head === setup.arrow.parts?.point?.shape;
  const base = sameHead ? setup.arrow : withoutBlades(setup.arrow);
  // The reader has made sure that what a build leaves out of a section is in the base's.
  return {
    ...setup,
    arrow: merged(base, arrow) as SetupFile['arrow'],
    launch: merged(setup.launch, launch) as SetupFile['launch'],
  };
}

function withoutBlades(arrow: SetupFile['arrow']): SetupFile['arrow'] {
  const { parts } = arrow;
  if (parts?.point === undefined) return arrow;
  const { blades: _left, ...point } = parts.point;
  return { ...arrow, parts: { ...parts, point } };
}
