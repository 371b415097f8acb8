export type LabelCommand = UseLabel | VoidLabel | ReclaimLabel | TakeOffLabel;

/** Records nothing where the label did not go on after all. */
export type UseLabel = {
  readonly type: 'UseLabel';
  readonly data: { readonly number: string; readonly serial: string };
};
export type VoidLabel = {
  readonly type: 'VoidLabel';
  readonly data: { readonly number: string; readonly reason: string; readonly note?: string };
};
export type ReclaimLabel = {
  readonly type: 'ReclaimLabel';
  readonly data: { readonly number: string; readonly note?: string };
};
export type TakeOffLabel = {
  readonly type: 'TakeOffLabel';
  readonly data: { readonly number: string; readonly serial: string; readonly replacedBy: string };
};
