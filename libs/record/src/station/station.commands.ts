export type StationCommand =
  | {
      readonly type: 'MountLot';
      readonly data: { readonly station: string; readonly lot: string; readonly kind: string };
    }
  | { readonly type: 'UnmountLot'; readonly data: { readonly station: string; readonly lot: string } }
  | {
      readonly type: 'HoldStation';
      readonly data: {
        readonly station: string;
        readonly hold: string;
        readonly reason: string;
        readonly note?: string;
      };
    }
  | {
      readonly type: 'ReleaseStation';
      readonly data: { readonly station: string; readonly hold: string; readonly note?: string };
    };
