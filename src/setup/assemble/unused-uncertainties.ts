import { dotted, isRecord, type KeyPath } from '../key-path.ts';
import type { SetupFile } from '../schema/schema.ts';

/** The standard uncertainties that something is computed from, by key path without the positions in lists. */
const USED: ReadonlySet<string> = new Set([
  // assemble-launch.ts
  'launch.speed_sd',
  'bow.virtual_mass_sd',
  'bow.chronographed.speed_sd',
  // assemble-marks.ts and assemble-scale.ts
  'bow.peep_height_sd',
  'arrow.drag_coefficient_sd',
  'sight.peep_to_pin_sd',
  'sight.scale.travel_per_unit_sd',
  'sight.scale.at_zero_sd',
  'marks.reading_sd',
  'marks.vertical_sd',
  'speeds.speed_sd',
  'drops.drop_sd',
  // the sideways marks of the advice on cant
  'marks.lateral_sd',
  'marks.cant_sd',
  // assemble-variant.ts
  'builds.launch.speed_sd',
  'builds.arrow.drag_coefficient_sd',
]);

/** Key paths of the uncertainties that the file states and nothing is computed from. */
export function unusedUncertainties(setup: SetupFile): readonly string[] {
  const { arrow, sight } = setup;
  const inVain = (path: KeyPath): boolean => {
    const key = path.filter((step) => typeof step === 'string').join('.');
    if (!USED.has(key)) return true;
    if (key === 'arrow.drag_coefficient_sd') return typeof arrow.drag_coefficient !== 'number';
    return key === 'sight.scale.travel_per_unit_sd' && sight.scale?.travel_per_unit === 'unknown';
  };
  return uncertaintiesIn(setup, []).filter(inVain).map(dotted);
}

function uncertaintiesIn(value: unknown, path: KeyPath): readonly KeyPath[] {
  if (Array.isArray(value)) return value.flatMap((entry, i) => uncertaintiesIn(entry, [...path, i]));
  if (!isRecord(value)) return String(path.at(-1)).endsWith('_sd') ? [path] : [];
  return Object.entries(value).flatMap(([key, each]) => uncertaintiesIn(each, [...path, key]));
}
