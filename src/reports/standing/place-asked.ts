import { nearestWord } from '../../quantities/nearest-word.ts';
import { placeConditions, warmthAt } from '../../setup/assemble/assemble-place.ts';
import { airFaults } from '../../setup/checks/air-checks.ts';
import { draftOf } from '../../setup/checks/draft.ts';
import type { OpenSetup } from '../../setup/open.ts';
import type { AirSection, PlaceEntry, SetupFile } from '../../setup/schema/schema.ts';
import { fileQuantity } from '../asked/file-quantity.ts';
import { QuestionError } from '../asked/question-error.ts';
import type { Place } from '../session.ts';

/** What was written of a place; null for what was not. */
export interface PlaceWritten {
  readonly place: string | null;
  readonly altitude: string | null;
  readonly temperature: string | null;
  readonly pressure: string | null;
  readonly seaLevelPressure: string | null;
  readonly humidity: string | null;
}

/**
 * The place that was asked for; null for the file's own.
 *
 * @throws QuestionError for a name that the file does not have, or for air that cannot be
 */
export function placeAsked(opened: OpenSetup, written: PlaceWritten): Place | null {
  const { place: name, altitude, temperature, pressure, seaLevelPressure, humidity } = written;
  const singly = [altitude, temperature, pressure, seaLevelPressure, humidity];
  if (name === null && singly.every((text) => text === null)) return null;
  const named = name === null ? null : placeNamed(opened, name);
  const section = { ...sectionOf(named, written), ...airWritten(opened.setup, named, written) };
  const here = opened.calibration.rig.conditions;
  const conditions = placeConditions(opened.setup, here, section);
  return {
    name: named === null ? null : named.name,
    conditions,
    warmth: warmthAt({ calibration: opened.calibration, here: here.air, there: conditions.air }),
  };
}

/** An entry of the file's places by its name, upper and lower case alike. @throws QuestionError naming those there are */
function placeNamed({ setup }: Pick<OpenSetup, 'setup'>, name: string): PlaceEntry {
  const { places = [] } = setup;
  const found = places.find((place) => sameName(place.name, name));
  if (found !== undefined) return found;
  throw unknownName(
    'place',
    name,
    places.map((place) => place.name),
    {
      wrong: 'the file names no places',
      write: 'List them under "places:", or write {altitude} "9800 ft".',
    },
  );
}

export const sameName = (a: string, b: string): boolean => a.trim().toLowerCase() === b.trim().toLowerCase();

/** @param none what to say where the file has no names at all */
export function unknownName(
  option: string,
  name: string,
  names: readonly string[],
  none: { readonly wrong: string; readonly write: string },
): QuestionError {
  if (names.length === 0) return new QuestionError(`{${option}}: ${none.wrong}`, none.write);
  const meant = nearestWord(name.trim(), names);
  const listed = names.map((each) => `"${each}"`).join(', ');
  return new QuestionError(
    `{${option}}: the file has no ${option} "${name}"; it has ${listed}`,
    meant === undefined ? `Write one of these after {${option}}.` : `Write {${option}} "${meant}".`,
  );
}

/** What the file says of a place, without what is said anew: another altitude or another pressure takes its pressure away. */
function sectionOf(
  place: PlaceEntry | null,
  { altitude, pressure, seaLevelPressure }: PlaceWritten,
): AirSection {
  if (place === null) return {};
  const { name: _name, pressure: station, sea_level_pressure: reduced, ...rest } = place;
  if (altitude !== null || pressure !== null || seaLevelPressure !== null) return rest;
  return {
    ...rest,
    ...(station === undefined ? {} : { pressure: station }),
    ...(reduced === undefined ? {} : { sea_level_pressure: reduced }),
  };
}

function airWritten(setup: SetupFile, place: PlaceEntry | null, written: PlaceWritten): AirSection {
  const { altitude, temperature, pressure, seaLevelPressure, humidity } = written;
  // A weather report's pressure needs an altitude: of the place, else of the file.
  const known = altitude !== null ? undefined : (place?.altitude ?? setup.air?.altitude);
  if (seaLevelPressure !== null && altitude === null && known === undefined)
    throw new QuestionError(
      '{seaLevelPressure}: without an altitude the pressure on the spot cannot be worked out from it',
      'Write {altitude} "9800 ft" as well.',
    );
  const [fault] = airFaults(
    draftOf({
      places: [
        {
          altitude: altitude ?? undefined,
          pressure: pressure ?? undefined,
          sea_level_pressure: known === undefined ? (seaLevelPressure ?? undefined) : undefined,
        },
      ],
    }),
  );
  const section: AirSection = {
    ...(altitude === null ? {} : { altitude: fileQuantity('altitude', 'places.altitude', altitude) }),
    ...(temperature === null
      ? {}
      : { temperature: fileQuantity('temperature', 'places.temperature', temperature) }),
    ...(pressure === null ? {} : { pressure: fileQuantity('pressure', 'places.pressure', pressure) }),
    ...(seaLevelPressure === null
      ? {}
      : {
          sea_level_pressure: fileQuantity('seaLevelPressure', 'places.sea_level_pressure', seaLevelPressure),
          ...(known === undefined ? {} : { altitude: known }),
        }),
    ...(humidity === null ? {} : { humidity: fileQuantity('humidity', 'places.humidity', humidity) }),
  };
  if (fault === undefined) return section;
  throw new QuestionError(
    `{${pressure === null ? 'seaLevelPressure' : 'pressure'}}: ${fault.reason}`,
    `${fault.write}.`,
  );
}
