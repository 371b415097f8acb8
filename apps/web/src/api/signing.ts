/** Asks whoever is there to sign what goes out under this key. False: they would not. */
export type AskToSign = (key: string) => Promise<boolean>;

let asking: AskToSign | null = null;
/** One asks at a time: whatever draws the form. Returns what to call when it is gone. */
export const onSignatureNeeded = (ask: AskToSign): (() => void) => {
  asking = ask;
  return () => {
    asking = null;
  };
};

export const signedByHand = (key: string): Promise<boolean> => asking?.(key) ?? Promise.resolve(false);
