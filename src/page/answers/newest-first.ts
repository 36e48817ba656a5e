/**
 * What asks again whenever it is called, once a frame at most. While an answer is awaited a further call waits for it, and of
 * many only the newest is asked.
 *
 * @param waits false for work that the asker itself takes over from: it is then asked at once
 */
export function newestFirst(ask: () => Promise<void>, waits = true): () => void {
  let isAsking = false;
  let isStale = false;
  const again = (): void => {
    if (isAsking && waits) {
      isStale = true;
      return;
    }
    isAsking = true;
    requestAnimationFrame(() => {
      void ask().finally(() => {
        isAsking = false;
        if (!isStale) return;
        isStale = false;
        again();
      });
    });
  };
  return again;
}
