/**
 * Units and constants that are exact by definition, in SI: for a law, a limit or a habit of the trade that was published in
 * other units and is quoted as published.
 *
 * Values read from a file or printed for a reader take their units from `parse.ts` and `format.ts`, never from here.
 */

/** m. @source international yard and pound agreement (1959): the yard is 0.9144 m; 36 inches make a yard */
export const YARD = 0.9144;
/** m */
export const INCH = 0.0254;

/** m; 12 inches */
export const FOOT = 0.3048;
/** m/s; a mile is 5280 feet */
export const MILE_PER_HOUR = (5280 * FOOT) / 3600;

/** kg. @source international yard and pound agreement (1959): the avoirdupois pound is 0.453 592 37 kg, 7000 grains */
export const GRAIN = 64.79891e-6;

/** m/s2, the standard acceleration of free fall. @source 3rd General Conference on Weights and Measures (1901) */
export const STANDARD_GRAVITY = 9.80665;
/** N, a pound of mass under standard gravity. @source NIST Special Publication 811 (2008), appendix B.8 */
export const POUND_FORCE = 4.4482216152605;

/** rad, a degree of arc */
export const DEGREE = Math.PI / 180;
