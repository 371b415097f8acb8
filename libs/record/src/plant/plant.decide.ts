import { accept } from '@libs/kernel';
import type { Decision, StreamKind } from '@libs/kernel';
import type { PlantCommand } from './plant.commands';
import type { PlantEvent, RecordedPlantEvent } from './plant.events';
import { notOpened } from './plant.state';
import type { PlantState } from './plant.state';

/** Opening never fails: a plant that is open stays as it is. */
export type PlantRejection = { readonly code: never };
export type PlantFacts = { readonly [none: string]: never };

export const decide = (
  { data }: PlantCommand,
  { opened }: PlantState,
): Decision<PlantEvent, PlantRejection> =>
  opened === null ? accept({ type: 'PlantOpened', data }) : accept();

export const evolve = (_plant: PlantState, { data }: RecordedPlantEvent): PlantState => ({ opened: data });

export const PLANT: StreamKind<PlantCommand, PlantState, PlantEvent, PlantRejection, PlantFacts> = {
  name: 'plant',
  initial: notOpened,
  decide,
  evolve,
};
