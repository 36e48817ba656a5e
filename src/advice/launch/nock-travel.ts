/**
 * How fast the nock of a tuned bow may still travel across the shot, up or down, as the arrow leaves; standard deviation, m/s.
 * A quarter of a foot a second leaves a hole in paper a third of an inch long. Common practice, no source.
 */
export const NOCK_TRAVEL = 0.0762;
