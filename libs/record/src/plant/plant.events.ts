import type { Recorded } from '@libs/kernel';

export type PlantEvent = PlantOpened;
/** First event of every ledger. `zone` is an IANA time zone. */
export type PlantOpened = {
  readonly type: 'PlantOpened';
  readonly data: { readonly name: string; readonly zone: string; readonly demonstration: boolean };
};
export type RecordedPlantEvent = Recorded<PlantEvent>;
