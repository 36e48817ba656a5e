import { dotted, isRecord, type KeyPath } from '../key-path.ts';
import type { SetupFile } from '../schema/schema.ts';
import { isRead } from './stated-sd.ts';

/** Key paths of the uncertainties that the file states and nothing is computed from. */
export function unusedUncertainties(setup: SetupFile): readonly string[] {
  const { arrow, sight } = setup;
  const inVain = (path: KeyPath): boolean => {
    const key = path.filter((step) => typeof step === 'string').join('.');
    if (!isRead(key)) return true;
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
