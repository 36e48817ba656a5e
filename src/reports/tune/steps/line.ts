import { placesOf } from '../../../advice/tuning/line-places.ts';
import { type LineSpread, lineSpread } from '../../../advice/tuning/line-spread.ts';
import { at } from '../../../numerics/at.ts';
import { dataOf, type Field, tableOf } from '../../field.ts';
import { targetDigits } from '../../side-words.ts';
import { spreadPlot } from '../line-plot.ts';
import { type Line, type LineFound, lineLine, lineParagraphs } from '../line-words.ts';
import { restMoves, restPlace } from '../rest-place.ts';
import {
  BUT_REST,
  type Evening,
  type Logged,
  NO_MORE,
  needed,
  type StepAnswer,
  sinceChange,
} from '../step-answer.ts';

const GROUP_FIELDS: readonly Field<LineSpread['groups'][number]>[] = [
  { key: 'position_m', name: 'rest at', unit: 'mm', digits: 1, of: ({ position }) => position },
  { key: 'sd_m', name: 'scatter', unit: 'smallLength', digits: targetDigits, of: ({ sd }) => sd },
  { key: 'freedom', name: 'arrows less one', digits: 1, of: ({ freedom }) => freedom },
];

/** Where the rest groups best, by what was shot at vertical and at horizontal lines. */
export function lineAnswer(evening: Evening, logged: readonly Logged[]): StepAnswer {
  const { session } = evening;
  const { units } = session;
  const fresh = sinceChange(evening, logged, BUT_REST);
  const used = fresh.length === 0 ? logged : fresh;
  const lines = (['vertical', 'horizontal'] as const).flatMap((line) => {
    const own = used.filter(({ entry }) => entry.line === line);
    return own.length === 0 ? [] : [foundFor(evening, line, own)];
  });
  const data = lines.map(dataFor);
  const first = at(lines, 0);
  return {
    ...NO_MORE,
    verdict: first.found.verdict,
    done: lines.every(({ found }) => found.done),
    line: lines
      .map(
        (each) =>
          (lines.length > 1 ? `${each.line === 'vertical' ? 'Upright' : 'Level'} line: ` : '') +
          lineLine(each.found),
      )
      .join(' '),
    paragraphs: lines.flatMap((each) => lineParagraphs(each, units)),
    tables: lines.map(({ line, found }) =>
      tableOf(GROUP_FIELDS, found.groups, units, `Scatter square to the ${line} line`),
    ),
    plots: lines.map(({ found }) => spreadPlot(found, units)),
    notes: [
      'The tightest of five groups of three is the best place on one evening in four. Where the groups stand is not ' +
        'used: the mean moves ' +
        'by inches with the rest and tells nothing.',
      'Looking after every round raises false alarms from 5 % to 10 % with two looks, 13 % with three and 18 % with six.',
      'Do bare shafts first: a rest 1 mm off shows there, and costs a line some 5 %.',
    ],
    data: data.length === 1 ? at(data, 0) : { lines: data },
  };
}

function foundFor({ record }: Evening, line: Line, own: readonly Logged[]): LineFound {
  const places = restMoves(record.log);
  const position = ({ index }: Logged) => {
    const place = restPlace(places, index);
    return line === 'vertical' ? place.right : place.up;
  };
  const last = at(own, own.length - 1);
  const range = needed(last.entry.range, 'range');
  const spreads = placesOf(
    own.map((each) => ({
      position: position(each),
      range: needed(each.entry.range, 'range'),
      hits: each.entry.off_line ?? {
        spread: needed(each.entry.spread, 'spread'),
        arrows: needed(each.entry.arrows, 'arrows'),
      },
    })),
    range,
  );
  return {
    line,
    found: lineSpread(spreads, position(last)),
    looks: own.length,
    scaled: own.some(({ entry }) => entry.range !== range),
  };
}

const dataFor = ({ line, found, looks }: LineFound): object => ({
  line,
  groups: dataOf(GROUP_FIELDS, found.groups),
  pooled_sd_m: found.pooledSd,
  gain: found.gain,
  chance_alone: found.chanceAlone,
  looks,
  best_position_m: found.bestPosition,
  interval_m: found.interval,
  open_below: found.openBelow,
  open_above: found.openAbove,
  doubling_m: found.doubling,
  now:
    found.now === null
      ? null
      : {
          position_m: found.now.position,
          growth: found.now.growth,
          growth_at_most: found.now.growthAtMost,
        },
  tightest_position_m: found.tightest,
  shoot_next_m: found.shootNext,
  ratio: found.ratio === null ? null : { value: found.ratio.value, interval: found.ratio.interval },
  verdict: found.verdict,
});
