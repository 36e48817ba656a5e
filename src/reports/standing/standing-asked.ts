import { BUILD_OPTIONS, PLACE_OPTIONS } from '../asked/place-options.ts';
import type { Session, Sessions } from '../session.ts';
import { type PlaceWritten, placeAsked } from './place-asked.ts';
import { standingAt } from './standing-at.ts';

/** The sessions as the options of a question ask for them; unchanged for a question without such options. */
export const standingAsked = ([first, ...others]: Sessions, asked: object): Sessions =>
  isPlaced(asked)
    ? [standing(first, asked), ...others.map((session) => standing(session, asked))]
    : [first, ...others];

/** What the document of an answer that predicts says of where and for which arrow it holds, SI; nothing for the others. */
export function standingData({ place, build, calibration }: Session, asked: object): object {
  if (!isPlaced(asked)) return {};
  const { temperature, pressure, humidity, density } = calibration.rig.conditions.air;
  return {
    place: {
      name: place === null ? null : place.name,
      temperature_K: temperature,
      pressure_Pa: pressure,
      humidity,
      density_kgpm3: density,
    },
    ...(isBuilt(asked) ? { build: build === null ? null : build.name } : {}),
  };
}

/** Whether a question has the options of a place. */
const isPlaced = (asked: object): asked is PlaceWritten =>
  Object.keys(PLACE_OPTIONS).every((name) => Object.hasOwn(asked, name));

/** Whether a question can be asked of one of the builds. */
const isBuilt = (asked: object): asked is { readonly build: string | null } =>
  Object.keys(BUILD_OPTIONS).every((name) => Object.hasOwn(asked, name));

const standing = (session: Session, asked: PlaceWritten): Session =>
  standingAt(session, { place: placeAsked(session, asked), build: isBuilt(asked) ? asked.build : null });
