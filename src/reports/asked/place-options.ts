import { optionalList, optionalText } from './option.ts';

/** The place that an answer is for, shared by every question that predicts: another one than the file's own. */
export const PLACE_OPTIONS = {
  place: optionalText(
    'name',
    "a place of the file (places) to answer for; the marks stay those of the file's own air",
  ),
  altitude: optionalText(
    'altitude',
    'altitude of the place; the standard atmosphere there stands for what is not written',
  ),
  temperature: optionalText('temperature', 'air temperature there'),
  pressure: optionalText('pressure', 'pressure as a barometer there reads it'),
  seaLevelPressure: optionalText(
    'pressure',
    "pressure as a weather report gives it, in place of the barometer's",
  ),
  humidity: optionalText('share', 'relative humidity there'),
};

/** The arrow that an answer is for: another one than the file's own. */
export const BUILD_OPTIONS = {
  build: optionalText(
    'name',
    "a build of the file (builds) to answer for, on the sight as the file's own arrow zeroed it",
  ),
};

/** The arrow and the place that an answer is for. */
export const STANDING_OPTIONS = { ...BUILD_OPTIONS, ...PLACE_OPTIONS };

/** The arrows and the places that one document is for. */
export const STANDINGS_OPTIONS = {
  ...STANDING_OPTIONS,
  build: optionalList(
    'name',
    'a build of the file (builds) to make one for; may be written several times, and "all" stands for each of them',
  ),
  place: optionalList(
    'name',
    'a place of the file (places) to make one for; may be written several times, and "all" stands for each of them',
  ),
};
