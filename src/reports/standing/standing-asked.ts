import { PLACE_OPTIONS } from '../asked/place-options.ts';
import type { Session, Sessions } from '../session.ts';
import { type PlaceWritten, placeAsked } from './place-asked.ts';
import { standingAt } from './standing-at.ts';

/** The sessions where the options of a question ask for them; as they are for a question without such options. */
export const standingAsked = ([first, ...others]: Sessions, asked: object): Sessions =>
  predicts(asked)
    ? [standing(first, asked), ...others.map((session) => standing(session, asked))]
    : [first, ...others];

/** What the document of every answer that predicts says of where it holds, SI; nothing for the others. */
export function standingData({ place, calibration }: Session, asked: object): object {
  if (!predicts(asked)) return {};
  const { temperature, pressure, humidity, density } = calibration.rig.conditions.air;
  return {
    place: {
      name: place === null ? null : place.name,
      temperature_K: temperature,
      pressure_Pa: pressure,
      humidity,
      density_kgpm3: density,
    },
  };
}

/** Whether a question has the options of a place. */
const predicts = (asked: object): asked is PlaceWritten =>
  Object.keys(PLACE_OPTIONS).every((name) => Object.hasOwn(asked, name));

function standing(session: Session, asked: PlaceWritten): Session {
  const place = placeAsked(session, asked);
  return place === null ? session : standingAt(session, place);
}
