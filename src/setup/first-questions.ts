import type { LimitKey } from './schema/limits.ts';

/** A measurement that a new file is begun with. */
export interface FirstQuestion {
  readonly key: LimitKey;
  readonly ask: string;
  /** How to measure it, in one line. */
  readonly how: string;
}

/** What marks cannot be had without, in the order in which it is measured. */
export const NEEDED_QUESTIONS: readonly FirstQuestion[] = [
  {
    key: 'launch.speed',
    ask: 'How fast is your arrow',
    how: 'Chronograph a few of them and take the mean, or take the speed that your shop measured with this arrow.',
  },
  {
    key: 'arrow.mass',
    ask: 'What does the whole arrow weigh',
    how: 'On a grain scale, with its point, vanes and nock.',
  },
  {
    key: 'arrow.diameter',
    ask: 'How thick is the shaft',
    how: 'Its outside diameter, with a caliper or from the maker: 0.246 in, 6.5 mm.',
  },
  {
    key: 'bow.peep_height',
    ask: 'How high is your eye above the arrow',
    how: 'At full draw, from the middle of the shaft straight up to the middle of the peep; have somebody hold the ruler.',
  },
  {
    key: 'sight.peep_to_pin',
    ask: 'How far is it from the peep to the pin',
    how: 'At full draw, along the line of sight; have somebody hold the tape.',
  },
];

/** What makes the answers better and may be left for another day. */
export const LATER_QUESTIONS: readonly FirstQuestion[] = [
  {
    key: 'sight.zero_range',
    ask: 'At what range is the bow sighted in',
    how: 'Where you set the zero of the sight, often 20 yd.',
  },
  {
    key: 'arrow.parts.shaft.length',
    ask: 'How long is the bare shaft',
    how: 'The tube as cut, without insert and nock.',
  },
  {
    key: 'arrow.parts.shaft.mass_per_length',
    ask: 'What does the shaft weigh by the inch',
    how: "From the maker's chart, such as 9.5 gpi.",
  },
  {
    key: 'arrow.parts.point.mass',
    ask: 'What does the point weigh',
    how: 'Printed on it or its packet: 100 gr.',
  },
  {
    key: 'arrow.parts.insert.mass',
    ask: 'What does the insert weigh',
    how: 'With its weights, if it has any.',
  },
  { key: 'arrow.parts.nock.mass', ask: 'What does the nock weigh', how: 'With its light, if it has one.' },
  { key: 'arrow.parts.vanes.mass', ask: 'What does ONE vane weigh', how: 'Printed on the packet: 6.8 gr.' },
  { key: 'arrow.parts.vanes.root_chord', ask: 'How long is a vane', how: 'Along the shaft.' },
  {
    key: 'arrow.parts.vanes.height',
    ask: 'How high is a vane',
    how: 'From the surface of the shaft to its highest point.',
  },
  {
    key: 'sight.scale.travel_per_unit',
    ask: 'How far does the pin move for one number of the scale',
    how: 'Turn 20 numbers, measure how far the pin moved, and divide by 20.',
  },
  {
    key: 'sight.scale.at_zero',
    ask: 'What does the scale read at the zero',
    how: 'The number that the needle stands at when the sight is set for the zero range.',
  },
];
