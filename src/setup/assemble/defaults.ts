import type { Dimension, SiUnit } from '../../quantities/dimension.ts';
import { parseQuantity } from '../../quantities/parse.ts';
import { type Quantity, si } from '../../quantities/quantity.ts';

interface Default {
  readonly dimension: Dimension;
  /** As the archer would have written it. */
  readonly text: string;
  readonly why: string;
}

/**
 * What stands in for a key that is not in the file. A row that ends in `relative_sd` is a share of the value, and
 * `marks.arrow_spread` the standard deviation of a single arrow over its range.
 */
export const DEFAULTS = {
  'bow.draw_length': { dimension: 'length', text: '29 in', why: 'near the middle of common draw lengths' },
  'bow.brace_height': { dimension: 'length', text: '6.5 in', why: 'common for hunting compound bows' },
  'bow.cant': { dimension: 'angle', text: '0 deg', why: 'the sight has a level' },
  'bow.peep_height_sd': { dimension: 'length', text: '0.1 in', why: 'a ruler held at full draw' },
  'launch.speed_sd': {
    dimension: 'speed',
    text: '1.5 fps',
    why: 'two chronographs often differ by this much',
  },
  'launch.speed_per_degree_sd': {
    dimension: 'speedPerTemperature',
    text: '0.05 fps/degF',
    why: 'two readings of a chronograph 30 degF apart tell it as well as that',
  },
  'arrow.drag_relative_sd': {
    dimension: 'ratio',
    text: '15 %',
    why: 'measured drag differs by about this much from a build-up of the parts',
  },
  'arrow.side_force': {
    dimension: 'ratio',
    text: '0',
    why: 'the side force of a spinning shaft has not been measured',
  },
  'arrow.parts.insert.length': { dimension: 'length', text: '1 in', why: 'common' },
  'arrow.parts.collar.length': { dimension: 'length', text: '0.5 in', why: 'common' },
  'arrow.parts.point.length': {
    dimension: 'length',
    text: '1.2 in',
    why: 'a common field point, ahead of the shaft',
  },
  'arrow.parts.nock.mass': { dimension: 'mass', text: '10 gr', why: 'common for a plain nock' },
  'arrow.parts.nock.length': { dimension: 'length', text: '0.25 in', why: 'common, groove to shaft' },
  'arrow.parts.vanes.count': { dimension: 'ratio', text: '3', why: 'most arrows have three' },
  'arrow.parts.vanes.thickness': { dimension: 'length', text: '0.03 in', why: 'common for plastic vanes' },
  'arrow.parts.vanes.from_nock': {
    dimension: 'length',
    text: '1 in',
    why: 'room for the fingers of a release',
  },
  'arrow.parts.vanes.angle': {
    dimension: 'angle',
    text: '0 deg',
    why: 'no spin is assumed unless the file gives it',
  },
  'air.temperature': {
    dimension: 'temperature',
    text: '59 degF',
    why: 'the standard atmosphere at sea level',
  },
  'air.humidity': {
    dimension: 'ratio',
    text: '50 %',
    why: 'the middle; the whole range changes the density by less than 1 %',
  },
  'wind.from': { dimension: 'angle', text: '90 deg', why: 'a side wind moves the arrow most' },
  'wind.up': { dimension: 'speed', text: '0 mph', why: 'air over level ground does not rise' },
  'wind.shear': {
    dimension: 'ratio',
    text: '0',
    why: 'an arrow stays within a few feet of the line of sight',
  },
  slope: { dimension: 'angle', text: '0 deg', why: 'marks are usually shot on level ground' },
  eye_height: { dimension: 'length', text: '1.6 m', why: 'a standing archer' },
  'sight.zero_range': { dimension: 'length', text: '20 yd', why: 'where most sights are set first' },
  'sight.zero_slope': { dimension: 'angle', text: '0 deg', why: 'sights are zeroed on level ground' },
  'sight.peep_to_pin_sd': { dimension: 'length', text: '0.25 in', why: 'a tape held at full draw' },
  'sight.housing_below_pin': {
    dimension: 'length',
    text: '0 in',
    why: 'the pin itself is used until it is measured',
  },
  'sight.lean': { dimension: 'angle', text: '0 deg', why: 'the sight bar is assumed to be vertical' },
  'sight.bar_angle': { dimension: 'angle', text: '0 deg', why: 'most sights travel square to the arrow' },
  'sight.level_length': { dimension: 'length', text: '1 in', why: 'common for a level in the housing' },
  'sight.travel_length': { dimension: 'length', text: '3 in', why: 'common for a slider sight' },
  'sight.scale.travel_per_unit_relative_sd': {
    dimension: 'ratio',
    text: '0.5 %',
    why: 'a thread or a rack is made more accurately than a ruler can measure it',
  },
  'sight.tape.width': { dimension: 'length', text: '12 mm', why: 'wide enough for large numbers' },
  'sight.tape.travel_ratio': {
    dimension: 'ratio',
    text: '1',
    why: 'the tape sits on the part that carries the pin',
  },
  'marks.arrows': { dimension: 'ratio', text: '3', why: 'a common size of group' },
  'marks.on_tape_sd': {
    dimension: 'length',
    text: '0.3 mm',
    why: 'a pencil line is drawn and measured with a ruler to about this much',
  },
  'marks.range_sd': { dimension: 'length', text: '0.5 yd', why: 'a rangefinder shows whole yards' },
  'marks.arrow_spread': {
    dimension: 'ratio',
    text: '0.03 in/yd',
    why: 'a good archer: three arrows in about 4 in at 60 yd',
  },
} as const satisfies Record<string, Default>;

/** The words that stand in for a missing choice. */
export const DEFAULT_WORDS = {
  'bow.hand': 'right',
  'arrow.boundary_layer': 'transition',
  'arrow.parts.point.shape': 'field',
  'arrow.parts.vanes.turn': 'none',
  'arrow.parts.vanes.leading_edge': 'round',
  'arrow.parts.vanes.trailing_edge': 'square',
  'sight.scale.increases': 'down',
  'sight.tape.numbers': 'upright',
} as const;

export type DefaultKey = keyof typeof DEFAULTS;

/** The default of a key, in SI. */
export const defaultOf = <K extends DefaultKey>(
  key: K,
): Quantity<SiUnit[(typeof DEFAULTS)[K]['dimension']]> =>
  si(parseQuantity(DEFAULTS[key].text, DEFAULTS[key].dimension));
