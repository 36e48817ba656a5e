import type { Order, Reply } from './orders.ts';

/** A reply that ends an order. */
export type Ending = Exclude<Reply, { readonly ready: true } | { readonly total: number }>;

interface Job {
  readonly slot: string;
  readonly order: Order;
  readonly watch: (label: string, done: number, total: number) => void;
  /** Called with null for what was stopped, or asked anew before its turn came. */
  readonly settle: (ending: Ending | null) => void;
}

/** One worker and what waits for it: of each slot the newest, and the newest slot first. */
export interface Lane {
  readonly isReady: () => boolean;
  readonly start: () => void;
  readonly run: (job: Job) => void;
  readonly stop: (slot: string) => void;
}

/**
 * @param make a new worker; it may throw where a page can have none
 * @param interrupts whether a new order of a slot ends the one of the same slot that is being worked on
 */
export function lane(make: () => Worker, interrupts: boolean): Lane {
  let worker: Worker | null = null;
  let ready = false;
  let current: Job | null = null;
  const waiting = new Map<string, Job>();

  const finish = (ending: Ending | null): void => {
    const job = current;
    current = null;
    job?.settle(ending);
    next();
  };
  const next = (): void => {
    const newest = [...waiting.values()].at(-1);
    if (newest === undefined || current !== null) return;
    waiting.delete(newest.slot);
    current = newest;
    start().postMessage(newest.order);
  };
  const start = (): Worker => {
    if (worker !== null) return worker;
    const made = make();
    made.onmessage = ({ data }: MessageEvent<Reply>) => {
      if ('ready' in data) ready = true;
      else if (data.id !== current?.order.id) return;
      else if ('total' in data) current.watch(data.label, data.done, data.total);
      else finish(data);
    };
    made.onerror = ({ message }) => {
      end();
      if (current !== null) finish({ id: current.order.id, failed: message });
    };
    worker = made;
    return made;
  };
  const end = (): void => {
    worker?.terminate();
    worker = null;
    ready = false;
  };
  return {
    isReady: () => ready,
    start,
    run: (job) => {
      waiting.get(job.slot)?.settle(null);
      waiting.delete(job.slot);
      waiting.set(job.slot, job);
      if (interrupts && current?.slot === job.slot) {
        end();
        finish(null);
      } else next();
    },
    stop: (slot) => {
      waiting.get(slot)?.settle(null);
      waiting.delete(slot);
      if (current?.slot !== slot) return;
      end();
      finish(null);
    },
  };
}
