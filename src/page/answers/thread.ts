import { answer } from './answer.ts';
import type { Order, Reply } from './orders.ts';

const say = (reply: Reply): void => postMessage(reply);

async function follow(order: Order): Promise<void> {
  const { id } = order;
  if ('paper' in order) {
    const { pdfOf } = await import('../keep/pdf.ts');
    say({ id, pdf: await pdfOf(order.paper) });
    return;
  }
  const progress = (label: string, total: number) => ({
    done: (done: number) => say({ id, label, done, total }),
    end: () => {},
  });
  say({ id, outcome: await answer(order.asked, progress) });
}

addEventListener('message', ({ data }: MessageEvent<Order>) => {
  follow(data).catch((error: unknown) =>
    say({ id: data.id, failed: error instanceof Error ? error.message : String(error) }),
  );
});
say({ ready: true });
