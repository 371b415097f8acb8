export type StationCommand =
  | {
      readonly type: 'MountLot';
      readonly data: { readonly station: string; readonly lot: string; readonly kind: string };
    }
  | { readonly type: 'UnmountLot'; readonly data: { readonly station: string; readonly lot: string } };
