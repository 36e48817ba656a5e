/** A setup as it is kept on the device. */
export interface Kept {
  readonly id: string;
  /** Name of the file, for messages and for saving. */
  readonly name: string;
  readonly text: string;
  /** Grows with every change, so that a second tab is noticed. */
  readonly revision: number;
  /** When it was changed last, ms. */
  readonly changed: number;
}

/** Where setups are kept; every promise fails when the device has no room or keeps nothing. */
export interface Shelf {
  readonly all: () => Promise<readonly Kept[]>;
  /** @returns whether it was kept; not when another tab has changed it since `kept.revision - 1` */
  readonly keep: (kept: Kept) => Promise<boolean>;
  readonly remove: (id: string) => Promise<void>;
}
