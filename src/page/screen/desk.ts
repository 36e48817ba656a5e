import type { UnitSystem } from '../../quillpath.ts';
import type { Named } from '../answers/answer.ts';
import type { Asker } from '../answers/asker.ts';
import type { Observed } from '../text/observed.ts';
import type { Workbench } from '../text/workbench.ts';

/** What every part of the page works with. */
export interface Desk {
  readonly bench: Workbench;
  readonly asker: Asker;
  readonly units: Observed<UnitSystem>;
  /** The last text of this setup without a problem, which answers are made from; null before there is one. */
  readonly sound: Observed<Named | null>;
  /** Other setups kept on the device, for the question that compares. */
  readonly others: () => readonly Named[];
  /** Says something to who looks and to who listens. */
  readonly say: (words: string) => void;
  /** Offers a file for saving. */
  readonly save: (name: string, content: string | Uint8Array, type: string) => void;
  /** Shows the text with a place of it marked. */
  readonly showLine: (line: number, column: number) => void;
  /** Goes to one of the areas. */
  readonly go: (area: string) => void;
}
