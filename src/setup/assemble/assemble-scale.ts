import { guessScale, type ScalePoint } from '../../calibration/scale-guess.ts';
import { at } from '../../numerics/at.ts';
import { marksFor } from '../../sight/marks.ts';
import type { Rig } from '../../sight/rig.ts';
import type { SightScale } from '../../sight/scale.ts';
import type { ScaleSection, SetupFile } from '../schema/schema.ts';
import { DEFAULT_WORDS, defaultOf } from './defaults.ts';
import { shotsIn } from './shots.ts';
import { statedSd } from './stated-sd.ts';

/** The sight's scale, and where its two numbers come from. */
export interface ScaleKnowledge {
  /** Null when the sight has none, or when its pitch or its place is still unknown. */
  readonly scale: SightScale | null;
  readonly pitch: 'given' | 'from marks' | 'none';
  readonly place: 'given' | 'from marks' | 'none';
}

const NO_SCALE: ScaleKnowledge = { scale: null, pitch: 'none', place: 'none' };

export function assembleScale(bare: Rig, setup: SetupFile): ScaleKnowledge {
  const section = setup.sight.scale;
  if (section === undefined) return NO_SCALE;
  const direction = (section.increases ?? DEFAULT_WORDS['sight.scale.increases']) === 'down' ? 1 : -1;
  const points = pointsOf(setup, section, bare.zeroRange);
  if (section.travel_per_unit === 'unknown') {
    if (new Set(points.map(({ range }) => range)).size < 2) return NO_SCALE;
    const guess = guessScale(bare, direction, points);
    if (section.at_zero === undefined) return { scale: guess, pitch: 'from marks', place: 'from marks' };
    return { scale: { ...guess, atZero: section.at_zero }, pitch: 'from marks', place: 'given' };
  }
  const travelPerUnit = section.travel_per_unit;
  if (section.at_zero !== undefined)
    return { scale: { travelPerUnit, direction, atZero: section.at_zero }, pitch: 'given', place: 'given' };
  if (points.length === 0) return NO_SCALE;
  const { marks } = marksFor(
    bare,
    points.map(({ range }) => range),
  );
  const places = points.map(({ reading }, i) => reading - (direction * at(marks, i).travel) / travelPerUnit);
  const atZero = places.reduce((sum, place) => sum + place, 0) / places.length;
  return { scale: { travelPerUnit, direction, atZero }, pitch: 'given', place: 'from marks' };
}

/** Every range of which a reading is known: the marks as shot, and the zero. */
function pointsOf(
  setup: SetupFile,
  { at_zero: atZero }: ScaleSection,
  zeroRange: number,
): readonly ScalePoint[] {
  const shot = shotsIn(setup).marks.flatMap(({ range, reading }) =>
    reading === undefined ? [] : [{ range, reading }],
  );
  return atZero === undefined ? shot : [...shot, { range: zeroRange, reading: atZero }];
}

/** Standard uncertainty of travel per unit over itself. */
export function pitchSd(section: ScaleSection): number {
  const { travel_per_unit: pitch } = section;
  const sd = statedSd.travelPerUnit(section);
  if (pitch === 'unknown' || sd === undefined) return defaultOf('sight.scale.travel_per_unit_relative_sd');
  return sd / pitch;
}
