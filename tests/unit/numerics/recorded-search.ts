/** A search for a root or a minimum, call by call. */
export interface Search {
  readonly f: (x: number) => number;
  readonly lo: number;
  readonly hi: number;
  readonly tolerance: number;
  readonly found: number;
  /** Where f was asked, in this order; of a root those after the two ends. */
  readonly asked: readonly number[];
}
