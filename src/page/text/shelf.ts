import type { Kept, Shelf } from './kept.ts';

const STORE = 'setups';

const done = <T>(request: IDBRequest<T>): Promise<T> =>
  new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });

/** The device's own store (IndexedDB), opened when it is first asked. */
export function deviceShelf(): Shelf {
  let opened: Promise<IDBDatabase> | undefined;
  const open = (): Promise<IDBDatabase> => {
    opened ??= new Promise((resolve, reject) => {
      const request = indexedDB.open('quillpath', 1);
      request.onupgradeneeded = () => request.result.createObjectStore(STORE, { keyPath: 'id' });
      request.onsuccess = () => resolve(request.result);
      request.onerror = () => reject(request.error);
    });
    return opened;
  };
  return {
    all: async () => {
      const found: readonly Kept[] = await done(
        (await open()).transaction(STORE).objectStore(STORE).getAll(),
      );
      return found.toSorted((a, b) => b.changed - a.changed);
    },
    keep: async (kept) => {
      const transaction = (await open()).transaction(STORE, 'readwrite');
      const store = transaction.objectStore(STORE);
      const finished = new Promise<void>((resolve, reject) => {
        transaction.oncomplete = () => resolve();
        transaction.onabort = () => reject(transaction.error ?? new Error('the device has no room'));
      });
      const there: Kept | undefined = await done(store.get(kept.id));
      const isNewer = there === undefined || there.revision === kept.revision - 1 || there.text === kept.text;
      if (isNewer) store.put(kept);
      await finished;
      return isNewer;
    },
    remove: async (id) => {
      await done((await open()).transaction(STORE, 'readwrite').objectStore(STORE).delete(id));
    },
  };
}
