import type { QuestionName } from '../../quillpath.ts';
import type { Asked, Outcome } from './answer.ts';
import { type Ending, lane } from './lane.ts';
import type { Order, PaperOrder } from './orders.ts';

type Watch = (label: string, done: number, total: number) => void;

/** Asks questions without holding up the page. */
export interface Asker {
  /** @returns null for a question that was stopped, or asked anew in the same slot before it was answered */
  readonly ask: (slot: string, asked: Asked, watch?: Watch) => Promise<Outcome | null>;
  readonly stop: (slot: string) => void;
  readonly pdf: (order: PaperOrder) => Promise<Uint8Array>;
  /** Loads what is asked later, when nothing else is to do. */
  readonly warm: () => Promise<void>;
}

/** Questions that take longer than a moment; the page shows how far they are, with a Stop. */
const LONG: ReadonlySet<QuestionName> = new Set(['scatter', 'compare', 'vary']);

export const isLong = (question: QuestionName): boolean => LONG.has(question);

/** What the first screens ask is at hand in the page itself until the worker has started. */
const AT_HAND: ReadonlySet<QuestionName> = new Set(['marks', 'fit', 'tape', 'check']);

const unwatched: Watch = () => {};

export function asker(): Asker {
  const address = () =>
    URL.createObjectURL(new Blob([quillpathPacks.source('./thread.js')], { type: 'text/javascript' }));
  const make = () => new Worker(address());
  const lanes = { quick: lane(make, false), long: lane(make, true), paper: lane(make, false) };
  let hasWorkers = true;
  let count = 0;

  const send = (name: keyof typeof lanes, slot: string, order: Order, watch: Watch) =>
    new Promise<Ending | null>((settle) => lanes[name].run({ slot, order, watch, settle }));

  const inPage = async (asked: Asked): Promise<Outcome> => (await import('./answer.ts')).answer(asked);
  const inWorker = async (slot: string, asked: Asked, watch: Watch): Promise<Outcome | null> => {
    count += 1;
    const ending = await send(isLong(asked.question) ? 'long' : 'quick', slot, { id: count, asked }, watch);
    if (ending === null) return null;
    if ('outcome' in ending) return ending.outcome;
    return { failure: 'failed' in ending ? ending.failed : 'There is no answer.', draft: false };
  };
  const warm = async (): Promise<void> => {
    await quillpathPacks.fetch('core');
    await quillpathPacks.fetch('more');
    try {
      lanes.quick.start();
    } catch {
      hasWorkers = false;
    }
  };
  return {
    ask: async (slot, asked, watch = unwatched) => {
      const isAtHand = AT_HAND.has(asked.question) && !lanes.quick.isReady();
      if (isAtHand) return inPage(asked);
      await warm();
      return hasWorkers ? inWorker(slot, asked, watch) : inPage(asked);
    },
    stop: (slot) => {
      lanes.quick.stop(slot);
      lanes.long.stop(slot);
    },
    pdf: async (paper) => {
      await warm();
      await quillpathPacks.fetch('pdf');
      if (!hasWorkers) return (await import('../keep/pdf.ts')).pdfOf(paper);
      count += 1;
      const ending = await send('paper', `paper-${count}`, { id: count, paper }, unwatched);
      if (ending !== null && 'pdf' in ending) return ending.pdf;
      throw new Error(ending !== null && 'failed' in ending ? ending.failed : 'The document was not made.');
    },
    warm,
  };
}
