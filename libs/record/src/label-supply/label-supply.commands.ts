export type LabelSupplyCommand = {
  readonly type: 'ReceiveLabels';
  readonly data: { readonly first: string; readonly last: string };
};
