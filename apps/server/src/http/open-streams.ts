/** Answers that have no end of their own: a server that stops must end them, or it never stops. */
export type OpenStreams = {
  /** Returns what to call when the stream has ended by itself. */
  readonly add: (end: () => void) => () => void;
  readonly endAll: () => void;
};

export const openStreams = (): OpenStreams => {
  const open = new Set<() => void>();
  return {
    add: (end) => {
      open.add(end);
      return () => open.delete(end);
    },
    endAll: () => {
      for (const end of [...open]) end();
    },
  };
};
