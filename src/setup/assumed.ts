import { DEFAULTS } from './defaults.ts';
import { valueAt } from './key-path.ts';
import type { SetupFile } from './schema.ts';

/** A default that a setup left standing. */
export interface Assumed {
  readonly key: string;
  /** As the archer would have written it. */
  readonly text: string;
  readonly why: string;
}

/** Keys under these say nothing unless the section itself is in the file. */
const OPTIONAL_SECTIONS = [
  'wind',
  'marks',
  'sight.scale',
  'arrow.parts',
  'arrow.parts.insert',
  'arrow.parts.collar',
  'arrow.parts.vanes',
  'air',
  'sight.tape',
];
/** Defaults that ask for nothing: their absence is the ordinary case. */
const ORDINARY = [
  'slope',
  'bow.cant',
  'sight.lean',
  'wind.shear',
  'arrow.side_force',
  'sight.tape.travel_ratio',
  'eye_height',
  'sight.housing_below_pin',
];

/** Every default the setup leaves in force that could matter to its numbers. */
export const assumedIn = (setup: SetupFile): readonly Assumed[] =>
  Object.entries(DEFAULTS)
    .filter(
      ([key]) => !key.endsWith('relative_sd') && !key.endsWith('arrow_spread') && !ORDINARY.includes(key),
    )
    .filter(([key]) => has(setup, sectionOf(key)) && !has(setup, key))
    .map(([key, { text, why }]) => ({ key, text, why }));

const has = (setup: SetupFile, key: string): boolean =>
  key === '' || valueAt(setup, key.split('.')) !== undefined;

/** The innermost optional section a key belongs to, or none. */
const sectionOf = (key: string): string =>
  OPTIONAL_SECTIONS.filter((section) => key.startsWith(`${section}.`)).toSorted(
    (a, b) => b.length - a.length,
  )[0] ?? '';
