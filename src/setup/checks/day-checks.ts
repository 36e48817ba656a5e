import { nearestWord } from '../../quantities/nearest-word.ts';
import type { KeyPath } from '../key-path.ts';
import type { Draft } from './draft.ts';
import type { Fault } from './fault.ts';

/** What a day must agree on with the rest of the file. */
export function dayFaults(draft: Draft): readonly Fault[] {
  const days = Array.from({ length: draft.count(['days']) }, (_, i): KeyPath => ['days', i]).filter(
    draft.isSection,
  );
  const dates = days.map((day) => draft.text([...day, 'date']));
  return days.flatMap((day, i) => [
    ...sameDateFaults(day, dates[i], dates.slice(0, i)),
    ...buildFaults(draft, day),
    ...temperatureFaults(draft, day),
    ...speedFaults(draft, day),
    ...ownDateFaults(draft, day),
  ]);
}

function sameDateFaults(
  day: KeyPath,
  date: string | undefined,
  before: readonly (string | undefined)[],
): readonly Fault[] {
  if (date === undefined || !before.includes(date)) return [];
  return [
    {
      path: [...day, 'date'],
      at: 'value',
      reason: `"${date}" is already the date of an earlier day`,
      allowed: 'a different date for each day; any text will do',
      write: `Put both under one day, or write "${date} afternoon"`,
    },
  ];
}

function buildFaults({ text, count }: Draft, day: KeyPath): readonly Fault[] {
  const name = text([...day, 'build']);
  if (name === undefined) return [];
  const names = Array.from({ length: count(['builds']) }, (_, i) => text(['builds', i, 'name'])).filter(
    (each) => each !== undefined,
  );
  if (names.includes(name)) return [];
  const meant = nearestWord(name, names);
  return [
    {
      path: [...day, 'build'],
      at: 'value',
      reason: `"${name}" is not the name of a build`,
      allowed:
        names.length === 0 ? 'the name of an entry of builds, of which there is none' : names.join(', '),
      write:
        meant === undefined
          ? 'Add it to "builds:", or remove "build" for the arrow of the file'
          : `Write "${meant}"`,
    },
  ];
}

function temperatureFaults({ has }: Draft, day: KeyPath): readonly Fault[] {
  if (!has([...day, 'temperature']) || !has([...day, 'air', 'temperature'])) return [];
  return [
    {
      path: [...day, 'temperature'],
      at: 'key',
      reason: 'the temperature of that day is given twice',
      allowed: 'temperature in the day, or in its air',
      write: 'Remove one of them',
    },
  ];
}

function speedFaults({ has }: Draft, day: KeyPath): readonly Fault[] {
  if (!has([...day, 'measured_at']) || has([...day, 'speed'])) return [];
  return [
    {
      path: [...day, 'measured_at'],
      at: 'key',
      reason: 'says where the chronograph stood, but there is no speed of that day',
      allowed: 'measured_at together with speed',
      write: 'Add "speed: 281 fps" to that day, or remove measured_at',
    },
  ];
}

/** What stands under a day is of that day. */
function ownDateFaults({ has, text, count }: Draft, day: KeyPath): readonly Fault[] {
  return ['marks', 'speeds', 'drops'].flatMap((list) =>
    Array.from({ length: count([...day, list]) }, (_, i): KeyPath => [...day, list, i]).flatMap(
      (entry): readonly Fault[] =>
        !has([...entry, 'date']) || text([...entry, 'date']) === text([...day, 'date'])
          ? []
          : [
              {
                path: [...entry, 'date'],
                at: 'value',
                reason: 'stands under a day of another date',
                allowed: 'no date, as the day above says it',
                write: 'Remove "date", or move the entry to its own day',
              },
            ],
    ),
  );
}
