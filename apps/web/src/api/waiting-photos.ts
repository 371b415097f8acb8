/** Photos that wait for the server, in the browser's own database: they are too large for where entries wait. */
export type WaitingPhoto = { readonly hash: string; readonly photo: Blob };

const DATABASE = 'studbook';
const STORE = 'photos';

const answered = <T>(request: IDBRequest<T>): Promise<T> =>
  new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error ?? new Error('The browser could not keep the photo'));
  });

const inStore = async <T>(
  mode: IDBTransactionMode,
  work: (store: IDBObjectStore) => IDBRequest<T>,
): Promise<T> => {
  const opening = indexedDB.open(DATABASE, 1);
  opening.onupgradeneeded = () => opening.result.createObjectStore(STORE, { keyPath: 'hash' });
  const database = await answered(opening);
  try {
    return await answered(work(database.transaction(STORE, mode).objectStore(STORE)));
  } finally {
    database.close();
  }
};

export const keepWaiting = async (hash: string, photo: Blob): Promise<void> => {
  await inStore('readwrite', (store) => store.put({ hash, photo } satisfies WaitingPhoto));
};
export const forgetWaiting = async (hash: string): Promise<void> => {
  await inStore('readwrite', (store) => store.delete(hash));
};
/** Nothing else was ever put there; the browser's own types say only "anything". */
const allKept = (store: IDBObjectStore): IDBRequest<WaitingPhoto[]> =>
  store.getAll() as IDBRequest<WaitingPhoto[]>;

export const waitingPhotos = (): Promise<readonly WaitingPhoto[]> => inStore('readonly', allKept);
