export type LabelCommand = {
  readonly type: 'UseLabel';
  readonly data: { readonly number: string; readonly serial: string };
};
